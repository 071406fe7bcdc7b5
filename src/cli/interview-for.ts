/** Joins the session over the rules to the loop at the terminal: prompts in words, places resolved, answers kept. */
import type { IsoDate } from '../base/dates.js';
import { type Answers, type AnswerValue, UNKNOWN } from '../interview/answers.js';
import { type NextQuestion, openSession } from '../interview/session.js';
import { showAnswer } from '../interview/show-answer.js';
import { ASKED_BY_PROGRAM } from '../planner/asked-by-program.js';
import { leadsTo } from '../planner/leads-to.js';
import { sayer } from '../planner/texts.js';
import { scopeFor } from '../planner/working-scope.js';
import { thresholdsOf } from '../rules/cells.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import type { SavedAnswer, SavedSession } from '../session/saved-session.js';
import type { Prompt } from '../terminal/asker.js';
import type { Interview } from '../terminal/session-loop.js';
import { walkText } from './walk-text.js';

export interface InterviewForRules {
  readonly interview: Interview;
  answers(): Answers;
  /** All that is left to be looked at out of doors, as a list. */
  walk(): string;
  /** Everything given so far, ready to be written. */
  toSave(): SavedSession;
}

export interface InterviewInput {
  readonly pack: Pack;
  readonly today: IsoDate;
  readonly given: readonly SavedAnswer[];
  readonly startedOn: IsoDate;
}

export function interviewFor({ pack, today, given, startedOn }: InterviewInput): InterviewForRules {
  const kept = new Map(given.map((answer) => [answer.questionId, answer]));
  const scopeOf = (answers: Answers) => scopeFor({ pack, answers, today, assume: 'said', timing: 'open' });
  const session = openSession({
    pack,
    answers: Object.fromEntries(given.map(({ questionId, value }) => [questionId, value])),
    scopeOf,
    alsoAsk: ASKED_BY_PROGRAM,
  });
  const answer = (questionId: string, value: AnswerValue, typed: string): void => {
    session.answer(questionId, value);
    const id = questionId === 'areaM2' && Array.isArray(value) ? 'lawnParts' : questionId;
    kept.delete(id);
    kept.set(id, { questionId: id, value, typed, givenOn: today });
    for (const key of kept.keys()) if (!Object.hasOwn(session.answers(), key)) kept.delete(key);
  };
  const walk = (): string => {
    const scope = scopeOf(session.answers());
    return walkText(pack, session.answers(), { scope, say: sayer(pack, scope, () => undefined) });
  };
  const interview: Interview = {
    next: () => {
      const next = session.next();
      return next === undefined ? undefined : promptFor(next, { pack, today, session, scopeOf, walk });
    },
    answer: (questionId, reply) =>
      reply.kind === 'value' ? answer(questionId, reply.value, reply.typed) : answer(questionId, UNKNOWN, ''),
    back: session.back,
    goTo: session.goTo,
    review: () =>
      session.review().map(({ question, value, status }) => ({
        questionId: question.id === 'lawnParts' ? 'areaM2' : question.id,
        label: question.label,
        shown: showAnswer(question, value),
        status,
      })),
  };
  return {
    interview,
    answers: session.answers,
    walk,
    toSave: () => {
      const dormant = new Set(
        session
          .review()
          .filter(({ status }) => status === 'dormant')
          .map(({ question }) => question.id),
      );
      const all = [...kept.values()];
      return {
        format: 1,
        seedbedSession: 1,
        pack: { id: pack.id, version: pack.version, sha256: pack.sha256 },
        startedOn,
        answers: all.filter(({ questionId }) => !dormant.has(questionId)),
        dormant: all.filter(({ questionId }) => dormant.has(questionId)),
      };
    },
  };
}

interface PromptContext {
  readonly pack: Pack;
  readonly today: IsoDate;
  readonly session: ReturnType<typeof openSession>;
  readonly walk: () => string;
  readonly scopeOf: (answers: Answers) => ReturnType<typeof scopeFor>;
}

function promptFor(
  { question, number, mayFollow, opensSection, earlier }: NextQuestion,
  context: PromptContext,
): Prompt {
  const { pack, today, session, scopeOf, walk } = context;
  const say = sayer(pack, scopeOf(session.answers()), () => undefined);
  const suggested = earlier === UNKNOWN ? undefined : (earlier ?? suggestionOf(question, today));
  const { effect, handTest } = question.dontKnow;
  return {
    question: { ...question, text: say(question.text) },
    number,
    mayFollow,
    opensSection,
    sectionTitle: pack.sections.find(({ id }) => id === question.section)?.title ?? question.section,
    suggested,
    suggestedText:
      suggested === undefined ? undefined : suggested === today ? 'today' : showAnswer(question, suggested),
    dontKnowText: [say(effect), ...(handTest === undefined ? [] : [`To find out: ${say(handTest)}`])].join(
      ' ',
    ),
    // Worked out only when somebody wants to know.
    get why() {
      const asked = { pack, question, answers: session.answers(), scopeOf, thresholds: thresholdsOf(pack) };
      return [say(question.why), ...leadsTo(asked)].join('\n');
    },
    get walk() {
      return walk();
    },
    help: say(question.help),
  };
}

const suggestionOf = (question: Question, today: IsoDate): AnswerValue | undefined =>
  question.kind === 'date' && question.suggest === 'today' ? today : question.suggest;
