import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { useNow } from '../live/use-board.js';
import { ContactEntryForm } from '../pieces/contact-entry-form.js';
import { ContactLog } from '../pieces/contact-log.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { handBackPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { askedOf, sectionId } from './job-parties.js';

type Props = { readonly view: JobView };

/** Calls that somebody at the desk has still to make, and what was said with the customer. */
export const JobContact = ({ view }: Props): ReactElement | null => {
  const { t, format } = useText();
  const now = useNow(60_000);
  const open = view.calls.filter((call) => call.endedAt === null);
  const over = view.calls.filter((call) => call.endedAt !== null);
  if (view.calls.length + view.contactEntries.length === 0) return null;
  const at = (iso: string): string => format.moment(Date.parse(iso), now);
  return (
    <Part id={sectionId('contact')} heading={t('job.contacts')}>
      {open.length > 0 && (
        <Entries>
          {open.map((call) => (
            <Entry
              key={call.id}
              id={`call-${call.id}`}
              acts={
                <Opener command="recordContact" label={t('job.logCall')} about={t(`word.callReason.${call.reason}`)}>
                  {(close) => (
                    <ContactEntryForm
                      vehicleId={view.vehicle.id}
                      plate={view.vehicle.plate}
                      jobId={view.job.id}
                      callId={call.id}
                      asked={askedOf(view)?.name ?? null}
                      about={t('job.callToMake', { reason: t(`word.callReason.${call.reason}`) })}
                      onClose={close}
                    />
                  )}
                </Opener>
              }
            >
              <p className="hf-entry-title">{t('job.callToMake', { reason: t(`word.callReason.${call.reason}`) })}</p>
              <SmallList
                lines={[
                  t('job.callSince', { at: at(call.effectiveAt) }),
                  ...(call.nextTryAt === null ? [] : [t('job.callNext', { at: at(call.nextTryAt) })]),
                  ...(call.words === null ? [] : [call.words]),
                ]}
              />
            </Entry>
          ))}
        </Entries>
      )}
      <ContactLog entries={view.contactEntries} />
      <SmallList
        lines={over.map((call) =>
          t('job.callOver', {
            reason: t(`word.callReason.${call.reason}`),
            how: call.endedHow === null ? 'empty' : t(`word.callEnd.${call.endedHow}`),
            at: at(call.endedAt ?? call.effectiveAt),
          }),
        )}
      />
    </Part>
  );
};

/** The sheets of this visit, as they were frozen; one that was undone is marked void. */
export const JobSheets = ({ view }: Props): ReactElement | null => {
  const { t, format } = useText();
  const now = useNow(60_000);
  if (view.sheets.length === 0) return null;
  return (
    <Part id={sectionId('sheets')} heading={t('job.sheets')}>
      <Entries>
        {view.sheets.map((sheet) => {
          const isVoid = sheet.voidedWords !== null;
          const words = t('job.sheetIs', {
            kind: sheet.kind,
            at: format.moment(Date.parse(sheet.effectiveAt), now),
            leaves: t(`word.leaves.${sheet.leavesBy}`),
            name: sheet.receivedBy,
          });
          return (
            <Entry key={sheet.id} id={`sheet-${sheet.id}`}>
              {isVoid ? (
                <p>
                  <strong>{t('job.sheetVoid')}</strong> <s>{words}</s>
                </p>
              ) : (
                <p>
                  <Link href={handBackPath(view.job.id)}>{words}</Link>
                </p>
              )}
              <SmallList lines={[sheet.words, sheet.voidedWords].filter((one): one is string => one !== null)} />
            </Entry>
          );
        })}
      </Entries>
    </Part>
  );
};
