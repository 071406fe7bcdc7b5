/** What a sowing has ahead of it at the place: days of growth before the soil goes cold, and nights of frost. */
import { growingDaysLeft } from '../agronomy/germination.js';
import {
  addDays,
  dayOfYear,
  daysBetween,
  formatDay,
  type IsoDate,
  monthName,
  monthOf,
} from '../base/dates.js';
import { plainNumber } from '../base/quantity-words.js';
import { namesIn } from '../rules/call.js';
import type { Pack } from '../rules/pack.js';
import type { Step } from '../rules/schema.js';
import type { LocalClimate } from './climate.js';
import { listed, worded, wordedInside } from './explain-words.js';
import type { PlanGrowth } from './plan.js';
import type { Say } from './texts.js';
import { closingOf, type NumberOf, type Season } from './windows.js';

const DAYS_PER_YEAR = 365;

interface GrowthInput {
  readonly pack: Pack;
  readonly season: Season;
  readonly numberOf: NumberOf;
  /** Takes every figure that was used. */
  readonly note: (figureId: string) => void;
  readonly say: Say;
}

/** Null for a step whose season does not close for want of growth, and where the climate is not known. */
export function growthAhead(step: Step, sowOn: IsoDate, input: GrowthInput): PlanGrowth | null {
  const { season, numberOf } = input;
  const { climate } = season;
  const closing = closingOf(step, season);
  if (climate === undefined || closing === undefined) return null;
  const [belowC, wantedDays] = [numberOf(closing.belowC), numberOf(closing.daysLeft)];
  if (belowC === undefined || wantedDays === undefined) return null;
  for (const name of [closing.belowC, closing.daysLeft].flatMap(namesIn))
    if (name.startsWith('figures.')) input.note(name.slice('figures.'.length));
  const daysLeft = growingDaysLeft({
    soilCOn: (later) => climate.soilCOn(dayOfYear(addDays(sowOn, later))),
    thresholdC: belowC,
    limitDays: DAYS_PER_YEAR,
  });
  const frost = frostNights(sowOn, addDays(sowOn, Math.ceil(wantedDays)), climate);
  const growth = { daysLeft, aboveC: belowC, wantedDays, frost };
  return { ...growth, says: [growthWords(growth, sowOn, input), ...frostWords(frost, input)] };
}

/** Months from the one day to the other, with the nights of air frost that they have in a normal year. */
function frostNights(from: IsoDate, until: IsoDate, { frostDaysIn }: LocalClimate): PlanGrowth['frost'] {
  const days = Array.from({ length: daysBetween(from, until) + 1 }, (_, index) => addDays(from, index));
  const firsts = days.filter((day, index) => index === 0 || monthOf(day) !== monthOf(addDays(day, -1)));
  return firsts.flatMap((day) => {
    const nights = frostDaysIn(day);
    return nights === undefined ? [] : [{ month: monthOf(day), nights }];
  });
}

function growthWords(
  { daysLeft, aboveC, wantedDays }: Omit<PlanGrowth, 'says'>,
  sowOn: IsoDate,
  { pack, say }: GrowthInput,
): string {
  const words = {
    warmth: say(`{${aboveC} C}`),
    days: plainNumber(daysLeft),
    wanted: plainNumber(wantedDays),
    until: formatDay(addDays(sowOn, daysLeft)).replace(/^\w+ | \d{4}$/g, ''),
  };
  if (daysLeft === 0) return worded(pack, 'growthNone', words);
  if (daysLeft >= DAYS_PER_YEAR) return worded(pack, 'growthAlways', words);
  return worded(pack, daysLeft < wantedDays ? 'growthShort' : 'growthLeft', words);
}

function frostWords(frost: PlanGrowth['frost'], { pack }: GrowthInput): string[] {
  if (frost.length === 0) return [];
  const months = frost.map(({ month, nights }) => {
    const count = nights === 0 ? 'frostNone' : nights < 1 ? 'frostHardly' : 'frostMonth';
    return wordedInside(pack, count, { month: monthName(month), nights: plainNumber(Math.round(nights)) });
  });
  return [worded(pack, 'frostAhead', { months: listed(pack, months) })];
}
