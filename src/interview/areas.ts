/** A lawn of several areas, such as front and back: what each has for itself, over what holds for the whole lawn. */
import { cleanLine } from '../base/clean-text.js';
import type { Answers } from './answers.js';

export interface Area {
  /** As typed, one line. */
  readonly name: string;
  /** What holds for it alone. */
  readonly answers: Answers;
}

const SIZES: readonly string[] = ['areaM2', 'lawnParts'];

/** The ways to give a size: whoever has one has it alone. */
export const givesSize = (questionId: string): boolean => SIZES.includes(questionId);

/** The answers for the whole lawn with those of the area over them; its own size, however given, is the only one. */
export function answersOn({ answers: own }: Pick<Area, 'answers'>, whole: Answers): Answers {
  const hasSize = Object.keys(own).some(givesSize);
  const shared = Object.entries(whole).filter(([id]) => !hasSize || !givesSize(id));
  return { ...Object.fromEntries(shared), ...own };
}

const LONGEST_NAME = 40;

/** What is wrong with a name, as a sentence. */
export function nameFault(name: string): string | undefined {
  const isRight =
    name.trim() === name && name !== '' && name.length <= LONGEST_NAME && cleanLine(name) === name;
  return isRight
    ? undefined
    : `A name has 1 to ${LONGEST_NAME} characters on one line, without spaces around it.`;
}
