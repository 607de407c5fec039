import { useState, type ReactElement } from 'react';
import { Link } from 'wouter';

import { Refusal } from '../live/refusal.js';
import { useMay } from '../live/session.js';
import { useBoard } from '../live/use-board.js';
import { SmallList } from '../pieces/part.js';
import { PhotoInput, usePhotos } from '../pieces/photo-form.js';
import { useSentences } from '../pieces/sentences.js';
import { jobPath, pathOf } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';

type WalkRoundProps = { readonly jobId: string; readonly plate: string };

/** After check-in: what was noted, and the walk-round photos. */
export const WalkRound = ({ jobId, plate }: WalkRoundProps): ReactElement => {
  const { t } = useText();
  const may = useMay();
  const board = useBoard();
  const sentences = useSentences();
  const photos = usePhotos(jobId);
  const [put, setPut] = useState(0);
  const number = board.tables.job.get(jobId)?.number;
  const flags = [...board.tables.flag.values()].filter((flag) => flag.jobId === jobId);
  const send = async (): Promise<void> => {
    const count = photos.files.length;
    if (await photos.attach({ moment: 'walkRound' })) setPut((before) => before + count);
  };
  return (
    <>
      <h2>{number === undefined ? t('checkIn.done', { plate }) : t('checkIn.doneNumber', { number, plate })}</h2>
      {flags.length > 0 && (
        <div>
          <h3>{t('checkIn.flags')}</h3>
          <SmallList lines={flags.map((flag) => sentences.flag(flag))} />
        </div>
      )}
      {may.command('attachPhoto') && (
        <>
          <p>{t('checkIn.photos')}</p>
          <PhotoInput photos={photos} />
          {put > 0 && <p role="status">{t('checkIn.photosDone', { count: put })}</p>}
          <Refusal problem={photos.problem} jobId={jobId} />
        </>
      )}
      <div className="hf-step-acts">
        {photos.files.length > 0 && (
          <Button look="ink" command="attachPhoto" isPending={photos.pending} onPress={() => void send()}>
            {t('checkIn.putPhotos')}
          </Button>
        )}
        <Link className="hf-button hf-button-normal hf-look-frame" href={jobPath(jobId)}>
          {t('checkIn.toJob')}
        </Link>
        <Link className="hf-button hf-button-normal hf-look-frame" href={pathOf.desk}>
          {t('checkIn.leave')}
        </Link>
      </div>
    </>
  );
};
