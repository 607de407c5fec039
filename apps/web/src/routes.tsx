import { lazy, Suspense, type ComponentType, type ReactElement } from 'react';
import { Redirect, Route, Switch, useLocation } from 'wouter';

import { bareScreens, navigation, pathOf, type ScreenName } from './screen-paths.js';
import { screens } from './screens.js';
import { ScreenFailure } from './shell/screen-failure.js';
import { Shell } from './shell/shell.js';
import { useText } from './text/use-text.js';
import { EmptyState } from './ui/empty-state.js';

type Place = { readonly path: string; readonly Screen: ComponentType; readonly bare: boolean };

// The longer path first: a hand-back is no job.
const places: readonly Place[] = (Object.keys(pathOf) as ScreenName[])
  .flatMap((name) => {
    const load = screens[name];
    if (load === undefined) return [];
    const Screen = lazy(async () => ({ default: await load() }));
    return [{ path: pathOf[name], Screen, bare: bareScreens.includes(name) }];
  })
  .sort((a, b) => b.path.length - a.path.length);

const firstScreen = navigation.find((name) => name in screens) ?? 'style';

const NoSuchPlace = (): ReactElement => {
  const { t } = useText();
  return <EmptyState heading={t('shell.noSuchPlace')} />;
};

/** Every path of the client and the screen that stands there. */
export const Routes = (): ReactElement => {
  const { t } = useText();
  const [location] = useLocation();
  const within = (screen: ReactElement): ReactElement => (
    <ScreenFailure place={location}>
      <Suspense fallback={<p className="hf-quiet">{t('shell.loading')}</p>}>{screen}</Suspense>
    </ScreenFailure>
  );
  return (
    <Switch>
      <Route path="/">
        <Redirect to={pathOf[firstScreen]} replace />
      </Route>
      {places.map(({ path, Screen, bare }) => (
        <Route key={path} path={path}>
          {bare ? within(<Screen />) : <Shell>{within(<Screen />)}</Shell>}
        </Route>
      ))}
      <Route>
        <Shell>
          <NoSuchPlace />
        </Shell>
      </Route>
    </Switch>
  );
};
