import { may, mayRead, type ReadName } from '@holdfast/contract';
import {
  applyDecorators,
  createParamDecorator,
  Inject,
  Injectable,
  SetMetadata,
  UseGuards,
  type CanActivate,
  type ExecutionContext,
} from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { Session, Sessions } from '../auth/sessions.js';
import { tokenOf } from '../auth/session-token.js';
import { SESSIONS } from '../providers.js';
import type { HttpRequest } from './http-types.js';
import { Problem } from './problem.js';

/** Set by whoever looked the session up, for handlers and for the locale of a problem. */
const sessionKey = Symbol('session');
type MaybeSignedIn = HttpRequest & { [sessionKey]?: Session };

export function sessionOf(request: HttpRequest): Session | null {
  return (request as MaybeSignedIn)[sessionKey] ?? null;
}

/** The session of a request, or the problem that nobody is signed in. */
export async function requireSession(sessions: Sessions, request: HttpRequest): Promise<Session> {
  const token = tokenOf(request.headers);
  const session = token === null ? null : await sessions.of(token);
  if (session === null) throw new Problem('session.missing');
  (request as MaybeSignedIn)[sessionKey] = session;
  return session;
}

const readKey = 'holdfast:read';

@Injectable()
export class ReadGuard implements CanActivate {
  constructor(
    @Inject(SESSIONS) private readonly sessions: Sessions,
    private readonly reflector: Reflector,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const session = await requireSession(this.sessions, context.switchToHttp().getRequest<HttpRequest>());
    const read = this.reflector.get<ReadName | undefined>(readKey, context.getHandler());
    if (read !== undefined && !may(session.person.roles, mayRead[read])) throw new Problem('read.mayNot');
    return true;
  }
}

/** On a handler: only for who is signed in and may read this, by the table of roles in the contract. */
export function Reads(read: ReadName): MethodDecorator {
  return applyDecorators(SetMetadata(readKey, read), UseGuards(ReadGuard));
}

/** The session as a parameter of a handler under `Reads`. */
export const SignedIn = createParamDecorator((_data: unknown, context: ExecutionContext): Session => {
  const session = sessionOf(context.switchToHttp().getRequest<HttpRequest>());
  if (session === null) throw new Problem('session.missing');
  return session;
});
