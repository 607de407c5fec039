import type { Socket } from 'node:net';
import type pg from 'pg';

/**
 * Sends the queries that `send` issues as one write to the socket. In pipeline mode each goes out at once, and each
 * write costs a system call that wakes the other side: it was the largest part of a command's time.
 */
export function inOneWrite<T>(client: pg.ClientBase, send: () => T): T {
  const { stream } = (client as unknown as { readonly connection: { readonly stream: Socket } }).connection;
  stream.cork();
  try {
    return send();
  } finally {
    stream.uncork();
  }
}
