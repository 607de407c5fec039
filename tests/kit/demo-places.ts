/** The screens that somebody who is signed in can look at, and where the demo has something to show on each. */
import type { DemoView, JobsPage, JobView, SignedInView } from '@holdfast/contract';
import { request } from './server-process.js';

export interface SignIn {
  readonly shop: string;
  readonly name: string;
  readonly password: string;
}

export const placeNames = [
  'floor',
  'desk',
  'check-in',
  'booking',
  'check-in-booked',
  'waiting',
  'my-bay',
  'parts-desk',
  'outstanding',
  'job',
  'vehicle',
  'hand-back',
  'sheet',
  'bay-time',
  'shop',
  'wall',
  'marks',
] as const;
export type PlaceName = (typeof placeNames)[number];

export interface Place {
  readonly name: PlaceName;
  readonly path: string;
  /** Whoever works at this screen most. */
  readonly who: SignIn;
}

const managerName = 'Henrik Stowe';
/** In his bay stands an estate car with a caution that is worked on. */
const technicianName = 'Tomasz Lind';

/** Every screen behind the sign-in; of the visits here, the one with most in the way of its hand-back. */
export async function demoPlaces(url: string): Promise<readonly Place[]> {
  const { shop, people } = (await request<DemoView>('GET', `${url}/api/demo`)).body;
  const signIn = (name: string): SignIn => {
    const password = people.find((person) => person.name === name)?.password;
    if (password === undefined) throw new Error(`The demo has no ${name}.`);
    return { shop, name, password };
  };
  const manager = signIn(managerName);
  const technician = signIn(technicianName);
  const { token } = (await request<SignedInView>('POST', `${url}/api/session`, { body: manager })).body;
  const read = async <T>(path: string): Promise<T> => (await request<T>('GET', `${url}${path}`, { token })).body;
  const visits = async (state: string) => (await read<JobsPage>(`/api/jobs?state=${state}&limit=50`)).items;
  const here = await visits('open');
  const open = await Promise.all(here.map(({ id }) => read<JobView>(`/api/jobs/${id}`)));
  const inTheWay = (view: JobView): number => view.blockers?.road.length ?? 0;
  const [most] = open.sort((a, b) => inTheWay(b) - inTheWay(a));
  const [left] = await visits('ended');
  const arrived = here.find(({ checkedInAt }) => checkedInAt === null);
  if (!most || !left || !arrived) throw new Error('The demo has no visit to show.');
  const job = `/jobs/${most.job.id}`;
  const paths: Readonly<Record<PlaceName, string>> = {
    floor: '/floor',
    desk: '/desk',
    'check-in': '/desk?check-in',
    booking: '/desk?book',
    'check-in-booked': `/desk?check-in=${arrived.id}`,
    waiting: '/waiting',
    'my-bay': '/bay',
    'parts-desk': '/parts',
    outstanding: '/outstanding',
    job,
    vehicle: `/vehicles/${most.vehicle.id}`,
    'hand-back': `${job}/hand-back`,
    sheet: `/jobs/${left.id}/hand-back`,
    'bay-time': '/bay-time',
    shop: '/shop',
    wall: '/wall',
    marks: '/style',
  };
  return placeNames.map((name) => ({ name, path: paths[name], who: name === 'my-bay' ? technician : manager }));
}
