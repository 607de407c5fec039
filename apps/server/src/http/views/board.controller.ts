import { boardQuery, changesQuery } from '@holdfast/contract';
import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import type { Session } from '../../auth/sessions.js';
import type { PollChanges } from '../../live/changes-poll.js';
import { POLL_CHANGES } from '../../live/live-providers.js';
import { audienceOf } from '../../live/live-sockets.js';
import type { Reads as ReadsOfShop } from '../../read/reads.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { describeRead } from '../openapi.js';
import { Reads, SignedIn } from '../signed-in.js';
import { queryOf, sendText } from './query.js';
import { READS } from './reads-provider.js';

describeRead({
  path: '/api/board',
  summary: 'Everything the live screens draw from: epoch, number of the log, time of the shop, rows by table.',
  query: boardQuery,
});
describeRead({
  path: '/api/changes',
  summary:
    'The changes after a number, at most 1000; waits for one where there is none yet. Or `{"reload":"snapshot-needed"}`.',
  query: changesQuery,
});

@Controller('api')
export class BoardController {
  constructor(
    @Inject(READS) private readonly reads: ReadsOfShop,
    @Inject(POLL_CHANGES) private readonly poll: PollChanges,
  ) {}

  @Get('board')
  @Reads('board')
  async board(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    queryOf(boardQuery, request);
    sendText(reply, await this.reads.board(session.shop.id, audienceOf(session.person.roles)));
  }

  @Get('changes')
  @Reads('board')
  async changes(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const query = queryOf(changesQuery, request);
    const gone = new AbortController();
    reply.raw.once('close', () => gone.abort());
    sendText(reply, await this.poll(session.shop.id, audienceOf(session.person.roles), query, gone.signal));
  }
}
