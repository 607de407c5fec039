import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readFileSync } from 'node:fs';
import { play } from '../../apps/play/src/play.js';
import { FaultyLine, readScript } from '../../apps/play/src/script.js';
import { commandNames } from '../../libs/contract/src/index.js';
import type { CommandName } from '../../libs/domain/src/index.js';
import { startApp, type TestApp } from '../kit/app.js';

const example = (name: string) => readFileSync(new URL(`../../examples/${name}.jsonl`, import.meta.url), 'utf8');
const day = example('a-day');
const wholeDay = example('the-whole-day');

/** Commands of the file, and what it says of each bay. */
function said(text: string) {
  const { lines } = readScript(text);
  const commands = lines.flatMap((line) => (line.kind === 'command' ? [line.command.do] : []));
  const last = lines.at(-1);
  const bays = last?.kind === 'totals' ? Object.values(last.totals.totals) : [];
  const people = ['technician', 'overtime'];
  const sums = bays.map((bay) =>
    Object.entries(bay).reduce((sum, [name, ms]) => (people.includes(name) ? sum : sum + ms), 0),
  );
  return { commands, sums };
}

/** What the owner and the manager put in order beside the day; tests/kit/every-command-of-* has them all. */
const ofTheAccount: readonly CommandName[] = [
  ...(['recordAttendance', 'addAttendance', 'correctAttendance', 'addClock', 'correctClock', 'addStay'] as const),
  ...([
    'correctStay',
    'correctHold',
    'closeMonth',
    'reopenMonth',
    'strikeEntry',
    'changeOwner',
    'mergeVehicles',
  ] as const),
  ...(['mergeCustomers', 'erasePersonalData', 'acceptImport', 'changeShop', 'changeSettings', 'setException'] as const),
  ...(['endException', 'changeSupplier', 'recordLiftInspection', 'allowOverdueLift', 'takeOutOfUse'] as const),
  ...(['putBackInUse', 'nameLiftingPoints'] as const),
];

describe('the examples', () => {
  let app: TestApp;
  beforeAll(async () => {
    app = await startApp();
  });
  afterAll(async () => {
    await app.stop();
  });
  const played = (text: string, speed: number) => play(text, { url: app.url, speed, code: app.server.setUpCode ?? '' });

  it('have every command of a day, and 32 400 000 ms of opening time stated for every bay', () => {
    const both = [said(day), said(wholeDay)];
    const used = new Set<string>(['setUpShop', ...ofTheAccount, ...both.flatMap(({ commands }) => commands)]);
    expect(commandNames.filter((name) => !used.has(name))).toEqual([]);
    expect(both.map(({ sums }) => sums)).toEqual([
      [32_400_000, 32_400_000, 32_400_000],
      [32_400_000, 32_400_000, 32_400_000],
    ]);
  });

  it('come out as stated, with a log without gaps and totals to the millisecond, at two speeds', async () => {
    const asFastAsItGoes = await played(day, 0);
    const paced = await played(day, 20_000);
    expect([asFastAsItGoes.differing, paced.differing]).toEqual([[], []]);
    const { shop: first, ...counts } = asFastAsItGoes;
    const { shop: second, ...same } = paced;
    expect(counts).toEqual({ accepted: 119, flagged: 4, refused: 24, contested: 1, differing: [], changes: 119 });
    expect(same).toEqual(counts);
    expect([first, second]).toEqual(['Sluice Lane Workshop', 'Sluice Lane Workshop 2']);
  }, 240_000);

  it('come out as stated: the second one, from the first call to the keys handed back', async () => {
    const { differing, shop, ...counts } = await played(wholeDay, 0);
    expect(differing).toEqual([]);
    expect({ shop, ...counts }).toEqual({
      shop: 'Tern Wharf Garage',
      accepted: 133,
      flagged: 1,
      refused: 16,
      contested: 0,
      changes: 133,
    });
  }, 240_000);

  it('are told where they do not come out as stated: an outcome, and a millisecond of a total', async () => {
    const wrong = day
      .replace('"worked": 2400000', '"worked": 2400001')
      .replace('{"refused": ["bay.nameTaken"]}', '{"refused": ["bay.occupied"]}');
    const { differing } = await played(wrong, 0);
    expect(differing).toHaveLength(2);
    expect(differing[0]).toMatch(/^Line 8 \(07:05\): refused \(bay\.nameTaken: .*but bay\.occupied was expected\.$/);
    expect(differing[1]).toContain('Gate floor, worked: 2400000 ms, stated are 2400001 ms');
  }, 240_000);
});

describe('a file to be played', () => {
  const head = day.split('\n')[1] ?? '';
  const end = '{"at": "18:00", "totals": {}}';
  it.each([
    ['is not JSON', `${head}\n{"at"`, 'Line 2: this is not one JSON object.'],
    ['does not begin with a shop', end, 'Line 1: the first line must set up the shop'],
    [
      'names an unknown command',
      `${head}\n{"at": "08:00", "by": "ada", "do": "paintIt", "with": {}}`,
      'Line 2: there is no command "paintIt".',
    ],
    [
      'goes back in time',
      `${head}\n{"at": "08:00", "totals": {}}\n{"at": "07:59:59", "totals": {}}`,
      'Line 3: 07:59:59 is before 08:00',
    ],
    ['states no totals', head, 'the last line must state the totals'],
    ['has a time that is none', `${head}\n{"at": "25:00", "totals": {}}`, 'Line 2: "at" must be a time of day'],
  ])('is refused with its line where it %s', (_what, text, words) => {
    expect(() => readScript(text)).toThrow(FaultyLine);
    expect(() => readScript(text)).toThrow(words);
  });
});
