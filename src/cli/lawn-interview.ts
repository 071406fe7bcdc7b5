/**
 * The interview over a lawn that may have several areas: each is asked about by itself, what holds for the whole
 * lawn once, and an area that is added is offered the answers of the first.
 */
import type { Answers, AnswerValue } from '../interview/answers.js';
import { type Area, givesSize, nameFault } from '../interview/areas.js';
import type { Question } from '../rules/schema.js';
import type { AreaAnswer, SavedAnswer, SavedAreas, SavedSession } from '../session/saved-session.js';
import type { Asker, PickChoice } from '../terminal/asker.js';
import type { Interview } from '../terminal/session-loop.js';
import { type InterviewForRules, type InterviewInput, interviewFor } from './interview-for.js';

export interface LawnInterview extends Omit<InterviewForRules, 'answers'> {
  answers(): { readonly answers: Answers; readonly areas: readonly Area[] };
  /** All that is left to be looked at out of doors, for each area. */
  walks(): string;
  /** Whether a question is open, or answers clash, in any area. */
  isOpen(): boolean;
}

interface OpenArea {
  readonly name: string;
  own: readonly SavedAnswer[];
}

const ADD = '+area';
const ADD_LABEL = 'add another area that differs, such as the back or a shady half';
const FIRST_NAME = 'What do you call the area you have told me of?';
const NEXT_NAME = 'What do you call the area to add?';
const NAMES = ['front', 'back'];

