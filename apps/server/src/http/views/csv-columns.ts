/** The columns of every list that goes out as a file. A file of customers or vehicles can be brought in again as it is. */
import type {
  BayTimeView,
  ChangeLogItem,
  CustomersPage,
  JobItem,
  OrdersPage,
  OutstandingItem,
  PartLinesPage,
  TimesView,
  VehiclesPage,
} from '@holdfast/contract';
import { isTextKey, say, type TextKey } from '@holdfast/contract';
import type { CsvCell } from '../../csv/write-csv.js';
import type { CsvColumn, CsvWords } from './csv-list.js';

const column = <T>(heading: TextKey, cell: (item: T, words: CsvWords) => CsvCell): CsvColumn<T> => ({ heading, cell });

type Customer = CustomersPage['items'][number];
export const customerColumns: readonly CsvColumn<Customer>[] = [
  column('csv.name', ({ name }) => name),
  column('csv.contactName', ({ contacts }) => contacts[0]?.name),
  column('csv.phone', ({ contacts }) => contacts[0]?.phone),
  column('csv.mail', ({ contacts }) => contacts[0]?.mail),
  column('csv.fleet', ({ fleet }) => fleet),
  column('csv.otherContacts', ({ contacts }) =>
    contacts
      .slice(1)
      .map(({ name, phone, mail }) => [name, phone, mail].filter((part) => part !== null).join(' '))
      .join('; '),
  ),
  column('csv.vehicles', ({ vehicles }) => vehicles),
];

type Vehicle = VehiclesPage['items'][number];
export const vehicleColumns: readonly CsvColumn<Vehicle>[] = [
  column('csv.plate', ({ plate }) => plate),
  column('csv.description', ({ description }) => description),
  column('csv.vin', ({ vin }) => vin),
  column('csv.vehicleKind', ({ kind }, { word }) => word('word.vehicle', kind)),
  column('csv.drive', ({ drive }, { word }) => word('word.drive', drive)),
  column('csv.curbKg', ({ curbKg }) => curbKg),
  column('csv.grossKg', ({ grossKg }) => grossKg),
  column('csv.customer', ({ customer }) => customer?.name),
  column('csv.phone', ({ phone }) => phone),
  column('csv.fixesOn', ({ fixesOn }) => fixesOn),
  column('csv.followUpsOpen', ({ followUpsOpen }) => followUpsOpen),
];

export const outstandingColumns: readonly CsvColumn<OutstandingItem>[] = [
  column('csv.what', (item, { word }) =>
    item.kind === 'followUp' ? word('word.followUp', item.row.kind) : word('word.fixKind', item.row.kind),
  ),
  column('csv.plate', ({ vehicle }) => vehicle.plate),
  column('csv.description', ({ vehicle }) => vehicle.description),
  column('csv.customer', ({ customer }) => customer?.name),
  column('csv.title', (item) => (item.kind === 'followUp' ? item.row.title : item.row.standsInFor)),
  column('csv.words', (item) => (item.kind === 'followUp' ? item.row.words : item.row.endedByWhat)),
  column('csv.system', (item, { word }) => (item.kind === 'followUp' ? '' : word('word.system', item.row.system))),
  column('csv.urgency', (item, { word }) => (item.kind === 'followUp' ? word('word.urgency', item.row.urgency) : '')),
  column('csv.firstLimit', ({ firstLimit }) => firstLimit?.day),
  column('csv.beforeDay', ({ row }) => row.beforeDay),
  column('csv.beforeOdometer', ({ row }) => row.beforeOdometer),
  column('csv.withinDistance', ({ row }) => row.withinDistance),
  column('csv.withinDays', ({ row }) => row.withinDays),
  column('csv.distanceUnit', ({ row }) => row.distanceUnit),
];

