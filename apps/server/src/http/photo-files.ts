import { createHash, randomBytes } from 'node:crypto';
import { access, mkdir, open, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { limitedTo } from '../auth/limited-to.js';

/** A photo made safe: drawn anew as JPEG, upright, without what the camera wrote beside it. */
export interface StoredPhoto {
  readonly content: string;
  readonly width: number;
  readonly height: number;
  readonly bytes: number;
}

export type PhotoSize = 'full' | 'small';

const longestSide: Readonly<Record<PhotoSize, number>> = { full: 2_560, small: 480 };
/** Of the picture as it comes in; a small file may unpack to far more. */
const mostPixels = 60_000_000;
const quality = 82;

/**
 * Photos under `<data folder>/photos/<shop>/<SHA-256>.jpg`. They are named by their content, written beside their place
 * and renamed, so a file that is there is whole. Two are drawn at once; the drawing library is loaded with the first.
 */
export class PhotoFiles {
  private readonly inTurn = limitedTo(2, 30);

  constructor(private readonly folder: string) {}

  /** Null where the bytes are no JPEG, PNG or WebP that can be read. Rejects with `Overloaded` when too many wait. */
  async add(shopId: string, picture: Buffer): Promise<StoredPhoto | null> {
    if (!isPhoto(picture)) return null;
    const drawn = await this.inTurn(() => draw(picture, 'full'));
    if (drawn === null) return null;
    const content = createHash('sha256').update(drawn.data).digest('hex');
    await this.write(shopId, `${content}.jpg`, drawn.data);
    return { content, width: drawn.width, height: drawn.height, bytes: drawn.data.length };
  }

  /** The bytes of a stored photo, or null where there is no such file. */
  async read(shopId: string, content: string, size: PhotoSize): Promise<Buffer | null> {
    const full = join(this.folder, shopId, `${content}.jpg`);
    if (!(await isThere(full))) return null;
    if (size === 'full') return readFile(full);
    const small = join(this.folder, shopId, `${content}.small.jpg`);
    if (await isThere(small)) return readFile(small);
    const drawn = await this.inTurn(async () => draw(await readFile(full), 'small'));
    if (drawn === null) return null;
    await this.write(shopId, `${content}.small.jpg`, drawn.data);
    return drawn.data;
  }

  /** Takes photos away for good, in both sizes; those that are not there are none the less gone. */
  async remove(shopId: string, contents: readonly string[]): Promise<void> {
    for (const content of contents) {
      await rm(join(this.folder, shopId, `${content}.jpg`), { force: true });
      await rm(join(this.folder, shopId, `${content}.small.jpg`), { force: true });
    }
  }

  private async write(shopId: string, name: string, data: Buffer): Promise<void> {
    const folder = join(this.folder, shopId);
    const place = join(folder, name);
    if (await isThere(place)) return;
    await mkdir(folder, { recursive: true, mode: 0o700 });
    const draft = `${place}.${randomBytes(6).toString('hex')}`;
    try {
      const file = await open(draft, 'wx', 0o600);
      try {
        await file.writeFile(data);
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(draft, place);
    } catch (failure) {
      await rm(draft, { force: true });
      throw failure;
    }
  }
}

async function draw(picture: Buffer, size: PhotoSize): Promise<{ data: Buffer; width: number; height: number } | null> {
  const { default: sharp } = await import('sharp');
  try {
    const side = longestSide[size];
    const { data, info } = await sharp(picture, { limitInputPixels: mostPixels, failOn: 'error' })
      .rotate()
      .resize({ width: side, height: side, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .jpeg({ quality })
      .toBuffer({ resolveWithObject: true });
    return { data, width: info.width, height: info.height };
  } catch {
    // Cut short, broken or far too large when unpacked: all of it is no photo to us.
    return null;
  }
}

/** By its first bytes, so that none of the library's other readers ever sees what a stranger sent. */
function isPhoto(picture: Buffer): boolean {
  const start = picture.subarray(0, 12).toString('latin1');
  return (
    start.startsWith('\xff\xd8\xff') ||
    start.startsWith('\x89PNG\r\n\x1a\n') ||
    (start.startsWith('RIFF') && start.endsWith('WEBP'))
  );
}

async function isThere(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
