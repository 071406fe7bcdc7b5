import { runTime } from '../base/run-time.js';
import type { Pack } from '../rules/pack.js';
import { wordedInside } from './explain-words.js';

/** `1 h 19 min`, `20 min`, `7.5 min`, `2 min 40 s`, `45 s`. */
export function runWords(pack: Pack, minutes: number): string {
  const time = runTime(minutes);
  const told = {
    hours: String(time.hours),
    minutes: String(time.minutes),
    seconds: String(time.seconds),
  };
  if (time.hours > 0) return wordedInside(pack, 'hoursMinutes', told);
  if (time.seconds === 0) return wordedInside(pack, 'minutes', told);
  return wordedInside(pack, time.minutes === 0 ? 'seconds' : 'minutesSeconds', told);
}
