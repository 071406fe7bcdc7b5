/**
 * What the place says of the lawn's year: the half of the earth, the climate, a late spring, the days of frozen ground,
 * the winter sleep of warm-season grass. Rules and dates ask for it again and again, so each place is worked out once.
 */
import { cleanLine } from '../base/clean-text.js';
import { addDays, dayOfYear, type IsoDate, isInWindow, parseIsoDate, yearOf } from '../base/dates.js';
import { once } from '../base/once.js';
import type { Answers } from '../interview/answers.js';
import { namesIn } from '../rules/call.js';
import { evaluate, type Outcome } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import { climateFor, halfOf, isSouthernHere, type LocalClimate } from './climate.js';
import { type Place, placeOf } from './place.js';
import { seasonNumber, stationReach } from './season-figures.js';
import { daysOfLeapYear, halfYearOn } from './windows.js';

/** The question that tells the place. */
export const PLACE = 'place';

/** What the rules say of the half of the earth where no place tells it. */
export const halfTold = ({ seasons }: Pack, read: (name: string) => Outcome): Outcome =>
  seasons === undefined ? { known: false, open: [] } : evaluate(seasons.half, read);

export interface Whereabouts {
  readonly place: Place | undefined;
  readonly southern: boolean;
  readonly climate: LocalClimate | undefined;
  readonly lateSpring: boolean;
  /** `MM-DD`; empty where nothing is known of it. */
  readonly shutDays: ReadonlySet<string>;
}

const keptFor = once((_pack: Pack) => new Map<string, Whereabouts>());

/** The whereabouts by what a scope knows of the place and the half of the earth. */
export function whereabouts(pack: Pack, read: (name: string) => Outcome, today: IsoDate): Whereabouts {
  const [typed, half] = [pack.questionById.has(PLACE) ? read(PLACE) : undefined, halfTold(pack, read)].map(
    (outcome) => (outcome?.known === true && typeof outcome.value === 'string' ? outcome.value : ''),
  ) as [string, string];
  const kept = keptFor(pack);
  const key = JSON.stringify([typed, half, yearOf(today)]);
  const before = kept.get(key);
  if (before !== undefined) return before;
  const made = worked(pack, typed === '' ? undefined : placeOf(typed, pack.climate), half, yearOf(today));
  kept.set(key, made);
  return made;
}

/** Whether the half of the earth is known without being asked for: by the place, or by the months of an own climate. */
export const isHalfKnown = (pack: Pack, place: Outcome): boolean =>
  isFound(pack, place) || (pack.ownClimate !== undefined && halfOf(pack.ownClimate, pack) !== undefined);

/** Words that name no place tell nothing. */
export const isFound = (pack: Pack, place: Outcome): boolean =>
  place.known && typeof place.value === 'string' && placeOf(place.value, pack.climate) !== undefined;

/** What is wrong where an own climate is of the other half of the earth than the place; undefined where nothing is. */
export function climateFault(answers: Answers, pack: Pack): string | undefined {
  const { ownClimate } = pack;
  const half = ownClimate === undefined ? undefined : halfOf(ownClimate, pack);
  if (ownClimate === undefined || half === undefined) return undefined;
  const typed = answers[PLACE];
  const place = typeof typed === 'string' ? placeOf(typed, pack.climate) : undefined;
  const [halfId = ''] = pack.seasons === undefined ? [] : namesIn(pack.seasons.half);
  const told = place === undefined ? answers[halfId] : place.position.latitudeDeg < 0 ? 'south' : 'north';
  if ((told !== 'north' && told !== 'south') || told === half) return undefined;
  const found =
    place === undefined ? `"${halfId}" is "${told}"` : `"${PLACE}" is "${cleanLine(String(typed))}"`;
  return `${found}, which is ${told} of the equator, but in the climate given (${ownClimate.from}) the warm half of the year is ${WARM_MONTHS[half]}: it was taken in the ${half}. Give the climate of the place with --climate, or correct the place (south and west have a minus sign).`;
}

const WARM_MONTHS = { north: 'April to September', south: 'October to March' } as const;

