/** Where each screen stands. Paths are kept: people write them on whiteboards and in bookmarks. */
export const pathOf = {
  floor: '/floor',
  desk: '/desk',
  ready: '/ready',
  waiting: '/waiting',
  bay: '/bay',
  parts: '/parts',
  outstanding: '/outstanding',
  vehicle: '/vehicles/:id',
  job: '/jobs/:id',
  handBack: '/jobs/:id/hand-back',
  bayTime: '/bay-time',
  shop: '/shop',
  bayPage: '/shop/bays/:id',
  existingData: '/shop/existing-data',
  importedFile: '/shop/existing-data/:id',
  record: '/shop/record',
  wall: '/wall',
  style: '/style',
  signIn: '/sign-in',
  setUp: '/set-up',
} as const;

export type ScreenName = keyof typeof pathOf;

/** The screens with a link in the header, in its order; the others are reached from what they are about. */
export const navigation = [
  'floor',
  'desk',
  'ready',
  'waiting',
  'bay',
  'parts',
  'outstanding',
  'bayTime',
  'shop',
  'wall',
  'style',
] as const satisfies readonly ScreenName[];

export type NavScreen = (typeof navigation)[number];

/** Screens that stand alone, without the shell: before sign-in, and the one that is read from six metres. */
export const bareScreens: readonly ScreenName[] = ['wall', 'signIn', 'setUp'];

export const vehiclePath = (id: string): string => `/vehicles/${encodeURIComponent(id)}`;
export const jobPath = (id: string): string => `/jobs/${encodeURIComponent(id)}`;
export const bayPath = (id: string): string => `/shop/bays/${encodeURIComponent(id)}`;
export const handBackPath = (id: string): string => `${jobPath(id)}/hand-back`;
export const importedFilePath = (id: string): string => `${pathOf.existingData}/${encodeURIComponent(id)}`;
