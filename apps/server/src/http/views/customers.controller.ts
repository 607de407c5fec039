import { customersPage, customersQuery, customerView, dayLoadQuery, dayLoadView, mostOnPage } from '@holdfast/contract';
import { Controller, Get, Inject, Param, Req, Res } from '@nestjs/common';
import type { Session } from '../../auth/sessions.js';
import type { Reads as ReadsOfShop } from '../../read/reads.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { describeRead } from '../openapi.js';
import { Reads, SignedIn } from '../signed-in.js';
import { customerColumns } from './csv-columns.js';
import { csvWords, pagesOf, sendListAsCsv } from './csv-list.js';
import { idOf, queryOf, sendText } from './query.js';
import { READS } from './reads-provider.js';

describeRead({ path: '/api/customers', summary: 'Customers by name.', query: customersQuery, response: customersPage });
describeRead({
  path: '/api/customers/{id}',
  summary: 'A customer with contacts, standing go-aheads, vehicles and the last visits.',
  response: customerView,
  problems: ['row.notFound'],
});
describeRead({
  path: '/api/day-load',
  summary: 'Book minutes with the go-ahead against the minutes of people, for each of the coming days.',
  query: dayLoadQuery,
  response: dayLoadView,
});

/** What the desk looks at while the telephone rings. */
@Controller('api')
export class CustomersController {
  constructor(@Inject(READS) private readonly reads: ReadsOfShop) {}

  @Get('customers')
  @Reads('customers')
  async list(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const query = queryOf(customersQuery, request);
    const read = (after: string | undefined, limit = mostOnPage) =>
      this.reads.customers(session.shop.id, { ...query, after, limit });
    if (query.format === 'csv') {
      const words = csvWords(session, await this.reads.people(session.shop.id));
      await sendListAsCsv(reply, 'customers', customerColumns, words, pagesOf(read));
    } else sendText(reply, await read(query.after, query.limit));
  }

  @Get('customers/:id')
  @Reads('customers')
  async one(@SignedIn() session: Session, @Param('id') id: string, @Res() reply: HttpReply): Promise<void> {
    sendText(reply, await this.reads.customer(session.shop.id, idOf(id)));
  }

  @Get('day-load')
  @Reads('dayLoad')
  async dayLoad(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const view = await this.reads.dayLoad(session.shop.id, queryOf(dayLoadQuery, request));
    sendText(reply, view === null ? null : JSON.stringify(view));
  }
}
