import {
  type ChangeLogItem,
  changeLogPage,
  type ChangeLogQuery,
  changeLogQuery,
  logReadsPage,
  logReadsQuery,
  mostOnPage,
} from '@holdfast/contract';
import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import type { Session } from '../../auth/sessions.js';
import { AUDIT, type Audit } from '../../providers.js';
import type { Reads as ReadsOfShop } from '../../read/reads.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { describeRead } from '../openapi.js';
import { sendJsonLines } from '../send-csv.js';
import { Reads, SignedIn } from '../signed-in.js';
import { logColumns } from './csv-columns.js';
import { csvWords, pagesOf, sendAsCsv } from './csv-list.js';
import { queryOf, sendText } from './query.js';
import { READS } from './reads-provider.js';

describeRead({
  path: '/api/change-log',
  summary:
    'Accepted commands, newest first: of a person, visit, vehicle, bay, command or days. Each such read is kept itself. All of them as a file with `format=csv` or `format=jsonl`.',
  query: changeLogQuery,
  response: changeLogPage,
});
describeRead({
  path: '/api/change-log/reads',
  summary: 'Who read the log, when, which part of it and how much.',
  query: logReadsQuery,
  response: logReadsPage,
});

async function* asLines(chunks: AsyncIterable<readonly ChangeLogItem[]>): AsyncGenerator<string[]> {
  for await (const items of chunks) yield items.map((item) => JSON.stringify(item));
}

/** The record of everything, and who looked into it. */
@Controller('api/change-log')
export class ChangeLogController {
  constructor(
    @Inject(READS) private readonly reads: ReadsOfShop,
    @Inject(AUDIT) private readonly audit: Audit,
  ) {}

  @Get()
  @Reads('changeLog')
  async log(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const query = queryOf(changeLogQuery, request);
    const { format = 'json' } = query;
    if (format !== 'json') {
      await this.file(session, query, format, reply);
      return;
    }
    const text = await this.reads.changeLog(session.shop.id, query);
    const { items } = JSON.parse(text) as { items: unknown[] };
    await this.kept(session, query, 'page', items.length);
    sendText(reply, text);
  }

  @Get('reads')
  @Reads('changeLog')
  async who(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    sendText(reply, await this.reads.logReads(session.shop.id, queryOf(logReadsQuery, request)));
  }

  /** The read is kept once the file ended or was broken off, with how much of it went out. */
  private async file(
    session: Session,
    query: ChangeLogQuery,
    format: 'csv' | 'jsonl',
    reply: HttpReply,
  ): Promise<void> {
    const pages = pagesOf<ChangeLogItem>((after) =>
      this.reads.changeLog(session.shop.id, { ...query, after, limit: mostOnPage }),
    );
    const keep = (entries: number) => this.kept(session, query, format, entries);
    async function* counted(): AsyncGenerator<readonly ChangeLogItem[]> {
      let entries = 0;
      try {
        for (let after: string | null | undefined = undefined; after !== null;) {
          const { items, next }: Awaited<ReturnType<typeof pages>> = await pages(after);
          entries += items.length;
          yield items;
          after = next;
        }
      } finally {
        await keep(entries);
      }
    }
    if (format === 'jsonl') await sendJsonLines(reply, 'change-log', asLines(counted()));
    else {
      const words = csvWords(session, await this.reads.people(session.shop.id));
      await sendAsCsv(reply, 'change-log', logColumns, words, counted());
    }
  }

  private async kept(
    { shop, person }: Session,
    { limit: _limit, format: _format, after, ...filter }: ChangeLogQuery,
    form: 'page' | 'csv' | 'jsonl',
    entries: number,
  ): Promise<void> {
    const asked = form === 'page' && after !== undefined ? { ...filter, after } : filter;
    const named = Object.entries(asked).filter((part): part is [string, string] => part[1] !== undefined);
    await this.audit.keep(shop.id, person.id, { filter: Object.fromEntries(named), form, entries });
  }
}
