import {
  mostOnPage,
  type OrdersPage,
  ordersPage,
  ordersQuery,
  partLinesPage,
  partLinesQuery,
} from '@holdfast/contract';
import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import type { Session } from '../../auth/sessions.js';
import type { Reads as ReadsOfShop } from '../../read/reads.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { describeRead } from '../openapi.js';
import { Reads, SignedIn } from '../signed-in.js';
import { orderColumns, orderedParts, partLineColumns } from './csv-columns.js';
import { csvWords, pagesOf, sendListAsCsv } from './csv-list.js';
import { queryOf, sendText } from './query.js';
import { READS } from './reads-provider.js';

describeRead({
  path: '/api/part-lines',
  summary: 'Part lines of all vehicles, first wanted first, with their due-in dates and the holds that wait for them.',
  query: partLinesQuery,
  response: partLinesPage,
});
describeRead({ path: '/api/orders', summary: 'Parts orders, newest first.', query: ordersQuery, response: ordersPage });

type Order = OrdersPage['items'][number];

@Controller('api')
export class PartsController {
  constructor(@Inject(READS) private readonly reads: ReadsOfShop) {}

  @Get('part-lines')
  @Reads('parts')
  async partLines(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const query = queryOf(partLinesQuery, request);
    const read = (after: string | undefined, limit = mostOnPage) =>
      this.reads.partLines(session.shop.id, { ...query, after, limit });
    if (query.format === 'csv') {
      const words = csvWords(session, await this.reads.people(session.shop.id));
      await sendListAsCsv(reply, `part-lines-${query.state}`, partLineColumns, words, pagesOf(read));
    } else sendText(reply, await read(query.after, query.limit));
  }

  @Get('orders')
  @Reads('parts')
  async orders(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const query = queryOf(ordersQuery, request);
    const read = (after: string | undefined, limit = mostOnPage) =>
      this.reads.orders(session.shop.id, { ...query, after, limit });
    if (query.format === 'csv') {
      const words = csvWords(session, await this.reads.people(session.shop.id));
      const orders = pagesOf<Order>(read);
      await sendListAsCsv(reply, 'orders', orderColumns, words, async (after) => {
        const { items, next } = await orders(after);
        return { items: items.flatMap(orderedParts), next };
      });
    } else sendText(reply, await read(query.after, query.limit));
  }
}
