import { readFileSync } from 'node:fs';

import { describe, expect, it } from '@jest/globals';

import { ciede2000, contrast, distance, visionNames, type Lab } from './colour-measure.js';

type Tokens = Readonly<Record<string, string>>;

const css = readFileSync(new URL('./tokens.css', import.meta.url), 'utf8');
const block = (selector: string): string => {
  const start = css.indexOf(`\n${selector} {`);
  expect(start).toBeGreaterThanOrEqual(0);
  return css.slice(start, css.indexOf('\n}', start));
};

const colours = (text: string, pattern: RegExp): Tokens =>
  Object.fromEntries([...text.matchAll(pattern)].map(([, name, colour]) => [name ?? '', colour ?? '']));

const root = block(':root');
const light = colours(root, /--([a-z0-9-]+): light-dark\((#[0-9a-f]{6}), #[0-9a-f]{6}\)/g);
const dark = colours(root, /--([a-z0-9-]+): light-dark\(#[0-9a-f]{6}, (#[0-9a-f]{6})\)/g);
const sun = { ...light, ...colours(block(":root[data-theme='sun']"), /--([a-z0-9-]+): (#[0-9a-f]{6})/g) };
const themes: [name: string, tokens: Tokens][] = [
  ['light (and wall)', light],
  ['dark', dark],
  ['sun', sun],
];

const of = (tokens: Tokens, name: string): string => {
  const colour = tokens[name];
  if (colour === undefined) throw new RangeError(`tokens.css has no colour "${name}".`);
  return colour;
};

// Renderings in sRGB of the orange that marks high voltage: RAL 2003, the safety orange of ANSI Z535.1, and Munsell
// 8.75R 5.75/12.5. Paints and cables vary about these, so the distance kept from them is wide.
const highVoltageOranges = ['#fa842b', '#ff7900', '#e16845'];

describe.each(themes)('the tokens of %s', (_name, tokens) => {
  const grounds = ['bg', 'panel'].map((name) => of(tokens, name));

  it.each(['ink', 'ink-2', 'stitch', 'wait'])('have words in %s at 4.5:1 on every ground (WCAG 1.4.3)', (name) => {
    for (const ground of grounds) expect(contrast(of(tokens, name), ground)).toBeGreaterThanOrEqual(4.5);
  });

  it.each([
    ['on-ink', 'ink'],
    ['on-wait', 'wait'],
    ['on-stitch', 'stitch'],
  ])('have words in %s at 4.5:1 on %s', (word, ground) => {
    expect(contrast(of(tokens, word), of(tokens, ground))).toBeGreaterThanOrEqual(4.5);
  });

  it.each(['frame', 'work', 'wait', 'stitch'])('have marks in %s at 3:1 on every ground (WCAG 1.4.11)', (name) => {
    for (const ground of grounds) expect(contrast(of(tokens, name), ground)).toBeGreaterThanOrEqual(3);
  });

  describe.each(visionNames)('to %s sight', (vision) => {
    const apart = (one: string, other: string): number => distance(of(tokens, one), of(tokens, other), vision);

    it('keep somebody waits and temporary fix far apart', () => {
      expect(apart('wait', 'stitch')).toBeGreaterThanOrEqual(30);
    });

    it('keep both hues apart from all that is grey', () => {
      for (const grey of ['frame', 'work']) {
        expect(apart('wait', grey)).toBeGreaterThanOrEqual(15);
        expect(apart('stitch', grey)).toBeGreaterThanOrEqual(15);
      }
    });

    it.each(highVoltageOranges)('keep the stitched line apart from the high-voltage orange %s', (orange) => {
      expect(distance(of(tokens, 'stitch'), orange, vision)).toBeGreaterThanOrEqual(12);
    });
  });
});

describe('the measures', () => {
  it('give the published CIEDE2000 values (Sharma, Wu and Dalal 2005, table 1)', () => {
    const pairs: [one: Lab, other: Lab, published: number][] = [
      [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
      [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
      [[50, 0, 0], [50, -1, 2], 2.3669],
      [[50, 2.5, 0], [73, 25, -18], 27.1492],
      [[50, 2.5, 0], [58, 24, 15], 19.4535],
      [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
      [[22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 2.0373],
      [[2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
    ];
    for (const [one, other, published] of pairs) expect(ciede2000(one, other)).toBeCloseTo(published, 4);
  });

  it('give the contrast of WCAG 2.2: 21 for black on white, 1 for like on like', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#735c08', '#735c08')).toBe(1);
  });

  it('see red and green as near to each other without the cones that part them', () => {
    const apart = (vision: 'normal' | 'deutan'): number => distance('#a85a4a', '#7a7a3a', vision);
    expect(apart('deutan')).toBeLessThan(apart('normal') / 2);
  });
});
