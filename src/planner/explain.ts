/**
 * How a plan came to what it says, and why it does not say something else: made from the rules and their proofs.
 * Each explanation is a list of lines; a line that begins with "- " is one of the answers it rests on.
 */
import { quantity } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { Answers, AnswerValue } from '../interview/answers.js';
import { verdictChoice } from '../interview/plan-pieces.js';
import { showAnswer } from '../interview/show-answer.js';
import { thresholdsOf } from '../rules/cells.js';
import { evaluate } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Expression, Question, Step } from '../rules/schema.js';
import { amountWords } from './amount-words.js';
import { assemblePlan, datedChoice, type PlanInput } from './assemble-plan.js';
import { listed, stretchWords, type WordingName, worded, wordedInside } from './explain-words.js';
import type { Plan, PlanAmount, PlanFinding } from './plan.js';
import { allAnswers, type Knowledge, type Proof, proofOf } from './proof.js';
import { isNumeric, stretchAround, triesFor } from './reach.js';
import { type Change, smallestChanges } from './smallest-change.js';
import { type Asked, restsOnGiven } from './sureness.js';
import { restWords } from './sureness-words.js';
import { scopeFor } from './working-scope.js';

export interface Explained {
  readonly lines: readonly string[];
  /** Question ids that it rests on: enough, and none too many. */
  readonly rests: readonly string[];
}

export interface Explainer {
  readonly plan: Plan;
  readonly knowledge: Knowledge;
  /** By the id of a step, a finding, a material or "verdict"; undefined for anything else. */
  explain(target: string): Explained | undefined;
  /** What would have to be otherwise for another verdict, in words; undefined where no one or two answers bring it. */
  changesTo(verdictId: string): string | undefined;
  /** Everything that can be explained, by id and by its title in the plan. */
  readonly targets: readonly Target[];
}

export interface Target {
  readonly id: string;
  readonly title: string;
}

const VERDICT = 'verdict';

export function explainerFor(input: PlanInput): Explainer {
  const { pack, answers, units = 'metric' } = input;
  const plan = assemblePlan(input);
  const dated = datedChoice(input);
  const { choice, timing } = dated;
  const knowing = (known: Answers) => scopeFor({ ...choice, answers: known, assume: 'nothing', timing });
  const knowledge: Knowledge = {
    pack,
    thresholds: thresholdsOf(pack),
    scope: scopeFor({ ...choice, timing }),
    knowing,
    supposing: (known) => scopeFor({ ...choice, answers: known, assume: 'all', timing }),
  };
  const answered = { ...knowledge, scope: scopeFor({ ...choice, assume: 'nothing', timing }) };
  const isAssumed = (id: string): boolean =>
    id === 'areaM2' && answers.lawnParts !== undefined ? false : !isAnswer(answers[id]);
  const context = { knowledge, isAssumed, units };

  const explain = (target: string): Explained | undefined => {
    const step = pack.stepById.get(target);
    if (step !== undefined) return explainStep(step, plan, context);
    const finding = plan.findings.find(({ id }) => id === target);
    if (finding !== undefined) return explainFinding(finding, { ...context, knowledge: answered });
    if (target === VERDICT) {
      const why = fromProof('verdict', { title: plan.verdict.title }, verdictChoice(pack), context);
      const asked = { input, base: dated, dateAgain: datedChoice };
      return withSureness(why, plan.verdict, { asked, pack });
    }
    const amounts = plan.steps
      .flatMap((each) => each.amounts)
      .filter(({ materialId }) => materialId === target);
    return amounts.length === 0 ? undefined : explainAmounts(amounts, plan, context);
  };
  const targets = [
    { id: VERDICT, title: plan.verdict.title },
    ...[...pack.steps, ...pack.findings].map(({ id, title }) => ({ id, title })),
    ...pack.materials
      .filter(({ id }) => plan.steps.some((step) => step.amounts.some(({ materialId }) => materialId === id)))
      .map(({ id, title }) => ({ id, title })),
  ];
  const changesTo = (verdictId: string): string | undefined => {
    const choiceOf = verdictChoice(pack);
    const wanted = pack.verdicts.flatMap(({ id }, index) =>
      id === verdictId ? [{ '===': [choiceOf, index] }] : [],
    );
    const rests = proofOf(choiceOf, knowledge, isAssumed)?.rests ?? [];
    const [smallest] = smallestChanges({ or: wanted }, rests, knowledge);
    if (smallest === undefined) return undefined;
    return listed(
      pack,
      smallest.changed.map((each) => changeWords(each, { pack, units })),
    );
  };
  return { plan, knowledge, explain, changesTo, targets };
}

