/** Reads that are not on the board. Each says which hints make it stale; a change that touches one reads it again. */
import { QueryClient, useQuery, type UseQueryResult } from '@tanstack/react-query';

import { call } from './http.js';

export const queries = new QueryClient({
  defaultOptions: { queries: { retry: 2, staleTime: 30_000, refetchOnWindowFocus: true } },
});

/** `hints`: `job:<id>`, `vehicle:<id>`, `customers`, `parts`, `outstanding`, `bay-time`, `shop`, as changes carry them. */
export function useRead<T>(path: string | null, hints: readonly string[]): UseQueryResult<T> {
  return useQuery<T>({
    queryKey: ['read', path, ...hints],
    queryFn: () => call<T>('GET', path ?? ''),
    enabled: path !== null,
    placeholderData: (previous) => previous,
  });
}

/** `*` touches everything: after a snapshot nothing is known of what was missed. */
export function touchReads(touched: readonly string[]): void {
  void queries.invalidateQueries({
    predicate: ({ queryKey }) =>
      touched.includes('*') || queryKey.some((part) => typeof part === 'string' && touched.includes(part)),
  });
}
