import { Module } from '@nestjs/common';
import type { Database } from '../../database/pools.js';
import { LiveModule } from '../../live/live.module.js';
import { DATABASE } from '../../providers.js';
import { makeReads } from '../../read/reads.js';
import { ImportsController } from '../imports.controller.js';
import { AccountController } from './account.controller.js';
import { BoardController } from './board.controller.js';
import { ChangeLogController } from './change-log.controller.js';
import { CustomersController } from './customers.controller.js';
import { JobsController } from './jobs.controller.js';
import { PartsController } from './parts.controller.js';
import { READS } from './reads-provider.js';
import { VehiclesController } from './vehicles.controller.js';

/** All reads, on the parts that start.ts made. */
@Module({
  imports: [LiveModule],
  providers: [{ provide: READS, inject: [DATABASE], useFactory: (database: Database) => makeReads(database.app) }],
  controllers: [
    BoardController,
    JobsController,
    VehiclesController,
    CustomersController,
    PartsController,
    AccountController,
    ChangeLogController,
    ImportsController,
  ],
})
export class ViewsModule {}
