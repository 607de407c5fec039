/** What this device keeps for a person between two visits of the page. Nothing that the shop's record needs. */

// Storage may be forbidden on a device; it then lasts as long as the page.
const whilePageLasts = new Map<string, string>();

export const remembered = (key: string): string | null => {
  try {
    return localStorage.getItem(key) ?? whilePageLasts.get(key) ?? null;
  } catch {
    return whilePageLasts.get(key) ?? null;
  }
};

export const remember = (key: string, value: string): void => {
  whilePageLasts.set(key, value);
  try {
    localStorage.setItem(key, value);
  } catch {
    return;
  }
};
