// Development: tsc watches libraries and server, Node restarts the server on new output, Vite serves the browser client.
import { spawn, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const first = spawnSync(process.execPath, ['.config/build.mjs'], { cwd: root, stdio: 'inherit' });
if (first.status !== 0) process.exit(first.status ?? 1);

const children = [
  ['npx', ['--no', '--', 'tsc', '-b', '--watch', '--preserveWatchOutput', 'apps/server']],
  [process.execPath, ['--watch', '--enable-source-maps', 'apps/server/dist/main.js']],
  ['npm', ['exec', '--no', '--workspace', '@holdfast/web', '--', 'vite']],
].map(([command, args]) => spawn(command, args, { cwd: root, stdio: 'inherit' }));

let stopping = false;
const stop = () => {
  if (stopping) return;
  stopping = true;
  for (const child of children) child.kill('SIGTERM');
};
process.on('SIGINT', stop);
process.on('SIGTERM', stop);
for (const child of children) child.on('exit', stop);
