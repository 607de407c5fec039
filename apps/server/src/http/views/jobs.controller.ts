import { findQuery, findView, jobsPage, jobsQuery, jobView, mostOnPage } from '@holdfast/contract';
import { Controller, Get, Inject, Param, Req, Res } from '@nestjs/common';
import type { Session } from '../../auth/sessions.js';
import type { Reads as ReadsOfShop } from '../../read/reads.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { describeRead } from '../openapi.js';
import { Problem } from '../problem.js';
import { refusalOnTheWire } from '../refusal-sentences.js';
import { Reads, SignedIn } from '../signed-in.js';
import { jobColumns } from './csv-columns.js';
import { csvWords, pagesOf, sendListAsCsv } from './csv-list.js';
import { idOf, queryOf, sendText } from './query.js';
import { READS } from './reads-provider.js';

describeRead({ path: '/api/jobs', summary: 'Visits, newest number first.', query: jobsQuery, response: jobsPage });
describeRead({
  path: '/api/jobs/{id}',
  summary: 'One visit with everything that belongs to it, and what stands against its hand-back.',
  response: jobView,
  problems: ['row.notFound'],
});
describeRead({
  path: '/api/find',
  summary: 'At most twenty visits, vehicles and customers whose plate, name, key, number or yard spot begins so.',
  query: findQuery,
  response: findView,
});

@Controller('api')
export class JobsController {
  constructor(@Inject(READS) private readonly reads: ReadsOfShop) {}

  @Get('jobs')
  @Reads('jobs')
  async list(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const query = queryOf(jobsQuery, request);
    const read = (after: string | undefined, limit = mostOnPage) =>
      this.reads.jobs(session.shop.id, { ...query, after, limit });
    if (query.format === 'csv') {
      const words = csvWords(session, await this.reads.people(session.shop.id));
      await sendListAsCsv(reply, `jobs-${query.state}`, jobColumns, words, pagesOf(read));
    } else sendText(reply, await read(query.after, query.limit));
  }

  @Get('jobs/:id')
  @Reads('jobs')
  async one(@SignedIn() session: Session, @Param('id') id: string, @Res() reply: HttpReply): Promise<void> {
    const { shop, person } = session;
    const by = { personId: person.id, name: person.name, roles: person.roles };
    const read = await this.reads.job(shop.id, idOf(id), by);
    if (read === null) throw new Problem('row.notFound');
    const blockers = read.blockers && {
      road: read.blockers.road.map((refusal) => refusalOnTheWire(refusal, shop)),
      transporter: read.blockers.transporter.map((refusal) => refusalOnTheWire(refusal, shop)),
    };
    // The text is an object; the blockers become its last member.
    sendText(reply, `${read.text.slice(0, -1)},"blockers":${JSON.stringify(blockers)}}`);
  }

  @Get('find')
  @Reads('find')
  async find(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    sendText(reply, JSON.stringify(await this.reads.find(session.shop.id, queryOf(findQuery, request))));
  }
}
