import { may, mayDo, type UploadView } from '@holdfast/contract';
import { Controller, Get, Inject, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { MultipartFile } from '@fastify/multipart';
import { join } from 'node:path';
import { comesWithCookie } from '../auth/session-token.js';
import type { Session, Sessions } from '../auth/sessions.js';
import type { Config } from '../config.js';
import { CONFIG, SESSIONS, UPLOADS, type Uploads } from '../providers.js';
import { keyOf } from './command-request.js';
import type { HttpReply, HttpRequest } from './http-types.js';
import { PhotoFiles } from './photo-files.js';
import { Problem } from './problem.js';
import { Reads, requireSession, SignedIn } from './signed-in.js';

/** Photos come up apart from the command that attaches them, so that the command stays small and may be sent again. */
@Controller('api')
export class PhotosController {
  private readonly files: PhotoFiles;

  constructor(
    @Inject(CONFIG) config: Config,
    @Inject(SESSIONS) private readonly sessions: Sessions,
    @Inject(UPLOADS) private readonly uploads: Uploads,
  ) {
    this.files = new PhotoFiles(join(config.dataDir, 'photos'));
  }

  @Post('uploads')
  async upload(@Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const session = await requireSession(this.sessions, request);
    if (!may(session.person.roles, mayDo.attachPhoto)) throw new Problem('role.mayNot');
    // A page of another site can send a form, but not with this header. A token is not sent by the browser at all.
    if (comesWithCookie(request.headers)) keyOf(request.headers);
    if (!request.isMultipart()) throw new Problem('body.notJson', { values: { type: 'multipart/form-data' } });
    const photo = await this.files.add(session.shop.id, await pictureOf(request));
    if (photo === null) throw new Problem('upload.notAPhoto');
    await this.uploads.add(session.shop.id, session.person.id, photo);
    const view: UploadView = photo;
    reply.code(200).header('cache-control', 'no-store').send(view);
  }

  @Get('photos/:content')
  @Reads('jobs')
  async photo(
    @SignedIn() session: Session,
    @Param('content') content: string,
    @Query('size') size: unknown,
    @Res() reply: HttpReply,
  ): Promise<void> {
    const known = /^[0-9a-f]{64}$/.test(content) && (await this.uploads.has(session.shop.id, content));
    const bytes = known ? await this.files.read(session.shop.id, content, size === 'small' ? 'small' : 'full') : null;
    if (bytes === null) throw new Problem('photo.unknown');
    reply
      .header('content-type', 'image/jpeg')
      .header('cache-control', 'private, max-age=31536000, immutable')
      .send(bytes);
  }
}

async function pictureOf(request: HttpRequest): Promise<Buffer> {
  let file: MultipartFile | undefined;
  try {
    file = await request.file();
    const bytes = await file?.toBuffer();
    // The reader throws only when it meets the limit before the last piece of the file.
    if (bytes !== undefined && file?.file.truncated === false) return bytes;
  } catch (failure) {
    if ((failure as { statusCode?: unknown }).statusCode !== 413) throw new Problem('upload.missing');
  }
  throw file === undefined
    ? new Problem('upload.missing')
    : new Problem('body.tooLarge', { values: { limit: '15 MB' } });
}
