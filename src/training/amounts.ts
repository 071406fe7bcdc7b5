/** Marks the amounts that a trainee works out. */
import type { AskedAmount } from '../rules/schema-case.js';
import { type RightAmount, rightAmount } from './right-amount.js';
import { slipOf } from './slips.js';
import type { WorkedCase } from './worked-case.js';

export interface MarkedAmount {
  readonly asked: AskedAmount;
  readonly right: RightAmount;
  /** Null: not given. */
  readonly given: number | null;
  /** 0 to 1. */
  readonly mark: number;
  readonly slip: string | null;
}

/** Marks what was given, in the unit of the right value. */
export function markAmount(worked: WorkedCase, asked: AskedAmount, given: number | null): MarkedAmount {
  const right = rightAmount(worked, asked);
  if (right === undefined) throw new Error(`nothing tells the amount "${asked.id}" of "${worked.lesson.id}"`);
  if (given === null) return { asked, right, given, mark: 0, slip: null };
  const { tolerance } = worked.marking;
  const off = Math.abs(given - right.value);
  const inRange = right.range !== null && given >= right.range.min && given <= right.range.max;
  if (inRange || off <= tolerance.right * right.value) return { asked, right, given, mark: 1, slip: null };
  const mark = off <= tolerance.near * right.value ? tolerance.nearMark : 0;
  return { asked, right, given, mark, slip: slipOf(worked, asked, right, given) ?? null };
}
