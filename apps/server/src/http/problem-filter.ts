import { Catch, HttpException, Injectable, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { ProblemCode } from '@holdfast/contract';
import { Overloaded } from '../auth/limited-to.js';
import { ShopBusy } from '../engine/run-command.js';
import { codeOf, reasonOf } from '../failure.js';
import type { Log } from '../log.js';
import type { HttpReply, HttpRequest } from './http-types.js';
import type { KnownRoutes } from './known-routes.js';
import { localeOf, Problem, sendProblem } from './problem.js';
import { sessionOf } from './signed-in.js';

const byStatus: Readonly<Record<number, ProblemCode>> = {
  400: 'request.malformed',
  403: 'site.foreign',
  404: 'path.unknown',
  413: 'body.tooLarge',
  414: 'path.unknown',
  415: 'body.notJson',
  503: 'server.stopping',
};

const byFastifyCode: Readonly<Record<string, ProblemCode>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: 'body.tooLarge',
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'body.notJson',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'body.malformed',
  FST_ERR_CTP_INVALID_JSON_BODY: 'body.malformed',
  FST_REQ_FILE_TOO_LARGE: 'body.tooLarge',
  FST_FILES_LIMIT: 'body.tooLarge',
  FST_PARTS_LIMIT: 'body.tooLarge',
  FST_FIELDS_LIMIT: 'body.tooLarge',
};

/** What an outage of the database looks like from outside it, by the classes of PostgreSQL's codes and Node's. */
const outage = /^(08|53|55P03|57|ECONNREFUSED|ECONNRESET|EPIPE|ETIMEDOUT)/;

/**
 * Turns whatever was thrown into a problem. What is neither one of ours nor Nest's or Fastify's word about the request
 * is a fault: it is logged with the trace, and the answer says nothing but that.
 */
@Catch()
@Injectable()
export class ProblemFilter implements ExceptionFilter {
  constructor(
    private readonly log: Log,
    private readonly routes: KnownRoutes,
  ) {}

  catch(failure: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const request = http.getRequest<HttpRequest>();
    const reply = http.getResponse<HttpReply>();
    const problem = this.methodOrPath(request, problemOf(failure));
    if (problem.problem === 'server.fault') {
      this.log.error(
        { failure, traceId: request.id, method: request.method, route: request.routeOptions.url },
        'A request failed.',
      );
    } else if (problem.problem === 'server.busy') {
      this.log.warn({ failure, traceId: request.id }, 'A request could not be taken now.');
    }
    if (reply.sent) return;
    sendProblem(request, reply, problem, sessionOf(request)?.shop.locale ?? localeOf(request));
  }

  /** Fastify says "not found" also where only the method is wrong. */
  private methodOrPath(request: HttpRequest, problem: Problem): Problem {
    if (problem.problem !== 'path.unknown') return problem;
    const methods = this.routes.methodsOf(request.url.split('?', 1)[0] ?? '');
    if (methods.length === 0 || methods.includes(request.method)) return problem;
    const { method } = request;
    return new Problem('method.notAllowed', { values: { method }, headers: { allow: methods.join(', ') } });
  }
}

export function problemOf(failure: unknown): Problem {
  if (failure instanceof Problem) return failure;
  if (isOutage(failure)) return new Problem('server.busy', { headers: { 'retry-after': '2' } });
  const status = failure instanceof HttpException ? failure.getStatus() : statusOf(failure);
  const known = byFastifyCode[codeOf(failure) ?? ''] ?? (status === undefined ? undefined : byStatus[status]);
  if (known !== undefined) return new Problem(known, { values: { type: 'application/json', limit: '256 kB' } });
  // Fastify's other words about a request it could not take.
  const isAboutRequest = status !== undefined && status >= 400 && status < 500;
  return new Problem(isAboutRequest ? 'request.malformed' : 'server.fault');
}

function isOutage(failure: unknown): boolean {
  if (failure instanceof Overloaded || failure instanceof ShopBusy) return true;
  if (outage.test(codeOf(failure) ?? '')) return true;
  const cause = (failure as { cause?: unknown } | null)?.cause;
  if (cause !== undefined && cause !== null) return isOutage(cause);
  // The pool has no code for it.
  return /timeout exceeded when trying to connect/.test(reasonOf(failure));
}

function statusOf(failure: unknown): number | undefined {
  const status = (failure as { statusCode?: unknown } | null)?.statusCode;
  return typeof status === 'number' ? status : undefined;
}
