/** How long a tap runs, told so finely that time and flow give the litres. */
import type { Pack } from '../rules/pack.js';
import { wordedInside } from './explain-words.js';

const SECONDS_PER_MINUTE = 60;
const MINUTES_PER_HOUR = 60;
/** From here on whole minutes, and half ones below. */
const WHOLE_MINUTES_FROM = 15;
/** Coarse to fine, in seconds: the first that is near enough is told. */
const STEPS_S = [30, 10, 5, 1] as const;
/** How far the rounding may be out. */
const MOST_OFF = 0.04;

/** `1 h 19 min`, `20 min`, `7.5 min`, `2 min 40 s`, `45 s`; never further than a twenty-fifth from what it is. */
export function runWords(pack: Pack, minutes: number): string {
  const words = (name: 'minutes' | 'minutesSeconds' | 'seconds' | 'hoursMinutes', values: Values): string =>
    wordedInside(pack, name, Object.fromEntries(Object.entries(values).map(([key, n]) => [key, String(n)])));
  if (minutes >= WHOLE_MINUTES_FROM) {
    const whole = Math.round(minutes);
    const hours = Math.floor(whole / MINUTES_PER_HOUR);
    return hours === 0
      ? words('minutes', { minutes: whole })
      : words('hoursMinutes', { hours, minutes: whole % MINUTES_PER_HOUR });
  }
  const seconds = minutes * SECONDS_PER_MINUTE;
  const step = STEPS_S.find((each) => Math.abs(roundTo(seconds, each) - seconds) <= MOST_OFF * seconds) ?? 1;
  const told = Math.max(1, roundTo(seconds, step));
  if (told % 30 === 0) return words('minutes', { minutes: told / SECONDS_PER_MINUTE });
  if (told < SECONDS_PER_MINUTE) return words('seconds', { seconds: told });
  const whole = Math.floor(told / SECONDS_PER_MINUTE);
  return words('minutesSeconds', { minutes: whole, seconds: told % SECONDS_PER_MINUTE });
}

type Values = Readonly<Record<string, number>>;

const roundTo = (value: number, step: number): number => Math.round(value / step) * step;
