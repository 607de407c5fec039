import type { LoggerService } from '@nestjs/common';
import { pino, type Logger } from 'pino';
import type { Config } from './config.js';
import { codeOf, reasonOf } from './failure.js';

/** JSON lines on standard error: one object each, with `level`, `time` (epoch ms), `msg` and facts, never a secret. */
export type Log = Logger;

/**
 * Standard output is left to the few lines for people (the address, the set-up code). Bodies, headers and addresses of
 * databases are not logged at all; the list below is the second line of defence for what a failure carries along.
 */
export function openLog({ logLevel }: Pick<Config, 'logLevel'>): Log {
  const secrets = ['password', 'token', 'authorization', 'cookie', 'connectionString', 'parameters', 'detail', 'where'];
  return pino(
    {
      level: logLevel,
      base: { pid: process.pid },
      redact: { paths: [...secrets, ...secrets.map((name) => `*.${name}`)], censor: '(left out)' },
      serializers: { failure: describeFailure },
    },
    pino.destination({ dest: 2, sync: true }),
  );
}

/** What a failure says and where, without the values that came with it. */
function describeFailure(failure: unknown): object {
  if (typeof failure !== 'object' || failure === null) return { message: String(failure) };
  const { name, stack, cause } = failure as Partial<Error>;
  const code = codeOf(failure);
  return {
    ...(name === undefined ? {} : { name }),
    message: reasonOf(failure),
    ...(code === undefined ? {} : { code }),
    ...(stack === undefined ? {} : { stack }),
    ...(cause === undefined ? {} : { cause: describeFailure(cause) }),
  };
}

/** Nest's own messages go where ours go; its start-up chatter only at level debug. */
export function nestLogger(log: Log): LoggerService {
  const say =
    (level: 'debug' | 'warn' | 'error') =>
    (message: unknown, ...more: unknown[]) => {
      const text = message instanceof Error ? message.message : String(message);
      log[level]({ nest: more.filter((part) => typeof part === 'string') }, text);
    };
  return {
    log: say('debug'),
    debug: say('debug'),
    verbose: say('debug'),
    warn: say('warn'),
    error: say('error'),
    fatal: say('error'),
  };
}
