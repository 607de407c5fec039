import type { VehicleView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { CautionForbids } from '../pieces/caution-forbids.js';
import { CautionForm, EndCautionForm } from '../pieces/caution-forms.js';
import { FixEntry } from '../pieces/fix-entry.js';
import { EndFixForm } from '../pieces/fix-turn-forms.js';
import { FollowUpEntry } from '../pieces/follow-up-entry.js';
import { CloseFollowUpForm, FollowUpForm } from '../pieces/follow-up-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import type { Named } from '../pieces/line-form.js';
import { Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { RetorqueForm } from '../pieces/retorque-form.js';
import { cautionWords, shownCautions } from '../pieces/vehicle-head.js';
import { useText } from '../text/use-text.js';
import { CautionMark } from '../ui/marks/caution-mark.js';

type Props = { readonly view: VehicleView };
type WithVisit = Props & { readonly jobId: string | null };

/** Done lines of this vehicle that the board knows: those of its visit, or of one that has just ended. */
const useDoneLines = (vehicleId: string): Named[] => {
  const { job, workLine } = useBoard().tables;
  return [...workLine.values()]
    .filter((line) => line.progress === 'done' && job.get(line.jobId)?.vehicleId === vehicleId)
    .map((line) => ({ id: line.id, title: line.title }));
};

export const VehicleCautions = ({ view, jobId }: WithVisit): ReactElement => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  const done = useDoneLines(view.vehicle.id);
  const open = view.cautions.filter((caution) => caution.endedAt === null);
  const over = view.cautions.filter((caution) => caution.endedAt !== null);
  const kinds = new Map(shownCautions(open, t).map((shown) => [shown.id, shown.kind]));
  const at = (iso: string): string => format.moment(Date.parse(iso), now);
  return (
    <Part
      heading={t('vehicle.cautions')}
      acts={
        <Opener command="addCaution" label={t('vehicle.addCaution')}>
          {(close) => <CautionForm vehicleId={view.vehicle.id} jobId={jobId} onClose={close} />}
        </Opener>
      }
    >
      {open.length === 0 && <p className="hf-quiet">{t('vehicle.noCautions')}</p>}
      <Entries>
        {open.map((caution) => (
          <Entry
            key={caution.id}
            id={`caution-${caution.id}`}
            acts={
              <Opener command="endCaution" label={t('vehicle.endCaution')} about={cautionWords(caution, t)}>
                {(close) => <EndCautionForm caution={caution} doneLines={done} onClose={close} />}
              </Opener>
            }
          >
            <p className="hf-entry-line hf-entry-title">
              <CautionMark kind={kinds.get(caution.id) ?? 'caution'} title={null} size={28} />
              {cautionWords(caution, t)}
            </p>
            <CautionForbids code={caution.code} />
            <SmallList
              lines={[
                [
                  caution.standing ? t('job.standing') : t('job.ofVisit'),
                  t('job.openedBy', { name: people.get(caution.openedById)?.name ?? '', at: at(caution.effectiveAt) }),
                ].join(', '),
              ]}
            />
          </Entry>
        ))}
      </Entries>
      <SmallList
        lines={over.map((caution) =>
          t('vehicle.cautionEnded', {
            caution: cautionWords(caution, t),
            at: at(caution.endedAt ?? caution.effectiveAt),
          }),
        )}
      />
    </Part>
  );
};

export const VehicleFixes = ({ view }: Props): ReactElement => {
  const { t } = useText();
  const done = useDoneLines(view.vehicle.id);
  const on = view.temporaryFixes.filter((fix) => fix.state !== 'ended');
  const over = view.temporaryFixes.filter((fix) => fix.state === 'ended');
  return (
    <Part heading={t('vehicle.fixes')} under={t('vehicle.fixesUnder')}>
      {view.temporaryFixes.length === 0 && <p className="hf-quiet">{t('vehicle.noFixes')}</p>}
      <Entries>
        {on.map((fix) => (
          <FixEntry
            key={fix.id}
            fix={fix}
            acts={
              <Opener command="endTemporaryFix" label={t('vehicle.endFix')} about={fix.place}>
                {(close) => <EndFixForm fix={fix} doneLines={done} onClose={close} />}
              </Opener>
            }
          />
        ))}
        {over.map((fix) => (
          <FixEntry key={fix.id} fix={fix} />
        ))}
      </Entries>
    </Part>
  );
};

export const VehicleFollowUps = ({ view, jobId }: WithVisit): ReactElement => {
  const { t } = useText();
  const done = useDoneLines(view.vehicle.id);
  const open = view.followUps.filter((followUp) => followUp.state === 'open');
  const closed = view.followUps.filter((followUp) => followUp.state !== 'open');
  const named = open.map((followUp) => ({ id: followUp.id, title: followUp.title }));
  return (
    <Part
      heading={t('vehicle.followUps')}
      acts={
        <Opener command="addFollowUp" label={t('vehicle.addFollowUp')}>
          {(close) => (
            <FollowUpForm
              vehicleId={view.vehicle.id}
              {...(jobId === null ? {} : { jobId })}
              parts={view.partLines.map((part) => ({ id: part.id, title: part.description }))}
              followUps={named}
              onClose={close}
            />
          )}
        </Opener>
      }
    >
      {open.length === 0 && <p className="hf-quiet">{t('vehicle.noFollowUps')}</p>}
      <Entries>
        {open.map((followUp) => (
          <FollowUpEntry
            key={followUp.id}
            followUp={followUp}
            acts={
              <>
                {followUp.kind === 'retorque' && (
                  <Opener command="recordRetorque" label={t('vehicle.retorque')} about={followUp.title}>
                    {(close) => <RetorqueForm followUp={followUp} plate={view.vehicle.plate} onClose={close} />}
                  </Opener>
                )}
                <Opener command="closeFollowUp" label={t('vehicle.closeFollowUp')} about={followUp.title}>
                  {(close) => <CloseFollowUpForm followUp={followUp} doneLines={done} onClose={close} />}
                </Opener>
              </>
            }
          />
        ))}
      </Entries>
      {closed.length > 0 && (
        <div>
          <h3>{t('vehicle.closed')}</h3>
          <Entries>
            {closed.map((followUp) => (
              <FollowUpEntry key={followUp.id} followUp={followUp} />
            ))}
          </Entries>
        </div>
      )}
    </Part>
  );
};
