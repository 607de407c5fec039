import type { KnownRows } from './ports.js';

/** The customer that a row means: one that is there, one of an earlier row of the file, or a new one. */
export type Match =
  | { readonly kind: 'there'; readonly id: string }
  | { readonly kind: 'inFile'; readonly id: string; readonly number: number; readonly reachable: boolean }
  | { readonly kind: 'new'; readonly id: string }
  | { readonly kind: 'unclear' };

interface InFile {
  readonly id: string;
  readonly number: number;
  phone: string | null;
}

/**
 * Customers by folded name, and by telephone where one is said: the same name with the same number is one customer, with
 * another number another. Without a number a name means the only customer of that name; where there are several, nobody
 * can tell.
 */
export class CustomerMatch {
  private readonly inFile = new Map<string, InFile[]>();

  constructor(private readonly newId: () => string) {}

  find(known: KnownRows['customers'], nameKey: string, phone: string | null): Match {
    const there = known.get(nameKey) ?? [];
    const before = this.inFile.get(nameKey) ?? [];
    if (phone === null) return onlyOne(there, before) ?? { kind: 'new', id: this.newId() };
    const samePhone = there.find(({ phones }) => phones.includes(phone));
    if (samePhone) return { kind: 'there', id: samePhone.id };
    const [only] = there;
    if (only !== undefined && there.length === 1 && only.phones.length === 0) return { kind: 'there', id: only.id };
    const again = before.find((one) => one.phone === phone);
    if (again) return { kind: 'inFile', id: again.id, number: again.number, reachable: true };
    const unreached = before.filter((one) => one.phone === null);
    const [first] = unreached;
    if (first && unreached.length === 1)
      return { kind: 'inFile', id: first.id, number: first.number, reachable: false };
    return { kind: 'new', id: this.newId() };
  }

  /** A good row named this customer. */
  keep(nameKey: string, phone: string | null, match: Match, number: number): void {
    const before = this.inFile.get(nameKey) ?? [];
    if (match.kind === 'new') this.inFile.set(nameKey, [...before, { id: match.id, number, phone }]);
    if (match.kind !== 'inFile' || phone === null) return;
    const one = before.find(({ id }) => id === match.id);
    if (one) one.phone ??= phone;
  }
}

function onlyOne(there: readonly { readonly id: string }[], before: readonly InFile[]): Match | null {
  if (there.length + before.length > 1) return { kind: 'unclear' };
  const [known] = there;
  if (known) return { kind: 'there', id: known.id };
  const [first] = before;
  return first ? { kind: 'inFile', id: first.id, number: first.number, reachable: first.phone !== null } : null;
}
