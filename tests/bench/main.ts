/** `npm run bench -- NAME` prints one JSON line; without a name one for each. Exits 3 when a target does not hold. */
import { benchArrivals } from './arrivals.js';
import { benchBayTime } from './bay-time.js';
import { benchCommand } from './command.js';
import { benchFanout } from './fanout.js';
import type { BenchLine } from './measure.js';
import { benchPlan } from './plan.js';
import { benchReturns } from './returns.js';
import { benchStart } from './start.js';

const benches: Readonly<Record<string, (options: readonly string[]) => Promise<BenchLine>>> = {
  'bay-time': benchBayTime,
  command: benchCommand,
  fanout: benchFanout,
  plan: benchPlan,
  returns: benchReturns,
  start: benchStart,
  arrivals: benchArrivals,
};

const [wanted, ...options] = process.argv.slice(2);
const names = wanted === undefined ? Object.keys(benches) : [wanted];
let allHold = true;
for (const name of names) {
  const bench = benches[name];
  if (!bench) {
    process.stderr.write(`There is no benchmark "${name}". There are: ${Object.keys(benches).join(', ')}.\n`);
    process.exit(2);
  }
  const line = await bench(options);
  allHold &&= line.holds;
  process.stdout.write(`${JSON.stringify(line)}\n`);
}
process.exit(allHold ? 0 : 3);
