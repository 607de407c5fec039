import { customerView, dayLoadQuery, dayLoadView } from '@holdfast/contract';
import { Controller, Get, Inject, Param, Req, Res } from '@nestjs/common';
import type { Session } from '../../auth/sessions.js';
import type { Reads as ReadsOfShop } from '../../read/reads.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { describeRead } from '../openapi.js';
import { Reads, SignedIn } from '../signed-in.js';
import { idOf, queryOf, sendText } from './query.js';
import { READS } from './reads-provider.js';

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
