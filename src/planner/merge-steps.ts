/** One step out of the same work on several areas: what they share once, what differs by area. */

import type { IsoDate } from '../base/dates.js';
import { capital } from '../base/joined-words.js';
import { clean } from '../base/quantity/show.js';
import { alike, type Named, titled } from './by-area.js';
import type { PlanStep, PlanWait, PlanWorking } from './plan.js';
import type { PlanPart } from './plan-area.js';

/**
 * @param own the same step of each area that takes it, in the order of the areas
 * @param all the names of all areas
 */
export function mergedStep(own: readonly Named<PlanStep>[], all: readonly string[]): PlanStep {
  const steps = own.map(({ value }) => value);
  const [first] = steps as [PlanStep, ...PlanStep[]];
  const areas = own.map(({ area }) => area);
  const earliest = (days: readonly IsoDate[]): IsoDate => days.toSorted()[0] as IsoDate;
  const latest = (days: readonly IsoDate[]): IsoDate => days.toSorted().at(-1) as IsoDate;
  const text = (of: (step: PlanStep) => string): string => byArea(own, of);
  const sum = (of: (step: PlanStep) => number): number =>
    clean(steps.reduce((total, step) => total + of(step), 0));
  const lastStarts = steps.flatMap(({ latestOn }) => latestOn ?? []);
  return {
    ...first,
    title: titled(first.title, areas, all),
    startOn: earliest(steps.map(({ startOn }) => startOn)),
    endOn: latest(steps.map(({ endOn }) => endOn)),
    earliestOn: earliest(steps.map(({ earliestOn }) => earliestOn)),
    latestOn: lastStarts.length === 0 ? null : earliest(lastStarts),
    parts: partsOf(own),
    after: waitsOf(own),
    workHours: sum(({ workHours }) => workHours),
    workHoursRange: {
      min: sum(({ workHoursRange }) => workHoursRange.min),
      max: sum(({ workHoursRange }) => workHoursRange.max),
    },
    workHoursFrom: workingOf(steps),
    purpose: text(({ purpose }) => purpose),
    because: text(({ because }) => because),
    how: first.how.map((_, at) => text(({ how }) => how[at] ?? '')),
    dayChecks: checksOf(own),
    tools: onceById(steps.flatMap(({ tools }) => tools)),
    amounts: own.flatMap(({ area, value }) => value.amounts.map((amount) => ({ ...amount, area }))),
    cautions: [...new Set(steps.flatMap(({ cautions }) => cautions))],
    doneWhen: text(({ doneWhen }) => doneWhen),
    ifNot: text(({ ifNot }) => ifNot),
    windowHere: steps.find(({ windowHere }) => windowHere !== null)?.windowHere ?? null,
    growth: leastGrowth(steps),
  };
}

/** The days once where all areas share them, and otherwise those of each. */
function partsOf(own: readonly Named<PlanStep>[]): PlanPart[] {
  const groups = alike(own.map(({ area, value }) => ({ area, value: value.parts })));
  if (groups.length === 1) return [...(groups[0] as { readonly value: readonly PlanPart[] }).value];
  return own.flatMap(({ area, value }) => value.parts.map((part) => ({ ...part, area })));
}

/** A wait that is not the same everywhere says for which area it holds. */
function waitsOf(own: readonly Named<PlanStep>[]): PlanWait[] {
  const waits = own.flatMap(({ area, value }) => value.after.map((wait) => ({ area, value: wait })));
  return alike(waits).map(({ value, areas }) => {
    const isShared = waits.every(({ area, value: each }) => each.step !== value.step || areas.includes(area));
    return isShared ? value : { ...value, why: `${capital(areas.join(', '))}: ${value.why}` };
  });
}

/** Every check once; what it leads one to expect is told by area. */
function checksOf(own: readonly Named<PlanStep>[]): PlanStep['dayChecks'] {
  const checks = own.flatMap(({ value }) => value.dayChecks);
  return [...new Map(checks.map((each) => [each.check, each])).values()].map(({ check, otherwise }) => ({
    check,
    otherwise,
    expect:
      byArea(own, ({ dayChecks }) => dayChecks.find((each) => each.check === check)?.expect ?? '') || null,
  }));
}

/** One text where it is the same in every area; otherwise each after the name of its area. */
function byArea(own: readonly Named<PlanStep>[], of: (step: PlanStep) => string): string {
  const texts = alike(own.map(({ area, value }) => ({ area, value: of(value) })));
  if (texts.length === 1) return texts[0]?.value ?? '';
  return texts
    .filter(({ value }) => value !== '')
    .map(({ value, areas }) => `${capital(areas.join(', '))}: ${value}`)
    .join(' ');
}

const onceById = <Item extends { readonly id: string }>(items: readonly Item[]): Item[] => [
  ...new Map(items.map((item) => [item.id, item])).values(),
];

/** The figures and answers behind the hours of all areas. */
function workingOf(steps: readonly PlanStep[]): PlanStep['workHoursFrom'] {
  const froms = steps.flatMap(({ workHoursFrom }) => workHoursFrom ?? []);
  const [first] = froms;
  if (first === undefined) return null;
  const all = (of: (from: PlanWorking) => readonly string[]): string[] => [...new Set(froms.flatMap(of))];
  return { ...first, figures: all(({ figures }) => figures), answers: all(({ answers }) => answers) };
}

/** Of the area that is sown last. */
function leastGrowth(steps: readonly PlanStep[]): PlanStep['growth'] {
  const growths = steps.flatMap(({ growth }) => growth ?? []);
  return growths.toSorted((a, b) => a.daysLeft - b.daysLeft)[0] ?? null;
}
