/**
 * Where this installation lies on disk. The only module, beside the search for PostgreSQL's programs, that knows the
 * depth at which it is itself: as one of many files and inside the bundle that `npm start` runs, that depth is the same.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../../..', import.meta.url));

/** The folders below are absolute paths. */
export const migrationsFolder = join(root, 'prisma/migrations');
export const webClientFolder = join(root, 'apps/web/dist');
/** Kept out of git; used unless DATA_DIR names another. */
export const usualDataFolder = join(root, 'data');

/** Of this release, as `package.json` says. */
export function ownVersion(): string {
  const { version } = JSON.parse(readFileSync(join(root, 'apps/server/package.json'), 'utf8')) as { version: string };
  return version;
}
