import {
  mostOnPage,
  outstandingPage,
  outstandingQuery,
  vehiclesPage,
  vehiclesQuery,
  vehicleView,
} from '@holdfast/contract';
import { Controller, Get, Inject, Param, Req, Res } from '@nestjs/common';
import type { Session } from '../../auth/sessions.js';
import type { Reads as ReadsOfShop } from '../../read/reads.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { describeRead } from '../openapi.js';
import { Reads, SignedIn } from '../signed-in.js';
import { outstandingColumns, vehicleColumns } from './csv-columns.js';
import { csvWords, pagesOf, sendListAsCsv } from './csv-list.js';
import { idOf, queryOf, sendText } from './query.js';
import { READS } from './reads-provider.js';

describeRead({ path: '/api/vehicles', summary: 'Vehicles by plate.', query: vehiclesQuery, response: vehiclesPage });
describeRead({
  path: '/api/vehicles/{id}',
  summary: 'A vehicle with its visits, findings, temporary fixes, follow-ups and open parts.',
  response: vehicleView,
  problems: ['row.notFound'],
});
describeRead({
  path: '/api/outstanding',
  summary: 'Temporary fixes still on and follow-ups open, by the day of the first limit.',
  query: outstandingQuery,
  response: outstandingPage,
});

@Controller('api')
export class VehiclesController {
  constructor(@Inject(READS) private readonly reads: ReadsOfShop) {}

  @Get('vehicles')
  @Reads('vehicles')
  async list(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const query = queryOf(vehiclesQuery, request);
    const read = (after: string | undefined, limit = mostOnPage) =>
      this.reads.vehicles(session.shop.id, { ...query, after, limit });
    if (query.format === 'csv') {
      const words = csvWords(session, await this.reads.people(session.shop.id));
      await sendListAsCsv(reply, 'vehicles', vehicleColumns, words, pagesOf(read));
    } else sendText(reply, await read(query.after, query.limit));
  }

  @Get('vehicles/:id')
  @Reads('vehicles')
  async one(@SignedIn() session: Session, @Param('id') id: string, @Res() reply: HttpReply): Promise<void> {
    sendText(reply, await this.reads.vehicle(session.shop.id, idOf(id)));
  }

  @Get('outstanding')
  @Reads('outstanding')
  async outstanding(@SignedIn() session: Session, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const query = queryOf(outstandingQuery, request);
    const read = (after: string | undefined, limit = mostOnPage) =>
      this.reads.outstanding(session.shop.id, { ...query, after, limit });
    if (query.format === 'csv') {
      const words = csvWords(session, await this.reads.people(session.shop.id));
      await sendListAsCsv(reply, 'outstanding', outstandingColumns, words, pagesOf(read));
    } else sendText(reply, await read(query.after, query.limit));
  }
}
