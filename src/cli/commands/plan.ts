/** `plan FILE`: answers in, plan out, no questions. */
import { type IsoDate, isIsoDate } from '../../base/dates.js';
import type { Answers } from '../../interview/answers.js';
import { answersOn } from '../../interview/areas.js';
import { openQuestions } from '../../interview/open-questions.js';
import type { Plan } from '../../planner/plan.js';
import { type LawnInput, planLawn } from '../../planner/plan-lawn.js';
import { scopeFor } from '../../planner/working-scope.js';
import { type Command, PRICES_OPTION, UNITS_OPTION, unitsOf } from '../command.js';
import { lawnIn, withClimateOf } from '../given-answers.js';
import { CliStop, EXIT } from '../io.js';
import { CLIMATE_OPTION, refuseOtherHalf, withOwnClimate } from '../own-climate.js';
import { pricesFrom } from '../read-prices.js';
import { FORMATS, type Format, rendered } from '../render-plan.js';
import { writeResult } from '../write-result.js';

export const plan: Command = {
  name: 'plan',
  summary: 'Make a plan from an answers file, without questions',
  usage: `plan FILE [--today DATE] [--format ${FORMATS.join('|')}] [--out FILE] [--force] [--assume] [--climate FILE] [--prices FILE] [--units metric|us] [--explain NAME]`,
  options: {
    ...CLIMATE_OPTION,
    today: {
      type: 'string',
      value: 'DATE',
      says: 'the day to plan from, such as 2027-03-01; otherwise today',
    },
    format: {
      type: 'string',
      value: 'FORMAT',
      allowed: FORMATS,
      says: 'md if not given',
    },
    out: { type: 'string', value: 'FILE', says: 'write there instead of to standard output' },
    force: { type: 'boolean', says: 'replace the file if it is there' },
    assume: { type: 'boolean', says: 'let the stated assumptions stand for what is not answered' },
    prices: PRICES_OPTION,
    units: UNITS_OPTION,
    explain: {
      type: 'string',
      value: 'NAME',
      says: 'instead of the plan: how it came to this step, finding, material or "verdict", or why it did not',
    },
  },
  takes: { least: 1, most: 1, says: 'one answers file or saved session (- for standard input)' },
  async run(args, io) {
    const [file] = args.positionals as [string];
    const format = (args.text('format') ?? 'md') as Format;
    // Data stays metric, whatever a person reads; a table is read by a person.
    const units = format === 'json' ? 'metric' : unitsOf(args);
    const today = dayOf(args.text('today'), io.today);
    const rules = await withOwnClimate(await io.loadPack(args.text('pack')), args, io);
    const given = await lawnIn(await io.readText(file), file, rules, today);
    const pack = withClimateOf(rules, given);
    const { answers, areas } = given;
    const prices = await pricesFrom(args, io, pack);
    const input = { pack, answers, areas, today, assumeAll: args.flag('assume'), units, prices };
    const made = makePlan(input);
    const wanted = args.text('explain');
    if (wanted !== undefined) {
      const { explained } = await import('../explained.js');
      io.out(explained(wanted, input, io.width));
      return EXIT.done;
    }
    if (format === 'ics' && made.name === null && !args.flag('quiet'))
      io.err(
        'This lawn has no name, so a calendar knows it by its place and size. Give it one (lawnName) if there is another like it.\n',
      );
    await writeResult(
      await rendered(made, format),
      { out: args.text('out'), force: args.flag('force'), quiet: args.flag('quiet') },
      io,
    );
    return EXIT.done;
  },
};

/** @throws {CliStop} exit code 3 with every question that still matters */
export function makePlan(input: LawnInput): Plan {
  refuseOtherHalf(input.answers, input.pack);
  const lines = input.assumeAll ? [] : openLines(input);
  if (lines.length > 0) {
    throw new CliStop(
      EXIT.answers,
      `Not answered, and each could still change the plan:\n${lines.join('\n')}\nAnswer them in the file ("unknown" counts as an answer), or let assumptions stand with --assume.`,
    );
  }
  return planLawn(input);
}

/** A line for each question that still matters, under the name of the area that it is open for. */
function openLines({ areas = [], ...input }: LawnInput): string[] {
  const open = (answers: Answers): string[] =>
    openQuestions(input.pack, scopeFor({ ...input, answers, assume: 'said', timing: 'open' })).map(
      ({ id, text }) => `  ${id}: ${text}`,
    );
  if (areas.length === 0) return open(input.answers);
  const byArea = areas.map((area) => ({ name: area.name, lines: open(answersOn(area, input.answers)) }));
  return byArea.flatMap(({ name, lines }) => (lines.length === 0 ? [] : [` ${name}:`, ...lines]));
}

export function dayOf(typed: string | undefined, today: IsoDate): IsoDate {
  if (typed === undefined) return today;
  if (isIsoDate(typed)) return typed;
  throw new CliStop(EXIT.usage, `--today is "${typed}". Give a date that exists, such as 2027-03-01.`);
}
