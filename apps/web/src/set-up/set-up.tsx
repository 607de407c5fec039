// set-up/ hides how a shop begins. It guarantees that whoever has the code printed at start knows before typing what a
// password has to be, and is signed in as the owner as soon as the shop stands.
import type { SignInPageView } from '@holdfast/contract';
import { useState, type SyntheticEvent, type ReactElement } from 'react';
import { Link, Redirect } from 'wouter';

import { Refusal } from '../live/refusal.js';
import { useRead } from '../live/reads.js';
import { loadSession, useSession } from '../live/session.js';
import { useSend } from '../live/use-send.js';
import { EntrancePage } from '../pieces/entrance-page.js';
import { optionsOf } from '../pieces/options.js';
import { pathOf } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Choice } from '../ui/fields/choice.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { Notice } from '../ui/notice.js';
import { currencyChoices, deviceZone, likelyCurrency, zoneChoices } from './places-and-money.js';

/** As the server demands it (NIST SP 800-63B-4, 3.1.1.2: at least 15 where the password is the only factor). */
const leastSigns = 15;

export const SetUp = (): ReactElement => {
  const { t } = useText();
  const { state } = useSession();
  const page = useRead<SignInPageView>('/api/sign-in-page', []);
  if (state.kind === 'signedIn') return <Redirect to={pathOf.shop} replace />;
  const secure = page.data?.secure ?? true;
  return (
    <EntrancePage heading={t('setUp.heading')} under={t('setUp.under')}>
      {secure ? (
        <SetUpForm />
      ) : (
        <Notice
          kind="note"
          heading={t('signIn.notSecure')}
          lines={[{ sentence: page.data?.way ?? t('signIn.needsHttps') }]}
        />
      )}
      <p>
        <Link href={pathOf.signIn}>{t('setUp.toSignIn')}</Link>
      </p>
    </EntrancePage>
  );
};

const useSetUp = () => {
  const { locale } = useText();
  const sending = useSend();
  const [typed, setTyped] = useState({
    code: '',
    name: '',
    zone: deviceZone(),
    currency: likelyCurrency(deviceZone()),
    units: locale === 'en-US' ? ('us' as const) : ('metric' as const),
    locale,
    ownerName: '',
    password: '',
  });
  const change = (part: Partial<typeof typed>): void => {
    setTyped((before) => ({ ...before, ...part }));
  };
  const isWhole = typed.code.trim() !== '' && typed.name.trim() !== '' && typed.ownerName.trim() !== '';
  const longEnough = Array.from(typed.password.normalize('NFC')).length >= leastSigns;
  const send = async (): Promise<void> => {
    if (!isWhole || !longEnough || sending.pending) return;
    const { code, name, zone, currency, units, ownerName, password } = typed;
    const answer = await sending.run('setUpShop', {
      code: code.trim(),
      shop: { name: name.trim(), zone, currency, units, locale: typed.locale },
      owner: { name: ownerName.trim(), password },
    });
    if (answer) await loadSession();
  };
  return { typed, change, sending, send, ready: isWhole && longEnough };
};

type SetUpState = ReturnType<typeof useSetUp>;

const ShopFields = ({ typed, change }: Pick<SetUpState, 'typed' | 'change'>): ReactElement => {
  const { t, locale } = useText();
  return (
    <fieldset className="hf-group">
      <legend>{t('setUp.shop')}</legend>
      <Field
        label={t('setUp.shopName')}
        hint={t('setUp.shopNameHint')}
        value={typed.name}
        onChange={(name) => {
          change({ name });
        }}
        autoComplete="organization"
        isRequired
      />
      <Select
        label={t('setUp.zone')}
        hint={t('setUp.zoneHint')}
        value={typed.zone}
        onChange={(zone) => {
          change({ zone });
        }}
        options={zoneChoices()}
      />
      <Select
        label={t('setUp.currency')}
        value={typed.currency}
        onChange={(currency) => {
          change({ currency });
        }}
        options={currencyChoices(locale)}
      />
      <Choice
        label={t('setUp.units')}
        value={typed.units}
        onChange={(units) => {
          change({ units });
        }}
        options={optionsOf(['metric', 'us'] as const, (units) => t(`setUp.units.${units}`))}
      />
      <Choice
        label={t('setUp.words')}
        hint={t('setUp.wordsHint')}
        value={typed.locale}
        onChange={(words) => {
          change({ locale: words });
        }}
        options={optionsOf(['en-GB', 'en-US'] as const, (words) => t(`locale.${words}`))}
      />
    </fieldset>
  );
};

const SetUpForm = (): ReactElement => {
  const { t } = useText();
  const { typed, change, sending, send, ready } = useSetUp();
  const passwordFault = sending.problem?.errors?.find(({ pointer }) => pointer === '/owner/password');
  return (
    <form
      className="hf-stack"
      onSubmit={(event: SyntheticEvent) => {
        event.preventDefault();
        void send();
      }}
    >
      <Field
        label={t('setUp.code')}
        hint={t('setUp.codeHint')}
        value={typed.code}
        onChange={(code) => {
          change({ code });
        }}
        autoComplete="off"
        isRequired
      />
      <ShopFields typed={typed} change={change} />
      <fieldset className="hf-group">
        <legend>{t('setUp.owner')}</legend>
        <Field
          label={t('setUp.ownerName')}
          value={typed.ownerName}
          onChange={(ownerName) => {
            change({ ownerName });
          }}
          autoComplete="username"
          isRequired
        />
        <OwnerPassword
          value={typed.password}
          onChange={(password) => {
            change({ password });
          }}
          wrong={passwordFault?.message ?? null}
        />
      </fieldset>
      {passwordFault === undefined && <Refusal problem={sending.problem} />}
      <Button
        look="ink"
        type="submit"
        command="setUpShop"
        isDisabled={!ready}
        isPending={sending.pending}
        onPress={() => undefined}
      >
        {t('setUp.act')}
      </Button>
    </form>
  );
};

type PasswordProps = {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly wrong: string | null;
};

const OwnerPassword = ({ value, onChange, wrong }: PasswordProps): ReactElement => {
  const { t } = useText();
  const [shown, setShown] = useState(false);
  const left = leastSigns - Array.from(value.normalize('NFC')).length;
  return (
    <div className="hf-with-act">
      <Field
        label={t('setUp.password')}
        hint={
          value !== '' && left > 0 ? t('setUp.passwordLeft', { left }) : t('setUp.passwordHint', { least: leastSigns })
        }
        value={value}
        onChange={onChange}
        wrong={wrong}
        type={shown ? 'text' : 'password'}
        autoComplete="new-password"
        isRequired
      />
      <Button
        size="small"
        pressed={shown}
        onPress={() => {
          setShown(!shown);
        }}
      >
        {t(shown ? 'signIn.hidePassword' : 'signIn.showPassword')}
      </Button>
    </div>
  );
};
