/**
 * A day's water in turns that the soil can drink: several turns a day, and within a turn a run, a
 * pause and a run again where the sprinkler is faster than the soil.
 */
import { requireAbove, requireAtLeast, requireWhole } from '../base/refuse.js';

export interface TurnPlan {
  readonly depthPerTurnMm: number;
  /** Runs in a turn; 1 when the soil keeps up. */
  readonly runsPerTurn: number;
  readonly minutesPerRun: number;
  /** Pause after each run until the film has soaked in, min; 0 when the soil keeps up. */
  readonly soakMinutes: number;
}

/**
 * Turns of a day, each given no faster than the soil takes it up.
 *
 *   depth of a turn = need ÷ turns
 *   rate ≤ infiltration: one run of depth ÷ rate
 *   rate > infiltration: a run of depth d leaves a film of d (1 − infiltration ÷ rate);
 *     runs = the film of the whole turn ÷ the film that may stand, rounded up;
 *     run and pause together last d ÷ infiltration, so over the turn the mean rate is the infiltration rate
 *
 * @param needMm water for the day, mm, ≥ 0
 * @param turnsPerDay whole number, 1 or more
 * @param rateMmPerH what the sprinkler gives, mm/h, > 0
 * @param infiltrationMmPerH what the soil takes, mm/h, > 0; a figure of the caller
 * @param standingMm film that may stand on the seedbed without running off, mm, > 0; a figure of the caller
 * @returns depth of a turn, runs in it, minutes of run and of pause
 * @throws {RangeError} when an argument is outside the range above
 */
export function wateringTurns({
  needMm,
  turnsPerDay,
  rateMmPerH,
  infiltrationMmPerH,
  standingMm,
}: {
  readonly needMm: number;
  readonly turnsPerDay: number;
  readonly rateMmPerH: number;
  readonly infiltrationMmPerH: number;
  readonly standingMm: number;
}): TurnPlan {
  requireAtLeast('needMm', needMm, 0);
  requireWhole('turnsPerDay', turnsPerDay, 1);
  requireAbove('rateMmPerH', rateMmPerH, 0);
  requireAbove('infiltrationMmPerH', infiltrationMmPerH, 0);
  requireAbove('standingMm', standingMm, 0);
  const depthPerTurnMm = needMm / turnsPerDay;
  const filmShare = Math.max(0, 1 - infiltrationMmPerH / rateMmPerH);
  const runsPerTurn = Math.max(1, Math.ceil((depthPerTurnMm * filmShare) / standingMm));
  const depthPerRunMm = depthPerTurnMm / runsPerTurn;
  const minutesPerRun = (60 * depthPerRunMm) / rateMmPerH;
  const soakMinutes = Math.max(0, (60 * depthPerRunMm) / infiltrationMmPerH - minutesPerRun);
  return { depthPerTurnMm, runsPerTurn, minutesPerRun, soakMinutes };
}
