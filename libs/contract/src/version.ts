/**
 * Raised with every change of what clients send or are sent. The server takes commands of this version and of the one
 * before it, so that what waits in an outbox is not lost by an update; contract.spec.ts notices a change without it.
 */
export const contractVersion = 2;

/** Whether a client of that version may go on, or has to load itself anew. */
export function acceptsContract(version: number): boolean {
  return version === contractVersion || version === contractVersion - 1;
}
