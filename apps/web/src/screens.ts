import type { ComponentType } from 'react';

import type { ScreenName } from './screen-paths.js';

type LoadScreen = () => Promise<ComponentType>;

/**
 * The screens that are there. Each adds itself with one line that names its folder; it is loaded when it is first shown,
 * has its link in the header from then on, and reads what its path names with wouter's useParams.
 */
export const screens: Readonly<Partial<Record<ScreenName, LoadScreen>>> = {
  style: async () => (await import('./style-page/style-page.js')).StylePage,
};
