/** "Suppose the screwdriver had gone in easily": what would be another matter. Before the commit it names no finding. */
import { parseIsoDate } from '../base/dates.js';
import type { Answers, AnswerValue } from '../interview/answers.js';
import { openQuestions } from '../interview/open-questions.js';
import { readAnswer } from '../interview/read-answer.js';
import { showAnswer } from '../interview/show-answer.js';
import { wordedFor } from '../interview/worded.js';
import { assemblePlan, ScheduleClash } from '../planner/assemble-plan.js';
import type { Plan } from '../planner/plan.js';
import { scopeFor } from '../planner/working-scope.js';
import type { Question } from '../rules/schema.js';
import { lookMeant } from './looks.js';
import type { WorkedCase } from './worked-case.js';

/**
 * Hears "screwdriver easy", and tells what would be another matter.
 *
 * @param seen looks taken so far; once the drill is over, "over"
 */
export function suppose(worked: WorkedCase, seen: readonly string[] | 'over', typed: string): string[] {
  const read = readSupposition(worked, typed);
  if (typeof read === 'string') return [read];
  const { question, value } = read;
  const head = worked.marking.supposeWords.head
    .replace('{look}', question.label)
    .replace('{answer}', showAnswer(question, value, worked.units));
  return seen === 'over'
    ? [head, ...supposeAfter(worked, question, value)]
    : [head, ...supposeBefore(worked, seen, question, value)];
}

function readSupposition(
  worked: WorkedCase,
  typed: string,
): { readonly question: Question; readonly value: AnswerValue } | string {
  const words = typed.trim().split(/\s+/);
  const { example, moreExactly } = worked.marking.supposeWords;
  let refusal = example;
  // The longest beginning that names a look and leaves an answer to it.
  for (let count = words.length - 1; count > 0; count--) {
    const question = lookMeant(worked, words.slice(0, count).join(' '));
    if (question === undefined) continue;
    const said = wordedFor(question, worked.units);
    const answer = words.slice(count).join(' ');
    const reading = readAnswer(said, answer, parseIsoDate(worked.lesson.today), worked.units);
    if (reading.kind === 'value' || reading.kind === 'odd') return { question, value: reading.value };
    refusal = reading.kind === 'refused' ? reading.says : `${reading.says} ${moreExactly}`;
  }
  return refusal;
}

/** The area is one answer, given as a figure or as parts. */
function withAnswer(answers: Answers, id: string, value: AnswerValue): Answers {
  if (id !== 'areaM2') return { ...answers, [id]: value };
  const { areaM2: _figure, lawnParts: _parts, ...rest } = answers;
  return { ...rest, [Array.isArray(value) ? 'lawnParts' : 'areaM2']: value };
}

/** Before the commit: only which looks would be worth more or less. */
export function supposeBefore(
  worked: WorkedCase,
  seen: readonly string[],
  { id }: Question,
  value: AnswerValue,
): string[] {
  const { pack, answers, marking } = worked;
  const { sameLooks, lessLooks, moreLooks } = marking.supposeWords;
  const ids = new Set([...seen, ...marking.givens]);
  const known = Object.fromEntries(Object.entries(answers).filter(([key]) => ids.has(key)));
  const isForSafety = ({ id: look, safety }: Question): boolean =>
    safety === true || worked.lesson.dangers.some((danger) => danger.look === look);
  const openWith = (given: Answers): Question[] => {
    const scope = scopeFor({
      pack,
      answers: given,
      today: parseIsoDate(worked.lesson.today),
      assume: 'nothing',
    });
    const open = openQuestions(pack, scope);
    // What keeps somebody safe is worth a look whatever the plan turns on.
    return worked.looks.filter(
      (question) => question.id !== id && (open.includes(question) || isForSafety(question)),
    );
  };
  const [now, then] = [openWith(known), openWith(withAnswer(known, id, value))];
  const [less, more] = [without(now, then), without(then, now)].map((gone) =>
    gone.map(({ label }) => label),
  ) as [string[], string[]];
  if (less.length + more.length === 0) return [sameLooks];
  return [...about(lessLooks, less), ...about(moreLooks, more)];
}

/** After the commit: what the findings, the verdict and the steps would be instead. */
export function supposeAfter(worked: WorkedCase, { id }: Question, value: AnswerValue): string[] {
  const { pack, lesson, plan, marking, units } = worked;
  const words = marking.supposeWords;
  const answers = withAnswer(worked.answers, id, value);
  const other = planOr(() =>
    assemblePlan({ pack, answers, today: parseIsoDate(lesson.today), assumeAll: true, units }),
  );
  if (other === undefined) return [words.noDates];
  const verdict =
    other.verdict.id === plan.verdict.id
      ? []
      : [words.verdict.replace('{verdict}', other.verdict.title).replace('{because}', other.verdict.because)];
  const [found, then] = [foundIn(plan), foundIn(other)];
  const [steps, stepsThen] = [stepsIn(plan), stepsIn(other)];
  const lines = [
    ...verdict,
    ...about(words.foundThen, without(then, found)),
    ...about(words.notFoundThen, without(found, then)),
    ...about(words.stepsIn, without(stepsThen, steps)),
    ...about(words.stepsOut, without(steps, stepsThen)),
  ];
  return lines.length === 0 ? [words.nothing] : lines;
}

function planOr(make: () => Plan): Plan | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof ScheduleClash) return undefined;
    throw error;
  }
}

const foundIn = ({ findings }: Plan): string[] =>
  findings.filter(({ verdict }) => verdict === 'found').map(({ title }) => title);
const stepsIn = ({ steps }: Plan): string[] => steps.map(({ title }) => title);

const without = <Item>(items: readonly Item[], others: readonly Item[]): Item[] =>
  items.filter((each) => !others.includes(each));

const about = (words: string, names: readonly string[]): string[] =>
  names.length === 0 ? [] : [words.replace('{names}', names.join('; '))];
