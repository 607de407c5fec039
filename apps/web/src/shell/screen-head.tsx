import { useEffect, type ReactElement, type ReactNode } from 'react';

import { useText } from '../text/use-text.js';

/** The heading of a screen with its acts at the far side; also the title of the browser's tab. */
export const ScreenHead = (props: { heading: string; under?: ReactNode; acts?: ReactNode }): ReactElement => {
  const { t } = useText();
  const { heading } = props;
  useEffect(() => {
    document.title = t('shell.title', { screen: heading });
  }, [t, heading]);
  return (
    <div className="hf-screen-head">
      <div>
        <h1>{heading}</h1>
        {props.under !== undefined && <p className="hf-quiet">{props.under}</p>}
      </div>
      {props.acts !== undefined && <div className="hf-row">{props.acts}</div>}
    </div>
  );
};
