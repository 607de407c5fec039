/** What cautions forbid as one ICU message by `code`, out of the texts `caution.<code>.forbids`. */
export function forbidsByCode(cautions: Readonly<Record<string, string>>): string {
  const cases = Object.entries(cautions).map(([key, words]) => `${key.split('.')[1] ?? 'other'} {${words}}`);
  return `{code, select, ${cases.join(' ')}}`;
}
