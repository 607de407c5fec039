import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { useMay } from '../live/session.js';
import { useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { BringBackForm } from '../pieces/bring-back-form.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { type JobSublet, sectionId } from './job-parties.js';
import { ArrangeSubletForm, CancelSubletForm, ChangeSubletForm, SendAwayForm } from './sublet-forms.js';

type Props = { readonly view: JobView };
type SubletProps = Props & { readonly sublet: JobSublet };

/** It begins: the component goes out, or the outsider has come. One press; a vehicle that goes out is asked how. */
const Begin = ({ view, sublet }: SubletProps): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const sending = useSend();
  const { id: subletId, version, firm, form } = sublet;
  if (form === 'vehicleOut') {
    return (
      <Opener command="sendAway" label={t('sublet.begin.vehicleOut')} about={firm}>
        {(close) => <SendAwayForm view={view} sublet={sublet} onClose={close} />}
      </Opener>
    );
  }
  const command = form === 'componentOut' ? 'sendComponentAway' : 'letOutsiderIn';
  if (!may.command(command)) return null;
  const begin = (): void => {
    if (form === 'componentOut') {
      const values = { component: sublet.component ?? '', firm };
      void sending.run('sendComponentAway', { subletId, version }, { text: 'sublet.done.component', values });
    } else {
      void sending.run('letOutsiderIn', { subletId, version }, { text: 'sublet.done.outsider', values: { firm } });
    }
  };
  return (
    <>
      <Button
        size="small"
        command={command}
        label={`${t(`sublet.begin.${form}`)}: ${firm}`}
        isPending={sending.pending}
        onPress={begin}
      >
        {t(`sublet.begin.${form}`)}
      </Button>
      <Refusal problem={sending.problem} jobId={view.job.id} />
    </>
  );
};

const SubletActs = ({ view, sublet }: SubletProps): ReactElement => {
  const { t } = useText();
  const arranged = sublet.state === 'arranged';
  return (
    <>
      {arranged && <Begin view={view} sublet={sublet} />}
      {sublet.state === 'underWay' && (
        <Opener command="bringBack" label={t(`sublet.end.${sublet.form}`)} about={sublet.firm}>
          {(close) => <BringBackForm sublet={sublet} plate={view.vehicle.plate} onClose={close} />}
        </Opener>
      )}
      <Opener command="changeSublet" label={t('sublet.change')} look="plain" about={sublet.firm}>
        {(close) => <ChangeSubletForm sublet={sublet} onClose={close} />}
      </Opener>
      {arranged && (
        <Opener command="cancelSublet" label={t('sublet.cancel')} look="plain" about={sublet.firm}>
          {(close) => <CancelSubletForm sublet={sublet} onClose={close} />}
        </Opener>
      )}
    </>
  );
};

/** What is said under a sublet: its slot, since when, until when, the words. */
const useSubletLines = (): ((sublet: JobSublet, now: number) => string[]) => {
  const { t, format } = useText();
  return ({ state, slotAt, fromAt, toAt, dueBackAt, words, endWords }, now) => {
    const at = (iso: string): string => format.moment(Date.parse(iso), now);
    const between = (from: string): string =>
      toAt === null ? t('sublet.since', { at: at(from) }) : t('sublet.fromTo', { from: at(from), to: at(toAt) });
    const isOpen = state === 'arranged' || state === 'underWay';
    return [
      slotAt !== null && state === 'arranged' ? t('sublet.slotIs', { at: at(slotAt) }) : null,
      fromAt === null ? null : between(fromAt),
      dueBackAt !== null && isOpen && Date.parse(dueBackAt) >= now
        ? t('sublet.dueBackIs', { at: at(dueBackAt) })
        : null,
      words,
      endWords,
    ].filter((line) => line !== null);
  };
};

const SubletEntry = ({ view, sublet }: SubletProps): ReactElement => {
  const { t, format } = useText();
  const now = useNow(60_000);
  const lines = useSubletLines();
  const { state, form, firm, component, dueBackAt, price } = sublet;
  const line = view.lines.find((one) => one.id === sublet.lineId);
  const facts = [
    t(`word.subletState.${state}`),
    t(`word.subletForm.${form}`),
    ...(line === undefined ? [] : [t('sublet.for', { title: line.title })]),
    ...(price === null ? [] : [format.money(price)]),
  ];
  const isOver = state === 'ended' || state === 'cancelled';
  const late = state === 'underWay' && dueBackAt !== null && Date.parse(dueBackAt) < now ? dueBackAt : null;
  return (
    <Entry
      id={`sublet-${sublet.id}`}
      acts={!isOver && view.job.endedAt === null && <SubletActs view={view} sublet={sublet} />}
    >
      <p className="hf-entry-title">{component === null ? firm : t('sublet.component.at', { component, firm })}</p>
      <p className="hf-small">{facts.join(' · ')}</p>
      {late !== null && (
        <p className="hf-entry-title">{t('sublet.late', { at: format.moment(Date.parse(late), now) })}</p>
      )}
      <SmallList lines={lines(sublet, now)} />
    </Entry>
  );
};

export const ArrangeOpener = ({ view }: Props): ReactElement => {
  const { t } = useText();
  return (
    <Opener command="arrangeSublet" label={t('sublet.arrange')}>
      {(close) => <ArrangeSubletForm view={view} onClose={close} />}
    </Opener>
  );
};

/** Work by other firms on this visit. */
export const JobSublets = ({ view }: Props): ReactElement | null => {
  const { t } = useText();
  if (view.sublets.length === 0) return null;
  return (
    <Part
      id={sectionId('sublets')}
      heading={t('job.sublets')}
      acts={view.job.endedAt === null && <ArrangeOpener view={view} />}
    >
      <Entries>
        {view.sublets.map((sublet) => (
          <SubletEntry key={sublet.id} view={view} sublet={sublet} />
        ))}
      </Entries>
    </Part>
  );
};
