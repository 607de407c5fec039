import type { Role } from '@holdfast/domain';

import { pathOf, type NavScreen } from '../screen-paths.js';

const firstOf: Readonly<Record<Role, NavScreen>> = {
  owner: 'floor',
  manager: 'floor',
  technician: 'bay',
  partsClerk: 'parts',
  desk: 'desk',
  wallScreen: 'wall',
};

// Whoever leads looks at the whole floor first, whatever else they do.
const order: readonly Role[] = ['manager', 'owner', 'technician', 'partsClerk', 'desk', 'wallScreen'];

/** The path of the screen that fits the roles best. */
export const firstScreenOf = (roles: readonly Role[]): string => {
  const role = order.find((candidate) => roles.includes(candidate));
  return pathOf[role === undefined ? 'floor' : firstOf[role]];
};

/** Where the person wanted to go before they were asked to sign in; a path of this client only, else null. */
export const wayAfter = (search: string): string | null => {
  const wanted = new URLSearchParams(search).get('then');
  if (wanted === null || !/^\/(?![/\\])/.test(wanted)) return null;
  return wanted === '/' || wanted.startsWith(pathOf.signIn) ? null : wanted;
};
