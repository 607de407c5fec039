/** The beginning of a text, at most so many UTF-16 units, with no half of a sign at its end: the database takes none. */
export function cutText(text: string, longest: number): string {
  return text.length <= longest ? text : text.slice(0, longest).replace(/[\ud800-\udbff]$/, '');
}
