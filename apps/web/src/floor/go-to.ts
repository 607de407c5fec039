/** False where there is no such place on the screen. */
const go = (place: HTMLElement | null): boolean => {
  place?.scrollIntoView({ block: 'center' });
  place?.focus({ preventScroll: true });
  return place !== null;
};

const bayRow = (name: string): HTMLElement | null =>
  document.querySelector<HTMLElement>(`[data-bay="${CSS.escape(name)}"]`);

/** Puts the focus on the row of a bay, or of a job, wherever on the floor it stands. */
export const goToBay = (name: string): void => {
  go(bayRow(name));
};

export const goToJob = (number: number): boolean =>
  go(
    document.querySelector<HTMLElement>(
      `.hf-bay-row[data-job="${String(number)}"], .hf-off-row[data-job="${String(number)}"]`,
    ),
  );

export const goToFind = (): void => {
  go(document.querySelector<HTMLElement>('input[name="find"]'));
};

/** A layer that closes gives the focus back first, to where it came from. */
const afterLayersMs = 60;

/** The focus alone, without moving what is in sight. */
export const focusBay = (name: string): void => {
  setTimeout(() => {
    bayRow(name)?.focus({ preventScroll: true });
  }, afterLayersMs);
};
