/**
 * The database cannot be opened as things stand. The message is one or more whole sentences for the person who started
 * the server: what is the matter and what to do. It carries no secret, so it may be printed as it is.
 */
export class CannotStart extends Error {
  override readonly name = 'CannotStart';
}

/** Where the database part tells what it does while it starts, stops or recovers; sentences, without secrets. */
export interface DatabaseLog {
  info(sentence: string): void;
  warn(sentence: string): void;
}
