import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import type { Sessions } from '../auth/sessions.js';
import { tokenOf } from '../auth/session-token.js';
import type { Metrics } from '../metrics.js';
import { METRICS, READINESS, SESSIONS } from '../providers.js';
import { connectionOf } from './connection.js';
import type { HttpReply, HttpRequest } from './http-types.js';
import { Problem } from './problem.js';

/** What the process knows of itself, and whether it may be sent requests. */
export interface Readiness {
  readonly version: string;
  /** The last migration of these files; the database is never behind it once the server listens. */
  readonly migration: string;
  /** False from the moment the process was told to stop. */
  isOpen(): boolean;
  databaseAnswers(): Promise<boolean>;
}

@Controller()
export class HealthController {
  constructor(
    @Inject(READINESS) private readonly readiness: Readiness,
    @Inject(METRICS) private readonly metrics: Metrics,
    @Inject(SESSIONS) private readonly sessions: Sessions,
  ) {}

  /** The process lives; says nothing about the database. */
  @Get('healthz')
  health(@Res() reply: HttpReply): void {
    const { node, tz, icu } = process.versions;
    reply.header('cache-control', 'no-store').send({
      status: 'up',
      version: this.readiness.version,
      node,
      timeZoneData: tz ?? null,
      icu: icu ?? null,
      upSeconds: Math.round(process.uptime()),
    });
  }

  @Get('readyz')
  async ready(@Res() reply: HttpReply): Promise<void> {
    const open = this.readiness.isOpen();
    const database = open && (await this.readiness.databaseAnswers());
    reply
      .code(database ? 200 : 503)
      .header('cache-control', 'no-store')
      .send({ status: database ? 'ready' : open ? 'no database' : 'stopping', migration: this.readiness.migration });
  }

  /** For a scraper on this machine, or for an owner who is signed in; names of commands and figures only. */
  @Get('metrics')
  async figures(@Req() request: HttpRequest, @Res() reply: HttpReply): Promise<void> {
    if (!connectionOf(request).loopback && !(await this.isOwner(request))) throw new Problem('path.unknown');
    reply
      .header('content-type', this.metrics.mediaType)
      .header('cache-control', 'no-store')
      .send(await this.metrics.text());
  }

  private async isOwner(request: HttpRequest): Promise<boolean> {
    const token = tokenOf(request.headers);
    const session = token === null ? null : await this.sessions.of(token);
    return session?.person.roles.includes('owner') === true;
  }
}
