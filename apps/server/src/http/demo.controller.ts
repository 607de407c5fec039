import { clockBody, type DemoView } from '@holdfast/contract';
import { Controller, Get, Inject, Put, Req, Res } from '@nestjs/common';
import type { SetUpCode } from '../auth/set-up-code.js';
import type { Sessions } from '../auth/sessions.js';
import { DEMO, SESSIONS, SET_OWN_CLOCK, SET_UP_CODE, type SetOwnClock } from '../providers.js';
import { fieldErrors, requireJson } from './command-request.js';
import { connectionOf, type Connection } from './connection.js';
import type { HttpReply, HttpRequest } from './http-types.js';
import { Problem } from './problem.js';
import { requireSession } from './signed-in.js';

/** The demo as HTTP sees it; a server without one has null in its place. */
export interface Demo {
  /** Shop and people with their passwords, which are no secrets. */
  signIns(): Omit<DemoView, 'setUpCode'>;
  /** The demo's passwords are told on loopback only, unless DEMO=on was written out. */
  isToldTo(connection: Connection): boolean;
}

@Controller('api/demo')
export class DemoController {
  constructor(
    @Inject(DEMO) private readonly demo: Demo | null,
    @Inject(SET_UP_CODE) private readonly setUpCode: SetUpCode,
    @Inject(SESSIONS) private readonly sessions: Sessions,
    @Inject(SET_OWN_CLOCK) private readonly setOwnClock: SetOwnClock,
  ) {}

  @Get()
  signIns(@Req() request: HttpRequest, @Res() reply: HttpReply): void {
    if (this.demo?.isToldTo(connectionOf(request)) !== true) throw new Problem('demo.absent');
    const view: DemoView = { ...this.demo.signIns(), setUpCode: this.setUpCode.text ?? '' };
    reply.header('cache-control', 'no-store').send(view);
  }

  /** Only for a shop on a clock of its own, by its owner or a manager. */
  @Put('clock')
  async setClock(@Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    if (this.demo === null) throw new Problem('demo.absent');
    requireJson(request.headers);
    const session = await requireSession(this.sessions, request);
    if (!session.person.roles.some((role) => role === 'owner' || role === 'manager')) throw new Problem('role.mayNot');
    const body = clockBody.safeParse(request.body);
    if (!body.success) throw new Problem('body.invalid', { errors: fieldErrors(body.error) });
    const { at, rate } = body.data;
    const result = await this.setOwnClock(session.shop.id, { at: at === undefined ? null : Date.parse(at), rate });
    if (result.kind === 'real') throw new Problem('clock.real');
    if (result.kind === 'behind') throw new Problem('clock.behind');
    reply.send({ now: new Date(result.now).toISOString(), rate });
  }
}
