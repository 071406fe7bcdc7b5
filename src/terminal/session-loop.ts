/**
 * The session: asks what the interview wants next, hands answers over, saves after each, until there is nothing
 * left to ask or the person leaves. It knows no rule and no screen; both are given.
 */
import type { AnswerValue } from '../interview/answers.js';
import type { Asker, Leaving, PickChoice, Prompt, Reply } from './asker.js';
import { LEAVE_LIST, notedLine, notKeptLine } from './words.js';

/** What a question was answered with. */
export type GivenAnswer =
  | {
      readonly kind: 'value';
      readonly value: AnswerValue;
      readonly understood: string;
      readonly typed: string;
    }
  | { readonly kind: 'unknown' };

export interface ReviewLine {
  readonly questionId: string;
  /** Noun phrase of the question, such as "moss cover". */
  readonly label: string;
  /** The answer in words, or what is assumed. */
  readonly shown: string;
  readonly status: 'answered' | 'unknown' | 'dormant';
}

/** Answers that cannot all be true, and why. */
export interface ClashingAnswers {
  readonly says: string;
  readonly lines: readonly ReviewLine[];
}

/** The interview over the rules, as far as the loop needs it. */
export interface Interview {
  /** The next question, or undefined when the plan is settled. The same one until it is answered. */
  next(): Prompt | undefined;
  answer(questionId: string, given: GivenAnswer): void;
  /** Goes to the question before; false when there is none. */
  back(): boolean;
  review(): readonly ReviewLine[];
  /** Answers that cannot stand together: one of them has to change before a plan is made. */
  clash(): ClashingAnswers | undefined;
  /** Makes an earlier question the next one. */
  goTo(questionId: string): void;
  /** What the last review offers besides: to add an area of the lawn, to look at another. */
  further?(): readonly PickChoice[];
  goFurther?(choice: string, asker: Asker): Promise<void>;
}

export interface SessionParts {
  readonly asker: Asker;
  readonly interview: Interview;
  /** Writes the session to disk; called after every confirmed answer and before leaving. */
  readonly save: () => Promise<void>;
}

export interface SessionEnd {
  readonly outcome: 'finished' | 'saved' | 'quit' | 'ended' | 'interrupted';
  /** False when the last try to save failed; the person has been told. */
  readonly isSaved: boolean;
}

const OUTCOMES: Readonly<Record<Leaving, SessionEnd['outcome']>> = {
  save: 'saved',
  quit: 'quit',
  ended: 'ended',
  interrupted: 'interrupted',
};
const REVIEW = 'Your answers so far. Pick one to change it.';
const LAST_REVIEW = 'That is all I need to ask. Pick an answer to change it, or go on to the plan.';
const TO_THE_PLAN = 'make the plan from these answers';
const CHANGE_WHICH = 'Which one do you want to change? The others stay.';
const NONE_BEFORE = 'This is the first question.';
const NONE_YET = 'There is no answer yet.';
const STATUS_NOTES: Readonly<Record<ReviewLine['status'], string>> = {
  answered: '',
  unknown: '',
  dormant: ' (kept, not used)',
};

/** Runs the session to its end. */
export async function runSession({ asker, interview, save }: SessionParts): Promise<SessionEnd> {
  const saved = savingOnce(asker, save);
  let section = '';
  for (;;) {
    const parted = await settleClash(asker, interview);
    if (parted !== undefined) return { outcome: OUTCOMES[parted], isSaved: await saved() };
    const prompt = interview.next();
    if (prompt === undefined) {
      const further = interview.further?.() ?? [];
      const last = { message: LAST_REVIEW, leaveLabel: TO_THE_PLAN, further };
      const choice = await reviewed(asker, interview, last);
      const left = asker.left?.();
      if (choice === undefined) return { outcome: endOf(left), isSaved: await saved() };
      await saved();
      continue;
    }
    if (prompt.sectionTitle !== section) asker.say(`\n${prompt.sectionTitle}`);
    section = prompt.sectionTitle;
    const leaving = await handle(await asker.ask(prompt), { prompt, asker, interview, saved });
    if (leaving !== undefined) return { outcome: OUTCOMES[leaving], isSaved: await saved() };
  }
}

/** After the last question the end of input is no loss: the plan can be made. Leaving by hand still counts. */
function endOf(left: Leaving | undefined): SessionEnd['outcome'] {
  return left === undefined || left === 'ended' ? 'finished' : OUTCOMES[left];
}

interface Step {
  readonly prompt: Prompt;
  readonly asker: Asker;
  readonly interview: Interview;
  readonly saved: () => Promise<boolean>;
}

/** Acts on a reply; gives back how they leave, if they do. */
async function handle(reply: Reply, { prompt, asker, interview, saved }: Step): Promise<Leaving | undefined> {
  switch (reply.kind) {
    case 'value':
    case 'unknown': {
      interview.answer(prompt.question.id, reply);
      // "Noted" is a promise: what is noted is on the disk.
      const isKept = await saved();
      if (reply.kind === 'unknown') asker.say(prompt.dontKnowText);
      else asker.say(isKept ? notedLine(reply.understood) : notKeptLine(reply.understood));
      return undefined;
    }
    case 'back':
      if (!interview.back()) asker.say(NONE_BEFORE);
      return undefined;
    case 'review':
      await reviewed(asker, interview, { message: REVIEW, leaveLabel: LEAVE_LIST });
      return undefined;
    default:
      return reply.kind;
  }
}

interface Review {
  readonly message: string;
  readonly leaveLabel: string;
  readonly further?: readonly PickChoice[];
}

/** Shows all answers; the one that is picked becomes the next question. */
async function reviewed(
  asker: Asker,
  interview: Interview,
  { message, leaveLabel, further = [] }: Review,
): Promise<string | undefined> {
  const lines = interview.review();
  if (lines.length === 0) {
    if (message === REVIEW) asker.say(NONE_YET);
    return undefined;
  }
  const picked = await asker.pick(message, [...lines.map(pickLine), ...further], leaveLabel);
  if (further.some(({ value }) => value === picked)) await interview.goFurther?.(picked as string, asker);
  else if (picked !== undefined) interview.goTo(picked);
  return picked;
}

/** Has one of the answers that cannot stand together asked again; gives back how they leave, if they do. */
async function settleClash(asker: Asker, interview: Interview): Promise<Leaving | undefined> {
  const clash = interview.clash();
  if (clash === undefined) return undefined;
  const questionId = await asker.pick(`${clash.says}\n${CHANGE_WHICH}`, clash.lines.map(pickLine));
  if (questionId === undefined) return asker.left?.() ?? 'ended';
  interview.goTo(questionId);
  return undefined;
}

const pickLine = ({ questionId, label, shown, status }: ReviewLine) => ({
  value: questionId,
  label: `${label}: ${shown}${STATUS_NOTES[status]}`,
});

/** A save that never ends the session: a failure is told once for each new reason. */
function savingOnce(asker: Asker, save: () => Promise<void>): () => Promise<boolean> {
  let told = '';
  return async () => {
    try {
      await save();
      told = '';
      return true;
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      if (reason !== told)
        asker.say(`I could not save your answers: ${reason}. They are kept while this runs.`);
      told = reason;
      return false;
    }
  };
}
