/**
 * One question session: what is asked next, what was answered, the way back.
 * Every question is chosen from scratch out of the answers, so that the same answers always lead to the same place.
 */
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import { isAsked } from '../rules/scope.js';
import { type Answers, type AnswerValue, UNKNOWN } from './answers.js';
import { lookForOpen, readyQuestions } from './open-questions.js';
import { bestFirst } from './question-order.js';

export interface SessionInput {
  readonly pack: Pack;
  readonly answers: Answers;
  readonly scopeOf: (answers: Answers) => Scope;
  /** Questions that the program reads by itself: asked although no rule names them. */
  readonly alsoAsk: readonly string[];
  /** Questions that were asked before this sitting, in order: the way back goes on through them. */
  readonly askedBefore?: readonly string[];
}

export interface NextQuestion {
  readonly question: Question;
  readonly number: number;
  readonly mayFollow: number;
  readonly opensSection: boolean;
  readonly earlier: AnswerValue | undefined;
}

export interface ReviewLine {
  readonly question: Question;
  readonly value: AnswerValue;
  readonly status: 'answered' | 'unknown' | 'dormant';
}

export interface Session {
  next(): NextQuestion | undefined;
  answer(questionId: string, value: AnswerValue): void;
  back(): boolean;
  goTo(questionId: string): void;
  review(): ReviewLine[];
  answers(): Answers;
}

export function openSession({
  pack,
  answers: given,
  scopeOf,
  alsoAsk,
  askedBefore = [],
}: SessionInput): Session {
  const answers = new Map<string, AnswerValue>(Object.entries(given));
  const asked: string[] = [...askedBefore];
  let revisiting: string | undefined;
  let lastSection: string | undefined;
  const now = (): Answers => Object.fromEntries(answers);

  const waiting = (): { ready: Question[]; all: number } => {
    const scope = scopeOf(now());
    const { questions, mayCome, hanging } = lookForOpen(pack, scope);
    const among = (open: readonly Question[]): Question[] =>
      pack.questions.filter(
        (question) =>
          !isAnswered(question.id) &&
          (open.includes(question) || (alsoAsk.includes(question.id) && isAsked(question, scope) === true)),
      );
    const ready = readyQuestions(among(questions), scope);
    return { ready: bestFirst(ready, pack, hanging), all: among(mayCome).length };
  };
  const isAnswered = (id: string): boolean =>
    answers.has(id) || (id === 'areaM2' && answers.has('lawnParts'));

  return {
    next() {
      const { ready, all } = waiting();
      const question = revisiting === undefined ? ready[0] : pack.questionById.get(revisiting);
      if (question === undefined) return undefined;
      const opensSection = question.section !== lastSection;
      lastSection = question.section;
      return {
        question,
        number: asked.length + 1,
        mayFollow: Math.max(0, revisiting === undefined ? all - 1 : all),
        opensSection,
        earlier:
          answers.get(question.id) ?? (question.id === 'areaM2' ? answers.get('lawnParts') : undefined),
      };
    },
    answer(questionId, value) {
      const id = questionId === 'areaM2' && Array.isArray(value) ? 'lawnParts' : questionId;
      if (questionId === 'areaM2') for (const other of ['areaM2', 'lawnParts']) answers.delete(other);
      answers.set(id, value);
      if (asked.at(-1) !== questionId) asked.push(questionId);
      revisiting = undefined;
    },
    back() {
      const before = asked.pop();
      if (before === undefined) return false;
      revisiting = before;
      return true;
    },
    goTo(questionId) {
      revisiting = questionId;
    },
    review() {
      const scope = scopeOf(now());
      return pack.questions.flatMap((question) => {
        const value = answers.get(question.id);
        if (value === undefined) return [];
        const isDormant = question.id !== 'lawnParts' && isAsked(question, scope) === false;
        return [
          { question, value, status: isDormant ? 'dormant' : value === UNKNOWN ? 'unknown' : 'answered' },
        ];
      });
    },
    answers: now,
  };
}
