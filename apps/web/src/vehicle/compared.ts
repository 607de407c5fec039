/** One line of a side by side: what it is, what the kept record says, what the other says. */
export type Compared<Name extends string = string> = {
  readonly name: Name;
  readonly kept: string;
  readonly other: string;
  /** What stands afterwards: the kept one's, the other's where the kept one says nothing, or both together. */
  readonly after: 'kept' | 'other' | 'both';
};

type Fact<Name extends string> = { readonly name: Name; readonly kept: string | null; readonly other: string | null };

/** Facts that the two tell differently; `unknown` stands where one says nothing. Where both say nothing there is no line. */
export const differing = <Name extends string>(facts: readonly Fact<Name>[], unknown: string): Compared<Name>[] =>
  facts
    .filter(({ kept, other }) => kept !== other)
    .map(({ name, kept, other }) => ({
      name,
      kept: kept ?? unknown,
      other: other ?? unknown,
      after: kept === null ? 'other' : 'kept',
    }));

type Count<Name extends string> = { readonly name: Name; readonly kept: number; readonly other: number };

/** What moves to the kept record: nothing is lost, so both stand there afterwards. */
export const moving = <Name extends string>(
  counts: readonly Count<Name>[],
  write: (count: number) => string,
): Compared<Name>[] =>
  counts
    .filter(({ other }) => other > 0)
    .map(({ name, kept, other }) => ({ name, kept: write(kept), other: write(other), after: 'both' }));
