import {
  figuresQuery,
  figuresView,
  myHoursView,
  bayTimeQuery,
  bayTimeView,
  timesQuery,
  type TimesView,
  timesView,
} from '@holdfast/contract';
import type { By } from '@holdfast/domain';
import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import type { Session } from '../../auth/sessions.js';
import type { Reads as ReadsOfShop } from '../../read/reads.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { describeRead } from '../openapi.js';
import { Reads, SignedIn } from '../signed-in.js';
import { bayTimeColumns, personTimes, spotLines, timeColumns } from './csv-columns.js';
import { csvWords, sendListAsCsv } from './csv-list.js';
import { queryOf, sendText } from './query.js';
import { READS } from './reads-provider.js';

describeRead({
  path: '/api/bay-time',
  summary: 'What became of every opening millisecond of every bay, over working days of the shop, both included.',
  query: bayTimeQuery,
  response: bayTimeView,
});
describeRead({
  path: '/api/figures',
  summary:
    'Bay use plain and manned, what held the bays, hours of people, and the flow of vehicles, by day, week or month.',
  query: figuresQuery,
  response: figuresView,
});
describeRead({
  path: '/api/my-hours',
  summary: "One's own hours present and clocked, and the book hours of what one finished.",
  query: figuresQuery,
  response: myHoursView,
});
describeRead({
  path: '/api/times',
  summary: 'Clocks, presence, stays and holds of some days or of one visit, with what was put right among them.',
  query: timesQuery,
  response: timesView,
});

const byOf = ({ person }: Session): By => ({ personId: person.id, name: person.name, roles: person.roles });

/** What owner and manager look back on, and each person of their own time. */
@Controller('api')
export class AccountController {
  constructor(@Inject(READS) private readonly reads: ReadsOfShop) {}

  @Get('bay-time')
  @Reads('bayTime')
  async bayTime(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const query = queryOf(bayTimeQuery, request);
    const view = await this.reads.bayTime(session.shop.id, query);
    if (query.format === 'csv' && view !== null) {
      await sendListAsCsv(
        reply,
        `bay-time-${query.from}-${query.to}`,
        bayTimeColumns,
        csvWords(session, new Map()),
        () => Promise.resolve({ items: spotLines(view), next: null }),
      );
      return;
    }
    sendText(reply, view === null ? null : JSON.stringify(view));
  }

  @Get('figures')
  @Reads('bayTime')
  async figures(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const view = await this.reads.figures(session.shop.id, queryOf(figuresQuery, request), byOf(session));
    sendText(reply, view === null ? null : JSON.stringify(view));
  }

  @Get('my-hours')
  @Reads('times')
  async myHours(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const view = await this.reads.myHours(session.shop.id, queryOf(figuresQuery, request), byOf(session));
    sendText(reply, view === null ? null : JSON.stringify(view));
  }

  @Get('times')
  @Reads('times')
  async times(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const query = queryOf(timesQuery, request);
    const text = await this.reads.times(session.shop.id, query, byOf(session));
    if (query.format === 'csv' && text !== null) {
      const words = csvWords(session, await this.reads.people(session.shop.id));
      const items = personTimes(JSON.parse(text) as TimesView);
      await sendListAsCsv(reply, 'times', timeColumns, words, () => Promise.resolve({ items, next: null }));
      return;
    }
    sendText(reply, text);
  }
}
