/** Name under which Nest hands out the reads of a shop. */
export const READS = Symbol('Reads');
