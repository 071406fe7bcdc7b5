/**
 * The pieces of a plan: everything it tells one to do, buy, expect or beware of, each as what it shows and when.
 * Two sets of answers lead to the same plan when every piece is the same. Findings, reasons and assumptions are no
 * pieces: they repeat the answers, and no question is asked for their sake alone.
 */
import { namesIn } from '../rules/call.js';
import { everythingBehind, readsByName } from '../rules/graph.js';
import type { Pack } from '../rules/pack.js';
import type { Expression, Step } from '../rules/schema.js';
import { SLOT } from '../rules/slots.js';

export interface PlanPiece {
  /** All must hold for it to be in the plan. */
  readonly guards: readonly Expression[];
  readonly shows: Expression;
  /** Both in one: what it shows, or that it is left out. */
  readonly whole: Expression;
}

type Part = Omit<PlanPiece, 'whole'>;

const SHOWN = true;
const LEFT_OUT = 'left out';

export function planPieces(pack: Pack): PlanPiece[] {
  const parts: Part[] = [
    { guards: [], shows: verdictChoice(pack) },
    ...pack.steps.flatMap((step) => piecesOfStep(step, pack)),
    ...readByProgram(pack),
    ...pack.notDone.flatMap(({ when, says }) => said([when], says)),
    ...pack.outlook.flatMap(({ when, sees, ifNot }) => said([when], sees, ifNot)),
  ];
  return eachOnce(parts, pack).map((part) => ({
    ...part,
    whole: { if: [{ and: [true, ...part.guards] }, part.shows, LEFT_OUT] },
  }));
}

/** What no answer touches shows nothing new beside its guards. */
function eachOnce(parts: readonly Part[], pack: Pack): Part[] {
  const reads = readsByName(pack);
  const fixed = new Map<string, boolean>();
  const isFixedName = (name: string): boolean => {
    const before = fixed.get(name) ?? [...everythingBehind([name], reads)].every(isFigure);
    fixed.set(name, before);
    return before;
  };
  const isFixed = (shows: Expression): boolean => namesIn(shows).every(isFixedName);
  const settled = parts.map(({ guards, shows }) => ({ guards, shows: isFixed(shows) ? SHOWN : shows }));
  return [...new Map(settled.map((part) => [JSON.stringify(part), part])).values()];
}

const isFigure = (name: string): boolean => name.startsWith('figures.');

/** The number of the verdict that holds first. */
export function verdictChoice({ verdicts }: Pack): Expression {
  const last = verdicts.length - 1;
  const tests = verdicts.slice(0, last).flatMap(({ when }, index) => [when, index]);
  return tests.length === 0 ? last : { if: [...tests, last] };
}

function piecesOfStep(step: Step, pack: Pack): Part[] {
  const inPlan = [step.when];
  const shown = (values: readonly (Expression | undefined)[], ...more: readonly Expression[]): Part[] =>
    values.flatMap((shows) => (shows === undefined ? [] : [{ guards: [...inPlan, ...more], shows }]));
  return [
    { guards: inPlan, shows: SHOWN },
    ...shown(windowLimits(step)),
    ...shown([step.lastsDays, ...Object.values(step.labour?.inputs ?? {})]),
    ...step.after.flatMap(({ step: before, minDays, maxDays }) =>
      shown([minDays, maxDays], pack.stepById.get(before)?.when ?? false),
    ),
    ...(step.notBefore ?? []).flatMap(({ when, date, plusDays }) => shown([date, plusDays], when)),
    ...step.amounts.flatMap(({ when = true, inputs }) => shown([SHOWN, ...Object.values(inputs)], when)),
    ...step.tools.flatMap(({ when = true }) => shown([SHOWN], when)),
    ...step.cautions.flatMap((id) => {
      const caution = pack.cautionById.get(id);
      if (caution === undefined) return [];
      return said([...inPlan, caution.when, step.cautionWhen?.[id] ?? true], caution.line, caution.detail);
    }),
    ...said(inPlan, step.purpose, ...step.how, step.doneWhen, step.ifNot),
    ...step.after.flatMap(({ why, sign = '' }) => said(inPlan, why, sign)),
    ...step.dayChecks.flatMap(({ check, otherwise, when = true, unlessKnown }) => [
      ...said([...inPlan, when], check, otherwise),
      ...(unlessKnown === undefined ? [] : shown([{ var: unlessKnown }], when)),
    ]),
  ];
}

/** What opens and closes the season of the step. */
const windowLimits = ({ window }: Step): (Expression | undefined)[] =>
  [...(window?.between ?? []), ...(window?.warmSeason ?? []), ...(window?.rainFed ?? [])].flatMap(
    ({ opensAtC, closes, rain, whileGrowing }) => [
      opensAtC,
      whileGrowing?.belowC,
      whileGrowing?.daysLeft,
      closes?.belowC,
      closes?.daysLeft,
      rain?.share,
      rain?.days,
    ],
  );

/** The sentence itself, and every number in it. */
function said(guards: readonly Expression[], ...texts: readonly string[]): Part[] {
  const slots = texts.flatMap((text) => [...text.matchAll(SLOT)].map(([, name = '']) => name));
  return [{ guards, shows: SHOWN }, ...slots.map((name) => ({ guards, shows: { var: name } }))];
}

/** What the planner reads by itself: seasons of warm-season grass, of the south and of seed that rain waters, and the watering table. */
function readByProgram(pack: Pack): Part[] {
  const isWarmSeason = { '===': [{ var: 'grassType' }, 'warm-season'] };
  const southern = pack.seasons?.southern;
  const seasons = pack.steps.flatMap(({ window, when }) => [
    ...(window?.warmSeason === undefined ? [] : [{ guards: [when], shows: isWarmSeason }]),
    ...(window === undefined || southern === undefined ? [] : [{ guards: [when], shows: southern }]),
  ]);
  const keepsWet = { var: 'facts.keepsWet' };
  const rainFed = pack.steps
    .filter(({ window }) => window?.rainFed !== undefined)
    .map(({ when }) => ({ guards: [when], shows: keepsWet }));
  const sow = pack.stepById.get('sow');
  if (sow === undefined) return [...seasons, ...rainFed];
  const means = { var: 'facts.waterBy' };
  const waters = [sow.when, keepsWet];
  const byHose = [...waters, { '!==': [means, 'can'] }];
  return [
    ...seasons,
    ...rainFed,
    ...[
      means,
      { var: 'facts.areaM2' },
      ...pack.watering.flatMap((row) => [
        row.mmPerDay,
        row.turnsPerDay,
        row.timesWaterUse,
        row.workMinPerTurn,
        row.workMinPerL,
      ]),
    ].map((shows) => ({ guards: waters, shows })),
    { guards: byHose, shows: { var: 'hoseLPerMin' } },
  ];
}
