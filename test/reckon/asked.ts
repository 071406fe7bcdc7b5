/** Asks a reckoner with the figures of the bundled rules. */
import { type Reckoned, reckon } from '../../src/reckon/reckon.js';
import { pack } from '../planner/any-lawn.js';

export const figures = (id: string): number => {
  const figure = pack.figureById.get(id);
  if (figure === undefined) throw new Error(`the rules have no figure ${id}`);
  return figure.typical;
};

export function answer(name: string, typed: Record<string, string>): Reckoned {
  const reckoning = reckon(name, typed, figures);
  if (!reckoning.ok) throw new Error(reckoning.problems.join(' '));
  return reckoning.result;
}

export interface Refused {
  readonly kind: string;
  readonly says: string;
}

export function refusal(name: string, typed: Record<string, string>): Refused {
  const reckoning = reckon(name, typed, figures);
  if (reckoning.ok) throw new Error(`${name} gave ${reckoning.result.value}`);
  return { kind: reckoning.kind, says: reckoning.problems.join(' ') };
}
