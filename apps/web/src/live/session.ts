import type { CommandName } from '@holdfast/domain';
import type { ReadName, SessionView, SignedInView } from '@holdfast/contract';
import { create } from 'zustand';

import { useShell } from '../shell/shell-state.js';
import { wearShop } from '../text/shop-settings.js';
import { startBoard, stopBoard } from './board-store.js';
import { call, ProblemAnswer } from './http.js';

type SessionState =
  | { readonly kind: 'asking' }
  | { readonly kind: 'nobody' }
  | { readonly kind: 'unreachable' }
  | { readonly kind: 'signedIn'; readonly session: SessionView };

/** Who is signed in on this device, as the server says. */
export const useSession = create<{ readonly state: SessionState }>()(() => ({ state: { kind: 'asking' } }));

function enter(session: SessionView): void {
  wearShop(session.shop);
  useShell.setState({
    shopName: session.shop.name,
    person: { name: session.person.name, roles: session.person.roles },
    signOut: () => void signOut(),
  });
  useSession.setState({ state: { kind: 'signedIn', session } });
  const { id, roles } = session.person;
  const leads = roles.includes('owner') || roles.includes('manager');
  const audience = roles.every((role) => role === 'wallScreen') ? 'wall' : 'staff';
  startBoard(audience, (report) => leads || report.byId === id || report.personId === id, leave);
}

/** Nobody is signed in any more; what the device knew of the shop is forgotten. */
function leave(): void {
  stopBoard();
  useShell.setState({ shopName: null, person: null, signOut: null, hearing: { kind: 'none' }, needsYou: 0 });
  useSession.setState({ state: { kind: 'nobody' } });
}

export async function loadSession(): Promise<void> {
  try {
    enter(await call<SessionView>('GET', '/api/session'));
  } catch (failure) {
    if (failure instanceof ProblemAnswer) leave();
    else {
      useSession.setState({ state: { kind: 'unreachable' } });
      setTimeout(() => void loadSession(), 2_000);
    }
  }
}

/** Throws `ProblemAnswer` with the sentence to show. */
export async function signIn(shop: string, name: string, password: string): Promise<void> {
  enter(await call<SignedInView>('POST', '/api/session', { shop, name, password }));
}

async function signOut(): Promise<void> {
  await call('DELETE', '/api/session').catch(() => undefined);
  leave();
}

/** The session of the person who works here. Only below `SignedIn`. */
export function useSignedIn(): SessionView {
  const { state } = useSession();
  if (state.kind !== 'signedIn') throw new Error('nobody is signed in');
  return state.session;
}

export function useMay(): { command: (name: CommandName) => boolean; read: (name: ReadName) => boolean } {
  const { may } = useSignedIn();
  return { command: (name) => may.commands.includes(name), read: (name) => may.reads.includes(name) };
}
