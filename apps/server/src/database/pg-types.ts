import pg from 'pg';

type Reading = (text: string) => unknown;
type ReadingOf = (type: number, format?: 'text' | 'binary') => Reading;

/** pg's own readings by the type's number; its declaration answers with `any`. */
const usual = pg.types.getTypeParser as ReadingOf;

const timestamptz = 1184;
const asDate = usual(timestamptz);

// Numbers of types: select oid, typname from pg_type.
const ours = new Map<number, Reading>([
  [20, safeInteger], // int8
  [1016, safeIntegers], // int8[]
  [timestamptz, (text) => Number(asDate(text))],
  [1082, asItIs], // date
  [1114, asItIs], // timestamp
]);

const readingOf: ReadingOf = (type, format) =>
  format === 'binary' ? usual(type, format) : (ours.get(type) ?? usual(type, 'text'));

/**
 * How values come out of PostgreSQL on our pools: int8 as number (refused beyond 2^53), timestamptz as epoch
 * milliseconds, numeric as the decimal string it is, date and timestamp as their text (pg's own reading would put
 * them into this machine's time zone). All else as pg does it: json parsed, boolean, text.
 */
export const typeParsers: pg.CustomTypesConfig = { getTypeParser: readingOf };

function safeInteger(text: string): number {
  const value = Number(text);
  if (!Number.isSafeInteger(value)) throw new RangeError(`${text} is too large for a number.`);
  return value;
}

function safeIntegers(text: string): (number | null)[] {
  if (text === '{}') return [];
  return text
    .slice(1, -1)
    .split(',')
    .map((item) => (item === 'NULL' ? null : safeInteger(item)));
}

function asItIs(text: string): string {
  return text;
}
