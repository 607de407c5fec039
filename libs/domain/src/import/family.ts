/**
 * import/ hides how what a shop kept elsewhere becomes its own. It guarantees that nothing of a file is in the shop before
 * somebody accepted it, and that then exactly its good rows are, in one change.
 */
import type { Family } from '../kernel/family.js';
import { acceptImport } from './accept-import.js';

export const importFamily: Family<'acceptImport'> = { acceptImport };
