import type { ComponentType } from 'react';

import type { ScreenName } from './screen-paths.js';

type LoadScreen = () => Promise<ComponentType>;

/**
 * The screens that are there. Each adds itself with one line that names its folder; it is loaded when it is first shown,
 * has its link in the header from then on, and reads what its path names with wouter's useParams.
 */
export const screens: Readonly<Partial<Record<ScreenName, LoadScreen>>> = {
  floor: async () => (await import('./floor/floor.js')).Floor,
  bay: async () => (await import('./my-bay/my-bay.js')).MyBay,
  signIn: async () => (await import('./sign-in/sign-in.js')).SignIn,
  setUp: async () => (await import('./set-up/set-up.js')).SetUp,
  desk: async () => (await import('./desk/desk.js')).DeskScreen,
  ready: async () => (await import('./ready/ready.js')).ReadyScreen,
  job: async () => (await import('./job/job.js')).JobScreen,
  handBack: async () => (await import('./hand-back/hand-back.js')).HandBackScreen,
  vehicle: async () => (await import('./vehicle/vehicle.js')).VehicleScreen,
  waiting: async () => (await import('./waiting/waiting-screen.js')).WaitingScreen,
  parts: async () => (await import('./parts-desk/parts-desk-screen.js')).PartsDeskScreen,
  outstanding: async () => (await import('./outstanding/outstanding-screen.js')).OutstandingScreen,
  bayTime: async () => (await import('./bay-time/bay-time-screen.js')).BayTimeScreen,
  shop: async () => (await import('./shop/shop-screen.js')).ShopScreen,
  bayPage: async () => (await import('./shop/shop-screen.js')).BayPageScreen,
  existingData: async () => (await import('./import/existing-data-screen.js')).ExistingDataScreen,
  importedFile: async () => (await import('./import/imported-file-screen.js')).ImportedFileScreen,
  record: async () => (await import('./record/record-screen.js')).RecordScreen,
  wall: async () => (await import('./wall/wall-screen.js')).WallScreen,
  style: async () => (await import('./style-page/style-page.js')).StylePage,
};
