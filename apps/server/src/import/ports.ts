/**
 * import/ hides how a file of existing data becomes rows that can be accepted: which column is which, and what stands
 * against each row. It guarantees that every row is good or has its reasons, that two good rows never make one vehicle or
 * customer twice, and that looking at a large file leaves room for the shop's own work. SQL is the business of store/.
 */
import type { ImportField, ImportMapping } from '@holdfast/contract';
import type { ImportKind } from '@holdfast/domain';
import type { Broken, CsvRecord } from '../csv/read-csv.js';

/** Why a row is not taken, as it is kept: words are put to it when it is read. */
export interface RowProblem {
  readonly field: ImportField | null;
  readonly code: string;
  readonly value: string | null;
  /** Numbers and closed words for the sentence: the other row, the limit. */
  readonly facts: Readonly<Record<string, string | number>>;
}

export interface StagedRow {
  /** As a spreadsheet counts: the header is row 1. */
  readonly number: number;
  readonly cells: readonly string[];
  readonly broken: Broken | null;
}

/** What a row would become, ready to be written by one statement for all. */
export interface CheckedRow {
  readonly number: number;
  readonly state: 'good' | 'bad';
  readonly problems: readonly RowProblem[];
  readonly rowId: string | null;
  readonly vehicleId: string | null;
  readonly plateKey: string | null;
  readonly vin: string | null;
  readonly customerId: string | null;
  /** This row makes the customer; others of the file may name the same one. */
  readonly newCustomer: boolean;
  readonly nameKey: string | null;
  /** Digits of the telephone number. */
  readonly phoneKey: string | null;
  readonly contactId: string | null;
  readonly made: Readonly<Record<string, string | number | null>> | null;
}

/** What the shop has already of what some rows name. */
export interface KnownRows {
  /** Vehicles by folded plate and by VIN. */
  readonly plates: ReadonlyMap<string, readonly string[]>;
  readonly vins: ReadonlySet<string>;
  /** Customers by folded name, each with the digits of its contacts' numbers. */
  readonly customers: ReadonlyMap<string, readonly { readonly id: string; readonly phones: readonly string[] }[]>;
  /** Folded titles of open follow-ups, by vehicle. */
  readonly followUps: ReadonlyMap<string, ReadonlySet<string>>;
}

export interface NamedKeys {
  readonly plates: readonly string[];
  readonly vins: readonly string[];
  readonly names: readonly string[];
}

export interface NewImport {
  readonly kind: ImportKind;
  readonly fileName: string;
  readonly encoding: string;
  readonly separator: string;
  readonly header: readonly string[];
  readonly mapping: ImportMapping;
  readonly records: Iterable<CsvRecord>;
}

/** One run of looking at a file's rows. */
export interface CheckRun {
  readonly shopId: string;
  readonly importId: string;
  readonly checkId: string;
  readonly kind: ImportKind;
  readonly header: readonly string[];
  readonly mapping: ImportMapping;
}

export interface ImportStore {
  /** Puts the rows of a file beside the shop's own; null where it has more than are taken. */
  stage(shopId: string, personId: string, file: NewImport): Promise<string | null>;
  /** Begins a run under these columns; `ended`: it was accepted or put aside; null: no such file. */
  startCheck(shopId: string, importId: string, mapping: ImportMapping): Promise<CheckRun | 'ended' | null>;
  rowsAfter(run: CheckRun, number: number, limit: number): Promise<readonly StagedRow[]>;
  known(shopId: string, keys: NamedKeys): Promise<KnownRows>;
  /** Keeps how rows came out; false where a later run, an acceptance or a discard took the place of this one. */
  keep(run: CheckRun, rows: readonly CheckedRow[]): Promise<boolean>;
  /** The run is through, or it failed and somebody must begin another. */
  endCheck(run: CheckRun, outcome: 'checked' | 'staged'): Promise<void>;
  /** Clears the rows away; an accepted file keeps its line. False: there is no such file. */
  discard(shopId: string, importId: string): Promise<boolean>;
}

/** What http/ uses. */
export interface Imports {
  add(shopId: string, personId: string, file: Omit<NewImport, 'mapping'>): Promise<string | null>;
  /** Checks go on behind the answer. */
  map(shopId: string, importId: string, mapping: ImportMapping): Promise<'begun' | 'ended' | null>;
  discard(shopId: string, importId: string): Promise<boolean>;
  /** Ends what runs behind answers; further calls begin nothing. */
  close(): Promise<void>;
}
