// shell/ hides what stands around every screen: header, ways to the screens, who is signed in, whether the board is live.
// It guarantees that a board that has heard nothing says so over the whole width, and that every screen can be reached
// from every other by keyboard.
import { create } from 'zustand';

import type { Role } from '@holdfast/domain';

export type Hearing =
  /** No board is shown (signed out). */
  | { readonly kind: 'none' }
  | { readonly kind: 'live' }
  /** Nothing heard since `heardAt` (epoch ms). */
  | { readonly kind: 'stale'; readonly heardAt: number };

type ShellState = {
  readonly shopName: string | null;
  readonly person: { readonly name: string; readonly roles: readonly Role[] } | null;
  readonly hearing: Hearing;
  /** Cards that wait for this person (entries that need them). */
  readonly needsYou: number;
  readonly signOut: (() => void) | null;
};

/** Written by sign-in and by the live client with `useShell.setState`; the shell only reads it. */
export const useShell = create<ShellState>()(() => ({
  shopName: null,
  person: null,
  hearing: { kind: 'none' },
  needsYou: 0,
  signOut: null,
}));
