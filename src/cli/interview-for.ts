/** Joins the session over the rules to the loop at the terminal: prompts in words, places resolved, answers kept. */
import type { IsoDate } from '../base/dates.js';
import { capital } from '../base/joined-words.js';
import type { Units } from '../base/us-units.js';
import { type Answers, type AnswerValue, UNKNOWN } from '../interview/answers.js';
import { type NextQuestion, openSession } from '../interview/session.js';
import { showAnswer } from '../interview/show-answer.js';
import { clashesIn } from '../interview/together.js';
import { wordedFor } from '../interview/worded.js';
import { ASKED_BY_PROGRAM, ASKED_WITH_PRICES } from '../planner/asked-by-program.js';
import { leadsTo } from '../planner/leads-to.js';
import { sayer } from '../planner/texts.js';
import { scopeFor } from '../planner/working-scope.js';
import { thresholdsOf } from '../rules/cells.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';
import { NO_AREAS, type SavedAnswer, type SavedSession } from '../session/saved-session.js';
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
  /** Answers to other rules, offered where their question is asked. */
  readonly heldOver: readonly SavedAnswer[];
  /** Whether one of those may still stand as the answer. */
  readonly canOffer?: (answer: SavedAnswer) => boolean;
  readonly startedOn: IsoDate;
  /** Units that answers and figures are shown in; metric unless said otherwise. */
  readonly units?: Units;
  /** Whether there is a price list to set a budget and a weight against. */
  readonly withPrices?: boolean;
  /** The area of the lawn that is asked about, where there are several. */
  readonly area?: string;
}

export function interviewFor({
  pack,
  today,
  given,
  heldOver,
  canOffer = () => false,
  startedOn,
  units = 'metric',
  withPrices = false,
  area,
}: InterviewInput): InterviewForRules {
  const kept = new Map(given.map((answer) => [answer.questionId, answer]));
  const held = new Map(heldOver.map((answer) => [answer.questionId, answer]));
  const scopeOf = (answers: Answers) => scopeFor({ pack, answers, today, assume: 'said', timing: 'open' });
  const session = openSession({
    pack,
    answers: Object.fromEntries(given.map(({ questionId, value }) => [questionId, value])),
    scopeOf,
    alsoAsk: withPrices ? [...ASKED_BY_PROGRAM, ...ASKED_WITH_PRICES] : ASKED_BY_PROGRAM,
    // What came from an answers file was never asked, and has no day on which it was given.
    askedBefore: given
      .filter(({ givenOn, questionId }) => givenOn !== undefined && pack.questionById.has(questionId))
      .map(({ questionId }) => (questionId === 'lawnParts' ? 'areaM2' : questionId)),
  });
  const offerFor = (questionId: string): AnswerValue | undefined => {
    const answer = held.get(questionId);
    // What someone's safety rests on is answered anew when the question has changed.
    const isSafety = pack.questionById.get(questionId)?.safety === true;
    return answer !== undefined && !isSafety && canOffer(answer) ? answer.value : undefined;
  };
  const answer = (questionId: string, value: AnswerValue, typed: string): void => {
    session.answer(questionId, value);
    const id = questionId === 'areaM2' && Array.isArray(value) ? 'lawnParts' : questionId;
    kept.delete(id);
    held.delete(questionId);
    held.delete(id);
    kept.set(id, { questionId: id, value, typed, givenOn: today });
    for (const key of kept.keys()) if (!Object.hasOwn(session.answers(), key)) kept.delete(key);
  };
  const review = () => {
    const scope = scopeOf(session.answers());
    return session.review().map(({ question, value, status }) => ({
      questionId: question.id === 'lawnParts' ? 'areaM2' : question.id,
      label: question.label,
      shown: `${showAnswer(question, value, units)}${value === UNKNOWN ? takenAs(question, scope, units) : ''}`,
      status,
    }));
  };
  const walk = (): string => {
    const scope = scopeOf(session.answers());
    return walkText(pack, session.answers(), {
      scope,
      say: sayer({ pack, scope, note: () => undefined, units }),
      area,
    });
  };
  const interview: Interview = {
    next: () => {
      const next = session.next();
      if (next === undefined) return undefined;
      const heldOver = offerFor(next.question.id);
      return promptFor(next, { pack, today, session, scopeOf, walk, heldOver, units, area });
    },
    answer: (questionId, reply) =>
      reply.kind === 'value' ? answer(questionId, reply.value, reply.typed) : answer(questionId, UNKNOWN, ''),
    back: session.back,
    goTo: session.goTo,
    review,
    clash: () => {
      const used = session.review().filter(({ status }) => status !== 'dormant');
      const isUsed = (id: string) => used.some(({ question }) => question.id === id);
      const [first] = clashesIn(pack, session.answers(), isUsed);
      return (
        first && {
          ...first,
          lines: review().filter(({ questionId }) => first.questionIds.includes(questionId)),
        }
      );
    },
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
        seedbedSession: 2,
        pack: { id: pack.id, version: pack.version, sha256: pack.sha256 },
        startedOn,
        ...(pack.ownClimate === undefined ? {} : { climate: pack.ownClimate }),
        answers: all.filter(({ questionId }) => !dormant.has(questionId)),
        dormant: all.filter(({ questionId }) => dormant.has(questionId)),
        heldOver: [...held.values()],
        ...NO_AREAS,
      };
    },
  };
}

