/** What a plan says of the climate by which its seasons are worked out. */
import type { IsoDate } from '../base/dates.js';
import type { Pack } from '../rules/pack.js';
import { rounded } from './amounts.js';
import type { Plan } from './plan.js';
import type { Ledger } from './provenance.js';
import { figuresIn } from './season-figures.js';
import type { Season } from './windows.js';

export function climateOf(
  { climate }: Season,
  { ownClimate, seasons }: Pack,
  ledger: Ledger,
  today: IsoDate,
): Plan['climate'] {
  if (climate === undefined) return null;
  const { station, period, neighbours = [] } = climate;
  const hasWaterUse = climate.waterUseMmOn(today) !== undefined;
  if (station === undefined)
    return {
      station: null,
      km: null,
      neighbours: [],
      period,
      licenceLine: null,
      hasWaterUse,
      own: ownClimate ?? null,
    };
  const speaking = neighbours.length === 0 ? [station] : neighbours;
  for (const { name } of speaking) ledger.cite([{ id: station.sourceId, at: name }]);
  const by =
    neighbours.length === 0 ? [seasons?.stationReachKm] : [seasons?.stationReachKm, seasons?.neighbours];
  for (const id of by.flatMap(figuresIn)) ledger.noteFigure(id);
  return {
    station: station.name,
    km: rounded(station.km),
    neighbours: neighbours.map(({ name, km }) => ({ name, km: rounded(km) })),
    period,
    licenceLine: station.licenceLine,
    hasWaterUse,
    own: null,
  };
}
