import {
  commandNames,
  contractVersion,
  may,
  mayDo,
  mayRead,
  say,
  signInBody,
  type ReadName,
  type SessionView,
  type SignedInView,
  type SignInPageView,
} from '@holdfast/contract';
import { Controller, Delete, Get, Inject, Post, Req, Res } from '@nestjs/common';
import type { SetUpCode } from '../auth/set-up-code.js';
import type { SignIn } from '../auth/sign-in.js';
import type { Session, Sessions } from '../auth/sessions.js';
import { cookieCleared, cookieWith } from '../auth/session-token.js';
import { DEMO, SESSIONS, SET_UP_CODE, SIGN_IN } from '../providers.js';
import { fieldErrors, requireJson } from './command-request.js';
import { connectionOf } from './connection.js';
import type { Demo } from './demo.controller.js';
import type { HttpReply, HttpRequest } from './http-types.js';
import { localeOf, Problem } from './problem.js';
import { requireSession } from './signed-in.js';

/** Signing in, who one is and what one may do, signing out. */
@Controller('api')
export class SessionController {
  constructor(
    @Inject(SIGN_IN) private readonly signIn: SignIn,
    @Inject(SESSIONS) private readonly sessions: Sessions,
    @Inject(SET_UP_CODE) private readonly setUpCode: SetUpCode,
    @Inject(DEMO) private readonly demo: Demo | null,
  ) {}

  @Post('session')
  async begin(@Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    requireJson(request.headers);
    const connection = connectionOf(request);
    if (!connection.secure) throw new Problem('session.needsHttps');
    const body = signInBody.safeParse(request.body);
    if (!body.success) throw new Problem('body.invalid', { errors: fieldErrors(body.error) });
    const result = await this.signIn({ ...body.data, address: connection.address });
    switch (result.kind) {
      case 'notMatching':
        throw new Problem('session.notMatching');
      case 'wait':
        throw new Problem('session.wait', {
          values: { seconds: result.seconds },
          headers: { 'retry-after': String(result.seconds) },
        });
      case 'signedIn': {
        const view: SignedInView = { ...sessionView(result.session), token: result.token };
        reply.header('set-cookie', cookieWith(result.token, result.maxAgeSeconds)).header('cache-control', 'no-store');
        reply.code(200).send(view);
      }
    }
  }

  @Get('session')
  async current(@Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const session = await requireSession(this.sessions, request);
    reply.header('cache-control', 'no-store').send(sessionView(session));
  }

  @Delete('session')
  async end(@Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const session = await requireSession(this.sessions, request);
    await this.sessions.end(session);
    reply.header('set-cookie', cookieCleared).code(204).send();
  }

  @Get('sign-in-page')
  async page(@Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    const { secure } = connectionOf(request);
    const view: SignInPageView = {
      demo: this.demo !== null && this.demo.isToldTo(connectionOf(request)),
      setUp: !this.setUpCode.ownClock && (await this.setUpCode.isAwaited()),
      secure,
      way: secure ? null : say(localeOf(request), 'problem.session.needsHttps'),
      contract: contractVersion,
    };
    reply.header('cache-control', 'no-store').send(view);
  }
}

export function sessionView({ shop, person }: Session): SessionView {
  const { roles } = person;
  return {
    shop,
    person,
    may: {
      commands: commandNames.filter((name) => may(roles, mayDo[name])),
      reads: (Object.keys(mayRead) as ReadName[]).filter((name) => may(roles, mayRead[name])),
    },
    contract: contractVersion,
  };
}
