/** Clients that only count: they speak the socket protocol by hand and parse nothing but the number of a change. */
import { type RawData, WebSocket } from 'ws';

const textOf = (data: RawData): string =>
  Buffer.isBuffer(data) ? data.toString() : Buffer.concat([data].flat() as Buffer[]).toString();

export interface ThinClients {
  /** Waits until every client has the change with this number; gives the moment of the last, by performance.now(). */
  lastReceipt(seq: number): Promise<number>;
  close(): void;
}

interface Count {
  received: number;
  lastAt: number;
  done: (() => void) | null;
}

function counting(size: number) {
  const counts = new Map<number, Count>();
  const of = (seq: number): Count => {
    let count = counts.get(seq);
    if (!count) counts.set(seq, (count = { received: 0, lastAt: 0, done: null }));
    return count;
  };
  return {
    take(text: string) {
      const at = performance.now();
      const seq = /"seq":(\d+)/.exec(text)?.[1];
      if (seq === undefined) return;
      const count = of(Number(seq));
      count.received += 1;
      count.lastAt = at;
      if (count.received === size) count.done?.();
    },
    wait(seq: number): Promise<number> {
      const count = of(seq);
      const finished = () => {
        counts.delete(seq);
        return count.lastAt;
      };
      if (count.received >= size) return Promise.resolve(finished());
      return new Promise((resolve, reject) => {
        const late = setTimeout(
          () => reject(new Error(`change ${String(seq)} reached ${String(count.received)} of ${String(size)}`)),
          10_000,
        );
        count.done = () => {
          clearTimeout(late);
          resolve(finished());
        };
      });
    },
  };
}

/** Clients of a bare `ws` server that sends the change's text as it is. */
export async function openBare(url: string, size: number): Promise<ThinClients> {
  const counts = counting(size);
  const sockets: WebSocket[] = [];
  for (let at = 0; at < size; at += 1) {
    const socket = new WebSocket(url, { perMessageDeflate: false });
    socket.on('message', (data) => counts.take(textOf(data)));
    await new Promise<void>((resolve, reject) => {
      socket.once('open', () => resolve());
      socket.once('error', reject);
    });
    sockets.push(socket);
  }
  return { lastReceipt: (seq) => counts.wait(seq), close: () => sockets.forEach((socket) => socket.terminate()) };
}

export interface LiveTarget {
  readonly url: string;
  /** Sessions to spread the sockets over. */
  readonly tokens: readonly string[];
  readonly resume: { readonly epoch: string; readonly after: number; readonly contract: number };
}

/** Clients of the live gateway: handshake, resume, then counting. */
export async function openLive(target: LiveTarget, size: number): Promise<ThinClients> {
  const counts = counting(size);
  const sockets: WebSocket[] = [];
  for (let at = 0; at < size; at += 1) {
    const token = target.tokens[at % target.tokens.length] ?? '';
    sockets.push(await openOne(target, token, (text) => counts.take(text)));
  }
  return { lastReceipt: (seq) => counts.wait(seq), close: () => sockets.forEach((socket) => socket.terminate()) };
}

function openOne(target: LiveTarget, token: string, take: (text: string) => void): Promise<WebSocket> {
  const address = `${target.url.replace('http', 'ws')}/live/?EIO=4&transport=websocket`;
  const socket = new WebSocket(address, { perMessageDeflate: false, headers: { authorization: `Bearer ${token}` } });
  return new Promise((resolve, reject) => {
    socket.once('error', reject);
    socket.once('close', (code) => reject(new Error(`closed ${String(code)}`)));
    socket.on('message', (data) => {
      const text = textOf(data);
      if (text.startsWith('0')) socket.send('40');
      else if (text === '2') socket.send('3');
      else if (text.startsWith('40')) {
        socket.send(`42["resume",${JSON.stringify(target.resume)}]`);
        socket.removeAllListeners('close');
        resolve(socket);
      } else if (text.startsWith('42["change"')) take(text);
    });
  });
}
