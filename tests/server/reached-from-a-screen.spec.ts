import { commandNames, commands, type ScreenName } from '@holdfast/contract';
import { describe, expect, it } from '@jest/globals';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

const web = resolve('apps/web/src');

/** The name that the client's list of screens has for each screen of the contract. */
const nameInClient: Readonly<Record<ScreenName, string>> = {
  floor: 'floor',
  desk: 'desk',
  waiting: 'waiting',
  'my-bay': 'bay',
  job: 'job',
  vehicle: 'vehicle',
  'parts-desk': 'parts',
  outstanding: 'outstanding',
  'hand-back': 'handBack',
  'bay-time': 'bayTime',
  shop: 'shop',
  'existing-data': 'importedFile',
  'set-up': 'setUp',
};

function fileOf(specifier: string, from: string): string | null {
  const bare = resolve(dirname(from), specifier).replace(/\.js$/, '');
  return [`${bare}.ts`, `${bare}.tsx`].find((path) => existsSync(path)) ?? null;
}

/** The text of everything that a screen draws with: its entry and what that imports, step by step. */
function walk(entry: string): string {
  const seen = new Map<string, string>();
  const open = [entry];
  for (let file = open.pop(); file !== undefined; file = open.pop()) {
    if (seen.has(file)) continue;
    const text = readFileSync(file, 'utf8');
    seen.set(file, text);
    for (const [, specifier] of text.matchAll(/(?:from|import\()\s*'(\.[^']+)'/g)) {
      const next = specifier === undefined ? null : fileOf(specifier, file);
      if (next !== null) open.push(next);
    }
  }
  return [...seen.values()].join('\n');
}

const list = readFileSync(join(web, 'screens.ts'), 'utf8');
const entries = new Map(
  [...list.matchAll(/^\s*(\w+): async \(\) => \(await import\('(\.[^']+)'\)\)/gm)].map(([, name, specifier]) => [
    name ?? '',
    fileOf(specifier ?? '', join(web, 'screens.ts')) ?? '',
  ]),
);
/** What stands in the header of every screen: one's own presence. */
const inTheHeader = walk(join(web, 'presence/my-presence.tsx'));
const sources = new Map([...entries].map(([name, entry]) => [name, `${walk(entry)}\n${inTheHeader}`]));

it('the header of every screen has one’s own presence', () => {
  expect(readFileSync(join(web, 'shell/shell.tsx'), 'utf8')).toContain('<MyPresence />');
});

describe('every command is reached from the screens that its line in the table names', () => {
  it.each(commandNames)('%s', (name) => {
    const screens = commands[name].screens;
    expect(screens.length).toBeGreaterThan(0);
    const sends = new RegExp(`\\b(?:run|send|sendSetUp)\\(\\s*'${name}'`);
    const missing = screens.filter((screen) => !sends.test(sources.get(nameInClient[screen]) ?? ''));
    expect(missing).toEqual([]);
  });
});
