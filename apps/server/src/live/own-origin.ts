import type { IncomingMessage } from 'node:http';
import { comesWithCookie, tokenOf } from '../auth/session-token.js';
import { connectionOf } from '../http/connection.js';

/**
 * Whether a socket may be opened by whoever asks. Browsers open sockets to any site and send its cookies along, and no
 * CORS stands in the way: so the page must be our own, by scheme, host and port. What comes from no browser says no
 * origin and must bring its token itself; a cookie without an origin is nothing that either of them sends.
 */
export function isOwnOrigin(request: IncomingMessage): boolean {
  const { origin, host } = request.headers;
  if (origin === undefined) return tokenOf(request.headers) === null || !comesWithCookie(request.headers);
  const scheme = connectionOf(request).https ? 'https' : 'http';
  return host !== undefined && origin.toLowerCase() === `${scheme}://${host.toLowerCase()}`;
}
