import type { ReactElement, ReactNode } from 'react';

import './pieces.css';

const shown = (acts: ReactNode): boolean => acts !== undefined && acts !== null && acts !== false;

type PartProps = {
  readonly heading: string;
  readonly acts?: ReactNode;
  readonly under?: ReactNode;
  readonly id?: string;
  readonly children: ReactNode;
};

/** A part of a screen that reads like a sheet: its heading and acts in the rail, its entries beside them. */
export const Part = ({ heading, acts, under, id, children }: PartProps): ReactElement => (
  <section className="hf-part" aria-label={heading} {...(id === undefined ? {} : { id })}>
    <div className="hf-part-head">
      <div>
        <h2>{heading}</h2>
        {under !== undefined && <p className="hf-quiet hf-small">{under}</p>}
      </div>
      {shown(acts) && <div className="hf-part-acts">{acts}</div>}
    </div>
    <div className="hf-part-body">{children}</div>
  </section>
);

type EntryProps = {
  /** `<table>-<row id>`: where a refusal leads. */
  readonly id?: string;
  readonly job?: number;
  readonly children: ReactNode;
  readonly acts?: ReactNode;
};

/** One row of a part, with what can be done about it at its end. */
export const Entry = ({ id, job, children, acts }: EntryProps): ReactElement => (
  <li
    className={shown(acts) ? 'hf-entry hf-entry-split' : 'hf-entry'}
    {...(id === undefined ? {} : { id })}
    {...(job === undefined ? {} : { 'data-job': job })}
  >
    <div className="hf-entry-main">{children}</div>
    {shown(acts) && <div className="hf-entry-acts">{acts}</div>}
  </li>
);

export const Entries = ({ children }: { readonly children: ReactNode }): ReactElement => (
  <ul className="hf-entries">{children}</ul>
);

/** Short sentences under an entry. */
export const SmallList = ({ lines }: { readonly lines: readonly string[] }): ReactElement | null =>
  lines.length === 0 ? null : (
    <ul className="hf-small-list">
      {lines.map((line, at) => (
        <li key={`${String(at)} ${line}`}>{line}</li>
      ))}
    </ul>
  );

/** A small list of what was said or done when; the dates stand in their own column. */
export const Dated = (props: {
  readonly lines: readonly { readonly when: string; readonly what: string; readonly act?: ReactNode }[];
}): ReactElement | null =>
  props.lines.length === 0 ? null : (
    <dl className="hf-dated">
      {props.lines.map(({ when, what, act }, at) => (
        <div key={`${String(at)} ${when}`} style={{ display: 'contents' }}>
          <dt>{when}</dt>
          <dd>
            {what} {act}
          </dd>
        </div>
      ))}
    </dl>
  );