/** What the proof cannot see, since it takes the dates as given: answers that only the dates hang on. And how sure it is. */
function withSureness(
  why: Explained,
  { id, sureness: { lead, looks, more } }: Plan['verdict'],
  { asked, pack }: { readonly asked: Asked; readonly pack: Pack },
): Explained {
  const byDates = restsOnGiven(asked, (questionId) => !why.rests.includes(questionId)).filter(
    ({ changesVerdict }) => changesVerdict,
  );
  const told = restWords(byDates, pack);
  return {
    rests: why.rests,
    lines: [
      ...(id === 'not-known' ? [] : why.lines),
      ...(told.length === 0 ? [] : [worded(pack, 'datesRest'), ...told.map((line) => `- ${line}`)]),
      lead,
      ...looks.map((look) => `- ${look}`),
      ...(more === '' ? [] : [more]),
    ],
  };
}

const withoutStop = (text: string): string => text.replace(/\.$/, '');

const isAnswer = (value: AnswerValue | undefined): boolean => value !== undefined && value !== 'unknown';

interface Context {
  readonly knowledge: Knowledge;
  readonly isAssumed: (questionId: string) => boolean;
  /** In which it is worded. */
  readonly units: Units;
}

function fromProof(
  name: WordingName,
  values: Readonly<Record<string, string>>,
  expression: Expression,
  context: Context,
): Explained {
  const { pack } = context.knowledge;
  const proof = proofOf(expression, context.knowledge, context.isAssumed);
  if (proof === undefined || proof.rests.length === 0)
    return { lines: [worded(pack, 'always', values)], rests: [] };
  return {
    lines: [
      worded(pack, name, values),
      ...proof.rests.map((id) => factLine(pack.questionById.get(id) as Question, expression, proof, context)),
    ],
    rests: proof.rests,
  };
}

/** `- moss cover: 40 % (the same with 20 % or more)`, all other answers staying as they are. */
function factLine(question: Question, expression: Expression, proof: Proof, context: Context): string {
  const { knowledge, isAssumed, units } = context;
  const value = proof.answers[question.id] as AnswerValue;
  const all = allAnswers(knowledge);
  const same = (other: AnswerValue): boolean => {
    const again = evaluate(expression, knowledge.supposing({ ...all, [question.id]: other }));
    return again.known && again.value === proof.value;
  };
  const others = sameWith(question, value, same, context);
  const fact = wordedInside(knowledge.pack, isAssumed(question.id) ? 'factAssumed' : 'fact', {
    label: question.label,
    answer: showAnswer(question, value, units),
  });
  return others === '' ? `- ${fact}` : `- ${fact} (${wordedInside(knowledge.pack, 'factAlso', { others })})`;
}

function sameWith(
  question: Question,
  value: AnswerValue,
  same: (other: AnswerValue) => boolean,
  { knowledge: { pack, thresholds }, units }: Context,
): string {
  if (isNumeric(question) && typeof value === 'number')
    return stretchWords(
      { pack, units },
      question,
      stretchAround(question, value, { holds: same, thresholds }),
    );
  const differing = triesFor(question, thresholds).filter((other) => other !== value);
  const others = differing.filter(same);
  // Where no other answer changes anything by itself, saying so would only puzzle.
  if (others.length === differing.length) return '';
  return listed(
    pack,
    others.map((other) => showAnswer(question, other, units)),
    'or',
  );
}

