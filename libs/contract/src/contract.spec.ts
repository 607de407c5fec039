import { describe, expect, it } from '@jest/globals';
import { createHash } from 'node:crypto';
import { z } from 'zod';
import { commandNames, commands } from './commands/commands.js';
import { resume } from './live.js';
import { problemCodes, problems, problemType } from './problem.js';
import { isTextKey, locales } from './texts/catalogues.js';
import { say } from './texts/say.js';
import { acceptsContract, contractVersion } from './version.js';

/** SHA-256 over what clients send, with the version. */
const pinned = '01f4d327b6604f9a39ba11509e7caee993cebb8c571e32edc6b88d424e04d2ff';

describe('the contract', () => {
  it('changes only together with its version', () => {
    const sent = Object.fromEntries([...commandNames].sort().map((name) => [name, schemaOf(commands[name].schema)]));
    const text = JSON.stringify({ contractVersion, commands: sent, resume: schemaOf(resume) });
    const hash = createHash('sha256').update(text).digest('hex');
    const told =
      hash === pinned
        ? pinned
        : `${hash}: the contract has changed. Once a version was released, raise contractVersion in version.ts; then pin this hash here.`;
    expect(told).toBe(pinned);
  });

  it('is spoken by the client of this version and of the one before, by no other', () => {
    const taken = [-2, -1, 0, 1, 2].filter((apart) => acceptsContract(contractVersion + apart));
    expect(taken).toEqual([-1, 0]);
  });

  it('has a type of its own for each problem, with a status that is an error', () => {
    expect(new Set(problemCodes.map(problemType)).size).toBe(problemCodes.length);
    for (const code of problemCodes) {
      expect(problems[code].status).toBeGreaterThanOrEqual(400);
      expect(problems[code].status).toBeLessThan(600);
    }
  });

  it('has a sentence in each locale for every problem that is not a refusal of the domain', () => {
    const byDomain = ['refused', 'row.notFound', 'row.stale', 'row.versionMissing'];
    const values = { most: 1, type: 'x', limit: 'x', header: 'x', method: 'x', seconds: 1, traceId: 'x' };
    for (const code of problemCodes.filter((each) => !byDomain.includes(each))) {
      const key = `problem.${code}`;
      if (!isTextKey(key)) throw new Error(`There is no text ${key}.`);
      for (const locale of locales) expect(say(locale, key, values)).toMatch(/^[A-Z“].*[.]$/s);
    }
  });
});

function schemaOf(schema: z.ZodType): unknown {
  return z.toJSONSchema(schema, { io: 'input' });
}
