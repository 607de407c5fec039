import { Command } from 'commander';
import { readFile } from 'node:fs/promises';
import { play, type PlayReport } from './play.js';
import { FaultyLine } from './script.js';
import { ServerFault } from './shop-client.js';

const program = new Command()
  .name('play')
  .description('Plays a day of commands through the HTTP API into a new shop on a server that runs with the demo.')
  .argument('<file>', 'the day, one JSON object in each line')
  .option('--speed <n>', 'shop seconds for each real second; 0 plays as fast as it goes', '0')
  .option('--url <url>', 'address of the server', 'http://127.0.0.1:4650')
  .option('--code <code>', 'set-up code, where the server does not tell it')
  .option('--keep', "let the shop's clock run on afterwards, to look around in it", false)
  .option('--quiet', 'say only what came of it', false)
  .parse();

const options = program.opts<{ speed: string; url: string; code?: string; keep: boolean; quiet: boolean }>();
const print = (text: string) => process.stdout.write(`${text}\n`);

function told(report: PlayReport): void {
  const { shop, accepted, flagged, refused, contested, changes, differing } = report;
  print(
    `Played in the shop "${shop}": ${accepted} accepted (${flagged} of them flagged, ${contested} contested), ${refused} refused; ${changes} changes in its log.`,
  );
  for (const sentence of differing) print(sentence);
  print(differing.length === 0 ? 'Everything came out as the file says.' : `${differing.length} not as the file says.`);
}

async function run(): Promise<number> {
  const speed = Number(options.speed);
  if (!Number.isFinite(speed) || speed < 0) {
    process.stderr.write('--speed must be a number from 0 up.\n');
    return 2;
  }
  try {
    const text = await readFile(program.args[0] ?? '', 'utf8');
    const { url, code, keep, quiet } = options;
    const report = await play(text, {
      url: url.replace(/\/$/, ''),
      speed,
      keep,
      ...(code === undefined ? {} : { code }),
      ...(quiet ? {} : { tell: print }),
    });
    told(report);
    return report.differing.length === 0 ? 0 : 1;
  } catch (failure) {
    const isKnown =
      failure instanceof FaultyLine ||
      failure instanceof ServerFault ||
      (failure instanceof Error && ('code' in failure || failure.message === 'fetch failed'));
    if (!isKnown) throw failure;
    process.stderr.write(
      `${failure.message === 'fetch failed' ? `There is no server at ${options.url}.` : failure.message}\n`,
    );
    return 2;
  }
}

process.exitCode = await run();
