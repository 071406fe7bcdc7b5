/** Works out what a step takes: amount, range behind it, working, and every figure and answer it came from. */
import { groupsOf, tankLoads } from '../agronomy/tank-loads.js';
import { asShown, doseDown, doseQuantity, quantity, roughArea } from '../base/quantity-words.js';
import { measureOf, type Units } from '../base/us-units.js';
import { evaluate, type Known, type Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { AmountRule, Expression, Figure, Step } from '../rules/schema.js';
import { amountWords } from './amount-words.js';
import { FORMULAS, type Formula, type Inputs, type Said } from './formulas.js';
import { lotsWords } from './lots.js';
import type { PlanAmount, PlanWorking } from './plan.js';

/** Amounts that are in the plan; those whose condition is false are left out. */
export function amountsOf(step: Step, pack: Pack, scope: Scope, units: Units): PlanAmount[] {
  return step.amounts
    .filter((rule) => rule.when === undefined || isTrue(rule.when, scope))
    .map((rule) => amountOf(rule, { pack, scope, units }))
    .filter((amount) => amount.amount !== 0);
}

const isTrue = (condition: Expression, scope: Scope): boolean => {
  const outcome = evaluate(condition, scope);
  return outcome.known && outcome.value === true;
};

interface AmountContext {
  readonly pack: Pack;
  readonly scope: Scope;
  readonly units: Units;
}

function amountOf(rule: AmountRule, { pack, scope, units }: AmountContext): PlanAmount {
  const formula = FORMULAS[rule.formula] as Formula;
  const material = pack.materialById.get(rule.material);
  const unit = material?.unit ?? 'each';
  const inputs = readInputs(rule.inputs, scope);
  const isComplete =
    formula.onLabelOnly !== true && formula.needs.every((name) => inputs[name] !== undefined);
  // How often the lawn is walked over is no part of the sum.
  const { passes: _passes, ...summed } = inputs;
  const figures = figuresOf(summed);
  const common = {
    id: rule.id,
    materialId: rule.material,
    title: material?.title ?? rule.material,
    unit,
    loose: material?.loose === true,
    formula: rule.formula,
    figures,
    answers: answersOf(summed),
    basis: formula.takes === undefined ? weakestBasis(figures, pack) : ('label' as const),
    loads: [],
    timesForLargest: timesForLargest(scope, units),
  };
  if (!isComplete) {
    return { ...common, amount: null, range: budgetOf(inputs, units), working: '', note: rule.note ?? null };
  }
  const { value, least, most } = spreadOf(formula, ofThisArea(inputs));
  const typical = typicalOf(inputs);
  const notes = [
    lotsOf(formula, typical, { amount: common, value, pack, scope, units }),
    formula.remark?.(typical, units),
    rule.note,
  ].filter((note) => note !== undefined && note !== null && note !== '');
  const isDose = common.basis === 'label';
  const kept = (amount: number): number =>
    isDose && units === 'metric' ? doseDown(amount) : roundedFor(units, amount);
  return {
    ...common,
    amount: kept(value),
    // A label has no range that could be read as leave to use more.
    range: isDose
      ? { min: kept(value), max: kept(value) }
      : { min: roundedFor(units, least), max: roundedFor(units, most) },
    working: workingOf(formula, typical, { amount: common, value, units }),
    note: notes.length === 0 ? null : notes.join(' '),
    loads: loadsOf(typical, unit),
  };
}

/** How much more the largest area takes that the measuring allows; nothing where it reads the same. */
function timesForLargest(scope: Scope, units: Units): number {
  const area = scope('facts.areaM2');
  if (!area.known || area.most === undefined || area.value === 0) return 1;
  const [areaM2, most] = [area.value as number, area.most];
  return roughArea(most, units) === roughArea(areaM2, units) ? 1 : most / areaM2;
}

/** What the measuring leaves open is told once with the lawn, not again with every amount. */
function ofThisArea(inputs: Found): Found {
  const { areaM2, ...others } = inputs;
  if (areaM2 === undefined) return inputs;
  const { known, value, used, from } = areaM2;
  return { ...others, areaM2: { known, value, used, from } };
}

/** Only where all of it goes on in one go: a lawn that is sown part by part has smaller lots. */
function lotsOf(
  { everywhere }: Formula,
  inputs: Inputs,
  {
    amount,
    value,
    pack,
    scope,
    units,
  }: AmountContext & { readonly amount: Pick<PlanAmount, 'unit' | 'loose'>; readonly value: number },
): string {
  const parts = scope('facts.parts');
  const { passes } = inputs;
  if (everywhere === undefined || passes === undefined || (parts.known && parts.value !== 1)) return '';
  const unit = measureOf(amount);
  const lots = { amount: asShown(value, unit, units), everywhere: everywhere(inputs), passes };
  return lotsWords(pack, lots, { unit, units });
}

const FEWEST_DIGITS = 3;
const MOST_DIGITS = 6;

/** The working in as few digits as it takes that whoever multiplies what is printed comes to what is printed. */
function workingOf(
  formula: Formula,
  inputs: Inputs,
  {
    amount,
    value,
    units,
  }: {
    readonly amount: Pick<PlanAmount, 'unit' | 'loose' | 'basis'>;
    readonly value: number;
    readonly units: Units;
  },
): string {
  const unit = measureOf(amount);
  const shown = (each: number): string =>
    amount.basis === 'label' ? doseQuantity(each, unit, units) : quantity(each, unit, units);
  const said = (digits: number): Said => ({ result: amountWords(amount, value, units), unit, units, digits });
  let digits = FEWEST_DIGITS;
  while (
    digits < MOST_DIGITS &&
    shown(formula.compute(formula.printed(inputs, said(digits)))) !== shown(value)
  )
    digits += 1;
  return formula.working(inputs, said(digits));
}

/** Hours of a step: likely, least and most; nothing where no labour is stated. */
export function hoursOf(
  step: Step,
  pack: Pack,
  scope: Scope,
): {
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly from: PlanWorking | null;
} {
  const labour = labourOf(step, scope);
  if (labour === undefined) return { value: 0, least: 0, most: 0, from: null };
  const figures = figuresOf(labour.inputs);
  const from = {
    formula: labour.id,
    figures,
    answers: answersOf(labour.inputs),
    basis: weakestBasis(figures, pack),
  };
  return { ...spreadOf(labour.formula, labour.inputs), from };
}

/** The likely hours alone: the dates are made from these. */
export function likelyHoursOf(step: Step, scope: Scope): number {
  const labour = labourOf(step, scope);
  return labour === undefined ? 0 : labour.formula.compute(typicalOf(labour.inputs));
}

interface Labour {
  readonly id: string;
  readonly formula: Formula;
  readonly inputs: Found;
}

function labourOf({ labour }: Step, scope: Scope): Labour | undefined {
  if (labour === undefined) return undefined;
  const inputs = readInputs(labour.inputs, scope);
  const formula = FORMULAS[labour.formula] as Formula;
  const isComplete = formula.needs.every((name) => inputs[name] !== undefined);
  return isComplete ? { id: labour.formula, formula, inputs } : undefined;
}

type Found = Readonly<Record<string, Known & { readonly value: number }>>;

function readInputs(inputs: Readonly<Record<string, Expression>>, scope: Scope): Found {
  const found: [string, Known & { value: number }][] = [];
  for (const [name, expression] of Object.entries(inputs)) {
    const outcome = evaluate(expression, scope);
    if (outcome.known && typeof outcome.value === 'number')
      found.push([name, { ...outcome, value: outcome.value }]);
  }
  return Object.fromEntries(found);
}

const typicalOf = (inputs: Found): Inputs =>
  Object.fromEntries(Object.entries(inputs).map(([name, { value }]) => [name, value]));

/** The formula at the likely inputs, and its least and most over every corner of their spreads. */
function spreadOf(
  formula: Formula,
  inputs: Found,
): { readonly value: number; readonly least: number; readonly most: number } {
  const corners = Object.entries(inputs).reduce<Record<string, number>[]>(
    (built, [name, { value, least, most }]) => {
      const ends = least === undefined || most === undefined ? [value] : [least, most];
      return built.flatMap((corner) => ends.map((end) => ({ ...corner, [name]: end })));
    },
    [{}],
  );
  const results = corners.map((corner) => formula.compute(corner));
  return {
    value: formula.compute(typicalOf(inputs)),
    least: Math.min(...results),
    most: Math.max(...results),
  };
}

/** What a label might ask for, by printed rates: for the purse only, never for the tank. */
function budgetOf(inputs: Found, units: Units): PlanAmount['range'] {
  const { areaM2, budgetPerM2 } = inputs;
  if (areaM2 === undefined || budgetPerM2 === undefined) return null;
  const { least = budgetPerM2.value, most = budgetPerM2.value } = budgetPerM2;
  return {
    min: roundedFor(units, areaM2.value * least),
    max: roundedFor(units, areaM2.value * most),
  };
}

function loadsOf(inputs: Inputs, unit: string): PlanAmount['loads'] {
  const { areaM2, ratePerM2, waterLPerM2, tankL } = inputs;
  if (areaM2 === undefined || ratePerM2 === undefined || waterLPerM2 === undefined || tankL === undefined)
    return [];
  // A label that asks for no water to speak of is for a product that goes on as it is.
  if ((unit !== 'mL' && unit !== 'g') || areaM2 * waterLPerM2 < LEAST_WATER_L) return [];
  if (areaM2 * waterLPerM2 > MOST_LOADS * tankL) return [];
  return groupsOf(tankLoads({ areaM2, waterLPerM2, tankL, rateMlPerM2: ratePerM2 }).loads).map(
    ({ from, to, load }) => ({
      count: to - from + 1,
      areaM2: load.areaM2,
      waterL: load.waterL,
      product: load.productMl,
      unit,
    }),
  );
}

/** Nobody fills a tank so often: the sum would help no one. */
const MOST_LOADS = 1000;
const LEAST_WATER_L = 0.01;

/** Three significant figures, whole from a thousand on: rounding is the last thing that happens. */
export function rounded(value: number): number {
  return value === 0 ? 0 : Number(value.toPrecision(3));
}

/** For US words the exact number is kept: it is turned into their units first, and rounded after that. */
export const roundedFor = (units: Units, value: number): number => (units === 'us' ? value : rounded(value));

const figuresOf = (inputs: Found): string[] =>
  namesOf(inputs, (name) => name.startsWith('figures.')).map((name) => name.slice('figures.'.length));
const answersOf = (inputs: Found): string[] => namesOf(inputs, (name) => !name.includes('.'));

/** The area's own error is told once with the lawn, not again with every amount. */
function namesOf(inputs: Found, keep: (name: string) => boolean): string[] {
  const behind = Object.entries(inputs).flatMap(([name, { from }]) =>
    name === 'areaM2' ? from.filter((each) => !each.startsWith('figures.')) : from,
  );
  return [...new Set(behind)].filter(keep);
}

const WEAKEST_FIRST: readonly Figure['basis'][] = ['assumption', 'common-practice', 'published'];

export function weakestBasis(figureIds: readonly string[], pack: Pack): Figure['basis'] {
  const bases = figureIds.map((id) => pack.figureById.get(id)?.basis);
  return WEAKEST_FIRST.find((basis) => bases.includes(basis)) ?? 'published';
}
