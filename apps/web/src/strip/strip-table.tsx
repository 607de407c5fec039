import type { ReactElement } from 'react';

import { useText, type Text } from '../text/use-text.js';
import type { StripData } from './strip-model.js';
import { segmentWords } from './strip-words.js';

type Line = { readonly key: string; readonly from: string; readonly to: string; readonly what: string };

const linesOf = (data: StripData, words: Text): Line[] => {
  const { t, format } = words;
  const moment = (at: number): string => format.moment(at, data.now);
  const spans = data.segments.map((segment) => ({
    key: `segment ${String(segment.from)}`,
    from: moment(segment.from),
    to: segment.to === data.now ? t('strip.now') : moment(segment.to),
    what: [
      segmentWords(segment, words),
      segment.kind === 'kept' ? undefined : segment.label,
      segment.waiting === undefined ? undefined : t(`wait.${segment.waiting}`),
    ]
      .filter((part) => part !== undefined)
      .join(', '),
  }));
  const fixes = data.stitched.map((span) => ({
    key: `stitched ${String(span.from)}`,
    from: moment(span.from),
    to: span.to === null ? t('strip.stillOn') : moment(span.to),
    what: t(span.ended ? 'mark.knot' : 'mark.stitched'),
  }));
  return [...spans, ...fixes];
};

const ends = (data: StripData, { t, format }: Text): string[] => [
  ...(data.forecast == null
    ? []
    : [
        t('strip.forecastEnds', {
          p50: format.moment(data.forecast.p50, data.now),
          p80: format.moment(data.forecast.p80, data.now),
          p95: format.moment(data.forecast.p95, data.now),
        }),
      ]),
  ...(data.promise == null ? [] : [t('strip.promised', { at: format.moment(data.promise, data.now) })]),
];

/** The data of a strip as a table: shown on demand, else for screen readers alone. */
export const StripTable = (props: { caption: string; data: StripData; shown: boolean }): ReactElement => {
  const words = useText();
  const { t } = words;
  return (
    <div className={props.shown ? 'hf-strip-table' : 'hf-strip-table hf-heard-only'}>
      <table className="hf-table">
        <caption className="hf-heard-only">{t('strip.tableOf', { name: props.caption })}</caption>
        <thead>
          <tr>
            <th scope="col">{t('strip.from')}</th>
            <th scope="col">{t('strip.to')}</th>
            <th scope="col">{t('strip.what')}</th>
          </tr>
        </thead>
        <tbody>
          {linesOf(props.data, words).map((line) => (
            <tr key={line.key}>
              <td>{line.from}</td>
              <td>{line.to}</td>
              <td>{line.what}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {ends(props.data, words).map((end) => (
        <p key={end} className="hf-small">
          {end}
        </p>
      ))}
    </div>
  );
};
