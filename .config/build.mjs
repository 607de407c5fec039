// Builds what `npm start` runs: the database client from its schema, libraries, server and player with tsc, the
// browser client with Vite. Runs as our own `postinstall`, so it says what it leaves out and needs no network.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundleServer } from './bundle-server.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const web = join(root, 'apps/web');

/** The script behind a package's command, looked up from the folder that depends on it; undefined when not installed. */
function commandOf(packageName, binary, from) {
  const search = createRequire(join(from, 'package.json')).resolve.paths(packageName) ?? [];
  const folder = search.map((path) => join(path, packageName)).find((path) => existsSync(join(path, 'package.json')));
  return folder === undefined ? undefined : join(folder, binary);
}

function run(script, args, { cwd = root, env = {} } = {}) {
  const started = process.hrtime.bigint();
  const { status, error } = spawnSync(process.execPath, [script, ...args], {
    cwd,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  });
  if (error !== undefined) throw error;
  if (status !== 0) {
    console.error(`build: ${relative(root, script)} ${args.join(' ')} ended with ${String(status)}`);
    process.exit(status ?? 1);
  }
  return Number((process.hrtime.bigint() - started) / 1_000_000n);
}

const done = (what, ms) => console.log(`build: ${what} in ${(ms / 1000).toFixed(1)} s`);

const tsc = commandOf('typescript', 'bin/tsc', root);
const vite = commandOf('vite', 'bin/vite.js', web);
const prisma = commandOf('prisma', 'build/index.js', join(root, 'apps/server'));
if (tsc === undefined || vite === undefined || prisma === undefined) {
  console.log('build: left out, the development packages are not installed; build where they are and copy dist/ over');
  process.exit(0);
}

const schema = join(root, 'prisma/schema');
const generated = join(root, 'apps/server/generated');
const sources = existsSync(schema) ? readdirSync(schema).filter((name) => name.endsWith('.prisma')) : [];
if (sources.length === 0) {
  console.log('build: database client left out, prisma/schema is empty');
} else {
  // Generating clears the folder under the feet of whatever runs from it, so it is done for a changed schema only.
  const hash = createHash('sha256').update(readFileSync(join(prisma, '../../package.json')));
  for (const name of sources.sort()) hash.update(name).update(readFileSync(join(schema, name)));
  const digest = hash.digest('hex');
  const mark = join(generated, 'prisma/.schema-sha256');
  if (!existsSync(mark) || readFileSync(mark, 'utf8') !== digest) {
    rmSync(generated, { recursive: true, force: true });
    // The command wants to download an engine that `generate` does not use; naming any executable keeps it off the network.
    const env = { CHECKPOINT_DISABLE: '1', PRISMA_SCHEMA_ENGINE_BINARY: process.execPath };
    const config = join(root, '.config/prisma.ts');
    done('database client', run(prisma, ['generate', '--config', config, '--no-hints'], { env }));
    writeFileSync(mark, digest);
  }
}

const projects = readdirSync(join(root, 'libs')).map((name) => `libs/${name}`);
const referenced = [...projects, 'apps/server', 'apps/play'].filter((path) =>
  existsSync(join(root, path, 'tsconfig.json')),
);
done('libraries, server, player', run(tsc, ['-b', ...referenced]));
done('server in few files', await bundleServer(root));

if (existsSync(join(web, 'index.html'))) {
  done('browser client', run(vite, ['build', '--logLevel', 'warn'], { cwd: web }));
} else {
  console.log('build: browser client left out, apps/web has no index.html');
}
