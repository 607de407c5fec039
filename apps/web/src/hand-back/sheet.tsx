import type { JobView } from '@holdfast/contract';
import type { SheetContent } from '@holdfast/domain';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { cautionWords } from '../pieces/vehicle-head.js';
import { jobPath } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { EmptyState } from '../ui/empty-state.js';
import { SheetConcerns } from './sheet-concerns.js';
import { SheetSection } from './sheet-section.js';
import { SheetComeBack, SheetTemporary } from './sheet-temporary.js';

type ContentProps = { readonly content: SheetContent };

const Facts = ({ content }: ContentProps): ReactElement => {
  const { t, format } = useText();
  const { vehicle, odometer, customer } = content;
  const { odometerIn, odometerOut, odometerUnit } = odometer;
  const at = (iso: string): string => `${format.date(Date.parse(iso))}, ${format.time(Date.parse(iso))}`;
  const distance = (value: number): string => format.distance(value, odometerUnit);
  const read =
    odometerIn === null
      ? odometerOut === null
        ? t('sheet.notRead')
        : distance(odometerOut)
      : odometerOut === null
        ? t('sheet.odometerIn', { in: distance(odometerIn) })
        : t('sheet.odometerInOut', { in: distance(odometerIn), out: distance(odometerOut) });
  const facts: [string, string][] = [
    [t('sheet.vehicle'), [vehicle.description, vehicle.vin].filter((one) => one !== null).join(', ')],
    ...(customer === null ? [] : [[t('sheet.customer'), customer] as [string, string]]),
    [t('sheet.in'), at(content.checkedInAt)],
    [t('sheet.out'), at(content.leftAt)],
    [t('sheet.odometer'), read],
  ];
  return (
    <dl className="hf-sheet-facts">
      {facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
};

const NotDone = ({ content }: ContentProps): ReactElement => {
  const { t } = useText();
  const { putOff, notLookedAt } = content;
  const withWords = (words: readonly (string | null)[]): string => words.filter((one) => one !== null).join(': ');
  return (
    <>
      {putOff.length > 0 && (
        <SheetSection heading={t('sheet.putOff')}>
          <ul>
            {putOff.map((one) => (
              <li
                key={one.title}
              >{`${one.title} – ${withWords([t('sheet.putOffWhy', { why: one.why }), one.words])}`}</li>
            ))}
          </ul>
        </SheetSection>
      )}
      {notLookedAt.length > 0 && (
        <SheetSection heading={t('sheet.notLookedAt')}>
          <ul>
            {notLookedAt.map((one) => (
              <li key={one.what}>{withWords([one.what, one.why])}</li>
            ))}
          </ul>
        </SheetSection>
      )}
    </>
  );
};

const Parts = ({ content }: ContentProps): ReactElement | null => {
  const { t, format } = useText();
  if (content.partsFitted.length === 0) return null;
  return (
    <SheetSection heading={t('sheet.parts')}>
      <ul>
        {content.partsFitted.map((part) => (
          <li key={`${part.description} ${part.number ?? ''}`}>
            {t('sheet.part', { fitted: format.decimal(part.fitted), unit: part.unit, description: part.description })}
            {part.number !== null && <span className="hf-code">{` ${part.number}`}</span>}
          </li>
        ))}
      </ul>
    </SheetSection>
  );
};

const Foot = ({ content }: ContentProps): ReactElement => {
  const { t } = useText();
  const { leavesBy, receivedBy, receivedHow, handedBackBy, shop } = content;
  return (
    <footer className="hf-stack">
      <p>
        {t('sheet.leaves', { leaves: t(`word.leaves.${leavesBy}`), name: receivedBy, how: receivedHow })}{' '}
        {t('sheet.by', { name: handedBackBy, shop })}
      </p>
      <p className="hf-small">{t('sheet.defer')}</p>
      <div className="hf-sheet-sign">
        <span>{`${t('sheet.signature')}, ${receivedBy}`}</span>
        <span>{`${t('sheet.signature')}, ${handedBackBy}`}</span>
      </div>
    </footer>
  );
};

const Page = ({ content }: ContentProps): ReactElement => {
  const { t } = useText();
  return (
    <div className="hf-sheet">
      <div className="hf-sheet-head">
        <h1>{t('sheet.heading', { plate: content.vehicle.plate })}</h1>
        <span>{`${content.shop} · ${t('sheet.job', { number: content.jobNumber })}`}</span>
      </div>
      <Facts content={content} />
      {content.cautions.length > 0 && (
        <SheetSection heading={t('sheet.cautions')}>
          <ul>
            {content.cautions.map((caution) => (
              <li key={caution.code}>{cautionWords(caution, t)}</li>
            ))}
          </ul>
        </SheetSection>
      )}
      <SheetConcerns content={content} />
      <Parts content={content} />
      <SheetTemporary content={content} />
      <NotDone content={content} />
      <SheetComeBack content={content} />
      <Foot content={content} />
    </div>
  );
};

/** The sheet as it was frozen when the vehicle left; the last one that was not taken back. */
export const Sheet = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  const sheet = view.sheets.at(-1);
  const toJob = (
    <Link className="hf-button hf-button-small hf-look-frame" href={jobPath(view.job.id)}>
      {t('handBack.toJob')}
    </Link>
  );
  if (sheet === undefined) {
    return (
      <>
        <ScreenHead heading={t('job.sheet')} acts={toJob} />
        <EmptyState heading={t('sheet.none')} />
      </>
    );
  }
  return (
    <article data-job={view.job.number}>
      <div className="hf-sheet-acts hf-row">
        <Button
          look="ink"
          onPress={() => {
            print();
          }}
        >
          {t('sheet.print')}
        </Button>
        {toJob}
      </div>
      <Page content={sheet.content as SheetContent} />
    </article>
  );
};
