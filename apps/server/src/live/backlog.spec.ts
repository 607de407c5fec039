import { describe, expect, it } from '@jest/globals';
import type { Socket } from 'socket.io';
import { isTooSlow } from './backlog.js';

/** A socket for which so many messages of so many bytes wait, and so many bytes in the kernel's way. */
const socketWith = (messages: number, bytes: number, bufferedAmount = 0) =>
  ({
    conn: {
      writeBuffer: Array.from({ length: messages }, () => ({ data: 'x'.repeat(bytes) })),
      transport: { socket: { bufferedAmount } },
    },
  }) as unknown as Socket;

describe('the backlog of a socket', () => {
  it.each([
    ['nothing waits', socketWith(0, 0), false],
    ['five hundred short messages', socketWith(500, 600), false],
    ['one message more', socketWith(501, 600), true],
    ['a megabyte in long ones', socketWith(35, 30_000), true],
    ['a little less', socketWith(34, 30_000), false],
    ['a megabyte on its way out', socketWith(0, 0, 1_048_577), true],
    ['both together', socketWith(20, 30_000, 500_000), true],
  ])('%s', (_what, socket, isCut) => {
    expect(isTooSlow(socket)).toBe(isCut);
  });
});
