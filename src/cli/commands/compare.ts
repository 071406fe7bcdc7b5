/** `compare`: what changes in the plan when answers change, and which answer and rule did it. */
import { cleanLine, jsonText } from '../../base/clean-text.js';
import { nearest } from '../../base/nearest.js';
import type { Answers } from '../../interview/answers.js';
import { checkAnswers } from '../../interview/check-answers.js';
import { comparePlans } from '../../planner/compare-plans.js';
import type { Pack } from '../../rules/pack.js';
import type { Question } from '../../rules/schema.js';
import { wrapText } from '../../terminal/wrap-text.js';
import { answersContext } from '../answers-context.js';
import { type Command, type ParsedArgs, PRICES_OPTION, UNITS_OPTION, unitsOf } from '../command.js';
import { faultStop, type Given, givenIn, withClimateOf } from '../given-answers.js';
import { type CliIo, CliStop, EXIT } from '../io.js';
import { CLIMATE_OPTION, refuseOtherHalf, withOwnClimate } from '../own-climate.js';
import { pricesFrom } from '../read-prices.js';
import { dayOf } from './plan.js';

/** A few seconds' worth. */
const MOST_PLANS = 400;

export const compare: Command = {
  name: 'compare',
  summary: `Say what changes in the plan when answers change, and which answer and rule did it

  Two answers files or saved sessions are compared, or one with itself after some answers are set:
    seedbed compare lawn.json --set thatchDepthMm=8 --set dog=false
  Values are those of an answers file, metric always; an empty one takes an answer away. What is not answered stands at its assumption in both.`,
  usage:
    'compare A B | compare A --set id=value … [--today DATE] [--climate FILE] [--prices FILE] [--units metric|us] [--format text|json]',
  options: {
    ...CLIMATE_OPTION,
    set: {
      type: 'string',
      value: 'ID=VALUE',
      multiple: true,
      says: 'an answer as it shall be; may be repeated',
    },
    today: { type: 'string', value: 'DATE', says: 'the day to plan from; otherwise today' },
    prices: PRICES_OPTION,
    units: UNITS_OPTION,
    format: { type: 'string', value: 'FORMAT', allowed: ['text', 'json'], says: 'text if not given' },
  },
  takes: { least: 1, most: Number.POSITIVE_INFINITY, says: 'two answers files, or one and --set id=value' },
  async run(args, io) {
    const { file, other, sets } = comparedIn(args);
    const today = dayOf(args.text('today'), io.today);
    const rules = await withOwnClimate(await io.loadPack(args.text('pack')), args, io);
    const givenBefore = await givenIn(await io.readText(file), file, rules, today);
    const givenAfter =
      other === undefined ? undefined : await givenIn(await io.readText(other), other, rules, today);
    const pack = inOneClimate(rules, givenBefore, givenAfter);
    const before = givenBefore.answers;
    const after = givenAfter?.answers ?? withSet(before, sets, pack, today);
    for (const answers of [before, after]) refuseOtherHalf(answers, pack);
    const context = answersContext(pack, today);
    const isPossible = (answers: Answers): boolean => checkAnswers(answers, context).ok;
    const prices = await pricesFrom(args, io, pack);
    const isJson = args.text('format') === 'json';
    const comparison = comparePlans({
      pack,
      before,
      after,
      today,
      isPossible,
      mostPlans: MOST_PLANS,
      prices,
      // Data stays metric, whatever a person reads.
      units: isJson ? 'metric' : unitsOf(args),
    });
    if (isJson) io.out(`${jsonText(comparison, 2)}\n`);
    else {
      const { comparisonText } = await import('../../document/comparison-text.js');
      const lines = comparisonText(comparison).flatMap(({ text, hang }) =>
        text === '' ? [''] : wrapText(text, io.width, hang),
      );
      io.out(`${lines.join('\n')}\n`);
    }
    return EXIT.done;
  },
};

/** Two plans by two climates would differ in more than the answers. */
function inOneClimate(rules: Pack, before: Given, after: Given = before): Pack {
  const isAlike = JSON.stringify(before.climate) === JSON.stringify(after.climate);
  const isOneOnly = before.climate === undefined || after.climate === undefined;
  if (rules.ownClimate !== undefined || isAlike || isOneOnly)
    return withClimateOf(rules, { climate: before.climate ?? after.climate });
  throw new CliStop(
    EXIT.answers,
    `The two sessions were answered with two climates: ${before.climate?.from}; ${after.climate?.from}. Name the one to compare by with --climate FILE.`,
  );
}

interface Compared {
  readonly file: string;
  readonly other: string | undefined;
  readonly sets: readonly string[];
}

/** After --set further `id=value` words count as set too: `--set a=1 b=2`. */
function comparedIn(args: ParsedArgs): Compared {
  const [file = '', ...words] = args.positionals;
  const sets = args.list('set');
  const usage = (says: string): CliStop =>
    new CliStop(EXIT.usage, `${says}\nUsage: seedbed ${compare.usage}`);
  if (sets.length > 0) {
    const stray = words.find((word) => !word.includes('='));
    if (stray === undefined) return { file, other: undefined, sets: [...sets, ...words] };
    throw usage(`"${cleanLine(stray)}" is no id=value. Compare with another file, or with --set, not both.`);
  }
  if (words.length === 0) throw usage('"compare" takes two answers files, or one and --set id=value.');
  const [other, extra] = words;
  if (extra !== undefined)
    throw usage(`"compare" takes two answers files; "${cleanLine(extra)}" is one too many.`);
  if (file === '-' && other === '-') throw usage('Only one of the two can be standard input.');
  return { file, other, sets: [] };
}

/** The answers with some set anew. */
function withSet(before: Answers, sets: readonly string[], pack: Pack, today: CliIo['today']): Answers {
  const after: Record<string, unknown> = { ...before };
  for (const word of sets) {
    const at = word.indexOf('=');
    const id = at < 0 ? word : word.slice(0, at);
    const question = pack.questionById.get(id);
    if (at < 1 || question === undefined) throw noQuestion(word, id, pack);
    const typed = word.slice(at + 1);
    delete after[id];
    // The area and its parts are two ways to say one thing.
    if (id === 'areaM2') delete after.lawnParts;
    if (id === 'lawnParts') delete after.areaM2;
    if (typed !== '') after[id] = typedAs(typed, question);
  }
  const read = checkAnswers(after, answersContext(pack, today));
  if (read.ok) return read.answers;
  throw faultStop('--set', read.faults);
}

function noQuestion(word: string, id: string, pack: Pack): CliStop {
  const shown = cleanLine(word).slice(0, 60);
  if (!word.includes('='))
    return new CliStop(EXIT.usage, `--set "${shown}" is no id=value, such as dog=false.`);
  const near = nearest(id, [...pack.questionById.keys()]);
  return new CliStop(
    EXIT.answers,
    `--set "${shown}": there is no such question.${near === undefined ? '' : ` Did you mean "${near}"?`}`,
  );
}

/** What is typed as the kind of value that the question takes; anything else is left to the check of answers. */
function typedAs(typed: string, question: Question): unknown {
  if (question.kind === 'yes-no') return { yes: true, true: true, no: false, false: false }[typed] ?? typed;
  if (['choice', 'text', 'place', 'date'].includes(question.kind)) return typed;
  try {
    return JSON.parse(typed);
  } catch {
    return typed;
  }
}
