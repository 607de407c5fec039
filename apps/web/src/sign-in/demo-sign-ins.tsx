import type { DemoView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';

type DemoProps = {
  readonly demo: DemoView;
  readonly pending: boolean;
  readonly onSend: (name: string, password: string) => void;
};

/** The invented people of the demo, each one tap away. */
export const DemoSignIns = ({ demo, pending, onSend }: DemoProps): ReactElement => {
  const { t } = useText();
  return (
    <section className="hf-entrance-demo" aria-labelledby="demo-sign-ins">
      <h2 id="demo-sign-ins">{t('signIn.demo', { shop: demo.shop })}</h2>
      <p className="hf-quiet">{t('signIn.demoUnder')}</p>
      <ul className="hf-entrance-people">
        {demo.people.map((person) => (
          <li key={person.name}>
            <Button
              isPending={pending}
              follows={person.roles.map((role) => t(`word.role.${role}`)).join(', ')}
              onPress={() => {
                onSend(person.name, person.password);
              }}
            >
              {person.name}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
};
