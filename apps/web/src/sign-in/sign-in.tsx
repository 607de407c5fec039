// sign-in/ hides how a person gets in. It guarantees that no password is asked for on a connection on which it could be
// read by others, that what is wrong is said without telling which of the three was wrong, and that after signing in a
// person stands where they wanted to go, or on the first screen of their trade.
import type { DemoView, SignInPageView } from '@holdfast/contract';
import { useEffect, useState, type SyntheticEvent, type ReactElement } from 'react';
import { Link, Redirect, useSearch } from 'wouter';

import { loadSession, signIn, useSession } from '../live/session.js';
import { ProblemAnswer } from '../live/http.js';
import { useRead } from '../live/reads.js';
import { EntrancePage } from '../pieces/entrance-page.js';
import { pathOf } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Field } from '../ui/fields/field.js';
import { Notice } from '../ui/notice.js';
import { DemoSignIns } from './demo-sign-ins.js';
import { firstScreenOf, wayAfter } from './first-screen.js';

/** What is taken for granted until the server has said how things are. */
const unknownPage: Pick<SignInPageView, 'secure' | 'setUp' | 'way'> = { secure: true, setUp: false, way: null };

export const SignIn = (): ReactElement => {
  const { t } = useText();
  const search = useSearch();
  const { state } = useSession();
  const page = useRead<SignInPageView>('/api/sign-in-page', []);
  const demo = useRead<DemoView>(page.data?.demo === true ? '/api/demo' : null, []);
  const [wrong, setWrong] = useState<string | null>(null);
  const [pending, setPending] = useState(false);
  useEffect(() => {
    if (state.kind === 'asking') void loadSession();
  }, [state.kind]);

  const enter = async (shop: string, name: string, password: string): Promise<void> => {
    setPending(true);
    setWrong(null);
    try {
      await signIn(shop, name, password);
    } catch (failure) {
      setWrong(failure instanceof ProblemAnswer ? failure.problem.detail : t('signIn.unreachable'));
      setPending(false);
    }
  };

  if (state.kind === 'signedIn') {
    return <Redirect to={wayAfter(search) ?? firstScreenOf(state.session.person.roles)} replace />;
  }
  const { secure, setUp, way } = page.data ?? unknownPage;
  return (
    <EntrancePage heading={t('signIn.heading')} under={t('signIn.under')}>
      {page.isError && <Notice kind="note" lines={[{ sentence: t('signIn.unreachable') }]} />}
      {secure ? (
        <SignInForm
          pending={pending}
          wrong={wrong}
          onSend={(shop, name, password) => void enter(shop, name, password)}
        />
      ) : (
        <Notice kind="note" heading={t('signIn.notSecure')} lines={[{ sentence: way ?? t('signIn.needsHttps') }]} />
      )}
      {secure && demo.data !== undefined && (
        <DemoSignIns
          demo={demo.data}
          pending={pending}
          onSend={(name, password) => void enter(demo.data.shop, name, password)}
        />
      )}
      {setUp && (
        <p>
          {t('signIn.noShop')} <Link href={pathOf.setUp}>{t('signIn.toSetUp')}</Link>
        </p>
      )}
    </EntrancePage>
  );
};

type FormProps = {
  readonly pending: boolean;
  readonly wrong: string | null;
  readonly onSend: (shop: string, name: string, password: string) => void;
};

const SignInForm = ({ pending, wrong, onSend }: FormProps): ReactElement => {
  const { t } = useText();
  const [shop, setShop] = useState('');
  const [name, setName] = useState('');
  const [password, setPassword] = useState('');
  const [shown, setShown] = useState(false);
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    if (!pending && shop.trim() !== '' && name.trim() !== '' && password !== '')
      onSend(shop.trim(), name.trim(), password);
  };
  return (
    <form className="hf-stack" onSubmit={submit}>
      <Field
        label={t('signIn.shop')}
        value={shop}
        onChange={setShop}
        name="shop"
        autoComplete="organization"
        isRequired
      />
      <Field label={t('signIn.name')} value={name} onChange={setName} name="name" autoComplete="username" isRequired />
      <div className="hf-with-act">
        <Field
          label={t('signIn.password')}
          value={password}
          onChange={setPassword}
          name="password"
          type={shown ? 'text' : 'password'}
          autoComplete="current-password"
          isRequired
        />
        <Button
          pressed={shown}
          size="small"
          onPress={() => {
            setShown(!shown);
          }}
        >
          {t(shown ? 'signIn.hidePassword' : 'signIn.showPassword')}
        </Button>
      </div>
      {wrong !== null && <Notice kind="refusal" lines={[{ sentence: wrong }]} />}
      <Button look="ink" type="submit" isPending={pending} onPress={() => undefined}>
        {t('signIn.enter')}
      </Button>
    </form>
  );
};
