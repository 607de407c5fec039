/**
 * The key under which a plate, a name or a place on a vehicle is found again however it was typed: upper case, without
 * accents, and nothing but letters and digits. "Ä-12 cd" and "a12CD" are one key. A text of signs alone keeps its signs,
 * so that no two different ones fall together on an empty key.
 */
export function foldKey(text: string): string {
  const plain = text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toUpperCase()
    .normalize('NFKC');
  const letters = plain.replace(/[^\p{L}\p{N}]+/gu, '');
  return letters === '' ? plain.replace(/\s+/gu, '') : letters;
}
