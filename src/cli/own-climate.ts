/** `--climate FILE`: the user's own climate in place of a weather station. */
import type { Answers } from '../interview/answers.js';
import { climateFault } from '../planner/whereabouts.js';
import type { Pack } from '../rules/pack.js';
import type { ParsedArgs } from './command.js';
import { type CliIo, CliStop, EXIT } from './io.js';

/** The option of every command that plans. */
export const CLIMATE_OPTION = {
  climate: {
    type: 'string',
    value: 'FILE',
    says: 'own climate instead of a station: monthly means (JSON, CSV) or daily weather (CSV)',
  },
} as const;

/** @throws {CliStop} exit code 3 where the climate is of the other half of the earth than the place */
export function refuseOtherHalf(answers: Answers, pack: Pack): void {
  const fault = climateFault(answers, pack);
  if (fault !== undefined) throw new CliStop(EXIT.answers, fault);
}

/** The rules, with the user's own climate where --climate names one. */
export async function withOwnClimate(pack: Pack, args: ParsedArgs, io: CliIo): Promise<Pack> {
  const file = args.text('climate');
  if (file === undefined) return pack;
  const { readClimate } = await import('./read-climate.js');
  return { ...pack, ownClimate: readClimate(await io.readText(file), file, pack) };
}
