/** Whether the name was typed, give or take blanks and capitals. */
export const isTyped = (name: string, typed: string): boolean => {
  const folded = (words: string): string => words.trim().replace(/\s+/g, ' ').toLowerCase();
  return folded(name) === folded(typed);
};
