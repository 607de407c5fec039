// job/ hides how one visit is read and drawn as a page. It guarantees that everything recorded of a visit stands on that
// one page, each row with an anchor `#<table>-<id>` that refusals lead to, and that nothing is drawn that was not recorded.
import type { JobView } from '@holdfast/contract';
import { compare, lineEnded, minus } from '@holdfast/domain';

import type { StandingLeft } from '../pieces/go-ahead-form.js';
import type { Named } from '../pieces/line-form.js';
import type { DistanceUnit } from '../pieces/odometer-fields.js';

export type JobLine = JobView['lines'][number];
export type JobPart = JobView['partLines'][number];
export type JobFix = JobView['temporaryFixes'][number];
export type JobHold = JobView['holds'][number];
export type JobConcern = JobView['concerns'][number];
export type JobCause = JobView['causes'][number];
export type JobSublet = JobView['sublets'][number];
export type JobStanding = JobView['standing'][number];

/** Whose word is asked first: the contact of the visit, else another who still is one, else the customer. */
export const askedOf = ({ job, contacts, customer }: JobView): JobView['contacts'][number] | { name: string } | null =>
  contacts.find((contact) => contact.id === job.contactId) ??
  contacts.find((contact) => contact.endedAt === null) ??
  customer;

/** The parts of the page in their order, each with an anchor that the index leads to. */
export const sections = [
  'cautions',
  'concerns',
  'lines',
  'parts',
  'holds',
  'questions',
  'fixes',
  'wheels',
  'sublets',
  'findings',
  'followUps',
  'contact',
  'sheets',
  'log',
] as const;
export type Section = (typeof sections)[number];
export const sectionId = (section: Section): string => `part-${section}`;

const named = <R extends { readonly id: string }>(rows: readonly R[], title: (row: R) => string): Named[] =>
  rows.map((row) => ({ id: row.id, title: title(row) }));

export const openLines = (view: JobView): Named[] =>
  named(
    view.lines.filter((line) => !lineEnded(line)),
    (line) => line.title,
  );

export const doneLines = (view: JobView): Named[] =>
  named(
    view.lines.filter((line) => line.progress === 'done'),
    (line) => line.title,
  );

/** What is left of a standing go-ahead on this visit, in the shop's currency; nothing below nought. */
export const leftOf = ({ upTo, used }: JobStanding): string => (compare(used, upTo) >= 0 ? '0' : minus(upTo, used));

const atOf = (iso: string | null): number | null => (iso === null ? null : Date.parse(iso));

/** The lines as the domain's total reads them: instants are epoch ms. */
export const pricedLines = ({ lines }: Pick<JobView, 'lines'>) =>
  lines.map((line) => ({ ...line, startedAt: atOf(line.startedAt), withdrawnAt: atOf(line.withdrawnAt) }));

/** Standing go-aheads that a line of this visit could rest on today, a day of the shop. */
export const standingOf = (view: JobView, today: string): StandingLeft[] =>
  view.standing
    .filter((one) => one.endedAt === null && (one.untilDay === null || one.untilDay >= today))
    .map((one) => ({ id: one.id, kind: one.kind, left: leftOf(one) }));

/** The last reading that was read as a number, in its own unit. */
export const lastReading = (view: JobView): { value: number; unit: DistanceUnit } | null => {
  const readings = [...view.odometerReadings].sort((a, b) => b.effectiveAt.localeCompare(a.effectiveAt));
  const last = readings.find((reading) => reading.value !== null);
  return last?.value == null ? null : { value: last.value, unit: last.unit };
};

export const causeNames = (view: JobView): Named[] => named(view.causes, (cause) => cause.words);
export const concernNames = (view: JobView): Named[] => named(view.concerns, (concern) => concern.words);
export const findingNames = (view: JobView): Named[] => named(view.findings, (finding) => finding.place);

export const awaitedParts = (view: JobView): Named[] =>
  named(
    view.partLines.filter((part) => ['wanted', 'ordered', 'partArrived'].includes(part.state)),
    (part) => part.description,
  );

/** Part lines that a follow-up may carry on: neither fitted nor cancelled. */
export const openParts = (view: JobView): Named[] =>
  named(
    view.partLines.filter((part) => part.state !== 'fitted' && part.state !== 'cancelled'),
    (part) => part.description,
  );

export const openFollowUps = (view: JobView): Named[] =>
  named(
    view.followUps.filter((followUp) => followUp.state === 'open'),
    (followUp) => followUp.title,
  );

/** Titles of everything the log may speak of, by id. */
export const titlesOf = (view: JobView): Map<string, string> => {
  const rows: readonly Named[] = [
    ...named(view.lines, (line) => line.title),
    ...named(view.partLines, (part) => part.description),
    ...named(view.temporaryFixes, (fix) => fix.place),
    ...named(view.followUps, (followUp) => followUp.title),
    ...named(view.findings, (finding) => finding.place),
    ...named(view.concerns, (concern) => concern.words),
    ...named(view.causes, (cause) => cause.words),
    ...named(view.sublets, (sublet) => sublet.firm),
    ...named(view.questions, (question) => question.words),
  ];
  return new Map(rows.map((row) => [row.id, row.title]));
};
