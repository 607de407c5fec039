import type { Config } from './config.js';
import { openDatabase } from './database/pools.js';
import { openLog } from './log.js';
import type { LoadDemo, RunningServer } from './serve.js';

export interface StartOptions {
  readonly loadDemo?: LoadDemo;
}

/** Opens the database, puts the server together and listens. What was opened is closed again where a step fails. */
export async function startServer(config: Config, { loadDemo }: StartOptions = {}): Promise<RunningServer> {
  const log = openLog(config);
  // PostgreSQL comes up in a process of its own while this one reads its many modules, which takes as long.
  const opening = openDatabase(config, { info: (text) => log.info(text), warn: (text) => log.warn(text) });
  const reading = import('./serve.js');
  reading.catch(() => undefined);
  const database = await opening;
  try {
    const { serveOn } = await reading;
    return await serveOn(database, config, log, loadDemo);
  } catch (failure) {
    await database.stop();
    throw failure;
  }
}
