import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import type { RunningServer } from '../../apps/server/src/serve.js';
import { makeCertificates } from '../../apps/server/src/tls/certificates.js';
import { startApp, type TestApp, type TestShop, testPassword } from '../kit/app.js';
import { openBrowser, openWindow, signInAt } from '../kit/browser.js';

// The shop's own network: a name that is not loopback. Chromium is told where the name leads, as the shop's router would.
const host = 'workshop.holdfast.test';

describe('on the shop’s own network', () => {
  let plain: TestApp;
  let secure: RunningServer;
  let shop: TestShop;
  let browser: Browser;
  let folder: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'holdfast-tls-'));
    const made = await makeCertificates(folder, [host], new Date());
    plain = await startApp();
    shop = await plain.newShop('Outer Mole');
    secure = await plain.another({ tls: { certFile: made.certFile, keyFile: made.keyFile } });
    browser = await openBrowser([`--host-resolver-rules=MAP ${host} 127.0.0.1`]);
  });
  afterAll(async () => {
    await browser.close();
    await plain.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  const at = (url: string) => url.replace('127.0.0.1', host).replace('localhost', host);

  it('signing in, the live board and a photo work over HTTPS', async () => {
    const window = await openWindow(browser, { ignoreHTTPSErrors: true });
    const { page } = window;
    await signInAt(page, at(secure.url), {
      shop: shop.name,
      name: shop.owner.session.person.name,
      password: testPassword,
    });
    await page.goto(`${at(secure.url)}/floor`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await page.evaluate(() => isSecureContext)).toBe(true);
    const cookies = await page.context().cookies();
    expect(cookies.map(({ name, secure, httpOnly, sameSite }) => ({ name, secure, httpOnly, sameSite }))).toEqual([
      { name: '__Host-holdfast', secure: true, httpOnly: true, sameSite: 'Lax' },
    ]);
    await shop.owner.accepted('addBay', {
      name: 'Bay by the water',
      spots: 1,
      equipment: [{ kind: 'flat', inUse: true, grips: null }],
    });
    await page.locator('[data-bay="Bay by the water"]').first().waitFor({ timeout: 2_000 });
    const picture = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#808080' } })
      .png()
      .toBuffer();
    const uploaded = await page.evaluate(
      async (bytes) => {
        const form = new FormData();
        form.append('file', new Blob([new Uint8Array(bytes)], { type: 'image/png' }), 'step.png');
        const answer = await fetch('/api/uploads', {
          method: 'POST',
          body: form,
          headers: { 'idempotency-key': crypto.randomUUID() },
        });
        const view = (await answer.json()) as { content: string; width: number };
        const shown = await fetch(`/api/photos/${view.content}`);
        return {
          status: answer.status,
          width: view.width,
          shown: shown.status,
          type: shown.headers.get('content-type'),
        };
      },
      [...picture],
    );
    expect(uploaded).toEqual({ status: 200, width: 40, shown: 200, type: 'image/jpeg' });
    expect(window.complaints).toEqual([]);
    await window.picture('https-floor');
    await window.close();
  });

  it('signing in over plain http from another name is refused with what to do', async () => {
    const window = await openWindow(browser);
    await window.page.goto(`${at(plain.url)}/sign-in`);
    await window.page.getByText('npm run tls').first().waitFor();
    const answer = await window.page.evaluate(
      async (body) => {
        const said = await fetch('/api/session', {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(body),
        });
        return { status: said.status, ...((await said.json()) as { code: string; detail: string }) };
      },
      { shop: shop.name, name: shop.owner.session.person.name, password: testPassword },
    );
    expect(answer).toMatchObject({ status: 403, code: 'session.needsHttps' });
    expect(answer.detail).toMatch(/npm run tls/);
    await window.picture('plain-http-refused');
    await window.close();
  });
});
