// Once for each test run, whatever its projects: one PostgreSQL, one migrated template. The kit is TypeScript, which
// jest does not translate for this file, so tsx does.
import { tsImport } from 'tsx/esm/api';

export default async function setUp() {
  const started = performance.now();
  const { startTestServer, testServerVariable } = await tsImport('./test-server.ts', import.meta.url);
  const running = await startTestServer();
  process.env[testServerVariable] = JSON.stringify(running.server);
  globalThis.holdfastTestServer = running;
  console.log(`\nTests run on ${running.what} (ready in ${Math.round(performance.now() - started)} ms).`);
}