type PartLine = PartLinesPage['items'][number];
export const partLineColumns: readonly CsvColumn<PartLine>[] = [
  column('csv.job', ({ jobNumber }) => jobNumber),
  column('csv.plate', ({ plate }) => plate),
  column('csv.line', ({ lineTitle }) => lineTitle),
  column('csv.partNumber', ({ number }) => number),
  column('csv.part', ({ description }) => description),
  column('csv.quantity', ({ quantity }) => quantity),
  column('csv.unit', ({ unit }) => unit),
  column('csv.here', ({ here }) => here),
  column('csv.fitted', ({ fitted }) => fitted),
  column('csv.unitPrice', ({ unitPrice }) => unitPrice),
  column('csv.state', ({ state }, { word }) => word('word.part', state)),
  column('csv.needed', ({ needed }, { word }) => word('word.needed', needed)),
  column('csv.supplier', ({ supplierName }) => supplierName),
  column('csv.reference', ({ orderReference }) => orderReference),
  column('csv.dueOn', ({ dueOn }) => dueOn),
];

type Order = OrdersPage['items'][number];
/** One line for each part line of an order. */
export type OrderedPart = { readonly order: Order; readonly part: Order['partLines'][number] | null };
export const orderedParts = (order: Order): OrderedPart[] =>
  order.partLines.length === 0 ? [{ order, part: null }] : order.partLines.map((part) => ({ order, part }));
export const orderColumns: readonly CsvColumn<OrderedPart>[] = [
  column('csv.reference', ({ order }) => order.reference),
  column('csv.supplier', ({ order }) => order.supplierName),
  column('csv.orderedAt', ({ order }, { at }) => at(order.effectiveAt)),
  column('csv.orderedBy', ({ order }, { person }) => person(order.byId)),
  column('csv.plate', ({ part }) => part?.plate),
  column('csv.job', ({ part }) => part?.jobNumber),
  column('csv.part', ({ part }) => part?.description),
  column('csv.quantity', ({ part }) => part?.quantity),
  column('csv.unit', ({ part }) => part?.unit),
  column('csv.here', ({ part }) => part?.here),
  column('csv.state', ({ part }, { word }) => word('word.part', part?.state)),
  column('csv.dueOn', ({ part }) => part?.dueOn),
];

export const jobColumns: readonly CsvColumn<JobItem>[] = [
  column('csv.job', ({ number }) => number),
  column('csv.jobKind', ({ kind }, { word }) => word('word.job', kind)),
  column('csv.plate', ({ vehicle }) => vehicle.plate),
  column('csv.description', ({ vehicle }) => vehicle.description),
  column('csv.customer', ({ customer }) => customer?.name),
  column('csv.expectedAt', ({ expectedAt }, { at }) => at(expectedAt)),
  column('csv.arrivedAt', ({ arrivedAt }, { at }) => at(arrivedAt)),
  column('csv.checkedInAt', ({ checkedInAt }, { at }) => at(checkedInAt)),
  column('csv.promisedAt', ({ promisedAt }, { at }) => at(promisedAt)),
  column('csv.endedAt', ({ endedAt }, { at }) => at(endedAt)),
  column('csv.endedHow', ({ endedHow }, { word }) => word('word.jobEnd', endedHow)),
  column('csv.leftBy', ({ leftBy }, { word }) => word('word.leaves', leftBy)),
  column('csv.lines', ({ lines }) => lines),
  column('csv.openHolds', ({ openHolds }, { word }) => openHolds.map((reason) => word('reason', reason)).join(', ')),
];

/** Presence and clocks in one file, by person and time. */
export interface PersonTime {
  readonly personId: string;
  readonly what: 'work' | 'present' | 'break' | 'shopTime';
  readonly job: number | null;
  readonly plate: string | null;
  readonly line: string | null;
  readonly words: string | null;
  readonly fromAt: string;
  readonly toAt: string | null;
}
export function personTimes({ clocks, attendance, jobs, lines }: TimesView): PersonTime[] {
  const visits = new Map(jobs.map((job) => [job.id, job]));
  const titles = new Map(lines.map((line) => [line.id, line.title]));
  const worked = clocks.map(({ personId, jobId, lineId, fromAt, toAt }): PersonTime => {
    const visit = visits.get(jobId);
    const about = { job: visit?.number ?? null, plate: visit?.plate ?? null, line: titles.get(lineId) ?? null };
    return { personId, what: 'work', ...about, words: null, fromAt, toAt };
  });
  const here = attendance.map(({ personId, kind, words, fromAt, toAt }): PersonTime => {
    return { personId, what: kind, job: null, plate: null, line: null, words, fromAt, toAt };
  });
  return [...worked, ...here].sort((a, b) => (a.personId + a.fromAt < b.personId + b.fromAt ? -1 : 1));
}
const minuteMs = 60_000;
export const timeColumns: readonly CsvColumn<PersonTime>[] = [
  column('csv.person', ({ personId }, { person }) => person(personId)),
  column('csv.what', ({ what }, { word }) =>
    what === 'work' ? word('csv.time', what) : word('word.attendance', what),
  ),
  column('csv.from', ({ fromAt }, { at }) => at(fromAt)),
  column('csv.to', ({ toAt }, { at }) => at(toAt)),
  column('csv.minutes', ({ fromAt, toAt }) =>
    toAt === null ? '' : Math.round((Date.parse(toAt) - Date.parse(fromAt)) / minuteMs),
  ),
  column('csv.job', ({ job }) => job),
  column('csv.plate', ({ plate }) => plate),
  column('csv.line', ({ line }) => line),
  column('csv.words', ({ words }) => words),
];

