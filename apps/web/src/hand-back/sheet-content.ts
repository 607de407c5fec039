import type { SheetContent } from '@holdfast/domain';

const sinceTheWholeDay = { wheels: [], sublets: [], release: null } as const;

/** What a sheet froze; those of before attempts, wheels and sublets were kept have none of them. */
export const sheetContentOf = (frozen: unknown): SheetContent => {
  const content = frozen as SheetContent;
  return {
    ...sinceTheWholeDay,
    ...content,
    concerns: content.concerns.map((concern) => ({ ...{ attempts: [], knownCauses: [] }, ...concern })),
    cautions: content.cautions.map((caution) => ({ ...{ standing: true }, ...caution })),
  };
};
