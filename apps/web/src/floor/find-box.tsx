import { expectedVisits, openVisits, type Board, type Visit } from '@holdfast/board';
import type { FindView } from '@holdfast/contract';
import { foldKey } from '@holdfast/domain';
import { useEffect, useState, type KeyboardEvent, type ReactElement } from 'react';
import { Link, useLocation } from 'wouter';

import { useRead } from '../live/reads.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { jobPath, vehiclePath } from '../screen-paths.js';
import { useText, type Translate } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import { findHere } from './find-here.js';
import { goToJob } from './go-to.js';

/** How long typing rests before the server is asked. */
const restMs = 250;
const mostShown = 6;

const useRested = (typed: string): string => {
  const [rested, setRested] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => {
      setRested(typed);
    }, restMs);
    return () => {
      clearTimeout(timer);
    };
  }, [typed]);
  return rested;
};

type Item = FindView['items'][number];

const Elsewhere = ({ item, t }: { readonly item: Item; readonly t: Translate }): ReactElement => {
  if (item.kind === 'customer') {
    return (
      <span className="hf-found-row">
        <strong>{item.name}</strong>
        <span className="hf-quiet">{item.fleet ?? t('floor.foundCustomer')}</span>
      </span>
    );
  }
  const { description } = item;
  const words =
    item.kind === 'vehicle'
      ? t('floor.foundVehicle', { description })
      : t(item.open ? 'floor.foundJob' : 'floor.foundEnded', { number: item.number, description });
  return (
    <Link className="hf-found-row" href={item.kind === 'vehicle' ? vehiclePath(item.id) : jobPath(item.id)}>
      <strong className="hf-code">{item.plate}</strong>
      <span className="hf-quiet">{words}</span>
    </Link>
  );
};

type FindProps = { readonly board: Board; readonly now: number };

/** One box for plates, names, keys and spots; what is on the floor is gone to there, the rest is linked. */
export const FindBox = ({ board, now }: FindProps): ReactElement => {
  const { t, format } = useText();
  const [, navigate] = useLocation();
  const words = useVisitWords(board, now);
  const [typed, setTyped] = useState('');
  const rested = useRested(typed.trim());
  const found = useRead<FindView>(rested.length < 2 ? null : `/api/find?q=${encodeURIComponent(rested)}`, []);
  const key = foldKey(typed);
  const here = findHere([...openVisits(board, now), ...expectedVisits(board, now)], typed).slice(0, mostShown);
  const hereIds = new Set(here.flatMap(({ job, vehicle }) => [job.id, vehicle.id]));
  const elsewhere =
    rested.length < 2 ? [] : (found.data?.items ?? []).filter((item) => !hereIds.has(item.id)).slice(0, mostShown);
  const isAnswered = key !== '' && (here.length > 0 || (rested === typed.trim() && !found.isFetching));
  const go = (visit: Visit): void => {
    setTyped('');
    // One that comes another day stands nowhere on the floor.
    if (!goToJob(visit.job.number)) navigate(jobPath(visit.job.id));
  };
  const whereIs = (visit: Visit): string => {
    const { description } = visit.vehicle;
    if (visit.job.arrivedAt !== null) return t('floor.foundAt', { description, place: words.place(visit) });
    return t('floor.foundExpected', { description, at: format.moment(visit.job.expectedAt ?? now, now) });
  };
  const pressed = (event: KeyboardEvent): void => {
    const [first] = here;
    if (event.key === 'Enter' && first !== undefined) go(first);
    if (event.key === 'Escape') setTyped('');
  };
  return (
    <search className="hf-find" onKeyDown={pressed}>
      <Field
        label={t('floor.find')}
        hint={t('floor.findHint')}
        value={typed}
        onChange={setTyped}
        name="find"
        type="text"
        autoComplete="off"
      />
      {key !== '' && (
        <div className="hf-found" role="status">
          {here.length + elsewhere.length > 0 ? (
            <ul aria-label={t('floor.found')}>
              {here.map((visit) => (
                <li key={visit.job.id}>
                  <Button
                    look="plain"
                    onPress={() => {
                      go(visit);
                    }}
                  >
                    <span className="hf-found-row">
                      <strong className="hf-code">{visit.vehicle.plate}</strong>
                      <span className="hf-quiet">{whereIs(visit)}</span>
                    </span>
                  </Button>
                </li>
              ))}
              {elsewhere.map((item) => (
                <li key={item.id}>
                  <Elsewhere item={item} t={t} />
                </li>
              ))}
            </ul>
          ) : (
            isAnswered && <p className="hf-quiet">{t('floor.foundNothing')}</p>
          )}
        </div>
      )}
    </search>
  );
};
