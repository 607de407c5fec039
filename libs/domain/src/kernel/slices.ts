import type { TableName } from '../tables/tables.js';

/** What a command needs in its bag, named by ids of the input; the store makes one statement of it. */
export interface Slices {
  /**
   * The only tables of the visit and vehicle that the rule looks at, besides the job itself; all of them where left out.
   * None, of one visit: its own row alone.
   * Only for rules whose outcome settles nothing: what is not loaded is not settled.
   */
  readonly tables?: readonly TableName[];
  /** The sender's own clocks too: whoever starts work may be on another one. */
  readonly sender?: boolean;
  /** Whole jobs with their vehicle: named directly or through a row that belongs to them. */
  readonly jobs?: readonly string[];
  readonly vehicles?: readonly string[];
  readonly lines?: readonly string[];
  readonly concerns?: readonly string[];
  readonly clocks?: readonly string[];
  readonly holds?: readonly string[];
  readonly partLines?: readonly string[];
  readonly orders?: readonly string[];
  readonly cautions?: readonly string[];
  readonly fixes?: readonly string[];
  readonly followUps?: readonly string[];
  readonly reports?: readonly string[];
  readonly causes?: readonly string[];
  readonly questions?: readonly string[];
  readonly sublets?: readonly string[];
  /** Flags that belong to a visit; one of a bay alone is loaded by itself. */
  readonly flags?: readonly string[];
  readonly contacts?: readonly string[];
  readonly standingGoAheads?: readonly string[];
  readonly calls?: readonly string[];
  /** Who stands in these bays and since when. */
  readonly bays?: readonly string[];
  /** The running and recent clocks and presence of these people. */
  readonly people?: readonly string[];
  /** The visits of the clocks that these people are on: their own rows alone. */
  readonly clockedJobs?: boolean;
  readonly places?: readonly string[];
  /** Rows of presence; they lead to their person. */
  readonly attendances?: readonly string[];
  readonly findings?: readonly string[];
  readonly attempts?: readonly string[];
  readonly photos?: readonly string[];
  readonly readings?: readonly string[];
  readonly contactEntries?: readonly string[];
  /**
   * For what is put right long after: the clocks and the presence of the people, and who stood in the bays, also around
   * these instants (epoch ms), the clocks and stretches of presence that are named, and the visits that are named.
   */
  readonly times?: readonly number[];
  /** Fuel open and hot work anywhere in the shop: those cautions, and the spots that their vehicles have. */
  readonly hotWork?: boolean;
  /** The bays, as `bays`, in which the vehicles of these jobs have or had a spot. */
  readonly baysOfJobs?: boolean;
  readonly customers?: readonly string[];
  /** Every row that names these vehicles or visits of theirs, void ones too (merge). */
  readonly allOfVehicles?: readonly string[];
  /** Every row that names these customers, or vehicles or visits of theirs, void ones too (merge, erasure). */
  readonly allOfCustomers?: readonly string[];
  /** Find a vehicle by folded plate or a customer by folded name (check-in). */
  readonly plateKey?: string | undefined;
  readonly counter?: boolean;
  /** A file put beside the shop's rows, and what of it the boards show. */
  readonly importId?: string;
  /** Rows that the numbered change wrote (take back). */
  readonly change?: number;
}
