import pg from 'pg';

const { builtins } = pg.types;
const int8Array = 1016;

const timestamptzParser = pg.types.getTypeParser(builtins.TIMESTAMPTZ, 'text');

/**
 * How values come out of PostgreSQL on our pools: int8 as number (refused beyond 2^53), timestamptz as epoch
 * milliseconds, numeric as the decimal string it is, date and timestamp as their text (pg's own reading would put
 * them into this machine's time zone). All else as pg does it: json parsed, boolean, text.
 */
export const typeParsers: pg.CustomTypesConfig = {
  getTypeParser(type: number, format?: 'text' | 'binary') {
    if (format === 'binary') return pg.types.getTypeParser(type, format);
    switch (type) {
      case builtins.INT8:
        return safeInteger;
      case int8Array:
        return integers;
      case builtins.TIMESTAMPTZ:
        return (text: string) => Number(timestamptzParser(text));
      case builtins.DATE:
      case builtins.TIMESTAMP:
        return (text: string) => text;
      default:
        return pg.types.getTypeParser(type, 'text');
    }
  },
};

function safeInteger(text: string): number {
  const value = Number(text);
  if (!Number.isSafeInteger(value)) throw new RangeError(`${text} is too large for a number.`);
  return value;
}

function integers(text: string): (number | null)[] {
  if (text === '{}') return [];
  return text
    .slice(1, -1)
    .split(',')
    .map((item) => (item === 'NULL' ? null : safeInteger(item)));
}
