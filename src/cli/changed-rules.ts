/** A session begun with other rules: finish it by those, or move its answers over to the present ones. */
import { joinedWords } from '../base/joined-words.js';
import { showAnswer } from '../interview/show-answer.js';
import type { Pack } from '../rules/pack.js';
import { moveOver } from '../session/move-over.js';
import type { AreaAnswer, PackReference, SavedAnswer, SavedAreas } from '../session/saved-session.js';
import { fitsQuestions } from './fitting.js';
import type { SavingInput, TakenUp } from './saving.js';

export interface OldSession extends SavedAreas {
  readonly startedOn: TakenUp['startedOn'];
  readonly answers: readonly SavedAnswer[];
  readonly heldOver: readonly SavedAnswer[];
  /** The rules that the answers were given to; unknown where the file was damaged. */
  readonly pack: PackReference | undefined;
  /** Those rules, where they are still at hand. */
  readonly rules: Pack | undefined;
}

/** Undefined when they left without choosing. */
export async function takeOver(old: OldSession, input: SavingInput): Promise<TakenUp | undefined> {
  const { asker, pack, today } = input;
  const between = { from: old.rules, to: pack, fits: fitsQuestions(pack, today) };
  const moved = moveOver({ ...between, answers: old.answers });
  // What does not fit any more in one area is asked there anew, with nothing to offer.
  const movedInAreas = moveOver({ ...between, answers: old.inAreas });
  const listed = (answers: readonly SavedAnswer[], rules: Pack) =>
    joinedWords(answers.map((answer) => inWords(answer, rules)));
  const { kept, askedAgain, dropped } = moved;
  const lostInAreas = [...movedInAreas.askedAgain, ...movedInAreas.dropped];
  asker.say(
    [
      `The rules have changed since this session was begun (${versionOf(old.pack)}; now ${pack.version}).`,
      ...(kept.length === 0 ? [] : [`Kept: ${listed(kept, pack)}.`]),
      ...(askedAgain.length === 0
        ? []
        : [
            `Asked again, as the question or its answers have changed: ${listed(askedAgain, old.rules ?? pack)}.`,
          ]),
      ...(dropped.length === 0 ? [] : [`No longer asked: ${listed(dropped, old.rules ?? pack)}.`]),
      ...(lostInAreas.length === 0
        ? []
        : [`Asked again for one area or another: ${listed(lostInAreas, old.rules ?? pack)}.`]),
    ].join('\n'),
  );
  const choice = await asker.pick('How shall we go on?', [
    { value: 'move', label: 'move over to the present rules' },
    ...(old.rules === undefined
      ? []
      : [{ value: 'stay', label: 'finish as it was, by the rules it was begun with' }]),
    { value: 'leave', label: 'leave it as it is for now' },
  ]);
  if (choice === undefined || choice === 'leave') return undefined;
  const { startedOn, heldOver, areas } = old;
  if (choice === 'stay')
    return { answers: old.answers, heldOver, areas, inAreas: old.inAreas, startedOn, pack: old.rules };
  return {
    answers: kept,
    heldOver: [...heldOver, ...askedAgain, ...dropped],
    areas,
    inAreas: movedInAreas.kept as AreaAnswer[],
    startedOn,
    pack,
  };
}

const versionOf = (pack: PackReference | undefined): string =>
  pack === undefined ? 'version unknown' : `version ${pack.version}`;

/** `moss cover 40 %`; the bare id where no rules tell what it meant. */
function inWords({ questionId, value }: SavedAnswer, rules: Pack): string {
  const question = rules.questionById.get(questionId);
  if (question === undefined) return Array.isArray(value) ? questionId : `${questionId} ${String(value)}`;
  return `${question.label} ${showAnswer(question, value)}`;
}
