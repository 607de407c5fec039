/**
 * Stock: what a bin holds by its movements, and what should be ordered of it and why.
 *
 * Hidden here: the laws of demand and the formulas of safety stock. Guaranteed: a count is the sum of movements and never
 * below zero; a proposal carries every figure that led to it, and nothing here places an order. It knows no rows of the
 * domain.
 */
export { normalQuantile, poissonLoss, poissonQuantile, poissonShare } from './distributions.js';
export { counting, movementKinds, taking, takingTheLast, tallyOf } from './movements.js';
export type { Movement, MovementFault, MovementKind, Step, Tally } from './movements.js';
export { proposalFor } from './proposal.js';
export type { Method, Proposal, ProposalOptions, Reason, StockItem } from './proposal.js';
export { normalReorderPoint, poissonReorderPoint, spreadOf } from './reorder.js';
export type { Demand, LeadTime, ReorderPoint } from './reorder.js';
export { usageOf } from './usage.js';
export type { Usage } from './usage.js';
