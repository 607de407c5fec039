import { isCommandName, may, mayDo, type ProblemCode } from '@holdfast/contract';
import type { CommandName, Refusal } from '@holdfast/domain';
import { Controller, Inject, Param, Post, Req, Res } from '@nestjs/common';
import { isPersonCommand, type CheckPerson } from '../auth/person-passwords.js';
import type { Session, Sessions } from '../auth/sessions.js';
import type { SetUpShop } from '../auth/set-up-shop.js';
import { cookieWith } from '../auth/session-token.js';
import type { Answer, RunCommand, Sender, Sent } from '../engine/ports.js';
import type { CommandOutcome, Metrics } from '../metrics.js';
import { CHECK_PERSON, METRICS, RUN_COMMAND, SESSIONS, SET_UP_SHOP } from '../providers.js';
import { commandHeaders, readCommand, requireJson } from './command-request.js';
import { connectionOf } from './connection.js';
import { fieldProblem } from './field-problem.js';
import type { HttpReply, HttpRequest } from './http-types.js';
import { localeOf, Problem, sendProblem } from './problem.js';
import { refusalOnTheWire, type ShopWords } from './refusal-sentences.js';
import { requireSession } from './signed-in.js';

const byRefusal: Readonly<Record<string, ProblemCode>> = {
  'role.mayNot': 'role.mayNot',
  'row.notFound': 'row.notFound',
  'row.stale': 'row.stale',
  'row.versionMissing': 'row.versionMissing',
};

/**
 * The one door for writing. Hot: no pipe, no interceptor and no serialiser of Nest's lies on it, and the answer's text
 * goes out as the engine wrote it.
 */
@Controller('api/commands')
export class CommandsController {
  constructor(
    @Inject(SESSIONS) private readonly sessions: Sessions,
    @Inject(RUN_COMMAND) private readonly runCommand: RunCommand,
    @Inject(CHECK_PERSON) private readonly checkPerson: CheckPerson,
    @Inject(SET_UP_SHOP) private readonly setUpShop: SetUpShop,
    @Inject(METRICS) private readonly metrics: Metrics,
  ) {}

  @Post(':name')
  async run(@Param('name') name: string, @Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    if (!isCommandName(name)) throw new Problem('command.unknown');
    const began = performance.now();
    let outcome: CommandOutcome = 'failed';
    try {
      outcome = name === 'setUpShop' ? await this.setUp(request, reply) : await this.carryOut(name, request, reply);
    } catch (failure) {
      if (failure instanceof Problem) outcome = 'invalid';
      throw failure;
    } finally {
      this.metrics.command(name, outcome, (performance.now() - began) / 1000);
    }
  }

  private async carryOut(name: CommandName, request: HttpRequest, reply: HttpReply): Promise<CommandOutcome> {
    requireJson(request.headers);
    const session = await requireSession(this.sessions, request);
    const headers = commandHeaders(request.headers);
    const sent = readCommand(name, request.body, headers);
    const sender = senderOf(session, headers.device);
    const answer = isPersonCommand(name)
      ? await this.withPassword(session, sender, sent as Sent<'addPerson' | 'changePerson'>)
      : await this.runCommand(sender, sent);
    return sendAnswer(request, reply, answer, session.shop);
  }

  /** For who may not anyway, no password is hashed: the engine says no. */
  private async withPassword(
    session: Session,
    sender: Sender,
    sent: Sent<'addPerson' | 'changePerson'>,
  ): Promise<Answer> {
    if (!may(session.person.roles, mayDo[sent.name])) {
      const { password: _leftOut, ...input } = sent.input;
      return this.runCommand(sender, { ...sent, input });
    }
    const checked = await this.checkPerson(session, sent.input);
    if (!checked.ok) throw fieldProblem([{ pointer: '/password', code: checked.problem }], session.shop.locale);
    const answer = await this.runCommand(sender, { ...sent, input: checked.input });
    if (answer.kind === 'accepted') await checked.keep(answer.body);
    return answer;
  }

  private async setUp(request: HttpRequest, reply: HttpReply): Promise<CommandOutcome> {
    requireJson(request.headers);
    const locale = localeOf(request);
    if (!connectionOf(request).secure) throw new Problem('session.needsHttps');
    const headers = commandHeaders(request.headers);
    const sent = readCommand('setUpShop', request.body, headers);
    const result = await this.setUpShop(sent, headers.device);
    switch (result.kind) {
      case 'code':
        throw codeProblem(result.code);
      case 'password':
        throw fieldProblem([{ pointer: '/owner/password', code: result.problem }], locale);
      case 'nameTaken':
        throw new Problem('setUp.nameTaken');
      case 'answered':
        if (result.started !== null) {
          reply.header('set-cookie', cookieWith(result.started.token, result.started.maxAgeSeconds));
        }
        return sendAnswer(request, reply, result.answer, { locale, zone: 'UTC', currency: sent.input.shop.currency });
    }
  }
}

function codeProblem(code: 'wrong' | 'spent' | 'notAwaited'): Problem {
  if (code === 'notAwaited') return new Problem('setUp.notAwaited');
  return new Problem(code === 'spent' ? 'setUp.codeSpent' : 'setUp.codeWrong');
}

function senderOf({ shop, person }: Session, device: string | null): Sender {
  return { shopId: shop.id, personId: person.id, name: person.name, roles: person.roles, device };
}

function sendAnswer(request: HttpRequest, reply: HttpReply, answer: Answer, words: ShopWords): CommandOutcome {
  switch (answer.kind) {
    case 'accepted':
      if (answer.replayed) reply.header('idempotency-replayed', 'true');
      reply
        .code(200)
        .header('content-type', 'application/json; charset=utf-8')
        .header('cache-control', 'no-store')
        .send(answer.body);
      return answer.replayed ? 'replayed' : 'accepted';
    case 'keyUsedOtherwise':
      sendProblem(request, reply, new Problem('key.usedOtherwise'), words.locale);
      return 'keyUsedOtherwise';
    case 'refused':
      sendProblem(request, reply, refusedProblem(answer.refusals, answer.current, words), words.locale);
      return 'refused';
  }
}

function refusedProblem(
  refusals: readonly Refusal[],
  current: Extract<Answer, { kind: 'refused' }>['current'],
  words: ShopWords,
): Problem {
  const first = refusals[0];
  const wire = refusals.map((refusal) => refusalOnTheWire(refusal, words));
  return new Problem((first && byRefusal[first.code]) ?? 'refused', {
    ...(first === undefined ? {} : { code: first.code }),
    detail: wire.map(({ sentence }) => sentence).join(' '),
    refusals: wire,
    ...(current === null ? {} : { current }),
  });
}
