/** Reads what is typed for the place, and says back where that is and what weather station stands for it. */
import { distance } from '../base/quantity-words.js';
import type { Units } from '../base/us-units.js';
import { readPlace as readPosition } from '../interview/read-answer-text.js';
import type { Reading } from '../interview/reading.js';
import { showPosition } from '../interview/show-answer.js';
import { climateAt } from '../planner/climate.js';
import { type Place, placeOf, stationMeant } from '../planner/place.js';
import { stationReach } from '../planner/season-figures.js';
import { climateFault } from '../planner/whereabouts.js';
import type { Pack } from '../rules/pack.js';

/** A station by its name, a slip in the name asked about; or degrees, asked again where no station is near. */
export function readPlace(typed: string, pack: Pack, units: Units = 'metric'): Reading {
  const fault = climateFault({ place: typed }, pack);
  if (fault !== undefined) return { kind: 'refused', says: fault };
  const { stations } = pack.climate;
  const named = placeOf(typed, pack.climate)?.station;
  if (named?.km === 0) return { kind: 'value', value: named.name, understood: named.name };
  const reading = readPosition(typed);
  if (reading.kind !== 'value') return reading;
  const place = placeOf(String(reading.value), pack.climate);
  if (place !== undefined) return readDegrees(place, pack, units);
  const names = stations.map(({ name }) => name);
  const slip = stationMeant(typed, pack.climate);
  if (slip !== undefined) {
    const says = `I know no weather station called "${reading.understood}". The nearest name is ${slip}.`;
    return { kind: 'odd', value: slip, understood: slip, says };
  }
  return {
    kind: 'refused',
    says: `I know no weather station called "${reading.understood}". Give latitude and longitude, such as 51.5, -0.1, or one of: ${names.join(', ')}.`,
  };
}

function readDegrees(place: Place, pack: Pack, units: Units): Reading {
  const understood = placeInWords(place, pack, units);
  const value = degreesOf(place);
  if (isNear(place, pack)) return { kind: 'value', value, understood };
  const turned = turnedRound(place, pack);
  if (turned !== undefined) {
    return {
      kind: 'which',
      says: 'Latitude comes first. Which place is it?',
      choices: [turned, place].map((each) => ({
        label: placeInWords(each, pack, units),
        value: degreesOf(each),
      })),
    };
  }
  return {
    kind: 'odd',
    value,
    understood,
    says: `That is ${understood}. South and west have a minus sign.`,
  };
}

/** The place with the two numbers swapped, when that lies near a station. */
function turnedRound({ position }: Place, pack: Pack): Place | undefined {
  const { latitudeDeg, longitudeDeg } = position;
  const turned = placeOf(`${longitudeDeg}, ${latitudeDeg}`, pack.climate);
  return turned !== undefined && isNear(turned, pack) ? turned : undefined;
}

function placeInWords(place: Place, pack: Pack, units: Units): string {
  const { latitudeDeg, longitudeDeg } = place.position;
  const where = showPosition(latitudeDeg, longitudeDeg);
  if (place.station === undefined) return where;
  const { name, km } = place.station;
  if (pack.ownClimate !== undefined) return where;
  if (isNear(place, pack))
    return `${where}; the nearest weather station is ${name}, ${distance(km, units)} away`;
  return `${where}; no weather station that I know is within ${distance(reachKm(pack), units)} (${name} is ${distance(km, units)} away), so ${speaksForIt(place, pack) ? 'the seasons go by the coldest of the nearest few' : 'the plan can name months only, with a question mark'}`;
}

/** Whether the nearest stations speak for a place that has none near. */
const speaksForIt = (place: Place, pack: Pack): boolean =>
  climateAt(place, pack.climate, { ...stationReach(pack), year: SOME_YEAR }) !== undefined;

/** Only whether there is a climate is asked. */
const SOME_YEAR = 2027;

const isNear = ({ station }: Place, pack: Pack): boolean =>
  station !== undefined && station.km <= reachKm(pack);

/** Beyond this a station says too little about the weather of a place. */
const reachKm = (pack: Pack): number => stationReach(pack).reachKm;

const degreesOf = ({ position }: Place): string => `${position.latitudeDeg}, ${position.longitudeDeg}`;
