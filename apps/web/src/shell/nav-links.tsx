import type { ReactElement } from 'react';
import { Link, useLocation } from 'wouter';

import { navigation, pathOf, type NavScreen } from '../screen-paths.js';
import { screens } from '../screens.js';
import { useText } from '../text/use-text.js';

type NavProps = {
  readonly only?: readonly NavScreen[];
  readonly onFollow?: () => void;
};

/** Links to the screens that are there, in one order everywhere; the one shown is underlined in ink. */
export const NavLinks = ({ only = navigation, onFollow }: NavProps): ReactElement => {
  const { t } = useText();
  const [location] = useLocation();
  return (
    <ul className="hf-nav-list">
      {only
        .filter((name) => name in screens)
        .map((name) => (
          <li key={name}>
            <Link
              className="hf-nav-link"
              href={pathOf[name]}
              aria-current={location === pathOf[name] || location.startsWith(`${pathOf[name]}/`) ? 'page' : undefined}
              {...(onFollow === undefined ? {} : { onClick: onFollow })}
            >
              {t(`nav.${name}`)}
            </Link>
          </li>
        ))}
    </ul>
  );
};
