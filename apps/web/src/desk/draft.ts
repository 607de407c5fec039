import type { Wire, VehicleView } from '@holdfast/contract';
import type { CommandInputs, distanceUnits, jobKinds, readingSources } from '@holdfast/domain';

import { newId } from '../live/send.js';
import { decimalOf, isoOf, said, wholeOf } from '../pieces/typed.js';
import { useShopSettings } from '../text/shop-settings.js';

/** A check-in as it is being typed. */
export type Draft = {
  readonly jobId: string;
  readonly vehicleId: string;
  readonly kind: (typeof jobKinds)[number];
  readonly comebackOfLineId: string | null;
  /** A known customer by id; else the new one by name. */
  readonly customerId: string | null;
  readonly customerName: string;
  readonly fleet: string;
  readonly contactId: string | null;
  readonly contactName: string;
  readonly phone: string;
  readonly agreeUpTo: string;
  readonly agreeAny: boolean;
  readonly mayCollect: boolean;
  readonly concerns: readonly { readonly id: string; readonly words: string; readonly conditions: string }[];
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

/** What the shop knows already is filled in: nobody is asked twice. */
export const newDraft = ({ vehicle, customer, contacts, odometerReadings }: VehicleView): Draft => ({
  jobId: newId(),
  vehicleId: vehicle.id,
  kind: 'normal',
  comebackOfLineId: null,
  customerId: customer?.id ?? null,
  customerName: '',
  fleet: '',
  contactId: contacts[0]?.id ?? null,
  contactName: '',
  phone: '',
  agreeUpTo: '',
  agreeAny: false,
  mayCollect: true,
  concerns: [newConcern()],
  odometer: '',
  odometerUnit: odometerReadings.at(-1)?.unit ?? useShopSettings.getState().distanceUnit,
  odometerSource: 'read',
  keyTag: '',
  yardSpot: '',
  promisedAt: null,
  waitsHere: false,
  rolls: vehicle.rolls,
  mayBeDriven: vehicle.mayBeDriven,
  boardNote: '',
});

type Input = Wire<CommandInputs['checkIn']>;

const party = (draft: Draft): Pick<Input, 'customerId' | 'customer' | 'contactId' | 'contact'> => {
  const name = said(draft.contactName);
  const agreed = draft.agreeAny ? undefined : (decimalOf(draft.agreeUpTo) ?? undefined);
  const contact =
    draft.contactId !== null || name === undefined
      ? undefined
      : {
          contactId: newId(),
          name,
          phone: said(draft.phone),
          mayBring: true,
          mayAgreeUpTo: agreed,
          mayAgreeAny: draft.agreeAny,
          mayCollect: draft.mayCollect,
        };
  const customerName = said(draft.customerName);
  const isNew = draft.customerId === null && customerName !== undefined;
  return {
    customerId: draft.customerId ?? undefined,
    customer: isNew ? { customerId: newId(), name: customerName, fleet: said(draft.fleet) } : undefined,
    contactId: draft.customerId === null ? undefined : (draft.contactId ?? undefined),
    contact,
  };
};

/** The command that a draft stands for; what was not typed is left out. */
export const checkInOf = (draft: Draft): Input => {
  const value = wholeOf(draft.odometer) ?? undefined;
  const read = value !== undefined || draft.odometerSource === 'notReadable';
  return {
    jobId: draft.jobId,
    vehicleId: draft.vehicleId,
    kind: draft.kind,
    comebackOfLineId: draft.kind === 'comeback' ? (draft.comebackOfLineId ?? undefined) : undefined,
    ...(draft.kind === 'internal' && draft.customerId === null && said(draft.customerName) === undefined
      ? {}
      : party(draft)),
    concerns: draft.concerns
      .filter((one) => said(one.words) !== undefined)
      .map((one) => ({ concernId: one.id, words: one.words.trim(), conditions: said(one.conditions) })),
    odometer: read
      ? {
          value: draft.odometerSource === 'notReadable' ? undefined : value,
          unit: draft.odometerUnit,
          source: draft.odometerSource,
        }
      : undefined,
    keyTag: said(draft.keyTag),
    yardSpot: said(draft.yardSpot),
    promisedAt: isoOf(draft.promisedAt),
    waitsHere: draft.waitsHere,
    boardNote: said(draft.boardNote),
    rolls: draft.rolls,
    mayBeDriven: draft.mayBeDriven,
  };
};
