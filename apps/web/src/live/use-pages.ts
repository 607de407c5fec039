import { useInfiniteQuery } from '@tanstack/react-query';

import { call } from './http.js';

interface Page<Item> {
  readonly items: readonly Item[];
  readonly next: string | null;
}

export interface Pages<P> {
  /** The pages read so far, in order; empty until the first is here. */
  readonly pages: readonly P[];
  readonly isPending: boolean;
  readonly isFailed: boolean;
  /** Reads the next page; null on the last. */
  readonly more: (() => void) | null;
}

/** A paged read, page after page; a change that touches one of the hints reads again what is shown. `path` has its query. */
export function usePages<P extends Page<unknown>>(path: string, hints: readonly string[]): Pages<P> {
  const read = useInfiniteQuery({
    queryKey: ['read', 'pages', path, ...hints],
    queryFn: ({ pageParam }) =>
      call<P>('GET', pageParam === null ? path : `${path}&after=${encodeURIComponent(pageParam)}`),
    initialPageParam: null as string | null,
    getNextPageParam: (last: P) => last.next,
  });
  return {
    pages: read.data?.pages ?? [],
    isPending: read.isPending,
    isFailed: read.isError,
    more: read.hasNextPage
      ? () => {
          void read.fetchNextPage();
        }
      : null,
  };
}
