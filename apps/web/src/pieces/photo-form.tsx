import type { ProblemDetails, UploadView } from '@holdfast/contract';
import { useState, type ChangeEvent, type ReactElement } from 'react';

import './pieces.css';
import { call, ProblemAnswer } from '../live/http.js';
import { newId, send } from '../live/send.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Choice } from '../ui/fields/choice.js';
import { Field } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { Tick } from './ticks.js';
import { said } from './typed.js';

/** Where on a job a photo belongs. */
export type PhotoOf = {
  readonly findingId?: string;
  readonly temporaryFixId?: string;
  readonly moment?: 'walkRound' | 'before' | 'after' | 'other';
  readonly caption?: string | undefined;
  readonly showsPeople?: boolean;
};

export type Photos = {
  readonly files: readonly File[];
  readonly add: (files: readonly File[]) => void;
  readonly drop: (file: File) => void;
  readonly pending: boolean;
  readonly problem: ProblemDetails | null;
  /** Uploads what was taken and attaches it; false when one was refused (those before it are on the job). */
  readonly attach: (of: PhotoOf) => Promise<boolean>;
};

const upload = (file: File): Promise<UploadView> => {
  const body = new FormData();
  body.append('file', file);
  return call<UploadView>('POST', '/api/uploads', body, { 'idempotency-key': newId() });
};

/** Photos taken or chosen, sent one after the other: each is uploaded, then attached to the job. */
export const usePhotos = (jobId: string): Photos => {
  const { t } = useText();
  const [files, setFiles] = useState<readonly File[]>([]);
  const [pending, setPending] = useState(false);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const attachOne = async (file: File, of: PhotoOf): Promise<ProblemDetails | null> => {
    try {
      const { content, width, height } = await upload(file);
      const sent = await send('attachPhoto', { photoId: newId(), jobId, content, width, height, ...of });
      return sent.ok ? null : sent.problem;
    } catch (failure) {
      if (failure instanceof ProblemAnswer) return failure.problem;
      const detail = t('piece.photo.notSent');
      return { type: 'about:blank', code: 'server.busy', title: detail, status: 503, detail, traceId: '' };
    }
  };
  const attach = async (of: PhotoOf): Promise<boolean> => {
    setPending(true);
    setProblem(null);
    for (const file of files) {
      const refused = await attachOne(file, of);
      if (refused) {
        setProblem(refused);
        setPending(false);
        return false;
      }
      setFiles((before) => before.filter((one) => one !== file));
    }
    setPending(false);
    return true;
  };
  return {
    files,
    add: (more) => {
      setFiles((before) => [...before, ...more]);
    },
    drop: (file) => {
      setFiles((before) => before.filter((one) => one !== file));
    },
    pending,
    problem,
    attach,
  };
};

/** Takes photos with the camera where there is one, or from the device. */
export const PhotoInput = ({ photos }: { readonly photos: Photos }): ReactElement => {
  const { t } = useText();
  const chosen = (event: ChangeEvent<HTMLInputElement>): void => {
    photos.add([...(event.target.files ?? [])]);
    event.target.value = '';
  };
  return (
    <div className="hf-number-field">
      <label className="hf-photo-pick">
        {t('piece.photo.take')}
        <input type="file" accept="image/*" capture="environment" multiple onChange={chosen} />
      </label>
      {photos.files.length > 0 && (
        <ul className="hf-small-list">
          {photos.files.map((file, at) => (
            <li key={`${String(at)} ${file.name}`} className="hf-row">
              {t('piece.photo.one', { number: at + 1, name: file.name })}
              <Button
                size="small"
                look="plain"
                label={t('piece.photo.dropNamed', { name: file.name })}
                onPress={() => {
                  photos.drop(file);
                }}
              >
                {t('piece.photo.drop')}
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
};

const moments = ['walkRound', 'before', 'after', 'other'] as const;

type PhotoFormProps = {
  readonly jobId: string;
  readonly of?: PhotoOf;
  readonly onClose: () => void;
};

/** Photos for a job, or for one finding or fix of it. */
export const PhotoForm = ({ jobId, of, onClose }: PhotoFormProps): ReactElement => {
  const { t } = useText();
  const photos = usePhotos(jobId);
  const [moment, setMoment] = useState<(typeof moments)[number]>(of?.moment ?? 'other');
  const [caption, setCaption] = useState('');
  const [showsPeople, setShowsPeople] = useState(false);
  const send = async (): Promise<void> => {
    if (await photos.attach({ ...of, moment, caption: said(caption), showsPeople })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.photo.heading')}
      command="attachPhoto"
      act={t('piece.photo.act')}
      sending={{
        pending: photos.pending,
        problem: photos.problem,
        clear: () => undefined,
        run: () => Promise.resolve(null),
      }}
      ready={photos.files.length > 0}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <PhotoInput photos={photos} />
      <Choice
        label={t('piece.photo.moment')}
        value={moment}
        onChange={setMoment}
        options={moments.map((value) => ({ value, label: t(`piece.moment.${value}`) }))}
      />
      <Field label={t('piece.photo.caption')} value={caption} onChange={setCaption} />
      <Tick label={t('piece.photo.showsPeople')} value={showsPeople} onChange={setShowsPeople} />
    </FormSheet>
  );
};

type PhotoRow = {
  readonly id: string;
  readonly content: string;
  readonly caption: string | null;
  readonly moment: (typeof moments)[number];
};

/** Photos, small; each opens in full. */
export const PhotoList = ({ photos }: { readonly photos: readonly PhotoRow[] }): ReactElement | null => {
  const { t } = useText();
  if (photos.length === 0) return null;
  return (
    <ul className="hf-photos">
      {photos.map((photo) => {
        const words = photo.caption ?? t(`piece.moment.${photo.moment}`);
        return (
          <li key={photo.id} id={`photo-${photo.id}`}>
            <figure>
              <a href={`/api/photos/${photo.content}`} target="_blank" rel="noreferrer">
                <img src={`/api/photos/${photo.content}?size=small`} alt={words} loading="lazy" />
              </a>
              <figcaption className="hf-small hf-quiet">{words}</figcaption>
            </figure>
          </li>
        );
      })}
    </ul>
  );
};
