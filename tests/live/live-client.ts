import { contractVersion, liveEvents, livePath, type BeatMessage, type ChangeMessage } from '@holdfast/contract';
import { io, type Socket } from 'socket.io-client';

/** A client of the live channel that writes down what it hears. */
export interface LiveClient {
  readonly socket: Socket;
  /** Numbers of the changes, as they came. */
  readonly numbers: number[];
  readonly changes: ChangeMessage[];
  readonly beats: BeatMessage[];
  readonly words: string[];
  /** Says what it has, and waits for the first beat or word that answers it. */
  resume(have: { epoch: string; after: number; contract?: number }): Promise<string>;
  /** Resolves when the condition holds, fails after five seconds. */
  until(condition: () => boolean): Promise<void>;
  close(): void;
}

export interface LiveOptions {
  readonly token?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

export function liveSocket(url: string, { token, headers }: LiveOptions): Socket {
  return io(url, {
    path: livePath,
    transports: ['websocket'],
    forceNew: true,
    reconnection: false,
    ...(token === undefined ? {} : { auth: { token } }),
    ...(headers === undefined ? {} : { extraHeaders: { ...headers } }),
  });
}

/** What a refused socket is told. */
export function refusalOf(socket: Socket): Promise<Error & { data?: unknown }> {
  return new Promise((resolve, reject) => {
    socket.once('connect_error', (failure) => {
      socket.close();
      resolve(failure);
    });
    socket.once('connect', () => reject(new Error('The socket was let in.')));
  });
}

export async function openLive(url: string, options: LiveOptions): Promise<LiveClient> {
  const socket = liveSocket(url, options);
  const client: LiveClient = {
    socket,
    numbers: [],
    changes: [],
    beats: [],
    words: [],
    async resume({ epoch, after, contract = contractVersion }) {
      const answered = new Promise<string>((resolve) => {
        for (const word of [liveEvents.beat, liveEvents.snapshotNeeded, liveEvents.reloadNeeded]) {
          socket.once(word, () => resolve(word));
        }
      });
      socket.emit(liveEvents.resume, { epoch, after, contract });
      return answered;
    },
    async until(condition) {
      const end = Date.now() + 5_000;
      while (!condition()) {
        if (Date.now() > end)
          throw new Error(`It did not come: ${JSON.stringify({ numbers: client.numbers, words: client.words })}`);
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
    },
    close: () => {
      socket.close();
    },
  };
  socket.on(liveEvents.change, (change: ChangeMessage) => {
    client.changes.push(change);
    client.numbers.push(change.seq);
  });
  socket.on(liveEvents.beat, (beat: BeatMessage) => client.beats.push(beat));
  for (const word of [liveEvents.snapshotNeeded, liveEvents.reloadNeeded])
    socket.on(word, () => client.words.push(word));
  await new Promise<void>((resolve, reject) => {
    socket.once('connect', resolve);
    socket.once('connect_error', reject);
  });
  return client;
}
