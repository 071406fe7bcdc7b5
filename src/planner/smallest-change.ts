/** The smallest changes of answers that would make a condition true: one answer, or else two. */
import type { Answers, AnswerValue } from '../interview/answers.js';
import { namesIn } from '../rules/call.js';
import { numbersOf } from '../rules/cells.js';
import { evaluate } from '../rules/evaluate.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Expression, Question } from '../rules/schema.js';
import { allAnswers, type Knowledge } from './proof.js';
import { isNumeric, type Stretch, stretchAround, triesFor } from './reach.js';

export interface Change {
  readonly question: Question;
  readonly value: AnswerValue;
  /** Of a number: how far it would do. */
  readonly stretch?: Stretch;
  /** The answer as it stands; undefined where the question does not arise. */
  readonly now: AnswerValue | undefined;
}

export interface ChangeSet {
  readonly changed: readonly Change[];
  /** All answers, with the changes in them. */
  readonly answers: Answers;
}

/** Most sets to tell: more would be a list, not an answer. */
const MOST = 3;

/** @param rests the answers from which it follows that the condition is false: one of them must change */
export function smallestChanges(
  condition: Expression,
  rests: readonly string[],
  knowledge: Knowledge,
): ChangeSet[] {
  const { pack, thresholds } = knowledge;
  const now = allAnswers(knowledge);
  const holds = (answers: Answers): boolean => {
    const outcome = evaluate(condition, knowledge.supposing(answers));
    return outcome.known && outcome.value === true;
  };
  const questionOf = (id: string): Question => pack.questionById.get(id) as Question;
  const settledBy = (
    base: Answers,
    question: Question,
    tries: readonly AnswerValue[],
  ): ChangeSet | undefined => {
    const works = (value: AnswerValue): boolean => holds({ ...base, [question.id]: value });
    const value = nearestTo(
      now[question.id],
      tries.filter((each) => each !== now[question.id]).filter(works),
    );
    if (value === undefined) return undefined;
    const stretch =
      isNumeric(question) && typeof value === 'number'
        ? { stretch: stretchAround(question, value, { holds: works, thresholds }) }
        : {};
    const change = { question, value, now: now[question.id], ...stretch };
    return { changed: [change], answers: { ...base, [question.id]: value } };
  };

  const alone = rests.flatMap(
    (id) => settledBy(now, questionOf(id), triesFor(questionOf(id), thresholds)) ?? [],
  );
  if (alone.length > 0) return alone.slice(0, MOST);

  const behind = everythingBehind(namesIn(condition), readsByName(pack));
  const others = pack.questions.filter(({ id }) => behind.has(id) && id !== 'lawnParts');
  const cellsOf = (question: Question): readonly AnswerValue[] =>
    isNumeric(question)
      ? numbersOf(question, thresholds.get(question.id) ?? [])
      : triesFor(question, thresholds);
  for (const id of rests) {
    for (const value of cellsOf(questionOf(id))) {
      if (value === now[id]) continue;
      const base = { ...now, [id]: value };
      for (const other of others) {
        if (other.id === id) continue;
        const found = settledBy(base, other, cellsOf(other));
        if (found === undefined) continue;
        const first = settledBy(found.answers, questionOf(id), [value]);
        return [{ answers: found.answers, changed: [...(first?.changed ?? []), ...found.changed] }];
      }
    }
  }
  return [];
}

function nearestTo(now: AnswerValue | undefined, values: readonly AnswerValue[]): AnswerValue | undefined {
  if (typeof now !== 'number') return values[0];
  return [...values].sort((a, b) => Math.abs(Number(a) - now) - Math.abs(Number(b) - now))[0];
}
