const go = (place: HTMLElement | null): void => {
  place?.scrollIntoView({ block: 'center' });
  place?.focus({ preventScroll: true });
};

/** Puts the focus on the row of a bay, or of a job, wherever on the floor it stands. */
export const goToBay = (name: string): void => {
  go(document.querySelector<HTMLElement>(`[data-bay="${CSS.escape(name)}"]`));
};

export const goToJob = (number: number): void => {
  go(document.querySelector<HTMLElement>(`.hf-bay-row[data-job="${String(number)}"], .hf-off-row[data-job="${String(number)}"]`));
};

export const goToFind = (): void => {
  go(document.querySelector<HTMLElement>('input[name="find"]'));
};
