import { readdirSync } from 'node:fs';

import { describe, expect, it } from '@jest/globals';
import { IntlMessageFormat } from 'intl-messageformat';

import { catalogues, locales } from './catalogues.js';
import { say } from './say.js';

const folderOf = { 'en-GB': 'en-gb', 'en-US': 'en-us' } as const;

// The parser's number for a stretch of plain text; its enum is not ours to import.
const literal = '0';

type Element = ReturnType<IntlMessageFormat['getAst']>[number];

// Every argument with its kind (plain, number, select, plural …), also those inside the options of another.
const argumentsOf = (elements: readonly Element[]): string[] =>
  elements.flatMap((element) => {
    if (!('value' in element) || `${element.type}` === literal) return [];
    const inside =
      'options' in element ? Object.values(element.options).flatMap((option) => argumentsOf(option.value)) : [];
    return [`${element.value}:${element.type}`, ...inside];
  });

const signature = (message: string): string => {
  const parsed = new IntlMessageFormat(message, 'en', undefined, { ignoreTag: true });
  return [...new Set(argumentsOf(parsed.getAst()))].sort().join(' ');
};

const textsOfFiles = async (folder: string): Promise<[file: string, key: string, text: string][]> => {
  const names = readdirSync(new URL(`./${folder}/`, import.meta.url)).filter((name) => name.endsWith('.ts'));
  const files = await Promise.all(
    names.map(async (name) => {
      const module = (await import(`./${folder}/${name}`)) as Record<string, Record<string, string>>;
      return Object.values(module).flatMap((texts) =>
        Object.entries(texts).map(([key, text]): [string, string, string] => [name, key, text]),
      );
    }),
  );
  return files.flat();
};

describe('the catalogues', () => {
  it('have the same keys in every locale', () => {
    expect(Object.keys(catalogues['en-US']).sort()).toEqual(Object.keys(catalogues['en-GB']).sort());
  });

  it('ask for the same ICU arguments in every locale', () => {
    const gb = Object.entries(catalogues['en-GB']).map(([key, text]) => [key, signature(text)]);
    const us = Object.entries(catalogues['en-US']).map(([key, text]) => [key, signature(text)]);
    expect(Object.fromEntries(us)).toEqual(Object.fromEntries(gb));
  });

  it.each(locales)('merge every file of %s and hold each key once', async (locale) => {
    const texts = await textsOfFiles(folderOf[locale]);
    const keys = texts.map(([, key]) => key);
    expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]);
    expect([...keys].sort()).toEqual(Object.keys(catalogues[locale]).sort());
  });

  it.each(locales)('have no empty text and none that starts with "Error" in %s', (locale) => {
    const bad = Object.entries(catalogues[locale]).filter(([, text]) => text.trim() === '' || /^error/i.test(text));
    expect(bad).toEqual([]);
  });
});

describe('say', () => {
  it('writes the trade word of the place', () => {
    expect(say('en-GB', 'reason.collection')).toBe('collection');
    expect(say('en-US', 'reason.collection')).toBe('pick-up');
  });

  it('counts by the plural rule of the text', () => {
    expect(say('en-GB', 'mark.patch', { count: 1 })).toBe('1 temporary fix on this vehicle');
    expect(say('en-GB', 'mark.patch', { count: 2 })).toBe('2 temporary fixes on this vehicle');
  });

  it('names the text whose value is missing', () => {
    expect(() => say('en-GB', 'mark.patch')).toThrow(/mark\.patch/);
  });
});
