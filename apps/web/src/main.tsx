// The browser client starts here: the device's look first, so that nothing is drawn in the wrong one, then the screens.
import '@fontsource-variable/inter/wght.css';
import './theme/tokens.css';
import './theme/base.css';

import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode, type ReactElement } from 'react';
import { I18nProvider } from 'react-aria-components';
import { createRoot } from 'react-dom/client';

import { queries } from './live/reads.js';
import { Routes } from './routes.js';
import { useText } from './text/use-text.js';
import { useDeviceSettings, wearTheme } from './theme/device-settings.js';

wearTheme(useDeviceSettings.getState().theme);

const App = (): ReactElement => {
  const { locale } = useText();
  return (
    <I18nProvider locale={locale}>
      <Routes />
    </I18nProvider>
  );
};

const place = document.getElementById('app');
if (place === null) throw new Error('index.html has no element with the id "app".');
createRoot(place).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
