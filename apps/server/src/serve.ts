import 'reflect-metadata';
import { mostImportRows } from '@holdfast/contract';
import type { NestApplicationOptions } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { join } from 'node:path';
import type { AddressInfo } from 'node:net';
import { readdirSync } from 'node:fs';
import { v7 as uuidV7 } from 'uuid';
import { AppModule } from './app.module.js';
import { openAccounts } from './auth/accounts.js';
import { passwordsWith, type Passwords } from './auth/passwords.js';
import { makeCheckPerson } from './auth/person-passwords.js';
import { openSessions } from './auth/sessions.js';
import { makeSetUpCode } from './auth/set-up-code.js';
import { makeSetUpShop } from './auth/set-up-shop.js';
import { makeSignIn } from './auth/sign-in.js';
import { openSignInTries } from './auth/sign-in-tries.js';
import { pepperOf, type Config } from './config.js';
import type { Database } from './database/pools.js';
import { makeRunCommand } from './engine/run-command.js';
import type { Wake } from './engine/ports.js';
import type { Demo } from './http/demo.controller.js';
import type { Readiness } from './http/health.controller.js';
import { makeImports } from './import/check-import.js';
import { PhotoFiles } from './http/photo-files.js';
import { makeAdapter } from './http/make-adapter.js';
import { migrationsFolder, ownVersion } from './installation/places.js';
import { ProblemFilter } from './http/problem-filter.js';
import { secure } from './http/security.js';
import { serveAuthority, serveWebClient } from './http/web-client.js';
import { nestLogger, type Log } from './log.js';
import { openMetrics } from './metrics.js';
import * as provided from './providers.js';
import { makeAudit } from './store/audit-reads.js';
import { makeImportStore } from './store/imports.js';
import { localeOfShop } from './read/shop-of.js';
import { makeOpenShop } from './store/open-shop.js';
import { makeSetOwnClock } from './store/own-clock.js';
import { makeLogReader } from './store/read-log.js';
import { makeStore } from './store/store.js';
import { makeUploads } from './store/uploads.js';

/** A server process that listens. */
export interface RunningServer {
  /** With the port that was really taken. */
  readonly url: string;
  /** What somebody must type to make the first shop; null where none is awaited. */
  readonly setUpCode: string | null;
  readonly demo: Demo | null;
  readonly log: Log;
  /** Refuses new requests, tells the sockets, lets running requests end, closes the database. Further calls do nothing. */
  stop(): Promise<void>;
}

/** Loads the demo into an empty database, or finds it there; null without one. */
export type LoadDemo = (parts: {
  database: Database;
  config: Config;
  passwords: Passwords;
  log: Log;
}) => Promise<Demo | null>;

/** Puts the server together on an open database and listens. */
export async function serveOn(
  database: Database,
  config: Config,
  log: Log,
  loadDemo: LoadDemo | undefined,
): Promise<RunningServer> {
  const passwords = passwordsWith(pepperOf(config));
  const demo = (await loadDemo?.({ database, config, passwords, log })) ?? null;
  const state = { open: true };
  const parts = await makeParts({ database, config, log, passwords, demo, state });
  const { adapter, routes } = makeAdapter(config);
  const app = await NestFactory.create<NestFastifyApplication>(
    AppModule.of(parts.providers),
    adapter,
    nestOptions(log),
  );
  secure(app, config.tls !== undefined);
  app.useGlobalFilters(new ProblemFilter(log, routes));
  serveWebClient(adapter);
  serveAuthority(adapter, config);
  await app.listen(config.port, config.host);
  const { port } = app.getHttpServer().address() as AddressInfo;
  const host = config.host.includes(':') ? `[${config.host}]` : config.host;
  let stopped: Promise<void> | undefined;
  const stop = async () => {
    state.open = false;
    clearInterval(parts.cleaning);
    await app.close();
    await parts.close();
    await database.stop();
  };
  return {
    url: `${config.tls === undefined ? 'http' : 'https'}://${host}:${port}`,
    setUpCode: parts.setUpCode,
    demo,
    log,
    stop: () => (stopped ??= stop()),
  };
}