/** What the plan goes by in place of an answer that nobody knows. */
function takenAs(question: Question, scope: Scope, units: Units): string {
  const assumed = scope(question.id);
  const { says } = question.dontKnow;
  if (says !== undefined) return ` (${says})`;
  return assumed.known ? ` (taken as ${showAnswer(question, assumed.value, units)})` : '';
}

interface PromptContext {
  readonly pack: Pack;
  readonly today: IsoDate;
  readonly session: ReturnType<typeof openSession>;
  readonly walk: () => string;
  readonly scopeOf: (answers: Answers) => ReturnType<typeof scopeFor>;
  readonly heldOver: AnswerValue | undefined;
  readonly units: Units;
  readonly area: string | undefined;
}

function promptFor(
  { question: asked, number, mayFollow, opensSection, earlier }: NextQuestion,
  context: PromptContext,
): Prompt {
  const { pack, today, session, scopeOf, walk, heldOver, units, area } = context;
  const say = sayer({ pack, scope: scopeOf(session.answers()), note: () => undefined, units });
  const before = earlier ?? heldOver;
  const suggested = before === UNKNOWN ? undefined : (before ?? suggestionOf(asked, today));
  const question = wordedFor(asked, units);
  const section = pack.sections.find(({ id }) => id === question.section)?.title ?? question.section;
  const { effect, handTest } = question.dontKnow;
  return {
    question: { ...question, text: say(question.text) },
    units,
    number,
    mayFollow,
    opensSection,
    sectionTitle: area === undefined || asked.perArea !== true ? section : `${capital(area)}. ${section}`,
    suggested,
    suggestedText:
      suggested === undefined
        ? undefined
        : suggested === today
          ? 'today'
          : showAnswer(question, suggested, units),
    dontKnowText: [say(effect), ...(handTest === undefined ? [] : [`To find out: ${say(handTest)}`])].join(
      ' ',
    ),
    // Worked out only when somebody wants to know.
    get why() {
      const asked = {
        pack,
        question,
        answers: session.answers(),
        scopeOf,
        thresholds: thresholdsOf(pack),
        units,
      };
      return [say(question.why), ...leadsTo(asked)].join('\n');
    },
    get walk() {
      return walk();
    },
    help: question.kind === 'place' ? `${say(question.help)} ${stationsOf(pack)}` : say(question.help),
  };
}

const stationsOf = ({ climate }: Pack): string =>
  `The stations: ${climate.stations.map(({ name }) => name).join(', ')}.`;

const suggestionOf = (question: Question, today: IsoDate): AnswerValue | undefined =>
  question.kind === 'date' && question.suggest === 'today' ? today : question.suggest;
