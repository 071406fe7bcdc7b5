/** Thrown when waits and seasons cannot all be kept. */
import { capital } from '../base/joined-words.js';
import type { Units } from '../base/us-units.js';
import type { Answers } from '../interview/answers.js';
import { clashIn, type UndatableInput, undatable } from './clash.js';
import { clashText } from './clash-words.js';
import type { Timing } from './computed-facts.js';
import { missedSeason } from './missed-season.js';
import { waysOut } from './ways-out.js';

export interface ClashInput extends UndatableInput {
  /** With it in the rules no dates hold. */
  readonly timing: Timing;
  readonly answers: Answers;
  readonly hasDates: (answers: Answers) => boolean;
  readonly units: Units;
}

/** Its message names the fewest waits and seasons that clash; it is worked out when it is first read. */
export class ScheduleClash extends Error {
  override readonly name = 'ScheduleClash';

  constructor(
    private readonly input: ClashInput,
    area?: string,
  ) {
    super();
    let said: string | undefined;
    Object.defineProperty(this, 'message', {
      get: () => {
        said ??= `${area === undefined ? '' : `${capital(area)}: `}${told(input)}`;
        return said;
      },
    });
  }

  /** The same, said of one area of several. */
  on(area: string): ScheduleClash {
    return new ScheduleClash(this.input, area);
  }
}

function told({ timing, answers, hasDates, units, ...input }: ClashInput): string {
  const failed = undatable(input, timing);
  const demands = clashIn(failed) ?? [];
  const missed = missedSeason(demands, failed);
  return clashText({ demands, missed, ways: waysOut(demands, failed, { answers, hasDates }) }, failed, units);
}
