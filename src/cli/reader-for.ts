/** Reads what is typed for a question. Loaded after the first question is on the screen: it is the heaviest part. */
import type { IsoDate } from '../base/dates.js';
import { readAnswer } from '../interview/read-answer.js';
import type { Reading } from '../interview/reading.js';
import { placeOf, stationMeant } from '../planner/place.js';
import type { Pack } from '../rules/pack.js';
import type { Question } from '../rules/schema.js';

/** Reads typed text; a place is looked up at once, so that a slip is seen while it can be mended. */
export function readerFor(pack: Pack, today: IsoDate): (question: Question, typed: string) => Reading {
  return (question, typed) =>
    question.kind === 'place' ? readPlace(typed, pack) : readAnswer(question, typed, today);
}

function readPlace(typed: string, pack: Pack): Reading {
  const place = placeOf(typed, pack.climate);
  if (place === undefined) {
    const names = pack.climate.stations.map(({ name }) => name);
    const near = stationMeant(typed, pack.climate);
    return {
      kind: 'refused',
      says: `I know no weather station called that.${near === undefined ? '' : ` Did you mean ${near}?`} Give latitude and longitude, such as 51.5, -0.1, or one of: ${names.join(', ')}.`,
    };
  }
  const { station, position } = place;
  const value = station?.km === 0 ? station.name : `${position.latitudeDeg}, ${position.longitudeDeg}`;
  const near =
    station === undefined || station.km === 0
      ? ''
      : `; the nearest weather station is ${station.name}, ${Math.round(station.km)} km away`;
  return { kind: 'value', value, understood: `${value}${near}` };
}
