import { useText } from '../text/use-text.js';

/** The promised time of a visit in words, and by how much it is past at `now` (epoch ms); null without a promise. */
export const usePromiseWords = (now: number): ((promisedAt: number | null) => string | null) => {
  const { t, format } = useText();
  return (promisedAt) => {
    if (promisedAt === null) return null;
    const at = format.moment(promisedAt, now);
    if (promisedAt >= now) return t('floor.promised', { at });
    return t('floor.promisedLate', { at, duration: format.duration((now - promisedAt) / 60_000) });
  };
};
