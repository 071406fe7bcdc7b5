/** How long a tap runs, rounded so finely that time and flow still give the litres. */
const SECONDS_PER_MINUTE = 60;
const MINUTES_PER_HOUR = 60;
const HALF_MINUTE_S = 30;
/** From here on whole minutes, and half ones below. */
const WHOLE_MINUTES_FROM = 15;
/** Coarse to fine, in seconds: the first that is near enough is told. */
const STEPS_S = [HALF_MINUTE_S, 10, 5, 1] as const;
/** How far the rounding may be out, as a share. */
const MOST_OFF = 0.048;

export interface RunTime {
  readonly hours: number;
  /** Whole, or with a half where no seconds are told. */
  readonly minutes: number;
  readonly seconds: number;
}

/** Whole minutes from 15 on, half ones below, and where those are too coarse 10, 5 or single seconds. */
export function runTime(minutes: number): RunTime {
  if (minutes >= WHOLE_MINUTES_FROM) {
    const whole = Math.round(minutes);
    return { hours: Math.floor(whole / MINUTES_PER_HOUR), minutes: whole % MINUTES_PER_HOUR, seconds: 0 };
  }
  const seconds = minutes * SECONDS_PER_MINUTE;
  const step = STEPS_S.find((each) => Math.abs(roundTo(seconds, each) - seconds) <= MOST_OFF * seconds) ?? 1;
  const told = Math.max(1, roundTo(seconds, step));
  if (told % HALF_MINUTE_S === 0) return { hours: 0, minutes: told / SECONDS_PER_MINUTE, seconds: 0 };
  return { hours: 0, minutes: Math.floor(told / SECONDS_PER_MINUTE), seconds: told % SECONDS_PER_MINUTE };
}

const roundTo = (value: number, step: number): number => Math.round(value / step) * step;
