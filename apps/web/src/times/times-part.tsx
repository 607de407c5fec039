import type { TimesView } from '@holdfast/contract';
import { useState, type ReactElement } from 'react';

import { useRead } from '../live/reads.js';
import { Part } from '../pieces/part.js';
import { ReadState } from '../pieces/read-state.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { TimesList } from './times-list.js';

type Props = {
  /** `job=…` or `from=…&to=…` of `/api/times`. */
  readonly query: string;
  readonly hints: readonly string[];
  readonly jobId: string | null;
  readonly from: number | null;
};

const Loaded = ({ query, hints, ...rest }: Props): ReactElement => {
  const { t } = useText();
  const read = useRead<TimesView>(`/api/times?${query}`, hints);
  if (!read.data) return <ReadState error={read.error} missing={t('times.noClocks')} />;
  return <TimesList view={read.data} {...rest} />;
};

/** The entries behind the figures of a visit or of a day; read only when somebody wants to see them. */
export const TimesPart = (props: Props): ReactElement => {
  const { t } = useText();
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <Part heading={t('times.heading')} id="times">
        <Button
          size="small"
          onPress={() => {
            setOpen(!isOpen);
          }}
        >
          {t(isOpen ? 'times.hide' : 'times.show')}
        </Button>
      </Part>
      {isOpen && <Loaded {...props} />}
    </>
  );
};
