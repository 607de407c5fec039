import type { IncomingHttpHeaders } from 'node:http';
import type { Socket } from 'node:net';
import type { TLSSocket } from 'node:tls';

/** How a request reached us, as far as it matters for secrets. */
export interface Connection {
  readonly https: boolean;
  /** From this very machine, to a name or address of it that no other machine has. */
  readonly loopback: boolean;
  /** Browsers keep cookies with `__Host-` here, and nobody on the network reads along. */
  readonly secure: boolean;
  /** Address of the client. */
  readonly address: string;
}

/**
 * Headers of a proxy are believed only when it runs on this machine: what it forwards did not start here, it says
 * whether it was HTTPS, and who asked. The name in `Host` must be a loopback one as well, so that a page whose name
 * was pointed at 127.0.0.1 is not taken for somebody at this machine.
 */
export function connectionOf(request: { readonly headers: IncomingHttpHeaders; readonly socket: Socket }): Connection {
  const { headers, socket } = request;
  const peer = socket.remoteAddress ?? '';
  const isHere = isLoopbackAddress(peer);
  const forwarded = isHere ? last(headers['x-forwarded-for']) : undefined;
  const encrypted = (socket as Partial<TLSSocket>).encrypted === true;
  const https = encrypted || (isHere && last(headers['x-forwarded-proto'])?.toLowerCase() === 'https');
  const loopback = isHere && forwarded === undefined && isLoopbackName(headers.host ?? '');
  return { https, loopback, secure: https || loopback, address: forwarded ?? peer };
}

function isLoopbackAddress(address: string): boolean {
  return address === '::1' || /^(::ffff:)?127\./.test(address);
}

function isLoopbackName(host: string): boolean {
  const name = host.replace(/:\d+$/, '').toLowerCase();
  return name === 'localhost' || name.endsWith('.localhost') || name === '[::1]' || /^127(\.\d{1,3}){3}$/.test(name);
}

function last(header: string | string[] | undefined): string | undefined {
  const text = Array.isArray(header) ? header.join(',') : header;
  return text?.split(',').at(-1)?.trim();
}
