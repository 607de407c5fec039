import type { Socket } from 'socket.io';

const mostPackets = 500;
const mostBytes = 1024 * 1024;

interface Sending {
  readonly writeBuffer: readonly { readonly data?: unknown }[];
  readonly transport: { readonly socket?: { readonly bufferedAmount?: number } };
}

/**
 * Whether a client reads so slowly that it should be cut: more than 500 messages or a megabyte wait for it here or in
 * the kernel's way. It comes back by itself and asks for what it missed by number, which costs less than keeping it.
 */
export function isTooSlow(socket: Socket): boolean {
  const { writeBuffer, transport } = socket.conn as unknown as Sending;
  if (writeBuffer.length === 0 && (transport.socket?.bufferedAmount ?? 0) === 0) return false;
  if (writeBuffer.length > mostPackets) return true;
  let bytes = transport.socket?.bufferedAmount ?? 0;
  for (const { data } of writeBuffer) {
    if (typeof data === 'string') bytes += data.length;
    if (bytes > mostBytes) return true;
  }
  return bytes > mostBytes;
}
