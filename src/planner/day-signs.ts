/**
 * What the answers and the climate say about the weather on the day of a step, beside its go-or-wait checks.
 *
 * Soil moisture is a daily balance (FAO-56, equations 82 to 86) from the last rain that wetted the soil, which is taken
 * to have filled it. It is said only where rain, soil and climate are all known and the day is near; nothing is assumed.
 */

import {
  depletionFraction,
  readilyAvailableWaterMm,
  stressCoefficient,
  totalAvailableWaterMm,
} from '../agronomy/soil-water.js';
import { depletionAfterDay } from '../agronomy/soil-water-balance.js';
import { turfWaterUseMm } from '../agronomy/turf-water.js';
import { addDays, daysBetween, type IsoDate, monthName, monthOf } from '../base/dates.js';
import { plainNumber, quantity } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Step } from '../rules/schema.js';
import type { LocalClimate } from './climate.js';
import { answered } from './steps.js';

type Sign = NonNullable<Step['dayChecks'][number]['sign']>;

export interface DaySigns {
  readonly pack: Pack;
  /** Only what was answered. */
  readonly scope: Scope;
  readonly climate: LocalClimate | undefined;
  readonly today: IsoDate;
  readonly units: Units;
  /** The plan has the lawn soaked first, so that the days since rain say nothing. */
  readonly isSoaked: boolean;
  readonly note: (figureId: string) => void;
}

/** A sentence about the sign on that day; null when nothing can be said. */
export function daySign(sign: Sign | undefined, day: IsoDate, signs: DaySigns): string | null {
  if (sign === undefined) return null;
  const said = { soil: soilOn, rain: rainOn, frost: frostOn }[sign](day, signs);
  if (said === undefined) return null;
  const says = signs.pack.daySigns.find(({ id }) => id === said.id)?.says;
  return says?.replace(/\$(\w+)/g, (slot, name: string) => said.words[name] ?? slot) ?? null;
}

interface Said {
  readonly id: string;
  readonly words: Readonly<Record<string, string>>;
}

/** Whether the answers about the weather reach as far as that day. */
function isNear(day: IsoDate, { pack, today, note }: DaySigns): boolean {
  const horizon = pack.figureById.get('forecast-days')?.typical;
  if (horizon === undefined || daysBetween(today, day) > horizon) return false;
  note('forecast-days');
  return true;
}

function rainOn(day: IsoDate, signs: DaySigns): Said | undefined {
  const coming = answered(signs.scope, 'rainComing');
  if (typeof coming !== 'string' || !isNear(day, signs)) return undefined;
  return { id: coming === 'dry' ? 'rain-none' : 'rain-due', words: {} };
}

function frostOn(day: IsoDate, { climate }: DaySigns): Said | undefined {
  const nights = Math.round(climate?.frostDaysIn(day) ?? 0);
  if (nights <= 1) return undefined;
  return { id: 'frost-usual', words: { month: monthName(monthOf(day)), nights: plainNumber(nights) } };
}

function soilOn(day: IsoDate, signs: DaySigns): Said | undefined {
  const { pack, scope, today, isSoaked, note } = signs;
  const daysAgo = answered(scope, 'lastRainDaysAgo');
  if (isSoaked || typeof daysAgo !== 'number' || !isNear(day, signs)) return undefined;
  const rainedOn = addDays(today, -Math.round(daysAgo));
  const wetDays = pack.figureById.get('soil-drains-days')?.typical ?? 0;
  if (daysBetween(rainedOn, day) < wetDays) {
    note('soil-drains-days');
    return { id: 'soil-wet', words: {} };
  }
  const water = soilWaterOn(day, rainedOn, signs);
  if (water === undefined) return undefined;
  const words = {
    used: quantity(Math.round(water.usedMm), 'mm', signs.units),
    store: quantity(Math.round(water.storeMm), 'mm', signs.units),
  };
  return { id: water.usedMm > water.easyMm ? 'soil-dry' : 'soil-moist', words };
}

interface SoilWater {
  /** Depletion Dr, mm. */
  readonly usedMm: number;
  /** TAW, mm. */
  readonly storeMm: number;
  /** RAW, mm: past it grass begins to thirst. */
  readonly easyMm: number;
}

function soilWaterOn(day: IsoDate, wetOn: IsoDate, signs: DaySigns): SoilWater | undefined {
  const { pack, scope, climate, note } = signs;
  const soil = numbersOfFacts(scope, note);
  const rootDepthM = pack.figureById.get('rooting-depth-lawn-m')?.typical;
  if (climate?.waterUseMmOn(day) === undefined || soil === undefined || rootDepthM === undefined)
    return undefined;
  note('rooting-depth-lawn-m');
  const { cropCoefficient, tableFraction, ...store } = soil;
  return drawnDown(
    { ...store, rootDepthMm: rootDepthM * MM_PER_M },
    {
      days: daysBetween(wetOn, day),
      fullUseMmOn: (index) =>
        turfWaterUseMm({ et0Mm: climate.waterUseMmOn(addDays(wetOn, index)) ?? 0, cropCoefficient }),
      tableFraction,
    },
  );
}

const MM_PER_M = 1000;

/** The soil and the grass as the rules have them; undefined while one of them is not answered. */
function numbersOfFacts(scope: Scope, note: DaySigns['note']) {
  const facts = {
    fieldCapacityFraction: scope('facts.soilFieldCapacity'),
    wiltingPointFraction: scope('facts.soilWiltingPoint'),
    cropCoefficient: scope('facts.turfCoefficient'),
    tableFraction: scope('facts.depletionFraction'),
  };
  const values: Record<string, number> = {};
  for (const [name, fact] of Object.entries(facts)) {
    if (!fact.known) return undefined;
    values[name] = fact.value as number;
  }
  for (const fact of Object.values(facts))
    if (fact.known)
      for (const name of fact.from) if (name.startsWith('figures.')) note(name.slice('figures.'.length));
  return values as Record<keyof typeof facts, number>;
}

/** The store after so many days without rain, full on the first. */
export function drawnDown(
  soil: Parameters<typeof totalAvailableWaterMm>[0],
  {
    days,
    fullUseMmOn,
    tableFraction,
  }: {
    readonly days: number;
    /** ETc, mm, on each day from 0. */
    readonly fullUseMmOn: (index: number) => number;
    readonly tableFraction: number;
  },
): SoilWater {
  const availableMm = totalAvailableWaterMm(soil);
  let depletionMm = 0;
  let easyMm = 0;
  for (let index = 0; index <= days; index++) {
    const turfUseMm = fullUseMmOn(index);
    const fraction = depletionFraction({ tableFraction, turfWaterUseMm: turfUseMm });
    easyMm = readilyAvailableWaterMm({ availableMm, depletionFraction: fraction });
    if (index === days) break;
    const stress = stressCoefficient({ availableMm, depletionMm, depletionFraction: fraction });
    ({ depletionMm } = depletionAfterDay({
      availableMm,
      depletionMm,
      day: { usedMm: stress * turfUseMm },
    }));
  }
  return { usedMm: depletionMm, storeMm: availableMm, easyMm };
}
