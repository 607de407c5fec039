import { problemMediaType } from '@holdfast/contract';
import { FastifyAdapter } from '@nestjs/platform-fastify';
import { readFileSync } from 'node:fs';
import type { Socket } from 'node:net';
import { randomBytes } from 'node:crypto';
import type { Config } from '../config.js';
import { KnownRoutes } from './known-routes.js';
import { localeOf, Problem, problemDetails, sendProblem } from './problem.js';
import type { HttpReply, HttpRequest, HttpServer } from './http-types.js';

/** Largest body but of a photo, in bytes. */
export const largestBody = 256 * 1024;
export const largestPhoto = 15 * 1024 * 1024;

/**
 * The Fastify below Nest: bounds on what is read, JSON as the only body beside a photo, a trace for each request, and
 * problems for what is wrong before any route is reached. Over HTTPS where there is a certificate.
 */
export function makeAdapter(config: Pick<Config, 'tls'>): { adapter: FastifyAdapter; routes: KnownRoutes } {
  const adapter = new FastifyAdapter({
    ...(config.tls === undefined
      ? {}
      : { https: { cert: readFileSync(config.tls.certFile), key: readFileSync(config.tls.keyFile) } }),
    // Nothing of ours is Express middleware, and middie costs every request.
    skipMiddie: true,
    bodyLimit: largestBody,
    requestTimeout: 30_000,
    routerOptions: { maxParamLength: 100 },
    onProtoPoisoning: 'error',
    onConstructorPoisoning: 'error',
    forceCloseConnections: 'idle',
    requestIdHeader: false,
    genReqId: traceIds(),
    multipart: { limits: { fileSize: largestPhoto, files: 1, fields: 0, parts: 1, headerPairs: 50 } },
    frameworkErrors: (_failure: Error, request: HttpRequest, reply: HttpReply) => {
      sendProblem(request, reply, new Problem('path.unknown'), localeOf(request));
    },
    clientErrorHandler: answerBrokenRequest,
  });
  const routes = new KnownRoutes();
  const server = adapter.getInstance<HttpServer>();
  server.addHook('onRoute', ({ method, url }) => {
    routes.add(method, url);
  });
  onlyJson(server);
  return { adapter, routes };
}

/** Of the built-in parsers JSON stays alone: a form or plain text can be sent by any page without asking first. */
function onlyJson(server: HttpServer): void {
  const parse = server.getDefaultJsonParser('error', 'error');
  server.removeAllContentTypeParsers();
  server.addContentTypeParser('application/json', { parseAs: 'string' }, (request, body, done) => {
    if (body === '') done(null, undefined);
    else {
      void parse(request, String(body), (failure: Error | null, value?: unknown) => {
        if (failure === null) done(null, value);
        else done(new Problem('body.malformed'), undefined);
      });
    }
  });
}

/** Unlike in any other process and run, and cheap. */
function traceIds(): () => string {
  const run = randomBytes(6).toString('hex');
  let count = 0;
  return () => `${run}-${(count += 1).toString(36)}`;
}

/** What is not HTTP, or whose headers are too large, is answered on the bare socket. */
function answerBrokenRequest(failure: Error & { code?: string }, socket: Socket): void {
  if (failure.code === 'ECONNRESET' || socket.destroyed || !socket.writable) return;
  const details = problemDetails(new Problem('request.malformed'), 'en-GB', 'none');
  const body = JSON.stringify(details);
  socket.end(
    `HTTP/1.1 400 Bad Request\r\nContent-Type: ${problemMediaType}\r\nContent-Length: ${Buffer.byteLength(body)}\r\nConnection: close\r\n\r\n${body}`,
  );
}
