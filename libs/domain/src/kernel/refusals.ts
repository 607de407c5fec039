/** Refusals that any command may meet. */
export const anyRefusals = [
  /** The row is not there, or belongs to another shop. Facts: table, id. */
  'row.notFound',
  /** The turn was built on an older version of its row. Facts: table, id, version (sent), current. */
  'row.stale',
  /** A turn without version and without the key of an own earlier command. Facts: table. */
  'row.versionMissing',
  /** None of the person's roles may do this. Facts: command. */
  'role.mayNot',
  /** The time said lies after the shop's own time. Facts: at, now (ISO). */
  'time.inFuture',
] as const;
