// job/ hides how one visit is read and drawn as a page. It guarantees that everything recorded of a visit stands on that
// one page, each row with an anchor `#<table>-<id>` that refusals lead to, and that nothing is drawn that was not recorded.
import type { JobView } from '@holdfast/contract';
import { lineEnded } from '@holdfast/domain';

import type { Named } from '../pieces/line-form.js';

export type JobLine = JobView['lines'][number];
export type JobPart = JobView['partLines'][number];
export type JobFix = JobView['temporaryFixes'][number];
export type JobHold = JobView['holds'][number];

/** Whose word is asked first: the contact of the visit, else the customer. */
export const askedOf = ({ job, contacts, customer }: JobView): JobView['contacts'][number] | { name: string } | null =>
  contacts.find((contact) => contact.id === job.contactId) ?? contacts[0] ?? customer;

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
  ];
  return new Map(rows.map((row) => [row.id, row.title]));
};
