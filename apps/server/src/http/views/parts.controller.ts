import { ordersPage, ordersQuery, partLinesPage, partLinesQuery } from '@holdfast/contract';
import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import type { Session } from '../../auth/sessions.js';
import type { Reads as ReadsOfShop } from '../../read/reads.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { describeRead } from '../openapi.js';
import { Reads, SignedIn } from '../signed-in.js';
import { queryOf, sendText } from './query.js';
import { READS } from './reads-provider.js';

describeRead({
  path: '/api/part-lines',
  summary: 'Part lines of all vehicles, first wanted first, with their due-in dates and the holds that wait for them.',
  query: partLinesQuery,
  response: partLinesPage,
});
describeRead({ path: '/api/orders', summary: 'Parts orders, newest first.', query: ordersQuery, response: ordersPage });

@Controller('api')
export class PartsController {
  constructor(@Inject(READS) private readonly reads: ReadsOfShop) {}

  @Get('part-lines')
  @Reads('parts')
  async partLines(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    sendText(reply, await this.reads.partLines(session.shop.id, queryOf(partLinesQuery, request)));
  }

  @Get('orders')
  @Reads('parts')
  async orders(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    sendText(reply, await this.reads.orders(session.shop.id, queryOf(ordersQuery, request)));
  }
}