interface Making {
  readonly database: Database;
  readonly config: Config;
  readonly log: Log;
  readonly passwords: Passwords;
  readonly demo: Demo | null;
  readonly state: { readonly open: boolean };
}

const hourMs = 3_600_000;

async function makeParts({ database, config, log, passwords, demo, state }: Making) {
  const accounts = openAccounts(database);
  const sessions = await openSessions(database);
  const tries = openSignInTries(database);
  const metrics = openMetrics();
  const setUpCode = await makeSetUpCode(demo !== null, () => accounts.hasRealShop());
  const wakes: Wake[] = [];
  const wake: Wake = (shopId, seq) => {
    for (const each of wakes) each(shopId, seq);
  };
  const store = makeStore(database.app);
  const photos = new PhotoFiles(join(config.dataDir, 'photos'));
  const erased = (shopId: string, contents: readonly string[]) => {
    photos
      .remove(shopId, contents)
      .catch((failure: unknown) => log.error({ failure }, 'Erased photos could not be removed.'));
  };
  const runCommand = makeRunCommand({ store, wake, newId: uuidV7, erased });
  const firstCommandOf = (shopId: string) => makeRunCommand({ store, wake, newId: startingWith(shopId) });
  const openShop = makeOpenShop(database.app);
  const imports = makeImports({
    store: makeImportStore(database.app, mostImportRows),
    localeOf: (shopId) => localeOfShop(database.app, shopId),
    newId: uuidV7,
    failed: (failure) => log.warn({ failure }, 'A file of existing data could not be looked at.'),
  });
  const values: readonly (readonly [symbol, unknown])[] = [
    [provided.CONFIG, config],
    [provided.LOG, log],
    [provided.METRICS, metrics],
    [provided.DATABASE, database],
    [provided.SESSIONS, sessions],
    [provided.SIGN_IN, makeSignIn({ accounts, passwords, sessions, tries })],
    [provided.SET_UP_CODE, setUpCode],
    [provided.SET_UP_SHOP, makeSetUpShop({ accounts, passwords, sessions, setUpCode, openShop, firstCommandOf })],
    [provided.CHECK_PERSON, makeCheckPerson({ database, accounts, passwords, sessions })],
    [provided.RUN_COMMAND, runCommand],
    [provided.LOG_READER, makeLogReader(database.app)],
    [provided.WAKES, wakes],
    [provided.UPLOADS, makeUploads(database.app)],
    [provided.IMPORTS, imports],
    [provided.AUDIT, makeAudit(database.app)],
    [provided.SET_OWN_CLOCK, makeSetOwnClock(database.app)],
    [provided.DEMO, demo],
    [provided.READINESS, makeReadiness(database, state)],
  ];
  const cleaning = setInterval(() => {
    tries.cleanUp().catch((failure: unknown) => log.warn({ failure }, 'Old sign-in tries could not be cleared.'));
  }, hourMs).unref();
  return {
    providers: values.map(([provide, useValue]) => ({ provide, useValue })),
    setUpCode: setUpCode.text,
    cleaning,
    async close() {
      await imports.close();
      metrics.close();
      await accounts.close();
    },
  };
}

function nestOptions(log: Log): NestApplicationOptions {
  const ours: Partial<NestApplicationOptions> = { logger: nestLogger(log), bodyParser: false, abortOnError: false };
  return ours;
}

function startingWith(first: string): () => string {
  let next: string | null = first;
  return () => {
    const id = next ?? uuidV7();
    next = null;
    return id;
  };
}

function makeReadiness(database: Database, state: { readonly open: boolean }): Readiness {
  const numbered = readdirSync(migrationsFolder).filter((name) => /^\d+_/.test(name));
  const migration = numbered.sort((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10)).at(-1) ?? '';
  return {
    version: ownVersion(),
    migration,
    isOpen: () => state.open,
    databaseAnswers: () =>
      database.app.query('select 1').then(
        () => true,
        () => false,
      ),
  };
}
