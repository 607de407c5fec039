import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import * as engine from '@prisma/schema-engine-wasm/schema_engine_bg';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

/**
 * The SQL by which Prisma would make the schema in `schemaFolder` from nothing. Prisma's own command wants to download
 * an engine; this is the same engine as a package. `url` names any database that answers; nothing in it is changed.
 */
export async function sqlOfSchema(schemaFolder: string, url: string): Promise<string> {
  loadEngine();
  const files = readdirSync(schemaFolder)
    .filter((name) => name.endsWith('.prisma'))
    .map((name) => ({ path: join(schemaFolder, name), content: readFileSync(join(schemaFolder, name), 'utf8') }));
  const schemaEngine = await engine.SchemaEngine.new(
    { datamodels: files.map(({ path, content }) => [path, content]) },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(new PrismaPg(url)),
  );
  try {
    const { stdout } = await schemaEngine.diff({
      from: { tag: 'empty' },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: null,
      filters: { externalTables: [], externalEnums: [] },
    });
    return stdout ?? '';
  } finally {
    schemaEngine.free();
  }
}

// The package's own entry imports its .wasm as a module, which Node does not do.
function loadEngine(): void {
  const script = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const module = new WebAssembly.Module(readFileSync(script.replace(/\.js$/, '.wasm')));
  const { exports } = new WebAssembly.Instance(module, { './schema_engine_bg.js': { ...engine } });
  engine.__wbg_set_wasm(exports);
  (exports as unknown as { __wbindgen_start(): void }).__wbindgen_start();
}
