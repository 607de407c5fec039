import type { Wire, VehicleView } from '@holdfast/contract';
import {
  standingKinds,
  type CommandInputs,
  type distanceUnits,
  type jobKinds,
  type readingSources,
  type Row,
} from '@holdfast/domain';

import { newId } from '../live/send.js';
import { decimalOf, isoOf, minutesOf, said, wholeOf } from '../pieces/typed.js';
import { useShopSettings } from '../text/shop-settings.js';

export type StandingKind = (typeof standingKinds)[number];
export type DraftLine = { readonly id: string; readonly title: string; readonly book: string; readonly price: string };

/** A check-in or a booking as it is being typed. */
export type Draft = {
  readonly jobId: string;
  readonly vehicleId: string;
  /** The booked visit that begins; null: a new one. */
  readonly booked: Row<'job'> | null;
  readonly kind: (typeof jobKinds)[number];
  readonly comebackOfLineId: string | null;
  /** A known customer by id; else the new one by name. */
  readonly customerId: string | null;
  readonly customerName: string;
  readonly fleet: string;
  readonly contactId: string | null;
  readonly contactName: string;
  readonly phone: string;
  readonly mayBring: boolean;
  readonly agreeUpTo: string;
  /** Null: nothing was said, so that the rule decides: a private customer's people speak for them. */
  readonly agreeAny: boolean | null;
  readonly mayCollect: boolean;
  /** Amounts agreed to in advance, as typed; empty: nothing. */
  readonly standing: Readonly<Record<StandingKind, string>>;
  readonly orderNumber: string;
  readonly concerns: readonly { readonly id: string; readonly words: string; readonly conditions: string }[];
  readonly lines: readonly DraftLine[];
  /** Epoch ms. */
  readonly expectedAt: number | null;
  readonly odometer: string;
  readonly odometerUnit: (typeof distanceUnits)[number];
  readonly odometerSource: (typeof readingSources)[number];
  readonly keyTag: string;
  readonly yardSpot: string;
  readonly promisedAt: number | null;
  readonly waitsHere: boolean;
  readonly rolls: boolean;
  readonly mayBeDriven: boolean;
  readonly boardNote: string;
};

export const newConcern = (): Draft['concerns'][number] => ({ id: newId(), words: '', conditions: '' });
export const newLine = (): DraftLine => ({ id: newId(), title: '', book: '', price: '' });

type OfVisit = Pick<
  Draft,
  | 'booked'
  | 'kind'
  | 'comebackOfLineId'
  | 'customerId'
  | 'contactId'
  | 'keyTag'
  | 'promisedAt'
  | 'waitsHere'
  | 'boardNote'
>;

/** Of the booked visit what was said then. */
const asBooked = (booked: Row<'job'>, customerId: string | null): OfVisit => ({
  booked,
  kind: booked.kind,
  comebackOfLineId: booked.comebackOfLineId,
  customerId: booked.customerId ?? customerId,
  contactId: booked.contactId,
  keyTag: booked.keyTag ?? '',
  promisedAt: booked.promisedAt,
  waitsHere: booked.waitsHere,
  boardNote: booked.boardNote ?? '',
});

/** What the visit brings along: of the booked one what was said then, of a new one whose the vehicle is. */
export const ofVisit = ({ customer, contacts }: VehicleView, booked: Row<'job'> | null): OfVisit => {
  const customerId = customer?.id ?? null;
  if (booked !== null) return asBooked(booked, customerId);
  return {
    booked,
    kind: 'normal',
    comebackOfLineId: null,
    customerId,
    contactId: contacts.find((contact) => contact.endedAt === null)?.id ?? null,
    keyTag: '',
    promisedAt: null,
    waitsHere: false,
    boardNote: '',
  };
};

/** What the shop knows already is filled in: nobody is asked twice. `expectedAt` epoch ms. */
export const newDraft = (view: VehicleView, booked: Row<'job'> | null, expectedAt: number | null): Draft => ({
  jobId: newId(),
  vehicleId: view.vehicle.id,
  ...ofVisit(view, booked),
  customerName: '',
  fleet: '',
  contactName: '',
  phone: '',
  mayBring: true,
  agreeUpTo: '',
  agreeAny: null,
  mayCollect: true,
  standing: { lookForFault: '', smallThings: '', fleetLimit: '' },
  orderNumber: '',
  concerns: [newConcern()],
  lines: [newLine()],
  expectedAt,
  odometer: '',
  odometerUnit: view.odometerReadings.at(-1)?.unit ?? useShopSettings.getState().distanceUnit,
  odometerSource: 'read',
  yardSpot: '',
  rolls: view.vehicle.rolls,
  mayBeDriven: view.vehicle.mayBeDriven,
});

/** The visit that the draft begins or makes. */
export const visitIdOf = ({ booked, jobId }: Draft): string => booked?.id ?? jobId;

