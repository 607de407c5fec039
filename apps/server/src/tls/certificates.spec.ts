import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createServer, connect } from 'node:tls';
import { authorityPage } from './authority-page.js';
import { isName, makeCertificates, namesOfThisMachine } from './certificates.js';

const dayMs = 86_400_000;
const now = new Date('2026-11-25T09:00:00Z');
const read = (file: string) => new X509Certificate(readFileSync(file));

let dataDir: string;

beforeEach(() => {
  dataDir = mkdtempSync(join(tmpdir(), 'holdfast-tls-'));
});

afterEach(() => {
  rmSync(dataDir, { recursive: true });
});

describe('certificates for the shop’s own network', () => {
  it('hold for each name and address, for at most 397 days, signed by an authority of ten years', async () => {
    const made = await makeCertificates(dataDir, ['Shop.example', 'shop.example', '192.168.1.4', '::1'], now);
    const certificate = read(made.certFile);
    const authority = read(made.authorityFile);
    expect(made.names).toEqual(['shop.example', '192.168.1.4', '::1']);
    expect(certificate.checkHost('shop.example')).toBe('shop.example');
    expect(certificate.checkIP('192.168.1.4')).toBe('192.168.1.4');
    expect(certificate.checkHost('other.example')).toBeUndefined();
    expect(certificate.verify(authority.publicKey)).toBe(true);
    expect(certificate.ca).toBe(false);
    expect(authority.ca).toBe(true);
    expect((Date.parse(certificate.validTo) - Date.parse(certificate.validFrom)) / dayMs).toBe(397);
    expect((Date.parse(authority.validTo) - now.getTime()) / dayMs).toBe(3_650);
    expect(made.fingerprint).toBe(authority.fingerprint256);
    for (const file of [made.keyFile, join(dataDir, 'tls', 'authority.key')]) {
      expect(statSync(file).mode & 0o777).toBe(0o600);
    }
  });

  it('keep their authority, so that devices install it once, until it would end before the certificate', async () => {
    const first = await makeCertificates(dataDir, ['localhost'], now);
    const later = await makeCertificates(dataDir, ['localhost'], new Date(now.getTime() + 3_000 * dayMs));
    expect(later).toMatchObject({ authorityIsNew: false, fingerprint: first.fingerprint });
    const late = await makeCertificates(dataDir, ['localhost'], new Date(now.getTime() + 3_300 * dayMs));
    expect(late.authorityIsNew).toBe(true);
    expect(late.fingerprint).not.toBe(first.fingerprint);
  });

  it('are accepted by a client that trusts the authority, and by no other', async () => {
    const made = await makeCertificates(dataDir, ['localhost', '127.0.0.1'], new Date(Date.now()));
    const server = createServer({ cert: readFileSync(made.certFile), key: readFileSync(made.keyFile) }, (socket) =>
      socket.end(),
    );
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const address = server.address();
    const port = typeof address === 'object' && address !== null ? address.port : 0;
    const reach = (ca: Buffer | undefined) =>
      new Promise<string>((resolve) => {
        const socket = connect({ port, host: '127.0.0.1', ...(ca === undefined ? {} : { ca }) }, () => {
          socket.destroy();
          resolve('trusted');
        });
        socket.on('error', (failure: Error) => resolve(failure.message));
      });
    expect(await reach(readFileSync(made.authorityFile))).toBe('trusted');
    expect(await reach(undefined)).toMatch(/unable to verify|self.signed/);
    await new Promise((resolve) => server.close(resolve));
  });

  it('are made for names of machines, not for anything else', () => {
    expect(['shop', 'shop.local', '10.0.0.1', 'fd00::2'].every(isName)).toBe(true);
    expect(['', 'a b', 'https://shop', '-shop', 'shop.', '*.shop'].some(isName)).toBe(false);
    expect(namesOfThisMachine()).toEqual(expect.arrayContaining(['localhost', '127.0.0.1', '::1']));
  });
});

describe('the page that installs the authority', () => {
  it('shows the fingerprint and the code, links the certificate, and lets no address break out', async () => {
    const made = await makeCertificates(dataDir, ['localhost'], now);
    const page = authorityPage({
      certificatePem: readFileSync(made.authorityFile, 'utf8'),
      pageUrl: 'https://shop.local:4650/authority?"><script>',
      certificateUrl: '/authority.crt',
    });
    expect(page).toContain(made.fingerprint);
    expect(page).toContain('href="/authority.crt"');
    expect(page).toContain('<svg width="232"');
    expect(page).not.toContain('<script');
  });
});
