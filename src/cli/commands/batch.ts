/** `batch`: one answers object a line in, one plan a line out, in order, however long the file. */
import { once } from 'node:events';
import type { IsoDate } from '../../base/dates.js';
import type { BatchLine, BatchResult } from '../batch-line.js';
import { type Command, metricUnits, type ParsedArgs, PRICES_OPTION } from '../command.js';
import { inOrder } from '../in-order.js';
import { type CliIo, CliStop, EXIT } from '../io.js';
import { CLIMATE_OPTION, withOwnClimate } from '../own-climate.js';
import { pricesFrom } from '../read-prices.js';
import { dayOf } from './plan.js';

const MOST_JOBS = 64;
/** Lines that each thread may have waiting: enough to keep it busy, few enough to stay small. */
const LINES_PER_JOB = 16;

export const batch: Command = {
  name: 'batch',
  summary: `Make many plans: one answers object a line in, one plan as JSON a line out, in the same order

  A line that cannot be planned gives {"line": number, "error": {"code", "message", "faults"}}, and the run goes on.
  Empty lines are passed over. The exit code is 3 when any line gave no plan.`,
  usage: 'batch FILE.ndjson [--jobs N] [--today DATE] [--assume] [--climate FILE] [--prices FILE]',
  options: {
    ...CLIMATE_OPTION,
    jobs: { type: 'string', value: 'N', says: 'plans made at the same time; 1 if not given' },
    today: { type: 'string', value: 'DATE', says: 'the day to plan from; otherwise today' },
    assume: { type: 'boolean', says: 'let the stated assumptions stand for what is not answered' },
    prices: PRICES_OPTION,
    units: metricUnits('a plan as JSON is metric always; "plan FILE --units us" words one for a reader'),
  },
  takes: { least: 1, most: 1, says: 'one file of lines (- for standard input)' },
  async run(args, io) {
    const [file] = args.positionals as [string];
    const jobs = jobsOf(args.text('jobs'));
    const planner = await plannerFor(args, jobs, dayOf(args.text('today'), io.today), io);
    const count = { plans: 0, faults: 0 };
    try {
      const lines = numbered(io.readLines(file));
      for await (const { isPlan, json } of inOrder(lines, planner.plan, windowFor(jobs))) {
        count[isPlan ? 'plans' : 'faults']++;
        if (!io.output.write(`${json}\n`)) await once(io.output, 'drain');
      }
    } finally {
      await planner.close();
    }
    if (!args.flag('quiet')) {
      io.err(`${count.plans} plans${count.faults === 0 ? '' : `; ${count.faults} lines gave none`}.\n`);
    }
    return count.faults === 0 ? EXIT.done : EXIT.answers;
  },
};

async function plannerFor(
  args: ParsedArgs,
  jobs: number,
  today: IsoDate,
  io: CliIo,
): Promise<{ plan: (line: BatchLine) => Promise<BatchResult>; close: () => Promise<void> }> {
  const packFolder = args.text('pack');
  // Read here too, so that an unsound pack, climate file or price list stops the run before it begins.
  const pack = await withOwnClimate(await io.loadPack(packFolder), args, io);
  const settings = { today, assumeAll: args.flag('assume'), prices: await pricesFrom(args, io, pack) };
  const { ownClimate } = pack;
  if (jobs > 1)
    return (await import('../batch-pool.js')).openPool(jobs, { ...settings, packFolder, ownClimate });
  const { planLine } = await import('../batch-line.js');
  return { plan: async (line) => planLine(line, { ...settings, pack }), close: async () => undefined };
}

/** Alone, each line is answered at once: whoever feeds lines by and by does not wait for others. */
const windowFor = (jobs: number): number => (jobs === 1 ? 1 : jobs * LINES_PER_JOB);

async function* numbered(lines: AsyncIterable<string>): AsyncGenerator<BatchLine> {
  let line = 0;
  for await (const text of lines) {
    line++;
    if (text.trim() !== '') yield { line, text };
  }
}

function jobsOf(typed = '1'): number {
  const jobs = Number(typed);
  if (Number.isInteger(jobs) && jobs >= 1 && jobs <= MOST_JOBS) return jobs;
  throw new CliStop(EXIT.usage, `--jobs is "${typed}". Give a whole number from 1 to ${MOST_JOBS}.`);
}
