/** "Suppose the screwdriver had gone in easily": what would be another matter. Before the commit it names no finding. */
import { parseIsoDate } from '../base/dates.js';
import type { Answers, AnswerValue } from '../interview/answers.js';
import { openQuestions } from '../interview/open-questions.js';
import { assemblePlan } from '../planner/assemble-plan.js';
import type { Plan } from '../planner/plan.js';
import { scopeFor } from '../planner/working-scope.js';
import type { Question } from '../rules/schema.js';
import type { WorkedCase } from './worked-case.js';

/** Before the commit: only which looks would be worth more or less. */
export function supposeBefore(
  worked: WorkedCase,
  seen: readonly string[],
  { id }: Question,
  value: AnswerValue,
): string {
  const { pack, answers, marking } = worked;
  const ids = new Set([...seen, ...marking.givens]);
  const known = Object.fromEntries(Object.entries(answers).filter(([key]) => ids.has(key)));
  const openWith = (given: Answers): string[] => {
    const scope = scopeFor({
      pack,
      answers: given,
      today: parseIsoDate(worked.lesson.today),
      assume: 'nothing',
    });
    return openQuestions(pack, scope)
      .filter((question) => question.id !== id && worked.looks.includes(question))
      .map(({ label }) => label);
  };
  const [now, then] = [openWith(known), openWith({ ...known, [id]: value })];
  const [less, more] = [
    now.filter((label) => !then.includes(label)),
    then.filter((label) => !now.includes(label)),
  ];
  if (less.length + more.length === 0) return 'Then the same looks would still be worth taking.';
  const parts = [
    less.length > 0 ? `no longer worth a look: ${less.join(', ')}` : '',
    more.length > 0 ? `worth a look besides: ${more.join(', ')}` : '',
  ];
  return `Then, ${parts.filter((part) => part !== '').join('; ')}.`;
}

/** After the commit: what the findings, the verdict and the steps would be instead. */
export function supposeAfter(worked: WorkedCase, { id }: Question, value: AnswerValue): string[] {
  const { pack, lesson, plan } = worked;
  const answers: Answers = { ...worked.answers, [id]: value };
  const other = assemblePlan({ pack, answers, today: parseIsoDate(lesson.today), assumeAll: true });
  const verdict =
    other.verdict.id === plan.verdict.id
      ? []
      : [`The verdict would be: ${other.verdict.title}. ${other.verdict.because}`];
  const lines = [
    ...verdict,
    ...inAndOut('Found then', 'Not found then', foundIn(plan), foundIn(other)),
    ...inAndOut('Steps that come in', 'Steps that fall away', stepsIn(plan), stepsIn(other)),
  ];
  return lines.length === 0
    ? ['Nothing would change: neither the findings nor the steps turn on it here.']
    : lines;
}

const foundIn = ({ findings }: Plan): string[] =>
  findings.filter(({ verdict }) => verdict === 'found').map(({ title }) => title);
const stepsIn = ({ steps }: Plan): string[] => steps.map(({ title }) => title);

function inAndOut(
  inWords: string,
  outWords: string,
  before: readonly string[],
  after: readonly string[],
): string[] {
  const [comeIn, goOut] = [
    after.filter((each) => !before.includes(each)),
    before.filter((each) => !after.includes(each)),
  ];
  return [
    ...(comeIn.length > 0 ? [`${inWords}: ${comeIn.join('; ')}.`] : []),
    ...(goOut.length > 0 ? [`${outWords}: ${goOut.join('; ')}.`] : []),
  ];
}
