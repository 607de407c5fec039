// import/ hides how existing data comes in: a file is read, its columns are named, its rows looked at, and then taken over
// or put aside. It guarantees that what would become of every row can be read before anything is accepted.
import {
  largestImport,
  mostImportRows,
  type ImportsView,
  type ImportView,
  type ProblemDetails,
} from '@holdfast/contract';
import { importKinds, type ImportKind } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';
import { Link, useLocation } from 'wouter';

import './import.css';
import { call, ProblemAnswer } from '../live/http.js';
import { touchReads, useRead } from '../live/reads.js';
import { Refusal } from '../live/refusal.js';
import { newId } from '../live/send.js';
import { useMay } from '../live/session.js';
import { SignedIn } from '../live/signed-in.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { importedFilePath } from '../screen-paths.js';
import { useNow } from '../live/use-board.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { EmptyState } from '../ui/empty-state.js';
import { Choice } from '../ui/fields/choice.js';

const inMegabytes = (bytes: number): number => Math.floor(bytes / 1024 / 1024);

/** Reads one file; what is wrong with it as a whole stands beside the act. */
const FilePart = (): ReactElement => {
  const { t, format } = useText();
  const [, go] = useLocation();
  const [kind, setKind] = useState<ImportKind>('vehicles');
  const [file, setFile] = useState<File | null>(null);
  const [pending, setPending] = useState(false);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const upload = async (): Promise<void> => {
    if (file === null) return;
    setPending(true);
    setProblem(null);
    const body = new FormData();
    body.append('file', file);
    try {
      const key = { 'idempotency-key': newId() };
      const view = await call<ImportView>('POST', `/api/imports?kind=${kind}`, body, key);
      touchReads(['imports']);
      go(importedFilePath(view.batch.id));
    } catch (failure) {
      const detail = t('live.notSent');
      const otherwise = { type: 'about:blank', code: 'server.busy', title: detail, status: 503, detail, traceId: '' };
      setProblem(failure instanceof ProblemAnswer ? failure.problem : otherwise);
      setPending(false);
    }
  };
  return (
    <Part heading={t('import.file')} under={t('import.fileHint', { most: format.number(mostImportRows) })}>
      <Choice
        label={t('import.kind')}
        value={kind}
        onChange={setKind}
        options={importKinds.map((value) => ({ value, label: t(`import.kind.${value}`) }))}
      />
      <label className="hf-photo-pick hf-import-pick">
        {file === null ? t('import.choose') : file.name}
        <input
          type="file"
          accept=".csv,.txt,.tsv,text/csv,text/plain,text/tab-separated-values"
          onChange={(event) => {
            setFile(event.target.files?.[0] ?? null);
            setProblem(null);
          }}
        />
      </label>
      {file !== null && file.size > largestImport && (
        <p className="hf-wrong">{t('problem.body.tooLarge', { limit: `${String(inMegabytes(largestImport))} MB` })}</p>
      )}
      <div className="hf-row">
        <Button
          look="ink"
          isDisabled={file === null || file.size > largestImport}
          isPending={pending}
          onPress={() => void upload()}
        >
          {t('import.upload')}
        </Button>
        {pending && <span className="hf-quiet">{t('import.uploading')}</span>}
      </div>
      <Refusal problem={problem} />
    </Part>
  );
};

const EarlierFiles = (): ReactElement => {
  const { t, format } = useText();
  const read = useRead<ImportsView>('/api/imports', ['imports']);
  const now = useNow(60_000);
  const files = read.data?.items ?? [];
  return (
    <Part heading={t('import.earlier')}>
      {read.data && files.length === 0 && <p className="hf-quiet">{t('import.earlierNone')}</p>}
      <Entries>
        {files.map((batch) => (
          <Entry key={batch.id}>
            <Link className="hf-entry-title" href={importedFilePath(batch.id)}>
              {batch.fileName}
            </Link>
            <span className="hf-quiet hf-small">
              {[
                t(`import.kind.${batch.kind}`),
                t('import.about', { rows: batch.rowCount, encoding: batch.encoding }),
                t(`import.state.${batch.state}`),
                format.moment(Date.parse(batch.uploadedAt), now),
              ].join(' · ')}
            </span>
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};

const ExistingData = (): ReactElement => {
  const { t } = useText();
  if (!useMay().command('acceptImport')) {
    return (
      <>
        <ScreenHead heading={t('import.heading')} />
        <EmptyState heading={t('import.notYours')} />
      </>
    );
  }
  return (
    <div className="hf-read">
      <ScreenHead heading={t('import.heading')} under={t('import.under')} />
      <FilePart />
      <EarlierFiles />
    </div>
  );
};

/** Files of existing data: one to bring in, and those before. */
export const ExistingDataScreen = (): ReactElement => (
  <SignedIn>
    <ExistingData />
  </SignedIn>
);
