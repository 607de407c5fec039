/** The code that Node or PostgreSQL gave a failure, such as ENOENT or 28P01. Works for errors of any realm. */
export function codeOf(failure: unknown): string | undefined {
  const isCoded = typeof failure === 'object' && failure !== null && 'code' in failure;
  return isCoded && typeof failure.code === 'string' ? failure.code : undefined;
}

/** What a failure says, for the end of a sentence. */
export function reasonOf(failure: unknown): string {
  // Node gathers the failures of several addresses under one without a message.
  if (failure instanceof AggregateError) return failure.errors.map(reasonOf).join(', ');
  const isWorded = typeof failure === 'object' && failure !== null && 'message' in failure;
  return isWorded ? String(failure.message) : String(failure);
}
