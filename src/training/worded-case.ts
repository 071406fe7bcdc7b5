/**
 * A case as it is worded for whoever reads US units. A measure in its sentences stands in braces, `{12 m}`: numbers to
 * reckon with keep their three digits, depths are read off a tape. What stands on a label, `{10 mL/m2 as printed}`, is
 * said in both. A measure without braces is told as it is written.
 */
import { shown } from '../base/quantity/show.js';
import { quantityRange, unitSign, withUnit } from '../base/quantity-words.js';
import { inSentence } from '../base/sentence-units.js';
import { type Units, usScale } from '../base/us-units.js';
import type { AskedAmount, DrillCase } from '../rules/schema-case.js';
import { MEASURE } from '../rules/slots.js';

/** The case with every measure in its sentences said. */
export function wordedCase(lesson: DrillCase, units: Units): DrillCase {
  const say = (text: string): string => measuresSaid(text, units);
  const says = <Item extends { readonly says: string }>(items: readonly Item[]): Item[] =>
    items.map((item) => ({ ...item, says: say(item.says) }));
  return {
    ...lesson,
    lesson: say(lesson.lesson),
    story: lesson.story.map(say),
    seen: Object.fromEntries(Object.entries(lesson.seen).map(([id, text]) => [id, say(text)])),
    dangers: says(lesson.dangers),
    misleads: says(lesson.misleads),
    wrongTurns: says(lesson.wrongTurns),
    amounts: lesson.amounts.map((asked) => ({
      ...asked,
      ask: say(asked.ask),
      byHand: { ...asked.byHand, working: say(workingIn(asked, units)) },
      ...(asked.slips === undefined
        ? {}
        : { slips: asked.slips.map(({ value, says }) => ({ value, says: say(says) })) }),
    })),
  };
}

const workingIn = ({ byHand: { working, us } }: AskedAmount, units: Units): string =>
  units === 'us' && us !== undefined ? us : working;

function measuresSaid(text: string, units: Units): string {
  return text.replace(
    MEASURE,
    (_, low: string, high: string | undefined, unit: string, asPrinted?: string) => {
      const ends = high === undefined ? [Number(low)] : [Number(low), Number(high)];
      const metric = metricWords(ends, unit);
      if (units === 'metric' || usScale(ends[0] as number, unit) === undefined) return metric;
      const us = usWords(ends, unit);
      return asPrinted === undefined ? us : `${us} (${metric})`;
    },
  );
}

/** As it was written: a trainee reckons with every digit. */
const metricWords = (ends: readonly number[], unit: string): string =>
  withUnit(ends.map(shown).join(' to '), unitSign(unit));

/** What a tape is held to. */
const DEPTHS = ['mm', 'cm'];

function usWords(ends: readonly number[], unit: string): string {
  const tape = DEPTHS.includes(unit) ? inSentence(ends, unit) : undefined;
  if (tape !== undefined) return withUnit(tape.numbers.join(' to '), tape.unit);
  return quantityRange({ min: Math.min(...ends), max: Math.max(...ends) }, unit, 'us');
}
