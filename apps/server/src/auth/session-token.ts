import { createHash, randomBytes } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';

/** Browsers give and take a cookie of this name over HTTPS, and on loopback, only; no other host can set it for us. */
export const sessionCookie = '__Host-holdfast';

const tokenShape = /^([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12})\.[\w-]{43}$/;

/** `<shop>.<32 random bytes>`: it says in which shop to look, and nothing about who it is. */
export function newToken(shopId: string): string {
  return `${shopId}.${randomBytes(32).toString('base64url')}`;
}

/** The shop that a token belongs to, or null where it is none. */
export function shopOfToken(token: string): string | null {
  return tokenShape.exec(token)?.[1] ?? null;
}

/** What is stored: 256 random bits need no slow hash. */
export function hashOfToken(token: string): string {
  return createHash('sha256').update(token).digest('base64url');
}

/** The token of a request or a socket's handshake: `Authorization: Bearer`, else the cookie; null where there is none. */
export function tokenOf(headers: IncomingHttpHeaders): string | null {
  const { authorization, cookie } = headers;
  if (authorization !== undefined) return /^bearer +(\S+)$/i.exec(authorization)?.[1] ?? null;
  if (cookie === undefined) return null;
  for (const pair of cookie.split(';')) {
    const [name, value] = pair.split('=', 2);
    if (name?.trim() === sessionCookie) return value?.trim() ?? null;
  }
  return null;
}

/** Whether the request is one that a page of another site could have sent with our cookie. */
export function comesWithCookie(headers: IncomingHttpHeaders): boolean {
  return headers.authorization === undefined;
}

export function cookieWith(token: string, maxAgeSeconds: number): string {
  return `${sessionCookie}=${token}; Path=/; Secure; HttpOnly; SameSite=Lax; Max-Age=${maxAgeSeconds}`;
}

export const cookieCleared = `${sessionCookie}=; Path=/; Secure; HttpOnly; SameSite=Lax; Max-Age=0`;
