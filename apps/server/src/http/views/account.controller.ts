import { bayTimeQuery, bayTimeView, changeLogPage, changeLogQuery } from '@holdfast/contract';
import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import type { Session } from '../../auth/sessions.js';
import type { Reads as ReadsOfShop } from '../../read/reads.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { describeRead } from '../openapi.js';
import { Reads, SignedIn } from '../signed-in.js';
import { queryOf, sendText } from './query.js';
import { READS } from './reads-provider.js';

describeRead({
  path: '/api/bay-time',
  summary: 'What became of every opening millisecond of every bay, over working days of the shop, both included.',
  query: bayTimeQuery,
  response: bayTimeView,
});
describeRead({
  path: '/api/log',
  summary: 'Accepted commands, newest first; of one visit where it is named.',
  query: changeLogQuery,
  response: changeLogPage,
});

/** What owner and manager look back on. */
@Controller('api')
export class AccountController {
  constructor(@Inject(READS) private readonly reads: ReadsOfShop) {}

  @Get('bay-time')
  @Reads('bayTime')
  async bayTime(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const view = await this.reads.bayTime(session.shop.id, queryOf(bayTimeQuery, request));
    sendText(reply, view === null ? null : JSON.stringify(view));
  }

  @Get('log')
  @Reads('changeLog')
  async log(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    sendText(reply, await this.reads.changeLog(session.shop.id, queryOf(changeLogQuery, request)));
  }
}
