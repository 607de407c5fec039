export type TextEncoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

export interface DecodedText {
  readonly text: string;
  readonly encoding: TextEncoding;
}

const marks: readonly (readonly [encoding: TextEncoding, mark: readonly number[]])[] = [
  ['utf-8', [0xef, 0xbb, 0xbf]],
  ['utf-16le', [0xff, 0xfe]],
  ['utf-16be', [0xfe, 0xff]],
];

/**
 * The text of a file, by its byte order mark, else as UTF-8 where it is well-formed, else as Windows-1252, in which older
 * spreadsheets save. Null where it is no text: it holds NUL signs, or begins like an archive (as .xlsx files do) or a PDF.
 */
export function decodeText(bytes: Uint8Array): DecodedText | null {
  const encoding = encodingOf(bytes);
  if (encoding === null) return null;
  // The decoder drops the mark itself.
  const text = encoding === 'windows-1252' ? fromWindows1252(bytes) : new TextDecoder(encoding).decode(bytes);
  return text.includes('\u0000') ? null : { text, encoding };
}

function encodingOf(bytes: Uint8Array): TextEncoding | null {
  const begins = (mark: readonly number[]) => mark.every((byte, at) => bytes[at] === byte);
  const marked = marks.find(([, mark]) => begins(mark));
  if (marked) return marked[0];
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 5));
  if (start.startsWith('PK\u0003\u0004') || start === '%PDF-') return null;
  if (looksLikeUtf16(bytes)) return 'utf-16le';
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/** Latin letters in UTF-16LE without a mark: most second bytes are nought. */
function looksLikeUtf16(bytes: Uint8Array): boolean {
  const looked = Math.min(bytes.length - (bytes.length % 2), 2_000);
  if (looked < 4) return false;
  let noughts = 0;
  for (let at = 1; at < looked; at += 2) if (bytes[at] === 0) noughts += 1;
  return noughts > looked / 4;
}

/** What 0x80 to 0x9f stand for (WHATWG Encoding, index windows-1252). Node 20 reads them as Latin-1 instead. */
const upper = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

function fromWindows1252(bytes: Uint8Array): string {
  const latin = new TextDecoder('latin1').decode(bytes);
  return latin.replace(/[\u0080-\u009f]/g, (sign) => upper.charAt(sign.charCodeAt(0) - 0x80));
}
