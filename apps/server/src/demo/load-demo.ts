/**
 * demo/ hides how a shop with a past is invented and put into a database. It guarantees that every row of it was written
 * by the rules of the domain (what they refuse is a bug here), that one seed and one day give one demo, that it is loaded
 * once and only where no shop of anybody's is, and that its passwords are told on loopback only unless DEMO=on says so.
 */
import { calendarOf } from '@holdfast/shop-calendar';
import { openAccounts } from '../auth/accounts.js';
import { CannotStart } from '../database/cannot-start.js';
import type { Demo } from '../http/demo.controller.js';
import type { LoadDemo } from '../serve.js';
import { demoPassword, demoShop, demoShopId, opening, owner, people } from './cast.js';

const seed = 20_261;

type Parts = Parameters<LoadDemo>[0];
type Accounts = ReturnType<typeof openAccounts>;

/** Finds the demo, or invents and loads it where it belongs; null where there is to be none. */
export const loadDemo: LoadDemo = async (parts) => {
  const { database, config } = parts;
  const accounts = openAccounts(database);
  try {
    const isThere = (await accounts.find(demoShop.name, owner.name))?.shopId === demoShopId;
    const hasRealShop = await accounts.hasRealShop();
    if (isThere && config.demo === 'off') {
      throw new CannotStart(
        'This database holds the demo, which never shares it with a shop of your own. Name another folder with DATA_DIR (or another DATABASE_URL), or leave DEMO out.',
      );
    }
    if (hasRealShop && config.demo === 'on') {
      throw new CannotStart(
        'This database holds a shop, and the demo never shares a database with one. Leave DEMO out, or name another DATA_DIR or DATABASE_URL.',
      );
    }
    const wanted = config.demo === 'on' || (config.demo === 'unset' && database.kind === 'embedded' && !hasRealShop);
    if (!isThere && wanted) await load(parts, accounts);
    return isThere || wanted ? demoOf(config.demo === 'on') : null;
  } finally {
    await accounts.close();
  }
};

function demoOf(toldToAll: boolean): Demo {
  const signIns = [owner, ...people].map(({ name, roles }) => ({ name, roles: [...roles], password: demoPassword }));
  return {
    signIns: () => ({ shop: demoShop.name, people: signIns }),
    isToldTo: ({ loopback }) => toldToAll || loopback,
  };
}

/** Today in the zone of the shop where it opens today, else the last day that it was open. */
export function demoDay(now: number): string {
  const calendar = calendarOf({
    zone: demoShop.zone,
    hours: [{ validFrom: '2000-01-01', ...opening }],
    exceptions: [],
  });
  const today = calendar.dateOf(now);
  return calendar.isWorkingDay(today) ? today : (calendar.nextWorkingDay(today, -1) ?? today);
}

async function load({ database, passwords, log }: Parts, accounts: Accounts): Promise<void> {
  if (await accounts.isShopNameTaken(demoShop.name)) throw nameTaken();
  // Needed by the first start alone, so that later ones do not wait for it to be read.
  const [{ inventShop }, { loadLedger, peopleInside }] = await Promise.all([
    import('./invent.js'),
    import('./load-ledger.js'),
  ]);
  const began = performance.now();
  const { ledger, now } = inventShop(seed, demoDay(Date.now()));
  const invented = performance.now();
  await loadLedger(database.app, demoShopId, ledger, now);
  // Read back: a start that broke off between the two left people whose ids are not those invented now.
  const persons = await peopleInside(database.app, demoShopId);
  const boss = persons.find(({ name }) => name === owner.name);
  if (!boss) throw new Error('the demo has no owner');
  const password = await passwords.hash(demoPassword);
  const shop = { shopId: demoShopId, name: demoShop.name, demo: true };
  if (!(await accounts.addShop(shop, () => Promise.resolve({ ...boss, password })))) throw nameTaken();
  for (const person of persons) {
    if (person !== boss) await accounts.setPassword({ shopId: demoShopId, ...person }, password);
  }
  await database.analyse();
  const seconds = (from: number, to: number) => `${((to - from) / 1000).toFixed(1)} s`;
  log.info(
    `The demo was loaded: ${ledger.changes.length} changes, invented in ${seconds(began, invented)}, stored in ${seconds(invented, performance.now())}.`,
  );
}

function nameTaken(): CannotStart {
  return new CannotStart(
    `There is another shop of the name ${demoShop.name} in this database; the demo cannot be loaded.`,
  );
}
