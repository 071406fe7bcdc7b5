/** Which single answers, otherwise given, would bring dates where there are none. Each was tried. */
import type { Answers, AnswerValue } from '../interview/answers.js';
import { clashesIn } from '../interview/together.js';
import { namesIn } from '../rules/call.js';
import { evaluate } from '../rules/evaluate.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Expression, Question } from '../rules/schema.js';
import type { Undatable } from './clash.js';
import type { Demand } from './demands.js';

export interface WayOut {
  readonly question: Question;
  readonly value: AnswerValue;
  /** The answer as it stands; undefined where it is neither given nor assumed. */
  readonly now: AnswerValue | undefined;
  readonly isAssumed: boolean;
}

/** @param hasDates whether dates hold with these answers */
export function waysOut(
  clash: readonly Demand[],
  { pack, scope, net }: Undatable,
  { answers, hasDates }: { readonly answers: Answers; readonly hasDates: (answers: Answers) => boolean },
): WayOut[] {
  const works = (id: string, value: AnswerValue): boolean => {
    const changed = { ...answers, [id]: value };
    return clashesIn(pack, changed).length === 0 && hasDates(changed);
  };
  const inClash = net.steps.filter(({ id }) => clash.some((demand) => stepsOf(demand).includes(id)));
  const conditions = inClash.flatMap(({ id }) => pack.stepById.get(id)?.when ?? []);
  const behind = everythingBehind(conditions.flatMap(namesIn), readsByName(pack));
  const isAtWeekends = clash.some(({ kind }) => kind === 'weekends');
  const numbers = new Set(waitsIn(clash, pack).flatMap((wait) => fromOf(wait, scope)));
  return pack.questions.flatMap((question) => {
    const { id } = question;
    const outcome = scope(id);
    const now = outcome.known ? outcome.value : undefined;
    const isDecided = question.ownDecision === true && (behind.has(id) || isAtWeekends);
    const value = isDecided
      ? (question.options ?? [])
          .map((option) => option.value)
          .find((option) => option !== now && works(id, option))
      : numbers.has(id) && typeof now === 'number'
        ? nearestWhole(question, now, (whole) => works(id, whole))
        : undefined;
    if (value === undefined) return [];
    const isAssumed = !Object.hasOwn(answers, id) || answers[id] !== now;
    return [{ question, value, now, isAssumed }];
  });
}

const stepsOf = (demand: Demand): readonly string[] => {
  if (demand.kind === 'weekends') return [];
  return 'step' in demand ? [demand.step] : [demand.from, demand.to];
};

function waitsIn(clash: readonly Demand[], pack: Undatable['pack']): Expression[] {
  return clash.flatMap((demand) => {
    if (demand.kind !== 'least-wait' && demand.kind !== 'greatest-wait') return [];
    const wait = pack.stepById.get(demand.to)?.after.find(({ step }) => step === demand.from);
    const days = demand.kind === 'least-wait' ? wait?.minDays : wait?.maxDays;
    return days === undefined ? [] : [days];
  });
}

function fromOf(days: Expression, scope: Undatable['scope']): readonly string[] {
  const outcome = evaluate(days, scope);
  return outcome.known ? outcome.from : [];
}

/** The whole number nearest to the one that stands that works, towards the end of what can be answered that does. */
function nearestWhole(
  { bounds }: Question,
  now: number,
  works: (whole: number) => boolean,
): number | undefined {
  for (const end of [bounds?.min ?? 0, bounds?.max ?? 0]) {
    if (!works(end)) continue;
    let [kept, lost] = [end, now];
    while (Math.abs(kept - lost) > 1) {
      const between = kept + Math.trunc((lost - kept) / 2);
      if (works(between)) kept = between;
      else lost = between;
    }
    return kept;
  }
  return undefined;
}
