import type {
  BayTimeQuery,
  BayTimeView,
  ChangeLogQuery,
  CustomersQuery,
  DayLoadQuery,
  DayLoadView,
  FiguresQuery,
  FiguresView,
  MyHoursView,
  FindQuery,
  FindView,
  ImportRowsQuery,
  JobsQuery,
  LogReadsQuery,
  OrdersQuery,
  OutstandingQuery,
  PartLinesQuery,
  TimesQuery,
  VehiclesQuery,
} from '@holdfast/contract';
import type { By } from '@holdfast/domain';
import type pg from 'pg';
import { makeLogReader } from '../store/read-log.js';
import { readBayTime } from './bay-time.js';
import { makeReadBoard, type ReadBoard } from './board.js';
import { readChangeLog, readLogReads } from './change-log.js';
import { readCustomer, readCustomers } from './customers.js';
import { readDayLoad } from './day-load.js';
import { readFigures, readMyHours } from './figures.js';
import { find } from './find.js';
import { type JobRead, readJob } from './job.js';
import { type ImportRead, readImport, readImportRows, readImports } from './imports.js';
import { readJobs } from './jobs.js';
import { readOutstanding } from './outstanding.js';
import { readOrders, readPartLines } from './parts.js';
import { makeShopOf, peopleOf } from './shop-of.js';
import { readTimes } from './times.js';
import { readVehicle, readVehicles } from './vehicles.js';

/**
 * What a shop can look at. A string is the JSON text of the answer, which nobody needs to parse on its way out; null: the
 * shop has no such row, or there is no such shop. Who may read what is not asked here but at the door (http/).
 */
export interface Reads {
  readonly board: ReadBoard;
  jobs(shopId: string, query: JobsQuery): Promise<string>;
  job(shopId: string, jobId: string, by: By): Promise<JobRead | null>;
  vehicles(shopId: string, query: VehiclesQuery): Promise<string>;
  vehicle(shopId: string, vehicleId: string): Promise<string | null>;
  customers(shopId: string, query: CustomersQuery): Promise<string>;
  customer(shopId: string, customerId: string): Promise<string | null>;
  people(shopId: string): Promise<ReadonlyMap<string, string>>;
  dayLoad(shopId: string, query: DayLoadQuery): Promise<DayLoadView | null>;
  partLines(shopId: string, query: PartLinesQuery): Promise<string>;
  orders(shopId: string, query: OrdersQuery): Promise<string>;
  outstanding(shopId: string, query: OutstandingQuery): Promise<string | null>;
  bayTime(shopId: string, query: BayTimeQuery): Promise<BayTimeView | null>;
  figures(shopId: string, query: FiguresQuery, by: By): Promise<FiguresView | null>;
  myHours(shopId: string, query: FiguresQuery, by: By): Promise<MyHoursView | null>;
  times(shopId: string, query: TimesQuery, by: By): Promise<string | null>;
  imports(shopId: string): Promise<string>;
  import(shopId: string, importId: string): Promise<ImportRead | null>;
  importRows(shopId: string, importId: string, query: ImportRowsQuery): ReturnType<typeof readImportRows>;
  find(shopId: string, query: FindQuery): Promise<FindView>;
  changeLog(shopId: string, query: ChangeLogQuery): Promise<string>;
  logReads(shopId: string, query: LogReadsQuery): Promise<string>;
}

/** All reads on the pool of the application role. */
export function makeReads(pool: pg.Pool): Reads {
  const shopOf = makeShopOf();
  const log = makeLogReader(pool);
  return {
    board: makeReadBoard(pool, (shopId) => log.head(shopId)),
    jobs: (shopId, query) => readJobs(pool, shopId, query),
    job: (shopId, jobId, by) => readJob(pool, shopOf, shopId, jobId, by),
    vehicles: (shopId, query) => readVehicles(pool, shopId, query),
    vehicle: (shopId, vehicleId) => readVehicle(pool, shopId, vehicleId),
    customers: (shopId, query) => readCustomers(pool, shopId, query),
    people: (shopId) => peopleOf(pool, shopId),
    customer: (shopId, customerId) => readCustomer(pool, shopId, customerId),
    dayLoad: (shopId, query) => readDayLoad(pool, shopOf, shopId, query),
    partLines: (shopId, query) => readPartLines(pool, shopId, query),
    orders: (shopId, query) => readOrders(pool, shopId, query),
    outstanding: (shopId, query) => readOutstanding(pool, shopOf, shopId, query),
    bayTime: (shopId, query) => readBayTime(pool, shopOf, shopId, query),
    figures: (shopId, query, by) => readFigures(pool, shopOf, shopId, query, by),
    myHours: (shopId, query, by) => readMyHours(pool, shopOf, shopId, query, by),
    times: (shopId, query, by) => readTimes(pool, shopOf, shopId, query, by),
    imports: (shopId) => readImports(pool, shopId),
    import: (shopId, importId) => readImport(pool, shopId, importId),
    importRows: (shopId, importId, query) => readImportRows(pool, shopId, importId, query),
    find: (shopId, query) => find(pool, shopId, query),
    changeLog: (shopId, query) => readChangeLog(pool, shopOf, shopId, query),
    logReads: (shopId, query) => readLogReads(pool, shopId, query),
  };
}
