import {
  importQuery,
  importRowsPage,
  importRowsQuery,
  importsView,
  importView,
  fieldsOfImport,
  largestImport,
  mappingBody,
  mostImportRows,
  neededByImport,
  may,
  mayDo,
  say,
  type ImportMapping,
} from '@holdfast/contract';
import type { MultipartFile } from '@fastify/multipart';
import { Controller, Delete, Get, Inject, Param, Post, Put, Req, Res } from '@nestjs/common';
import { comesWithCookie } from '../auth/session-token.js';
import type { Session, Sessions } from '../auth/sessions.js';
import { decodeText } from '../csv/decode-text.js';
import { csvRecords, separatorOf } from '../csv/read-csv.js';
import type { CsvCell } from '../csv/write-csv.js';
import type { Imports } from '../import/ports.js';
import { IMPORTS, SESSIONS } from '../providers.js';
import type { StoredBatch } from '../read/imports.js';
import type { Reads as ReadsOfShop } from '../read/reads.js';
import { fieldErrors, keyOf, requireJson } from './command-request.js';
import type { HttpReply, HttpRequest } from './http-types.js';
import { importRowOnTheWire } from './import-sentences.js';
import { describeRead } from './openapi.js';
import { Problem } from './problem.js';
import { sendCsv } from './send-csv.js';
import { Reads, requireSession, SignedIn } from './signed-in.js';
import { idOf, queryOf, sendText } from './views/query.js';
import { READS } from './views/reads-provider.js';

describeRead({
  path: '/api/imports',
  summary: 'The last files of existing data, newest first.',
  response: importsView,
});
describeRead({
  path: '/api/imports/{id}',
  summary: 'A file of existing data, how far it was looked at, and its first rows as they would be.',
  response: importView,
  problems: ['row.notFound'],
});
describeRead({
  path: '/api/imports/{id}/rows',
  summary: 'Good or bad rows of a file in its order, each bad one with its reasons; with `format=csv` as a file.',
  query: importRowsQuery,
  response: importRowsPage,
  problems: ['row.notFound'],
});

const longestName = 200;

/** Files of existing data: they come up, get their columns named and are looked at; the command acceptImport takes them over. */
@Controller('api/imports')
export class ImportsController {
  constructor(
    @Inject(SESSIONS) private readonly sessions: Sessions,
    @Inject(IMPORTS) private readonly imports: Imports,
    @Inject(READS) private readonly reads: ReadsOfShop,
  ) {}

  @Post()
  async add(@Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const session = await this.mayImport(request);
    const { kind } = queryOf(importQuery, request);
    if (!request.isMultipart()) throw new Problem('body.notJson', { values: { type: 'multipart/form-data' } });
    const { name, bytes } = await fileOf(request);
    const decoded = decodeText(bytes);
    if (decoded === null) throw new Problem('upload.notCsv');
    const separator = separatorOf(decoded.text);
    const records = csvRecords(decoded.text, separator);
    const first = records.next();
    if (first.done === true || first.value.broken !== null) throw new Problem('upload.notCsv');
    const file = { kind, fileName: name, encoding: decoded.encoding, separator, header: first.value.cells, records };
    const importId = await this.imports.add(session.shop.id, session.person.id, file);
    if (importId === null) throw new Problem('upload.tooManyRows', { values: { most: mostImportRows } });
    await this.sendOne(session, importId, reply);
  }

  @Put(':id/mapping')
  async map(@Param('id') id: string, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    requireJson(request.headers);
    const session = await this.mayImport(request);
    const checked = mappingBody.safeParse(request.body);
    if (!checked.success) throw new Problem('body.invalid', { errors: fieldErrors(checked.error) });
    const importId = idOf(id);
    const read = await this.reads.import(session.shop.id, importId);
    if (read === null) throw new Problem('row.notFound');
    if (!fits(checked.data.mapping, read.batch)) throw new Problem('import.mapping');
    const begun = await this.imports.map(session.shop.id, importId, checked.data.mapping);
    if (begun === null) throw new Problem('row.notFound');
    if (begun === 'ended') throw new Problem('import.ended');
    await this.sendOne(session, importId, reply);
  }

  @Delete(':id')
  async discard(@Param('id') id: string, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const session = await this.mayImport(request);
    if (!(await this.imports.discard(session.shop.id, idOf(id)))) throw new Problem('row.notFound');
    reply.code(204).send();
  }