function explainStep(step: Step, plan: Plan, context: Context): Explained {
  const { pack } = context.knowledge;
  const planned = plan.steps.find(({ id }) => id === step.id);
  const why = fromProof(
    planned === undefined ? 'stepOut' : 'stepIn',
    { title: step.title },
    step.when,
    context,
  );
  if (planned === undefined) return { ...why, lines: [...why.lines, ...whyNot(step, why, context)] };
  const waits = planned.after.map(({ step: before, minDays, why: reason }) =>
    worded(pack, minDays === 0 ? 'follows' : 'waits', {
      days: minDays === 1 ? '1 day' : `${minDays} days`,
      step: pack.stepById.get(before)?.title ?? before,
      why: reason,
    }),
  );
  return { ...why, lines: [...why.lines, ...waits] };
}

/** The smallest changes of answers that would bring the step in. */
function whyNot(step: Step, { rests }: Explained, { knowledge, units }: Context): string[] {
  const { pack } = knowledge;
  const changes = smallestChanges(step.when, rests, knowledge);
  if (changes.length === 0) return [worded(pack, 'noChange')];
  return changes.map(({ changed, answers }) => {
    const change = worded(pack, 'change', {
      changes: listed(
        pack,
        changed.map((each) => changeWords(each, { pack, units })),
      ),
    });
    const verdict = evaluate(verdictChoice(pack), knowledge.supposing(answers));
    const before = evaluate(verdictChoice(pack), knowledge.scope);
    if (!verdict.known || (before.known && before.value === verdict.value)) return change;
    const title = pack.verdicts[Number(verdict.value)]?.title ?? '';
    return `${change} ${worded(pack, 'changeVerdict', { verdict: title })}`;
  });
}

function changeWords(
  { question, now, stretch, value }: Change,
  { pack, units }: Pick<Knowledge, 'pack'> & Pick<Context, 'units'>,
): string {
  return wordedInside(pack, now === undefined ? 'changeFromNone' : 'changeOne', {
    label: question.label,
    answer:
      stretch === undefined
        ? showAnswer(question, value, units)
        : stretchWords({ pack, units }, question, stretch),
    now: now === undefined ? '' : showAnswer(question, now, units),
  });
}

function explainFinding(finding: PlanFinding, context: Context): Explained {
  const { pack } = context.knowledge;
  const { title, strength, signsFor, signsAgainst, tellsApart } = finding;
  const signs = [
    ...(signsFor.length === 0
      ? []
      : [worded(pack, 'signsFor', { signs: signsFor.map(withoutStop).join('; ') })]),
    ...(signsAgainst.length === 0
      ? []
      : [worded(pack, 'signsAgainst', { signs: signsAgainst.map(withoutStop).join('; ') })]),
    ...(signsFor.length === 0 || signsAgainst.length === 0
      ? []
      : [worded(pack, 'conflict', { test: tellsApart })]),
  ];
  if (finding.verdict === 'cannotTell') {
    const labels = finding.open.map((id) => pack.questionById.get(id)?.label ?? id);
    const line = worded(pack, 'cannotTell', { title, strength, labels: labels.join(', ') });
    return { lines: [line, ...signs], rests: [] };
  }
  const rule = pack.findingById.get(finding.id)?.when ?? false;
  const why = fromProof(finding.verdict, { title, strength }, rule, context);
  return { ...why, lines: [...why.lines, ...signs] };
}

/** The amount with its sum, and the answers and figures in it. */
function explainAmounts(
  amounts: readonly PlanAmount[],
  plan: Plan,
  { knowledge, units }: Context,
): Explained {
  const { pack } = knowledge;
  const lines = amounts.flatMap(({ title, amount, unit, loose, basis, working, figures, answers }) => {
    if (amount === null) return [worded(pack, 'amountOnLabel', { title })];
    const names = [
      ...answers.map((id) => pack.questionById.get(id)?.label ?? id),
      ...figures.map((id) => {
        const figure = plan.figures.find((each) => each.id === id);
        return figure === undefined
          ? id
          : `${figure.what} (${quantity(figure.typical, figure.unit, units)}, ${figure.basis})`;
      }),
    ];
    return [
      worded(pack, 'amount', { title, amount: amountWords({ unit, loose, basis }, amount, units), working }),
      ...(names.length === 0 ? [] : [worded(pack, 'behindAmount', { names: names.join(', ') })]),
    ];
  });
  return { lines, rests: [...new Set(amounts.flatMap(({ answers }) => answers))] };
}
