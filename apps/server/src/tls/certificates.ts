// The certificate library finds its parts through decorators and wants this loaded before it.
import 'reflect-metadata';
import * as x509 from '@peculiar/x509';
import { createHash, randomBytes, type webcrypto } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname, networkInterfaces } from 'node:os';
import { isIP } from 'node:net';
import { join } from 'node:path';
import { readSecretFile, writeSecretFile } from '../secret-file.js';

/**
 * This folder hides how HTTPS comes to a network that has no public name: an authority of the shop's own, made once and
 * kept, signs a certificate for the names and addresses of this machine. It guarantees that private keys lie in files
 * of mode 0600 and never leave the data folder. The server uses the files only when TLS_CERT and TLS_KEY name them.
 */
export interface Certificates {
  readonly certFile: string;
  readonly keyFile: string;
  readonly authorityFile: string;
  /** SHA-256 of the authority's certificate, as devices show it: pairs of hexadecimal digits with colons. */
  readonly fingerprint: string;
  /** True when the devices must install the authority (again). */
  readonly authorityIsNew: boolean;
  readonly names: readonly string[];
}

const dayMs = 86_400_000;
const authorityDays = 3_650;
/** Apple's and Chrome's limit for certificates is 398 days; one day is kept back for clocks that differ. */
const certificateDays = 397;
const algorithm = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;

/** Where the authority's certificate lies; only its certificate may be given out. */
export function authorityFileIn(dataDir: string): string {
  return join(dataDir, 'tls', 'authority.crt');
}

/**
 * Makes the server's key and certificate in `tls` under the data folder, valid from a day before `now` (clocks of
 * devices differ) for 397 days. The authority is made when there is none, or when it would end before the certificate:
 * ten years. `names` are DNS names and IP addresses; each is taken over once.
 */
export async function makeCertificates(dataDir: string, names: readonly string[], now: Date): Promise<Certificates> {
  const folder = join(dataDir, 'tls');
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const ends = new Date(now.getTime() + (certificateDays - 1) * dayMs);
  const kept = await keptAuthority(dataDir);
  const stillGood = kept !== undefined && kept.certificate.notAfter > ends;
  const authority = stillGood ? kept : await newAuthority(dataDir, now);
  const keys = await newKeys();
  const wanted = [...new Set(names.map((name) => name.toLowerCase()))];
  const certificate = await x509.X509CertificateGenerator.create({
    serialNumber: newSerialNumber(),
    subject: [{ CN: [wanted[0] ?? 'localhost'] }],
    issuer: authority.certificate.subject,
    notBefore: new Date(now.getTime() - dayMs),
    notAfter: ends,
    publicKey: keys.publicKey,
    signingKey: authority.key,
    signingAlgorithm: algorithm,
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(
        wanted.map((value) => ({ type: isIP(value) === 0 ? 'dns' : 'ip', value }) as const),
      ),
      await x509.AuthorityKeyIdentifierExtension.create(authority.certificate.publicKey),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  const certFile = join(folder, 'server.crt');
  const keyFile = join(folder, 'server.key');
  writeSecretFile(keyFile, await pemOf(keys.privateKey));
  writeFileSync(certFile, `${certificate.toString('pem')}\n`);
  return {
    certFile,
    keyFile,
    authorityFile: authorityFileIn(dataDir),
    fingerprint: fingerprintOf(authority.certificate),
    authorityIsNew: !stillGood,
    names: wanted,
  };
}

/** This machine's names and addresses as others on its network call it, and what it calls itself. */
export function namesOfThisMachine(): string[] {
  const full = hostname();
  const short = full.split('.')[0] ?? full;
  const addresses = Object.values(networkInterfaces())
    .flatMap((addressesOfOne) => addressesOfOne ?? [])
    // An address of one link alone is written with the name of the link, which no certificate can carry.
    .filter(({ internal, address }) => !internal && !/^fe[89ab]/i.test(address))
    .map(({ address }) => address);
  return [full, short, `${short}.local`, 'localhost', ...addresses, '127.0.0.1', '::1'].filter(isName);
}

/** Whether a certificate can be made for `text`: a DNS name of letters, digits, dots and hyphens, or an address. */
export function isName(text: string): boolean {
  return isIP(text) !== 0 || /^[a-z0-9]([a-z0-9-]*[a-z0-9])?(\.[a-z0-9]([a-z0-9-]*[a-z0-9])?)*$/i.test(text);
}

/** SHA-256 of a certificate in PEM or as read, in pairs of hexadecimal digits with colons. */
export function fingerprintOf(certificate: string | x509.X509Certificate): string {
  const read = typeof certificate === 'string' ? new x509.X509Certificate(certificate) : certificate;
  const digest = createHash('sha256').update(new Uint8Array(read.rawData)).digest('hex').toUpperCase();
  return digest.match(/../g)?.join(':') ?? digest;
}

interface Authority {
  readonly certificate: x509.X509Certificate;
  readonly key: webcrypto.CryptoKey;
}

async function keptAuthority(dataDir: string): Promise<Authority | undefined> {
  const keyText = readSecretFile(authorityKeyFileIn(dataDir));
  if (keyText === undefined || !existsSync(authorityFileIn(dataDir))) return undefined;
  const key = await crypto.subtle.importKey('pkcs8', x509.PemConverter.decodeFirst(keyText), algorithm, false, [
    'sign',
  ]);
  return { certificate: new x509.X509Certificate(readFileSync(authorityFileIn(dataDir), 'utf8')), key };
}

async function newAuthority(dataDir: string, now: Date): Promise<Authority> {
  const keys = await newKeys();
  const certificate = await x509.X509CertificateGenerator.createSelfSigned({
    serialNumber: newSerialNumber(),
    // Devices list it under this name; the digits tell two shops' authorities apart.
    name: [{ CN: [`Holdfast on ${hostname()} (${randomBytes(2).toString('hex')})`] }],
    notBefore: new Date(now.getTime() - dayMs),
    notAfter: new Date(now.getTime() + authorityDays * dayMs),
    keys,
    signingAlgorithm: algorithm,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  writeSecretFile(authorityKeyFileIn(dataDir), await pemOf(keys.privateKey));
  writeFileSync(authorityFileIn(dataDir), `${certificate.toString('pem')}\n`);
  return { certificate, key: keys.privateKey };
}

function authorityKeyFileIn(dataDir: string): string {
  return join(dataDir, 'tls', 'authority.key');
}

async function newKeys(): Promise<webcrypto.CryptoKeyPair> {
  return crypto.subtle.generateKey(algorithm, true, ['sign', 'verify']);
}

async function pemOf(key: webcrypto.CryptoKey): Promise<string> {
  return `${x509.PemConverter.encode(await crypto.subtle.exportKey('pkcs8', key), 'PRIVATE KEY')}\n`;
}

// RFC 5280 4.1.2.2: positive and at most 20 octets; a first digit below 8 keeps it positive.
function newSerialNumber(): string {
  return `5${randomBytes(15).toString('hex')}1`;
}