function worked(pack: Pack, place: Place | undefined, half: string, year: number): Whereabouts {
  const { ownClimate } = pack;
  const isTold = place !== undefined || (ownClimate !== undefined && halfOf(ownClimate, pack) !== undefined);
  const southern = isTold ? isSouthernHere(pack, place) : half === 'south';
  const climate = climateFor(pack, place, { ...stationReach(pack), year });
  const at = { pack, place, southern, climate };
  return { place, southern, climate, lateSpring: isSpringLate(at), shutDays: shutDaysOf(at) };
}

type At = Pick<Whereabouts, 'place' | 'southern' | 'climate'> & { readonly pack: Pack };

/** `MM-DD` of the north as it is on this half. */
const here = (monthDay: string, southern: boolean): string => (southern ? halfYearOn(monthDay) : monthDay);

function isSpringLate({ pack, southern, climate }: At): boolean {
  const rule = pack.seasons?.lateSpring;
  const belowC = seasonNumber(pack, rule?.belowC);
  if (rule === undefined || belowC === undefined || climate === undefined) return false;
  return climate.soilCOn(dayOfYear(parseIsoDate(`${climate.year}-${here(rule.on, southern)}`))) < belowC;
}

function shutDaysOf(at: At): ReadonlySet<string> {
  const isShut = at.climate === undefined ? shutByLatitude(at) : shutByClimate(at, at.climate);
  return new Set(daysOfLeapYear().flatMap((day) => (isShut(day) ? [day.slice(MONTH_AT)] : [])));
}

const MONTH_AT = 'YYYY-'.length;
const NEVER = (): boolean => false;

/** Frozen through, or cold and freezing again in more nights than not. */
function shutByClimate({ pack }: At, climate: LocalClimate): (day: IsoDate) => boolean {
  const rule = pack.seasons?.groundShut;
  const [frozenC, coldC, frostC] = [rule?.belowC, rule?.frostyBelowC, rule?.frostC].map((each) =>
    seasonNumber(pack, each),
  );
  if (frozenC === undefined || coldC === undefined || frostC === undefined) return NEVER;
  return (day) => {
    const soilC = climate.soilCOn(dayOfYear(day));
    return soilC < frozenC || (soilC < coldC && climate.tMinCIn(day) <= frostC);
  };
}

function shutByLatitude({ pack, place, southern }: At): (day: IsoDate) => boolean {
  const rule = pack.seasons?.groundShut.withoutClimate;
  if (rule === undefined || !isBeyond(place, seasonNumber(pack, rule.fromLatitudeDeg))) return NEVER;
  return (day) => isInWindow(day, { from: here(rule.from, southern), until: here(rule.until, southern) });
}

const isBeyond = (place: Place | undefined, latitudeDeg: number | undefined): boolean =>
  place !== undefined && latitudeDeg !== undefined && Math.abs(place.position.latitudeDeg) >= latitudeDeg;

/** Whether warm-season grass is brown and alive on that day: too cold to grow, or not yet green again after it was. */
export function warmGrassSleepsOn(day: IsoDate, pack: Pack, at: Whereabouts): boolean {
  const { climate, place, southern } = at;
  const sleeps = pack.seasons?.warmGrassSleeps;
  if (climate !== undefined) {
    const growsFromC = seasonNumber(pack, sleeps?.belowC) ?? Number.NEGATIVE_INFINITY;
    const greensUpC = seasonNumber(pack, sleeps?.greenFromC) ?? growsFromC;
    // The colder of the wave and the month: the wave alone runs too high through a short winter.
    const warmthC = (ahead: number): number => {
      const on = addDays(day, ahead);
      return Math.min(climate.soilCOn(dayOfYear(on)), climate.tMeanCIn(on));
    };
    if (warmthC(0) < growsFromC) return true;
    const isRising = climate.soilCOn(dayOfYear(addDays(day, 1))) > climate.soilCOn(dayOfYear(day));
    return (
      isRising && warmthC(0) < greensUpC && daysOfLeapYear().some((_, ahead) => warmthC(ahead) < growsFromC)
    );
  }
  const rule = sleeps?.withoutClimate;
  if (
    rule === undefined ||
    (place !== undefined && !isBeyond(place, seasonNumber(pack, rule.fromLatitudeDeg)))
  )
    return false;
  return isInWindow(day, { from: here(rule.from, southern), until: here(rule.until, southern) });
}
