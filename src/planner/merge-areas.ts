/** The plans of several areas put together: one step for each kind of work, its days and amounts by area. */

import { capital, joinedWords } from '../base/joined-words.js';
import { clean } from '../base/quantity/show.js';
import type { Area } from '../interview/areas.js';
import type { Scope } from '../rules/evaluate.js';
import { byStart, type PlanInput } from './assemble-plan.js';
import { alike, type Named, titled } from './by-area.js';
import { cautionsOf } from './cautions.js';
import { measuringWords } from './measuring.js';
import { mergedStep } from './merge-steps.js';
import type { Plan, PlanFinding } from './plan.js';
import { openLedger } from './provenance.js';
import { purchaseOf } from './purchase.js';
import { sayer } from './texts.js';
import { waterOf } from './water-total.js';

export interface AreaPlan {
  readonly area: Area;
  readonly plan: Plan;
  /** In which the plan was made. */
  readonly scope: Scope;
}

export function mergedPlan(
  plans: readonly AreaPlan[],
  { pack, answers, prices, units = 'metric' }: PlanInput,
): Plan {
  const [first] = plans as readonly [AreaPlan];
  const names = plans.map(({ area }) => area.name);
  const of = <Value>(pick: (plan: Plan) => readonly Value[]): Named<Value>[] =>
    plans.flatMap(({ area, plan }) => pick(plan).map((value) => ({ area: area.name, value })));

  const stepIds = new Set(pack.steps.map(({ id }) => id));
  const ownSteps = of(({ steps }) => steps);
  const steps = [...stepIds]
    .map((id) => ownSteps.filter(({ value }) => value.id === id))
    .filter((own) => own.length > 0)
    .map((own) => mergedStep(own, names))
    .sort(byStart);

  const ledger = openLedger(pack);
  for (const { plan } of plans) {
    for (const { id } of plan.figures) ledger.noteFigure(id);
    for (const { id, at } of plan.sources) ledger.cite(at.map((place) => ({ id, at: place })));
  }
  const say = sayer({ pack, scope: first.scope, note: ledger.noteFigure, units });
  const shop = { pack, scope: first.scope, units, prices, say, note: ledger.noteFigure };
  const inAreas = <Value extends object>(pick: (plan: Plan) => readonly Value[]) =>
    of(pick).map(({ area, value }) => ({ ...value, area }));
  const watering = inAreas(({ watering }) => watering);
  const lawn = wholeLawn(plans);
  const purchase = purchaseOf(steps, shop);
  return {
    ...first.plan,
    season: Math.min(...plans.map(({ plan }) => plan.season)),
    lawn: { ...lawn, says: measuringWords(lawn, { pack, units, steps, shopping: purchase.shopping }) },
    areas: plans.map(({ area, plan }) => ({
      name: area.name,
      lawn: plan.lawn,
      verdict: plan.verdict,
      findings: plan.findings,
      signs: plan.signs,
      answers: area.answers,
    })),
    verdict: plans.reduce((most, each) => (hoursOf(each) > hoursOf(most) ? each : most)).plan.verdict,
    findings: mergedFindings(
      of(({ findings }) => findings),
      names,
    ),
    signs: alike(of(({ signs }) => signs)).map(({ value, areas }) => ({
      ...value,
      says: titled(value.says, areas, names),
    })),
    steps,
    sooner: soonerIn(plans),
    watering,
    water: waterOf({ pack, scope: first.scope, units, watering, steps, prices, note: ledger.noteFigure }),
    outlook: alike(of(({ outlook }) => outlook)).map(({ value, areas }) =>
      areas.length === names.length ? value : { ...value, area: joinedWords(areas) },
    ),
    ...purchase,
    assumptions: alike(of(({ assumptions }) => assumptions)).map(({ value, areas }) => ({
      ...value,
      label: titled(value.label, areas, names),
    })),
    cautions: cautionsOf(steps, { pack, say, ledger, units }),
    notDone: alike(of(({ notDone }) => notDone)).map(({ value }) => value),
    figures: ledger.figures(),
    sources: ledger.sources(),
    answers,
  };
}

const hoursOf = ({ plan }: AreaPlan): number => plan.steps.reduce((sum, { workHours }) => sum + workHours, 0);

/** Sizes and what they may be out by add up: whoever paces one area too long paces the others so. */
function wholeLawn(plans: readonly AreaPlan[]): Omit<Plan['lawn'], 'says'> {
  const lawns = plans.map(({ plan }) => plan.lawn);
  const sum = (of: (lawn: Plan['lawn']) => number): number =>
    clean(lawns.reduce((total, lawn) => total + of(lawn), 0));
  return {
    areaM2: sum(({ areaM2 }) => areaM2),
    areaUncertaintyM2: sum(({ areaUncertaintyM2 }) => areaUncertaintyM2),
    areaAssumed: lawns.some(({ areaAssumed }) => areaAssumed),
    measuredBy: [...new Set(lawns.map(({ measuredBy }) => measuredBy))].join(' and '),
  };
}

/** A fault that is not found in one area and is in another is told where it is found. */
function mergedFindings(own: readonly Named<PlanFinding>[], all: readonly string[]): PlanFinding[] {
  const isFound = (id: string): boolean =>
    own.some(({ value }) => value.id === id && value.verdict !== 'notFound');
  return alike(own)
    .filter(({ value }) => value.verdict !== 'notFound' || !isFound(value.id))
    .filter(
      ({ value }, index, groups) =>
        value.verdict !== 'notFound' || groups.findIndex((each) => each.value.id === value.id) === index,
    )
    .map(({ value, areas }) =>
      value.verdict === 'notFound' ? value : { ...value, title: titled(value.title, areas, all) },
    );
}

/** The first area that help would bring forward, under its name. */
function soonerIn(plans: readonly AreaPlan[]): Plan['sooner'] {
  const found = plans.find(({ plan }) => plan.sooner !== null);
  const sooner = found?.plan.sooner ?? null;
  return sooner && { ...sooner, says: `${capital(found?.area.name ?? '')}: ${sooner.says}` };
}
