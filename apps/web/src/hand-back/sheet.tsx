import type { JobView } from '@holdfast/contract';
import type { SheetContent } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';
import { Link } from 'wouter';

import { cautionWords } from '../pieces/vehicle-head.js';
import { jobPath } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { EmptyState } from '../ui/empty-state.js';
import { Choice } from '../ui/fields/choice.js';
import { SheetConcerns } from './sheet-concerns.js';
import { sheetContentOf } from './sheet-content.js';
import { SheetSection } from './sheet-section.js';
import { SheetComeBack, SheetTemporary } from './sheet-temporary.js';
import { SheetRelease, SheetSublets, SheetWheels } from './sheet-work.js';
import { UndoHandBack } from './undo-form.js';

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
        {t(content.release === null ? 'sheet.by' : 'sheet.releasedBy', { name: handedBackBy, shop })}
      </p>
      <p className="hf-small">{t('sheet.defer')}</p>
      <div className="hf-sheet-sign">
        <span>{`${t('sheet.signature')}, ${receivedBy}`}</span>
        <span>{`${t('sheet.signature')}, ${handedBackBy}`}</span>
      </div>
    </footer>
  );
};

const Page = ({ content, voidedWords }: ContentProps & { readonly voidedWords: string | null }): ReactElement => {
  const { t } = useText();
  return (
    <div className="hf-sheet" {...(voidedWords === null ? {} : { 'data-void': true })}>
      {voidedWords !== null && <p className="hf-sheet-void">{t('sheet.void', { words: voidedWords })}</p>}
      <div className="hf-sheet-head">
        <h1>
          {t(content.release === null ? 'sheet.heading' : 'sheet.releaseHeading', { plate: content.vehicle.plate })}
        </h1>
        <span>{`${content.shop} · ${t('sheet.job', { number: content.jobNumber })}`}</span>
      </div>
      <Facts content={content} />
      <SheetRelease content={content} />
      {content.cautions.length > 0 && (
        <SheetSection heading={t('sheet.cautions')}>
          <ul>
            {content.cautions.map((caution) => (
              <li key={caution.code}>
                {cautionWords(caution, t)}
                <span className="hf-small hf-quiet">
                  {' '}
                  {t(caution.standing ? 'sheet.cautionStays' : 'sheet.cautionOfVisit')}
                </span>
              </li>
            ))}
          </ul>
          <p className="hf-small">{t('sheet.cautionsDefer')}</p>
        </SheetSection>
      )}
      <SheetConcerns content={content} />
      <Parts content={content} />
      <SheetWheels content={content} />
      <SheetSublets content={content} />
      <SheetTemporary content={content} />
      <NotDone content={content} />
      <SheetComeBack content={content} />
      <Foot content={content} />
    </div>
  );
};

type SheetRow = JobView['sheets'][number];

type ChooseProps = {
  readonly sheets: readonly SheetRow[];
  readonly shown: SheetRow;
  readonly onShow: (id: string) => void;
};

/** The sheets of a visit that was handed back more than once: the one that holds, and the void ones. */
const ChooseSheet = ({ sheets, shown, onShow }: ChooseProps): ReactElement | null => {
  const { t, format } = useText();
  if (sheets.length < 2) return null;
  return (
    <Choice
      label={t('sheet.which')}
      value={shown.id}
      onChange={onShow}
      options={sheets.map((sheet) => {
        const at = `${format.date(Date.parse(sheet.effectiveAt))}, ${format.time(Date.parse(sheet.effectiveAt))}`;
        return { value: sheet.id, label: t(sheet.voidedWords === null ? 'sheet.of' : 'sheet.ofVoid', { at }) };
      })}
    />
  );
};

/** The sheet as it was frozen when the vehicle left: the one that holds, else the last one, which is void. */
export const Sheet = ({ view }: { readonly view: JobView }): ReactElement => {
  const { t } = useText();
  const [chosen, setChosen] = useState<string | null>(null);
  const { sheets } = view;
  const sheet =
    sheets.find((one) => one.id === chosen) ?? sheets.findLast((one) => one.voidedWords === null) ?? sheets.at(-1);
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
      <div className="hf-sheet-acts hf-stack">
        <div className="hf-row">
          <Button
            look="ink"
            onPress={() => {
              print();
            }}
          >
            {t('sheet.print')}
          </Button>
          {toJob}
          <UndoHandBack view={view} />
        </div>
        <ChooseSheet sheets={sheets} shown={sheet} onShow={setChosen} />
      </div>
      <Page content={sheetContentOf(sheet.content)} voidedWords={sheet.voidedWords} />
    </article>
  );
};