export function lawnInterview(input: InterviewInput & SavedAreas): LawnInterview {
  const { pack, heldOver, canOffer = () => false } = input;
  const questionOf = ({ questionId }: SavedAnswer): Question | undefined => pack.questionById.get(questionId);
  const isOwn = (answer: SavedAnswer): boolean => questionOf(answer)?.perArea === true;
  const areas: OpenArea[] = input.areas.map((name) => ({
    name,
    own: input.inAreas.filter(({ area }) => area === name).map(({ area, ...answer }) => answer),
  }));
  let shared = input.given;
  let at = 0;
  let rules = openAt(at);

  function openAt(index: number): InterviewForRules {
    const area = areas[index];
    if (area === undefined) return interviewFor(input);
    const offered = index === 0 ? [] : offeredFrom(areas[0] as OpenArea, area);
    return interviewFor({
      ...input,
      area: area.name,
      given: [...shared, ...area.own],
      heldOver: [...heldOver.filter((answer) => index === 0 || !isOwn(answer)), ...offered],
      canOffer: (answer) => offered.includes(answer) || canOffer(answer),
    });
  }
  function offeredFrom(first: OpenArea, { own }: OpenArea): SavedAnswer[] {
    const has = (id: string): boolean => own.some(({ questionId }) => questionId === id);
    return first.own.filter(({ questionId }) => !has(questionId) && !givesSize(questionId));
  }
  /** What the interview at hand has come to, where it belongs. */
  function keep(): SavedSession {
    const saved = rules.toSave();
    const area = areas[at];
    if (area === undefined) return saved;
    const all = [...saved.answers, ...saved.dormant];
    area.own = all.filter(isOwn);
    shared = all.filter((answer) => !isOwn(answer));
    return {
      ...saved,
      answers: saved.answers.filter((answer) => !isOwn(answer)),
      dormant: saved.dormant.filter((answer) => !isOwn(answer)),
      heldOver: saved.heldOver.filter((answer) => heldOver.includes(answer)),
      areas: areas.map(({ name }) => name),
      inAreas: areas.flatMap(({ name, own }) => own.map((answer): AreaAnswer => ({ ...answer, area: name }))),
    };
  }
  function goTo(index: number): void {
    keep();
    at = index;
    rules = openAt(at);
  }
  const isOpenIn = ({ interview }: InterviewForRules): boolean =>
    interview.clash() !== undefined || interview.next() !== undefined;
  /** Another area that something is left to be asked about. */
  function nextOpen(): number | undefined {
    keep();
    const open = areas.findIndex((_, index) => index !== at && isOpenIn(openAt(index)));
    return open < 0 ? undefined : open;
  }

  async function add(asker: Asker): Promise<void> {
    const taken = areas.map(({ name }) => name);
    const first = areas.length === 0 ? await nameOf(asker, FIRST_NAME, taken) : undefined;
    if (areas.length === 0 && first === undefined) return;
    const next = await nameOf(asker, NEXT_NAME, [...taken, ...(first === undefined ? [] : [first])]);
    if (next === undefined) return;
    if (first !== undefined) areas.push({ name: first, own: [] });
    keep();
    const model = openAt(0);
    areas.push({ name: next, own: [] });
    const area = areas.at(-1) as OpenArea;
    area.own = await sameAsFirst(asker, model, area.name);
    at = areas.length - 1;
    rules = openAt(at);
  }
  /** Section by section: the answers of the first area that hold for the new one too. What safety rests on is asked anew. */
  async function sameAsFirst(asker: Asker, model: InterviewForRules, name: string): Promise<SavedAnswer[]> {
    const first = areas[0] as OpenArea;
    const used = model.interview.review().filter(({ status }) => status !== 'dormant');
    const same: SavedAnswer[] = [];
    for (const section of pack.sections) {
      const inSection = first.own.filter((answer) => {
        const question = questionOf(answer);
        return question?.section === section.id && question.safety !== true;
      });
      const lines = used.filter(({ questionId }) => inSection.some((each) => each.questionId === questionId));
      if (lines.length === 0 || inSection.some(({ questionId }) => givesSize(questionId))) continue;
      const told = lines.map(({ label, shown }) => `${label}: ${shown}`).join('; ');
      const isSame = await asker.confirm(
        `${section.title}: is it the same for the ${name} as for the ${first.name}? There: ${told}.`,
        false,
      );
      if (isSame === undefined) break;
      if (isSame) same.push(...inSection.map((answer) => ({ ...answer, typed: '', givenOn: input.today })));
    }
    return same;
  }

  const interview: Interview = {
    next: () => {
      const prompt = rules.interview.next();
      const open = prompt === undefined ? nextOpen() : undefined;
      if (open === undefined) return prompt;
      goTo(open);
      return rules.interview.next();
    },
    answer: (questionId, given) => rules.interview.answer(questionId, given),
    back: () => rules.interview.back(),
    review: () => rules.interview.review(),
    clash: () => rules.interview.clash(),
    goTo: (questionId) => rules.interview.goTo(questionId),
    further: () => [
      ...areas.flatMap(({ name }, index): PickChoice[] =>
        index === at ? [] : [{ value: `${ADD}${index}`, label: `see the answers for the ${name}` }],
      ),
      { value: ADD, label: ADD_LABEL },
    ],
    goFurther: async (choice, asker) =>
      choice === ADD ? add(asker) : goTo(Number(choice.slice(ADD.length))),
  };
  return {
    interview,
    walk: () => rules.walk(),
    walks: () =>
      areas.length === 0 ? rules.walk() : areas.map((_, index) => openAt(index).walk()).join('\n\n'),
    toSave: keep,
    isOpen: () => isOpenIn(rules) || nextOpen() !== undefined,
    answers: () => {
      if (areas.length === 0) return { answers: rules.answers(), areas: [] };
      keep();
      return {
        answers: valuesOf(shared),
        areas: areas.map(({ name, own }) => ({ name, answers: valuesOf(own) })),
      };
    },
  };
}

const valuesOf = (answers: readonly SavedAnswer[]): Record<string, AnswerValue> =>
  Object.fromEntries(answers.map(({ questionId, value }) => [questionId, value]));

/** A name that no other area has; asked again until it can stand, undefined when they leave. */
async function nameOf(asker: Asker, message: string, taken: readonly string[]): Promise<string | undefined> {
  const suggested = NAMES.find((name) => !taken.includes(name)) ?? '';
  for (;;) {
    const typed = await asker.line(message, suggested, 'name');
    if (typed === undefined) return undefined;
    const name = typed.trim();
    const isTaken = taken.some((other) => other.toLowerCase() === name.toLowerCase());
    const fault = isTaken ? `There is an area "${name}" already.` : nameFault(name);
    if (fault === undefined) return name;
    asker.say(fault);
  }
}
