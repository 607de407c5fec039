// Before all else: the decorators of what is read later write into it.
import 'reflect-metadata';
import { configOrExit } from './config.js';
import { CannotStart } from './database/cannot-start.js';
import type { LoadDemo, RunningServer } from './serve.js';
import { startServer } from './start.js';

/** EX_SOFTWARE and EX_UNAVAILABLE of sysexits.h. */
const exitStatusOfFault = 70;
const exitStatusOfOutage = 69;
/** How long running requests may take to end, ms; then the process goes anyway. */
const longestStopMs = 20_000;

const config = configOrExit();
// A second signal while stopping is heard and changes nothing: the database must not be left half stopped.
const stopWanted = new Promise<string>((resolve) => {
  process.on('SIGTERM', resolve);
  process.on('SIGINT', resolve);
});

function endWithFault(what: string, failure: unknown): void {
  const words = failure instanceof Error ? (failure.stack ?? failure.message) : String(failure);
  process.stderr.write(`${JSON.stringify({ level: 60, time: Date.now(), msg: what, failure: words })}\n`);
  process.exit(exitStatusOfFault);
}
process.on('uncaughtException', (failure) => endWithFault('Something unexpected ended the server.', failure));
process.on('unhandledRejection', (failure) => endWithFault('Something unexpected ended the server.', failure));

// Read while PostgreSQL starts, like the rest of the server; see `startServer`.
const loadDemo: LoadDemo = async (parts) => (await import('./demo/load-demo.js')).loadDemo(parts);

async function started(): Promise<RunningServer> {
  try {
    return await startServer(config, { loadDemo });
  } catch (failure) {
    const code = (failure as { code?: unknown }).code;
    const isSettled =
      failure instanceof CannotStart || code === 'EADDRINUSE' || code === 'EADDRNOTAVAIL' || code === 'EACCES';
    if (!isSettled) throw failure;
    const sentence =
      failure instanceof CannotStart
        ? failure.message
        : `Holdfast cannot listen on ${config.host}, port ${config.port} (${String(code)}). Choose another with PORT and HOST.`;
    process.stderr.write(`${sentence}\n`);
    process.exit(exitStatusOfOutage);
  }
}

const server = await started();
if (server.demo !== null) {
  const { shop, people } = server.demo.signIns();
  const rows = people.map(({ name, roles, password }) => `  ${name} (${roles.join(', ')}): ${password}\n`).join('');
  process.stdout.write(`The demo's shop is ${shop}. Its sign-ins:\n${rows}`);
} else if (server.setUpCode !== null) {
  process.stdout.write(
    `There is no shop yet. Open the address below and set it up with the set-up code ${server.setUpCode}\n`,
  );
}
process.stdout.write(`ready at ${server.url}\n`);

const signal = await stopWanted;
server.log.info({ signal }, 'The server stops.');
setTimeout(() => endWithFault('The server did not stop in time.', signal), longestStopMs).unref();
await server.stop();
process.exit(0);
