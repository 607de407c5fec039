import { wheelPosition, type Row } from '@holdfast/domain';

/** What is recorded of a wheel now: nothing, off, on without a torque, tightened. */
export type WheelState = 'asItWas' | 'off' | 'untorqued' | 'torqued';

type WheelRow = Pick<Row<'wheelRecord'>, 'offAt' | 'onAt' | 'torquedAt'>;

export const stateOfWheel = (wheel: WheelRow | undefined): WheelState => {
  if (wheel === undefined) return 'asItWas';
  if (wheel.torquedAt !== null) return 'torqued';
  return wheel.onAt === null ? 'off' : 'untorqued';
};

/** One axle: the places of its wheels on the left and on the right, each from left to right as they are drawn. */
export type Rung = { readonly axle: number; readonly left: readonly string[]; readonly right: readonly string[] };

/** What a person says of the vehicle's axles: how many, and which have twin wheels. */
export type Axles = { readonly count: number; readonly twins: readonly number[]; readonly middle: boolean };

export const mostAxles = 9;

const axleOf = (position: string): number => Number(position[0]);
const isTwin = (position: string): boolean => /[IO]$/.test(position);

/**
 * The axles of a vehicle as far as they are known: two, with twins behind on a heavy one, one wheel in the middle on a
 * motorcycle; more where wheels of more axles, or twins, were recorded.
 */
export const axlesOf = (kind: Row<'vehicle'>['kind'], positions: readonly string[]): Axles => {
  const recorded = positions.filter((one) => wheelPosition.test(one) && one !== 'spare');
  const usual = kind === 'trailer' ? 1 : 2;
  const twins = new Set(recorded.filter(isTwin).map(axleOf));
  if (kind === 'heavy' && recorded.length === 0) twins.add(2);
  return {
    count: Math.max(usual, ...recorded.map(axleOf)),
    twins: [...twins].sort((a, b) => a - b),
    middle: kind === 'motorcycle',
  };
};

const places = (axle: number, side: 'L' | 'R', twins: boolean): string[] => {
  const at = `${String(axle)}${side}`;
  if (!twins) return [at];
  return side === 'L' ? [`${at}O`, `${at}I`] : [`${at}I`, `${at}O`];
};

/** The rungs of the ladder, the front axle first. A wheel that was recorded in another way stands there too. */
export const rungsOf = ({ count, twins, middle }: Axles, recorded: readonly string[]): Rung[] =>
  Array.from({ length: count }, (_, at) => {
    const axle = at + 1;
    const side = (one: 'L' | 'R'): string[] => {
      const usual = middle && one === 'R' ? [] : places(axle, one, twins.includes(axle));
      const others = recorded.filter((place) => place.startsWith(`${String(axle)}${one}`) && !usual.includes(place));
      return one === 'L' ? [...others, ...usual] : [...usual, ...others];
    };
    return { axle, left: side('L'), right: side('R') };
  });

/** Every place of the ladder, the spare last. */
export const allPlaces = (rungs: readonly Rung[]): string[] => [
  ...rungs.flatMap(({ left, right }) => [...left, ...right]),
  'spare',
];
