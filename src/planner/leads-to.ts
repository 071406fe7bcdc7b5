/** Why a question is asked, made from the rules: what each answer would lead to, as far as it settles anything. */
import type { Units } from '../base/us-units.js';
import type { Answers, AnswerValue } from '../interview/answers.js';
import { showAnswer } from '../interview/show-answer.js';
import { namesIn } from '../rules/call.js';
import { numbersOf, type Thresholds } from '../rules/cells.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import { expressionsOf } from '../rules/expressions.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Pack } from '../rules/pack.js';
import type { Expression, Question } from '../rules/schema.js';
import { listed, stretchWords, worded, wordedInside } from './explain-words.js';
import { isNumeric, type Stretch, triesFor } from './reach.js';

export interface AskedWhy {
  readonly pack: Pack;
  readonly question: Question;
  readonly answers: Answers;
  readonly scopeOf: (answers: Answers) => Scope;
  readonly thresholds: Thresholds;
  /** In which answers are said; metric unless said otherwise. */
  readonly units?: Units;
}

/** Titles to name before the rest is counted. */
const MOST_TITLES = 4;

/** One line for each answer, or for each stretch of numbers, that settles something; else what it bears on. */
export function leadsTo(asked: AskedWhy): string[] {
  const { pack, question, answers, scopeOf, thresholds, units = 'metric' } = asked;
  const before = standing(pack, scopeOf(answers));
  const consequences = (value: AnswerValue): string =>
    settled(pack, before, standing(pack, scopeOf({ ...answers, [question.id]: value })));
  const told = isNumeric(question)
    ? stretches(numbersOf(question, thresholds.get(question.id) ?? []), consequences).map(
        ({ stretch, text }) => ({ answer: stretchWords({ pack, units }, question, stretch), text }),
      )
    : triesFor(question, thresholds).map((value) => ({
        answer: showAnswer(question, value, units),
        text: consequences(value),
      }));
  const some = told.filter(({ answer, text }) => text !== '' && answer !== '');
  if (some.length === 0) return bearsOn(asked);
  return told
    .filter(({ answer }) => answer !== '')
    .map(({ answer, text }) =>
      text === ''
        ? worded(pack, 'leadsNowhere', { answer })
        : worded(pack, 'leadsTo', { answer, consequences: text }),
    );
}

type Standing = ReadonlyMap<string, boolean | undefined>;

/** What is settled about each finding, step and caution; undefined while it is open. */
function standing(pack: Pack, scope: Scope): Standing {
  const told = (when: Expression): boolean | undefined => {
    const outcome = evaluate(when, scope);
    return outcome.known ? outcome.value === true : undefined;
  };
  const steps = new Map(pack.steps.map(({ id, when }) => [id, told(when)]));
  const cautions = pack.cautions.map(({ id, when }): [string, boolean | undefined] => {
    const forSteps = pack.steps
      .filter((step) => step.cautions.includes(id))
      .map((step) => bothOf(steps.get(step.id), told(step.cautionWhen?.[id] ?? true)));
    const holds = told(when);
    if (holds === false || forSteps.every((each) => each === false)) return [`caution ${id}`, false];
    return [`caution ${id}`, holds === true && forSteps.includes(true) ? true : undefined];
  });
  return new Map([
    ...pack.findings.map(({ id, when }): [string, boolean | undefined] => [`finding ${id}`, told(when)]),
    ...[...steps].map(([id, outcome]): [string, boolean | undefined] => [`step ${id}`, outcome]),
    ...cautions,
  ]);
}

/** Whether both hold; open where neither fails and one is open. */
const bothOf = (a: boolean | undefined, b: boolean | undefined): boolean | undefined =>
  a === false || b === false ? false : a === true && b === true ? true : undefined;

/** What the answer settles that was open before. */
function settled(pack: Pack, before: Standing, after: Standing): string {
  const titlesOf = (kind: string, outcome: boolean): string[] =>
    [...after]
      .filter(
        ([name, now]) => name.startsWith(`${kind} `) && now === outcome && before.get(name) === undefined,
      )
      .map(([name]) => titleOf(pack, kind, name.slice(kind.length + 1)));
  const parts = (
    [
      ['finding', true, 'finds'],
      ['step', true, 'brings'],
      ['step', false, 'rulesOut'],
      ['finding', false, 'clears'],
      ['caution', true, 'warns'],
      ['caution', false, 'needsNoWarning'],
    ] as const
  ).flatMap(([kind, outcome, name]) => {
    const titles = titlesOf(kind, outcome);
    if (titles.length === 0) return [];
    const shown = kind === 'caution' ? `${titles.length}` : shortened(pack, titles);
    return [wordedInside(pack, name, { titles: shown })];
  });
  return parts.join('; ');
}

function titleOf(pack: Pack, kind: string, id: string): string {
  const found = kind === 'finding' ? pack.findingById.get(id) : pack.stepById.get(id);
  return found === undefined ? id : `"${found.title}"`;
}

function shortened(pack: Pack, titles: readonly string[]): string {
  if (titles.length <= MOST_TITLES) return listed(pack, titles);
  const rest = wordedInside(pack, 'more', { count: `${titles.length - MOST_TITLES + 1}` });
  return listed(pack, [...titles.slice(0, MOST_TITLES - 1), rest]);
}

/** The steps, not yet ruled out, that read the answer anywhere. */
function bearsOn({ pack, question, answers, scopeOf }: AskedWhy): string[] {
  const now = standing(pack, scopeOf(answers));
  const reads = readsByName(pack);
  const ids = expressionsOf(pack)
    .filter(({ kindOfRecord, id }) => kindOfRecord === 'step' && now.get(`step ${id}`) !== false)
    .filter(({ expression }) => everythingBehind(namesIn(expression), reads).has(question.id))
    .map(({ id }) => id);
  const titles = [...new Set(ids)].map((id) => titleOf(pack, 'step', id));
  return titles.length === 0 ? [] : [worded(pack, 'bearsOn', { titles: shortened(pack, titles) })];
}

/** Neighbouring cells that lead to the same, as one stretch. */
function stretches(
  numbers: readonly number[],
  consequences: (value: number) => string,
): { readonly stretch: Stretch; readonly text: string }[] {
  const texts = numbers.map(consequences);
  const isLimit = (index: number): boolean => index % 2 === 0;
  const groups: { stretch: Stretch; text: string }[] = [];
  for (let first = 0; first < numbers.length; ) {
    let last = first;
    while (last + 1 < numbers.length && texts[last + 1] === texts[first]) last++;
    const from = isLimit(first) ? numbers[first] : numbers[first - 1];
    const to = isLimit(last) ? numbers[last] : numbers[last + 1];
    groups.push({
      text: texts[first] as string,
      stretch: {
        ...(first === 0 ? {} : { from: { value: from as number, isWithin: isLimit(first) } }),
        ...(last === numbers.length - 1 ? {} : { to: { value: to as number, isWithin: isLimit(last) } }),
      },
    });
    first = last + 1;
  }
  return groups;
}
