// `npm run verify`: what must hold before a commit, ten minutes at most. Every stage runs even if an earlier one failed,
// so that one run names everything that is wrong.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const stages = [
  ['types', 'npm', ['run', '--silent', 'types']],
  ['lint', 'npm', ['run', '--silent', 'lint']],
  ['format', 'npm', ['run', '--silent', 'format:check']],
  ['architecture', 'npm', ['run', '--silent', 'architecture']],
  ['unused', 'npm', ['run', '--silent', 'unused']],
  ['build', 'npm', ['run', '--silent', 'build']],
  ['tests', 'npm', ['test']],
  // tests/long read LONG_MATRIX: `sample` takes one case of each matrix, unset takes them whole.
  ['long, a sample', 'npm', ['run', 'test:long'], { LONG_MATRIX: 'sample' }],
  ['browser, main journeys', 'npm', ['run', 'test:browser', '--', 'tests/browser/main']],
];

const root = fileURLToPath(new URL('..', import.meta.url));
const outcome = stages.map(([name, command, args, env = {}]) => {
  console.log(`\n== ${name}`);
  const started = Date.now();
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } });
  return { name, seconds: (Date.now() - started) / 1000, passed: status === 0 };
});

console.log('\n== verify');
for (const { name, seconds, passed } of outcome) {
  console.log(`${passed ? 'passed' : 'FAILED'}  ${seconds.toFixed(1).padStart(6)} s  ${name}`);
}
process.exit(outcome.every(({ passed }) => passed) ? 0 : 1);