/** Book minutes of all lines that were typed; 0 where none has any. */
export const bookMinutesOf = ({ lines }: Draft): number =>
  lines.reduce((sum, line) => sum + (minutesOf(line.book) ?? 0), 0);

/** Whether every amount and hour that was typed is one. */
export const numbersAreRight = ({ agreeUpTo, standing, lines }: Draft): boolean =>
  [agreeUpTo, ...Object.values(standing), ...lines.map((line) => line.price)].every(
    (typed) => decimalOf(typed) !== null,
  ) && lines.every((line) => minutesOf(line.book) !== null);

type Input = Wire<CommandInputs['checkIn']>;
type BookInput = Wire<CommandInputs['bookJob']>;

const party = (draft: Draft): Pick<Input, 'customerId' | 'customer' | 'contactId' | 'contact'> => {
  const customerName = said(draft.customerName);
  const { kind, customerId } = draft;
  if (kind === 'internal' && customerId === null && customerName === undefined) return {};
  const name = said(draft.contactName);
  const agreed = draft.agreeAny === true ? undefined : (decimalOf(draft.agreeUpTo) ?? undefined);
  const contact =
    draft.contactId !== null || name === undefined
      ? undefined
      : {
          contactId: newId(),
          name,
          phone: said(draft.phone),
          mayBring: draft.mayBring,
          mayAgreeUpTo: agreed,
          mayAgreeAny: draft.agreeAny ?? undefined,
          mayCollect: draft.mayCollect,
        };
  const isNew = customerId === null && customerName !== undefined;
  return {
    customerId: customerId ?? undefined,
    customer: isNew ? { customerId: newId(), name: customerName, fleet: said(draft.fleet) } : undefined,
    contactId: customerId === null ? undefined : (draft.contactId ?? undefined),
    contact,
  };
};

const concernsOf = ({ concerns }: Draft): Input['concerns'] =>
  concerns
    .filter((one) => said(one.words) !== undefined)
    .map((one) => ({ concernId: one.id, words: one.words.trim(), conditions: said(one.conditions) }));

/** `byName`: who gives them. */
const standingOf = ({ standing, orderNumber }: Draft, byName: string): Input['standingGoAheads'] => {
  const given = standingKinds.flatMap((kind) => {
    const upTo = decimalOf(standing[kind]);
    if (typeof upTo !== 'string') return [];
    const order = kind === 'fleetLimit' ? said(orderNumber) : undefined;
    return [{ standingGoAheadId: newId(), kind, upTo, byName, orderNumber: order }];
  });
  return given.length === 0 ? undefined : given;
};

const kindAndLine = ({ kind, comebackOfLineId }: Draft) => ({
  kind,
  comebackOfLineId: kind === 'comeback' ? (comebackOfLineId ?? undefined) : undefined,
});

/** The command that a check-in stands for; what was not typed is left out. `byName`: who brings it. */
export const checkInOf = (draft: Draft, byName: string): Input => {
  const value = wholeOf(draft.odometer) ?? undefined;
  const read = value !== undefined || draft.odometerSource === 'notReadable';
  const { booked, jobId, vehicleId } = draft;
  // A promised time that was kept as it stands is not promised again: it may be past by now.
  const promisedAt = draft.promisedAt === booked?.promisedAt ? undefined : isoOf(draft.promisedAt);
  return {
    ...(booked === null ? { jobId } : { expectedJobId: booked.id }),
    vehicleId,
    ...kindAndLine(draft),
    ...party(draft),
    concerns: concernsOf(draft),
    standingGoAheads: standingOf(draft, byName),
    odometer: read
      ? {
          value: draft.odometerSource === 'notReadable' ? undefined : value,
          unit: draft.odometerUnit,
          source: draft.odometerSource,
        }
      : undefined,
    keyTag: said(draft.keyTag),
    yardSpot: said(draft.yardSpot),
    promisedAt,
    waitsHere: draft.waitsHere,
    boardNote: said(draft.boardNote),
    rolls: draft.rolls,
    mayBeDriven: draft.mayBeDriven,
  };
};

/** The command that a booking stands for; null while no day and time is said. */
export const bookingOf = (draft: Draft): BookInput | null => {
  const expectedAt = isoOf(draft.expectedAt);
  if (expectedAt === undefined) return null;
  const lines = draft.lines
    .filter((line) => said(line.title) !== undefined)
    .map((line) => ({
      lineId: line.id,
      title: line.title.trim(),
      bookMinutes: minutesOf(line.book) ?? undefined,
      price: decimalOf(line.price) ?? undefined,
    }));
  return {
    jobId: draft.jobId,
    vehicleId: draft.vehicleId,
    ...kindAndLine(draft),
    ...party(draft),
    expectedAt,
    promisedAt: isoOf(draft.promisedAt),
    waitsHere: draft.waitsHere,
    boardNote: said(draft.boardNote),
    concerns: concernsOf(draft),
    lines,
  };
};
