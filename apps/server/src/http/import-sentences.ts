import { type ImportRowView, isTextKey, type Locale, say } from '@holdfast/contract';
import type { RowProblem } from '../import/ports.js';
import type { StoredBatch, StoredImportRow } from '../read/imports.js';

/** A row of a file with what is wrong with it as sentences: which column, what it says, why it is not taken. */
export function importRowOnTheWire(row: StoredImportRow, batch: StoredBatch, locale: Locale): ImportRowView {
  return {
    number: row.number,
    state: row.state,
    cells: [...row.cells],
    problems: row.problems.map((problem) => ({
      field: problem.field,
      column: columnOf(problem, batch),
      value: problem.value,
      code: problem.code,
      sentence: sentenceOf(problem, locale),
    })),
    made: row.made,
  };
}

function columnOf({ field }: RowProblem, { header, mapping }: StoredBatch): string | null {
  const column = field === null ? undefined : mapping[field];
  return column === undefined ? null : (header[column] ?? null);
}

function sentenceOf({ field, code, facts }: RowProblem, locale: Locale): string {
  const key = `import.bad.${code}`;
  const fieldKey = `import.field.${field ?? ''}`;
  const named = isTextKey(fieldKey) ? say(locale, fieldKey) : '';
  return isTextKey(key) ? say(locale, key, { ...facts, field: named }) : code;
}
