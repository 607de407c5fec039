import type { ReactElement, ReactNode } from 'react';

export type Meaning = { readonly key: string; readonly mark: ReactNode; readonly words: string };

/** Marks at the left, what they mean beside them. */
export const MeaningList = (props: { meanings: readonly Meaning[]; dense?: boolean }): ReactElement => (
  <dl className={props.dense === true ? 'hf-meanings hf-meanings-dense' : 'hf-meanings'}>
    {props.meanings.map((meaning) => (
      <div key={meaning.key}>
        <dt>{meaning.mark}</dt>
        <dd>{meaning.words}</dd>
      </div>
    ))}
  </dl>
);