  @Get()
  @Reads('imports')
  async list(@SignedIn() session: Session, @Res() reply: HttpReply): Promise<void> {
    sendText(reply, await this.reads.imports(session.shop.id));
  }

  @Get(':id')
  @Reads('imports')
  async one(@SignedIn() session: Session, @Param('id') id: string, @Res() reply: HttpReply): Promise<void> {
    await this.sendOne(session, idOf(id), reply);
  }

  @Get(':id/rows')
  @Reads('imports')
  async rows(
    @SignedIn() session: Session,
    @Param('id') id: string,
    @Req() request: HttpRequest,
    @Res() reply: HttpReply,
  ): Promise<void> {
    const query = queryOf(importRowsQuery, request);
    const [importId, shopId, locale] = [idOf(id), session.shop.id, session.shop.locale];
    const read = await this.reads.import(shopId, importId);
    if (read === null) throw new Problem('row.notFound');
    const { batch } = read;
    const page = async (after: string | undefined, limit: number) => {
      const { items, next } = await this.reads.importRows(shopId, importId, { ...query, after, limit });
      return { items: items.map((row) => importRowOnTheWire(row, batch, locale)), next };
    };
    if (query.format === 'json') {
      sendText(reply, JSON.stringify(await page(query.after, query.limit)));
      return;
    }
    const headings = [say(locale, 'import.rowNumber'), say(locale, 'import.why'), ...batch.header];
    async function* lines(): AsyncGenerator<CsvCell[][]> {
      for (let after: string | null | undefined = undefined; after !== null;) {
        const { items, next }: Awaited<ReturnType<typeof page>> = await page(after, 200);
        yield items.map(({ number, cells, problems }) => [number, problems.map(reasonOf).join(' '), ...cells]);
        after = next;
      }
    }
    await sendCsv(reply, 'rows-not-taken', headings, lines());
  }

  private async sendOne(session: Session, importId: string, reply: HttpReply): Promise<void> {
    const read = await this.reads.import(session.shop.id, importId);
    const preview = read?.preview.map((row) => importRowOnTheWire(row, read.batch, session.shop.locale));
    sendText(reply, read === null ? null : JSON.stringify({ batch: read.batch, preview }));
  }

  /** As for photos: a page of another site can send a form, but not with this header. */
  private async mayImport(request: HttpRequest): Promise<Session> {
    const session = await requireSession(this.sessions, request);
    if (!may(session.person.roles, mayDo.acceptImport)) throw new Problem('role.mayNot');
    if (comesWithCookie(request.headers)) keyOf(request.headers);
    return session;
  }
}

/** The column that is meant stands before its reason. */
const reasonOf = ({ column, sentence }: { readonly column: string | null; readonly sentence: string }) =>
  column === null ? sentence : `${column}: ${sentence}`;

/** What the kind needs is named, nothing else, and each from a column that is there. */
function fits(mapping: ImportMapping, { kind, header }: StoredBatch): boolean {
  const named = Object.entries(mapping) as [keyof ImportMapping, number][];
  const isOfKind = named.every(([field, at]) => fieldsOfImport[kind].includes(field) && at < header.length);
  return isOfKind && neededByImport[kind].every((group) => group.some((field) => mapping[field] !== undefined));
}

async function fileOf(request: HttpRequest): Promise<{ name: string; bytes: Buffer }> {
  let file: MultipartFile | undefined;
  try {
    file = await request.file({ limits: { fileSize: largestImport } });
    const bytes = await file?.toBuffer();
    if (file !== undefined && bytes !== undefined && !file.file.truncated) {
      return { name: nameOf(file.filename), bytes };
    }
  } catch (failure) {
    if ((failure as { statusCode?: unknown }).statusCode !== 413) throw new Problem('upload.missing');
  }
  throw file === undefined
    ? new Problem('upload.missing')
    : new Problem('body.tooLarge', { values: { limit: '20 MB' } });
}

/** Shown to people and nowhere used as a path. */
function nameOf(said: string): string {
  const plain = said
    .replace(/[\u0000-\u001f\u007f\ud800-\udfff]/g, '')
    .slice(0, longestName)
    .trim();
  return plain === '' ? 'file.csv' : plain;
}
