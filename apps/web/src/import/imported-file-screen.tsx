import type { ImportMapping, ImportView, ProblemDetails } from '@holdfast/contract';
import { useEffect, useState, type ReactElement } from 'react';
import { Link, useParams } from 'wouter';

import './import.css';
import { call, ProblemAnswer } from '../live/http.js';
import { touchReads, useRead } from '../live/reads.js';
import { Refusal } from '../live/refusal.js';
import { newId } from '../live/send.js';
import { useMay } from '../live/session.js';
import { SignedIn } from '../live/signed-in.js';
import { useSend } from '../live/use-send.js';
import { Part } from '../pieces/part.js';
import { ReadState } from '../pieces/read-state.js';
import { pathOf } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { EmptyState } from '../ui/empty-state.js';
import { ColumnsPart } from './columns-part.js';
import { BadRowsPart, PreviewPart } from './rows-parts.js';

const lookAgainMs = 700;

/** While rows are looked at the counts grow without anything being sent. */
const useReadWhile = (running: boolean): void => {
  useEffect(() => {
    if (!running) return undefined;
    const timer = setInterval(() => {
      touchReads(['imports']);
    }, lookAgainMs);
    return () => {
      clearInterval(timer);
    };
  }, [running]);
};

type Asking = {
  readonly pending: boolean;
  readonly problem: ProblemDetails | null;
  readonly ask: (method: 'PUT' | 'DELETE', path: string, body?: object) => Promise<void>;
};

/** What is asked about a file is no command: nothing of the shop changes by it. */
const useAsking = (): Asking => {
  const { t } = useText();
  const [pending, setPending] = useState(false);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const ask: Asking['ask'] = async (method, path, body) => {
    setPending(true);
    setProblem(null);
    try {
      await call(method, path, body, { 'idempotency-key': newId() });
    } catch (failure) {
      const detail = t('live.notSent');
      const otherwise = { type: 'about:blank', code: 'server.busy', title: detail, status: 503, detail, traceId: '' };
      setProblem(failure instanceof ProblemAnswer ? failure.problem : otherwise);
    }
    setPending(false);
    touchReads(['imports']);
  };
  return { pending, problem, ask };
};

const OutcomePart = ({
  view,
  discard,
}: {
  readonly view: ImportView;
  readonly discard: ReactElement;
}): ReactElement => {
  const { t, format } = useText();
  const sending = useSend();
  const { id, version, kind, state, rowCount, checkedCount, goodCount, badCount } = view.batch;
  const accept = async (): Promise<void> => {
    await sending.run('acceptImport', { importId: id, version });
    touchReads(['imports', 'customers', 'outstanding']);
  };
  return (
    <Part
      heading={t(state === 'accepted' ? 'import.outcomeDone' : 'import.outcome')}
      under={state === 'checked' ? t('import.acceptUnder') : undefined}
    >
      {state === 'accepted' && (
        <p role="status">
          <strong>{t('import.done', { kind, count: goodCount })}</strong>
        </p>
      )}
      {state === 'checking' && (
        <div>
          <p role="status">
            {t('import.checked', { done: format.number(checkedCount), rows: format.number(rowCount) })}
          </p>
          <progress
            className="hf-import-progress"
            aria-label={t('import.outcome')}
            max={rowCount}
            value={checkedCount}
          />
        </div>
      )}
      {state === 'checked' && (
        <p className="hf-import-outcome">
          <strong>{t('import.good', { count: goodCount })}</strong>
          <span>{t('import.bad', { count: badCount })}</span>
        </p>
      )}
      <div className="hf-row">
        {state === 'checked' && goodCount > 0 && (
          <Button look="ink" command="acceptImport" isPending={sending.pending} onPress={() => void accept()}>
            {t('import.accept', { kind, count: goodCount })}
          </Button>
        )}
        {discard}
      </div>
      <Refusal problem={sending.problem} />
    </Part>
  );
};

const File = ({ view }: { readonly view: ImportView }): ReactElement => {
  const { t } = useText();
  const asking = useAsking();
  const { id, state, badCount, version } = view.batch;
  useReadWhile(state === 'checking');
  const path = `/api/imports/${id}`;
  const open = state === 'staged' || state === 'checking' || state === 'checked';
  const discard = (
    <Button look="plain" isPending={asking.pending} onPress={() => void asking.ask('DELETE', path)}>
      {t(open ? 'import.discard' : 'import.clear')}
    </Button>
  );
  if (state === 'discarded') return <EmptyState heading={t('import.gone')} />;
  const staged = state === 'staged';
  const columns = open && (
    <ColumnsPart
      batch={view.batch}
      pending={asking.pending}
      beside={staged ? discard : null}
      onCheck={(mapping: ImportMapping) => void asking.ask('PUT', `${path}/mapping`, { mapping })}
    />
  );
  // Once the rows were looked at, what became of them comes first.
  return (
    <>
      <Refusal problem={asking.problem} />
      {staged && columns}
      {!staged && <OutcomePart view={view} discard={discard} />}
      {(state === 'checked' || state === 'accepted') && (
        <BadRowsPart key={version} importId={id} count={badCount} done={state === 'accepted'} />
      )}
      {state === 'checked' && <PreviewPart view={view} />}
      {!staged && columns}
    </>
  );
};

const ImportedFile = (): ReactElement => {
  const { t } = useText();
  const { id } = useParams<{ id: string }>();
  const may = useMay().read('imports');
  const read = useRead<ImportView>(may && id ? `/api/imports/${encodeURIComponent(id)}` : null, ['imports']);
  if (!may) return <EmptyState heading={t('import.notYours')} />;
  if (!read.data) return <ReadState error={read.error} missing={t('import.missing')} />;
  const { fileName, kind, rowCount, encoding, state } = read.data.batch;
  const facts = [t(`import.kind.${kind}`), t('import.about', { rows: rowCount, encoding }), t(`import.state.${state}`)];
  return (
    <div className="hf-read">
      <ScreenHead
        heading={fileName}
        under={facts.join(' · ')}
        acts={<Link href={pathOf.existingData}>{t('import.another')}</Link>}
      />
      <File view={read.data} />
    </div>
  );
};

/** One file of existing data, from naming its columns to taking it over. */
export const ImportedFileScreen = (): ReactElement => (
  <SignedIn>
    <ImportedFile />
  </SignedIn>
);