/** A spot of a bay; minutes with two places, so that they add up to what the screen says. */
export interface SpotLine {
  readonly bay: string;
  readonly spot: number;
  readonly totals: BayTimeView['totals'];
}
const minutesOf = (ms: number | undefined): number => Math.round(((ms ?? 0) / minuteMs) * 100) / 100;
const classes = ['worked', 'held', 'stored', 'noReason', 'break', 'empty', 'outOfUse'] as const;
export const bayTimeColumns: readonly CsvColumn<SpotLine>[] = [
  column('csv.bay', ({ bay }) => bay),
  column('csv.spot', ({ spot }) => spot),
  column('csv.openMinutes', ({ totals }) => minutesOf(totals.openMs)),
  ...classes.map((name) => column<SpotLine>(`csv.class.${name}`, ({ totals }) => minutesOf(totals.classMs[name]))),
  column('csv.heldBy', ({ totals }, { word }) =>
    Object.entries(totals.heldMs)
      .map(([reason, ms]) => `${word('reason', reason)} ${String(minutesOf(ms))}`)
      .join('; '),
  ),
  column('csv.technicianMinutes', ({ totals }) => minutesOf(totals.technicianMs)),
  column('csv.occupancy', ({ totals }) => totals.occupancy),
  column('csv.use', ({ totals }) => totals.utilisation),
];
export const spotLines = ({ bays }: BayTimeView): SpotLine[] =>
  bays.flatMap(({ name, spots }) => spots.map(({ spot, totals }) => ({ bay: name, spot, totals })));

export const logColumns: readonly CsvColumn<ChangeLogItem>[] = [
  column('csv.seq', ({ seq }) => seq),
  column('csv.recordedAt', ({ at }, words) => words.at(at)),
  column('csv.happenedAt', ({ effectiveAt }, { at }) => at(effectiveAt)),
  column('csv.person', ({ personId }, { person }) => person(personId)),
  column('csv.what', (item, words) => sentenceOf(item, words)),
  column('csv.command', ({ command }) => command),
  column('csv.job', ({ about }) => about.jobs.map(({ number }) => number).join(', ')),
  column('csv.plate', ({ about }) => about.vehicles.map(({ plate }) => plate).join(', ')),
  column('csv.bay', ({ about }) => about.bays.map(({ name }) => name).join(', ')),
  column('csv.device', ({ device }) => device),
];

/** Facts that the sentences of the log take as they are. */
const logWords = ['answer', 'outcome', 'how', 'kind', 'month'] as const;

/** As the screens say it, without the titles of rows, which the log does not hold. */
function sentenceOf({ command, facts }: ChangeLogItem, { locale, word, at }: CsvWords): string {
  const key = `log.${command}`;
  if (!isTextKey(key)) return command;
  const fact = (name: string): string => (typeof facts[name] === 'string' ? facts[name] : 'empty');
  const promised = fact('promisedAt');
  const words = Object.fromEntries(logWords.map((name) => [name, fact(name)]));
  const reason = word('reason', fact('reason'));
  return say(locale, key, {
    ...words,
    about: 'empty',
    reason,
    promised: promised === 'empty' ? promised : at(promised),
  });
}
