import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import type { DatabaseLog } from './cannot-start.js';

/**
 * Called with the payload of each notification, and without one after every (re)connection: what was sent while nobody
 * listened is lost, so the reader must then look at the table, which is the truth.
 */
export type WakeUp = (payload: string | undefined) => void;

export interface Listening {
  close(): Promise<void>;
}

const firstPauseMs = 50;
const longestPauseMs = 5_000;

/**
 * Listens on `channel` with a connection of its own (a pool in front of PostgreSQL must pass it through whole). A lost
 * connection is made again, however long that takes. Resolves when the first LISTEN stands.
 */
export async function listenOn(url: string, channel: string, wakeUp: WakeUp, log: DatabaseLog): Promise<Listening> {
  let closed = false;
  let current: pg.Client | undefined;

  const connect = async (): Promise<void> => {
    const client = new pg.Client({
      connectionString: url,
      keepAlive: true,
      application_name: `holdfast ${process.pid} listen`,
    });
    // Without this handler a killed connection would end the whole process.
    client.on('error', () => undefined);
    client.on('notification', ({ payload }) => wakeUp(payload));
    try {
      await client.connect();
      await client.query(`listen ${client.escapeIdentifier(channel)}`);
    } catch (failure) {
      await client.end().catch(() => undefined);
      throw failure;
    }
    current = client;
    client.once('end', () => {
      if (!closed) void reconnect();
    });
    wakeUp(undefined);
  };

  const reconnect = async (): Promise<void> => {
    log.warn('The connection that listens for changes was lost; it is made again.');
    for (let pauseMs = firstPauseMs; !closed; pauseMs = Math.min(pauseMs * 2, longestPauseMs)) {
      try {
        await connect();
        return;
      } catch {
        await pause(pauseMs);
      }
    }
  };

  await connect();
  return {
    async close() {
      closed = true;
      await current?.end().catch(() => undefined);
    },
  };
}
