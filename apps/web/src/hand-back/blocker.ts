import type { JobView } from '@holdfast/contract';

/** One reason against a hand-back, with its sentence and the row where the way out is. */
export type Blocker = NonNullable<JobView['blockers']>['road'][number];
