/** The shape of the seasons that more than one step or finding goes by. */
import { z } from 'zod';
import { expression, monthDay, sentence } from './schema.js';

const basis = z.enum(['common-practice', 'assumption']);
/** Days of the year (northern), from a latitude on towards the poles. */
const byLatitude = z.strictObject({
  from: monthDay,
  until: monthDay,
  fromLatitudeDeg: expression,
  basis,
  why: sentence,
});

/** What more than one step or finding goes by: the half of the earth, frozen ground, late springs, sleeping grass. */
export const seasonsSchema = z.strictObject({
  /** The answer that tells the half where no place does. */
  half: expression,
  southern: expression,
  /** How far a station speaks, how many speak together where none is near, and what tells the half from months. */
  stationReachKm: expression,
  neighbours: expression,
  halfClearC: expression,
  /** Ground too cold to be touched: colder than the one, or than the other while most nights are below frost. */
  groundShut: z.strictObject({
    belowC: expression,
    frostyBelowC: expression,
    frostC: expression,
    withoutClimate: byLatitude,
  }),
  /** A spring is late when the soil is colder than that on the day. */
  lateSpring: z.strictObject({ on: monthDay, belowC: expression, basis, why: sentence }),
  /** Warm-season grass is brown and alive below the one, and after that until the soil is as warm as the other. */
  warmGrassSleeps: z.strictObject({
    belowC: expression,
    greenFromC: expression,
    withoutClimate: byLatitude,
  }),
});
