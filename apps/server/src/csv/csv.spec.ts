import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { decodeText } from './decode-text.js';
import { csvRecords, separatorOf, separators } from './read-csv.js';
import { csvLine, withoutGuard } from './write-csv.js';

const read = (text: string, separator: ',' | ';' | '\t' = ',') => [...csvRecords(text, separator)];
const cells = (text: string) => read(text).map((record) => record.cells);

describe('reading CSV', () => {
  // The examples of RFC 4180, section 2, rules 1 to 7.
  it.each([
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
    ['a\nb\rc', [['a'], ['b'], ['c']]],
    [
      'a,\n,b\n',
      [
        ['a', ''],
        ['', 'b'],
      ],
    ],
    ['a\n\n\nb', [['a'], ['b']]],
    ['""\n"",""', [['', '']]],
  ])('%j', (text, wanted) => {
    expect(cells(text)).toEqual(wanted);
    expect(read(text).every(({ broken }) => broken === null)).toBe(true);
  });

  it.each([
    ['a"b,c\nd,e', ['strayQuote', null]],
    ['"a"b,c\nd,e', ['afterQuote', null]],
    ['d,e\n"a,b', [null, 'openQuote']],
    [`${'x'.repeat(4001)}\nd`, ['cellTooLong', null]],
    [`${','.repeat(200)}\nd`, ['tooManyCells', null]],
  ])('marks the record that breaks the format and reads on: %#', (text, wanted) => {
    expect(read(text).map(({ broken }) => broken)).toEqual(wanted);
  });

  it('finds the separator outside quotes', () => {
    for (const separator of separators) {
      expect(separatorOf(`"a,;,;,;,;"${separator}b${separator}c\n,,,,,,`)).toBe(separator);
    }
    expect(separatorOf('alone')).toBe(',');
  });

  it('reads back what is written, whatever the cells hold', () => {
    const cell = fc.string({ unit: 'binary', maxLength: 12 }).filter((text) => !/[\0\p{Surrogate}]/u.test(text));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }), (rows) => {
        const back = cells(rows.map(csvLine).join('')).map((row) => row.map(withoutGuard));
        // A text that itself begins with an apostrophe before such a sign loses it: it looks like a guard.
        expect(back).toEqual(rows.map((row) => row.map(withoutGuard)));
      }),
      { numRuns: 60 },
    );
  });
});

describe('writing CSV', () => {
  it.each(['=1+1', '+44 1', '-cmd', '@SUM(A1)', '\tx', '\rx', '\nx'])(
    'no spreadsheet takes %j for a formula',
    (text) => {
      expect(csvLine([text])).toBe(`"'${text}"\r\n`);
    },
  );

  it('leaves numbers alone', () => {
    expect(csvLine([-5, '-5.25', null, true, 'plain'])).toBe('-5,-5.25,,true,plain\r\n');
  });
});

describe('the text of a file', () => {
  const text = 'Plate;Owner\r\nÄ 1;Böttcher';
  it.each([
    ['utf-8', Buffer.from(text)],
    ['utf-8', Buffer.from(`\ufeff${text}`)],
    ['utf-16le', Buffer.from(`\ufeff${text}`, 'utf16le')],
    ['utf-16le', Buffer.from(text, 'utf16le')],
    ['utf-16be', Buffer.from(`\ufeff${text}`, 'utf16le').swap16()],
    ['windows-1252', Buffer.from(text, 'latin1')],
  ])('is found in %s', (encoding, bytes) => {
    expect(decodeText(bytes)).toEqual({ text, encoding });
  });

  it('has the signs of Windows-1252 that Latin-1 lacks', () => {
    expect(decodeText(Uint8Array.from([0x80, 0x92]))?.text).toBe('€’');
  });

  it.each([
    ['an archive, as .xlsx is', Buffer.from('PK\u0003\u0004more')],
    ['a PDF', Buffer.from('%PDF-1.7')],
    ['bytes with NUL', Buffer.from('a\u0000b,c,d,e,f,g,h')],
  ])('is none in %s', (_what, bytes) => {
    expect(decodeText(bytes)).toBeNull();
  });
});
