/**
 * lift/ hides how lifts and bays go out of use and come back, and how inspections are counted. It guarantees the half of
 * rule 4 that is about the lift itself: a failed lift is out of use until an inspection has passed, an overdue one is used
 * by one decision with an end, and where a caution speaks of lifting points somebody who may has named those that are
 * used. What a bay takes on a day is asked of it by place/. The program never says that a lift is safe.
 */
import type { Family } from '../kernel/family.js';
import { allowOverdueLift, recordLiftInspection } from './inspections.js';
import { nameLiftingPoints } from './lifting-points.js';
import { putBackInUse, takeOutOfUse } from './outages.js';

export const liftFamily: Family<
  'recordLiftInspection' | 'allowOverdueLift' | 'takeOutOfUse' | 'putBackInUse' | 'nameLiftingPoints'
> = { recordLiftInspection, allowOverdueLift, takeOutOfUse, putBackInUse, nameLiftingPoints };
