/**
 * The live board: which rows are on it, what a change does to it, how a client keeps it, and what the screens read off
 * it. Hidden here: the edge of the board and its wire form. Guaranteed: snapshot(N) with changes N+1…M gives
 * snapshot(M), for each audience (tests/live).
 */
export { apply, type Board, type BoardChange, type BoardTables, fromSnapshot, prune, type Snapshot } from './board.js';
export { type BoardDifference, differences } from './difference.js';
export { type Audience, boardTables, jobIsOnBoard, keptAfterEndMs, shownTo, visible } from './visible.js';
export { type BoardRow, decodeRow, encodeRow, wireColumns, type WireRow } from './wire.js';
export { calendarOfBoard, rowsOf, shopOf, zoneOfBoard } from './selectors/rows-of.js';
export { accountOfSpot, type Spot, spotsInOrder } from './selectors/spots.js';
export { type Forgotten, forgottenClocks, forgottenPresence } from './selectors/forgotten-clocks.js';
export { type ReadyOn, readyOn, type RestsOn } from './selectors/ready-on.js';
export {
  expectedVisits,
  openVisits,
  type RunningTotal,
  runningTotal,
  type Visit,
  visitOf,
  type VisitState,
} from './selectors/visits.js';
export { wouldRefuse } from './selectors/dry-run.js';
