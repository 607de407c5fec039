import type { ImportRowsPage, JobView } from '@holdfast/contract';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import { startApp, type TestApp, type TestClient, type TestShop } from '../kit/app.js';
import { checkedImport, uploaded } from '../kit/import-file.js';
import { checkInMany } from '../kit/many-vehicles.js';

// A shop brings 20 000 vehicles in while its floor works on: 150 rows are bad, and every one of them is listed.
const rows = 20_000;
const bad = 150;
const people = 4;
const pauseMs = 15;

/** Each 133rd row repeats the plate of the one before, has no plate, or a drive that nobody knows. */
function file(): { readonly text: string; readonly wrong: ReadonlySet<number> } {
  const lines = ['Plate,Description,VIN,Customer,Phone,Fuel'];
  const wrong = new Set<number>();
  for (let n = 0; n < rows; n += 1) {
    const isBad = n % 133 === 132 && wrong.size < bad;
    if (isBad) wrong.add(n + 2);
    const kind = wrong.size % 3;
    const plate = isBad && kind === 0 ? `IM ${String(n - 1)}` : isBad && kind === 1 ? '' : `IM ${String(n)}`;
    const drive = isBad && kind === 2 ? 'steam' : 'diesel';
    const owner = Math.floor(n / 3);
    lines.push(`${plate},"Van, number ${String(n)}",,Keeper ${String(owner)},01632 ${String(owner)},${drive}`);
  }
  return { text: `${lines.join('\r\n')}\r\n`, wrong };
}

const p95 = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length * 0.95)] ?? Number.NaN;

describe('20 000 vehicles from a file', () => {
  let app: TestApp;
  let shop: TestShop;
  let jobs: readonly string[];
  let technician: TestClient;
  const versions = new Map<string, number>();
  beforeAll(async () => {
    app = await startApp();
    shop = await app.newShop('Mole Head');
    jobs = (await checkInMany(shop.owner, 12)).map(({ jobId }) => jobId);
    technician = await shop.signIn('technician');
    for (const jobId of jobs) {
      const { job } = (await technician.get(`/api/jobs/${jobId}`)).json as JobView;
      versions.set(jobId, job.version);
    }
  });
  afterAll(() => app.stop());

  /** As a client does: one that the server cannot take now is sent again with its key, and the wait counts. */
  async function untilTaken(note: { jobId: string; version: number; note: string }): Promise<void> {
    for (const key = randomUUID(); ;) {
      const answer = await technician.command('setBoardNote', note, { key });
      if (answer.status === 200) return;
      expect(answer.status).toBe(503);
      await wait(200);
    }
  }

  /** People who each write notes to visits of their own, wait a moment and go on, until told to stop; ms of each command. */
  function floorAtWork(): { stop: () => Promise<readonly number[]> } {
    const state = { on: true };
    const times: number[] = [];
    const person = async (at: number): Promise<void> => {
      for (let n = 0; state.on; n += 1) {
        const jobId = jobs[at * 3 + (n % 3)] ?? '';
        const version = versions.get(jobId) ?? 0;
        const began = performance.now();
        await untilTaken({ jobId, version, note: `Note ${String(n)}` });
        times.push(performance.now() - began);
        versions.set(jobId, version + 1);
        await new Promise((resolve) => setTimeout(resolve, pauseMs));
      }
    };
    const working = Promise.all(Array.from({ length: people }, (_none, at) => person(at)));
    return {
      async stop() {
        state.on = false;
        await working;
        return times;
      },
    };
  }
  const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
  const count = async () => {
    const { rows: counted } = await app.database.superuser.query<{ vehicles: number; customers: number; seq: number }>(
      `select (select count(*) from vehicle where shop_id = $1 and plate like 'IM %')::int as vehicles,
        (select count(*) from customer where shop_id = $1 and name like 'Keeper %')::int as customers`,
      [shop.id],
    );
    return counted[0];
  };

  it('are listed, wait, and come in as exactly the good ones, while commands take at most twice as long', async () => {
    const { text, wrong } = file();
    expect(wrong.size).toBe(bad);
    const warming = floorAtWork();
    await wait(2_000);
    await warming.stop();

    const alone = floorAtWork();
    await wait(8_000);
    const without = await alone.stop();

    const beside = floorAtWork();
    const began = performance.now();
    const view = await uploaded(shop.owner, 'vehicles', text);
    const staged = performance.now();
    const checked = await checkedImport(shop.owner, view);
    const looked = performance.now();
    expect(checked.batch).toMatchObject({ state: 'checked', rowCount: rows, goodCount: rows - bad, badCount: bad });
    expect(await count()).toMatchObject({ vehicles: 0, customers: 0 });
    const listed: number[] = [];
    for (let after = ''; ;) {
      const page = (await shop.owner.get(`/api/imports/${view.batch.id}/rows?state=bad&limit=100${after}`))
        .json as ImportRowsPage;
      for (const { number, problems } of page.items) {
        listed.push(number);
        expect(problems[0]?.sentence).toMatch(/\w/);
      }
      if (page.next === null) break;
      after = `&after=${page.next}`;
    }
    expect(new Set(listed)).toEqual(wrong);
    const accepting = performance.now();
    await shop.owner.accepted('acceptImport', { importId: view.batch.id, version: checked.batch.version });
    const accepted = performance.now();
    const during = await beside.stop();
    expect(await count()).toMatchObject({ vehicles: rows - bad });
    const { rows: strange } = await app.database.superuser.query(
      `select v.plate from vehicle v where v.shop_id = $1 and v.plate like 'IM %' and not exists
        (select from customer c where c.shop_id = $1 and c.id = v.customer_id and c.name = 'Keeper ' || (substr(v.plate, 4)::int / 3))`,
      [shop.id],
    );
    expect(strange).toEqual([]);
    const figures = {
      p95AloneMs: p95(without),
      p95BesideMs: p95(during),
      longestBesideMs: Math.max(...during),
      commandsAlone: without.length,
      commandsBeside: during.length,
      stagedMs: staged - began,
      lookedAtMs: looked - staged,
      acceptedMs: accepted - accepting,
    };
    process.stdout.write(`${JSON.stringify(figures)}\n`);
    expect(figures.p95BesideMs).toBeLessThanOrEqual(2 * figures.p95AloneMs);
  });
});
