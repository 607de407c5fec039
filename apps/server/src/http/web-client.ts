import type { FastifyAdapter } from '@nestjs/platform-fastify';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import type { Config } from '../config.js';
import { webClientFolder } from '../installation/places.js';
import type { HttpServer } from './http-types.js';

/** The built browser client, the same from the sources and from the built files. */
const oneYear = 'public, max-age=31536000, immutable';

const mediaTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};

interface ClientFile {
  readonly body: Buffer;
  /** Null where it would not be smaller. */
  readonly zipped: Buffer | null;
  readonly tag: string;
  readonly mediaType: string;
}

/**
 * Serves the browser client, each file read and compressed once, when it is first asked for. Files under assets/ carry
 * a hash in their name and are kept by browsers for a year; every other address that is not of the API is a screen of
 * the client and gets its page, which browsers ask for anew each time.
 */
export function serveWebClient(adapter: FastifyAdapter): void {
  const server = adapter.getInstance<HttpServer>();
  const names = new Set(existsSync(webClientFolder) ? filesIn(webClientFolder) : []);
  const files = new Map<string, Promise<ClientFile>>();
  const fileOf = (name: string) => {
    const file = files.get(name) ?? readClientFile(name);
    files.set(name, file);
    return file;
  };
  server.get('/*', async (request, reply) => {
    const path = decodeURIComponent(request.url.split('?', 1)[0] ?? '').slice(1);
    const isScreen = /^[\w/-]*$/.test(path) && path !== 'api' && !/^(api|assets|live)\//.test(path);
    const name = names.has(path) ? path : isScreen ? 'index.html' : null;
    if (name === null || !names.has(name)) {
      reply.callNotFound();
      return reply;
    }
    const file = await fileOf(name);
    reply.header('etag', file.tag).header('cache-control', name.startsWith('assets/') ? oneYear : 'no-cache');
    if (request.headers['if-none-match'] === file.tag) return reply.code(304).send();
    reply.header('content-type', file.mediaType).header('vary', 'accept-encoding');
    const takesGzip = /\bgzip\b/.test(request.headers['accept-encoding'] ?? '');
    if (file.zipped === null || !takesGzip) return reply.send(file.body);
    return reply.header('content-encoding', 'gzip').send(file.zipped);
  });
}

async function readClientFile(name: string): Promise<ClientFile> {
  const body = await readFile(join(webClientFolder, name));
  const zipped = await promisify(gzip)(body, { level: 9 });
  return {
    body,
    zipped: zipped.length < body.length * 0.9 ? zipped : null,
    tag: `"${createHash('sha256').update(body).digest('base64url').slice(0, 22)}"`,
    mediaType: mediaTypes[extname(name)] ?? 'application/octet-stream',
  };
}

/**
 * The page from which devices install the shop's authority, also over plain HTTP: that is how it gets there. Nothing is
 * served where `npm run tls` was never run.
 */
export function serveAuthority(adapter: FastifyAdapter, { dataDir }: Pick<Config, 'dataDir'>): void {
  const server = adapter.getInstance<HttpServer>();
  // Loaded when it is asked for: the certificate library is large and most servers never need it.
  const certificate = async () => {
    const { authorityFileIn } = await import('../tls/certificates.js');
    const file = authorityFileIn(dataDir);
    return existsSync(file) ? readFile(file, 'utf8') : null;
  };
  server.get('/authority', async (request, reply) => {
    const certificatePem = await certificate();
    if (certificatePem === null) {
      reply.callNotFound();
      return reply;
    }
    const { authorityPage } = await import('../tls/authority-page.js');
    const pageUrl = `${request.protocol}://${request.host}/authority`;
    const page = authorityPage({ certificatePem, pageUrl, certificateUrl: '/authority.crt' });
    return reply.header('content-type', 'text/html; charset=utf-8').send(page);
  });
  server.get('/authority.crt', async (_request, reply) => {
    const certificatePem = await certificate();
    if (certificatePem === null) {
      reply.callNotFound();
      return reply;
    }
    return reply.header('content-type', 'application/x-x509-ca-cert').send(certificatePem);
  });
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    );
}
