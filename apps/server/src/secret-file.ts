import { randomBytes } from 'node:crypto';
import {
  chmodSync,
  closeSync,
  fsyncSync,
  linkSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { codeOf } from './failure.js';

/** 32 random bytes as 43 characters that need no quoting in a URL, in SQL or in a file. */
export function randomSecret(): string {
  return randomBytes(32).toString('base64url');
}

/**
 * Writes `text` so that a crash leaves the old file or the whole new one, never half of it. Nobody but the user this
 * process runs as may read it (mode 0600); folders that are missing are made with mode 0700.
 */
export function writeSecretFile(file: string, text: string): void {
  const draft = writeDraft(file, text);
  renameSync(draft, file);
}

/**
 * The text kept in `file`; where there is none yet, `make()` is written there first. Two processes that start at the
 * same moment end with the same text: the second finds the file of the first.
 */
export function keptSecret(file: string, make: () => string): string {
  const kept = readSecretFile(file);
  if (kept !== undefined) return kept;
  const draft = writeDraft(file, make());
  try {
    linkSync(draft, file);
    rmSync(draft);
  } catch (failure) {
    // A file system without hard links: the rename may replace a text made in the same instant, which link would not.
    if (codeOf(failure) === 'EEXIST') rmSync(draft);
    else renameSync(draft, file);
  }
  return readFileSync(file, 'utf8');
}

/** The text kept in `file`, or undefined when there is no such file. A mode wider than 0600 is narrowed. */
export function readSecretFile(file: string): string | undefined {
  try {
    if ((statSync(file).mode & 0o077) !== 0) chmodSync(file, 0o600);
    return readFileSync(file, 'utf8');
  } catch (failure) {
    if (codeOf(failure) === 'ENOENT') return undefined;
    throw failure;
  }
}

function writeDraft(file: string, text: string): string {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  const draft = `${file}.${randomBytes(6).toString('hex')}`;
  const handle = openSync(draft, 'wx', 0o600);
  try {
    writeSync(handle, text);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  return draft;
}
