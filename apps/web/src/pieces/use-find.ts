import type { FindView } from '@holdfast/contract';
import { useDeferredValue } from 'react';

import { useRead } from '../live/reads.js';

/** What begins with these letters; nothing below two of them. */
export const useFind = (typed: string): FindView['items'] => {
  const query = useDeferredValue(typed.trim());
  const path = query.length < 2 ? null : `/api/find?q=${encodeURIComponent(query)}`;
  const { data } = useRead<FindView>(path, ['find']);
  return path === null ? [] : (data?.items ?? []);
};
