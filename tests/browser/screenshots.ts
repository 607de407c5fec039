/** `npm run screenshots`: pictures of the demo on the built server, for the README, into `examples/screenshots/`. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { openBrowser, openWindow, signInAt, tablet } from '../kit/browser.js';
import { demoPlaces } from '../kit/demo-places.js';
import { startServerProcess } from '../kit/server-process.js';

const wanted = ['floor', 'my-bay', 'desk', 'job', 'parts-desk', 'hand-back', 'bay-time', 'outstanding', 'waiting'];
const folder = join('examples', 'screenshots');
const atADesk = { width: 1280, height: 1000 };
const mostBytes = 150_000;

const dataDir = mkdtempSync(join(tmpdir(), 'holdfast-screenshots-'));
mkdirSync(folder, { recursive: true });
const server = await startServerProcess({ dataDir, demo: 'on' });
const browser = await openBrowser();
try {
  for (const { name, path, who } of (await demoPlaces(server.url)).filter((place) => wanted.includes(place.name))) {
    const window = await openWindow(browser, { size: name === 'my-bay' ? tablet : atADesk });
    const { page, complaints } = window;
    await signInAt(page, server.url, who);
    await page.goto(`${server.url}${path}`);
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    await page.waitForLoadState('networkidle');
    await page.evaluate(() => document.fonts.ready);
    // Few colours: a palette is exact enough, and a third of the size.
    const picture = await sharp(await page.screenshot())
      .png({ palette: true, effort: 10 })
      .toBuffer();
    writeFileSync(join(folder, `${name}.png`), picture);
    process.stdout.write(`${name}.png: ${Math.round(picture.length / 1000)} kB\n`);
    if (picture.length > mostBytes || complaints.length > 0) {
      process.stderr.write(`${name}: over ${mostBytes / 1000} kB, or the page complained: ${complaints.join('; ')}\n`);
      process.exitCode = 1;
    }
    await window.close();
  }
} finally {
  await browser.close();
  await server.stop();
  rmSync(dataDir, { recursive: true, force: true });
}
