/** The table of all reckoners, in the order of the contract. */
import { AREA_RECKONERS } from './area.js';
import { COVER_RECKONERS } from './cover.js';
import { FEED_RECKONERS } from './feed.js';
import type { Reckoner } from './reckoner.js';
import { SEED_RECKONERS } from './seed.js';
import { SPRAY_RECKONERS } from './spray.js';
import { WARMTH_RECKONERS } from './warmth.js';
import { WEATHER_RECKONERS } from './weather.js';
import { WORK_RECKONERS } from './work.js';

export const RECKONERS: readonly Reckoner[] = [
  ...AREA_RECKONERS,
  ...SEED_RECKONERS,
  ...FEED_RECKONERS,
  ...SPRAY_RECKONERS,
  ...WORK_RECKONERS,
  ...WEATHER_RECKONERS,
  ...WARMTH_RECKONERS,
  ...COVER_RECKONERS,
];
