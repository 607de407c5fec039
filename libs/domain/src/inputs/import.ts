import type { Turn } from './shapes.js';

/** The good rows of a checked file become rows of the shop, all of them in one change. */
export interface AcceptImport extends Turn {
  importId: string;
}

export interface ImportInputs {
  acceptImport: AcceptImport;
}
