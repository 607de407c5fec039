import type { FastifyAdapter } from '@nestjs/platform-fastify';

/** Fastify's own types as the adapter hands them out: the server depends on the adapter and on nothing below it. */
export type HttpServer = ReturnType<FastifyAdapter['get']>;
export type HttpRequest = Parameters<FastifyAdapter['getRequestHostname']>[0];
export type HttpReply = ReturnType<FastifyAdapter['reply']>;
