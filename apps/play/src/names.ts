/** Symbolic names of a file and what they stand for. */
import { createHash } from 'node:crypto';

/** Ids of rows by their names in the file: told by the server, or worked out from the name, the same in every play. */
export class Names {
  private readonly told = new Map<string, string | number>();

  tell(name: string, id: string | number): void {
    this.told.set(name, id);
  }

  id(name: string): string | number {
    return this.told.get(name) ?? idOf(name);
  }

  /** The input with every word that begins with `$` replaced, at any depth. A lone `$` is left for the version. */
  resolve(value: unknown): unknown {
    if (typeof value === 'string') return /^\$./.test(value) ? this.id(value) : value;
    if (Array.isArray(value)) return value.map((item) => this.resolve(item));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, this.resolve(item)]));
  }
}

/** A UUID of version 8 (RFC 9562, 5.8) from a hash of the name. */
function idOf(name: string): string {
  const hex = createHash('sha256').update(`play ${name}`).digest('hex');
  const variant = ((Number.parseInt(hex.slice(16, 18), 16) & 0x3f) | 0x80).toString(16).padStart(2, '0');
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    variant + hex.slice(18, 20),
    hex.slice(20, 32),
  ].join('-');
}
