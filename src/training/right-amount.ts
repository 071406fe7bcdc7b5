/** The right value of an amount that is asked: out of the case's own plan, or by the case's own sum. */
import { parseIsoDate } from '../base/dates.js';
import { doseQuantity, quantity } from '../base/quantity-words.js';
import { measureOf, type Units, usScale } from '../base/us-units.js';
import type { Plan, PlanAmount } from '../planner/plan.js';
import { scopeFor } from '../planner/working-scope.js';
import { evaluate, type Scope } from '../rules/evaluate.js';
import type { AskedAmount } from '../rules/schema-case.js';
import type { WorkedCase } from './worked-case.js';

/** What a sum reads its given measures by: `given.depthMm`. */
export const GIVEN = 'given.';

export interface RightAmount {
  readonly value: number;
  readonly unit: string;
  /** Litres of soil, not of a liquid. */
  readonly loose: boolean;
  /** The plan's own range, where the figures behind it have one and no label rules. */
  readonly range: { readonly min: number; readonly max: number } | null;
  /** The equation with the numbers in it. */
  readonly working: string;
  /** A product whose label says how much is the most. */
  readonly isLabelled: boolean;
}

/** The right value, or undefined when the plan has no such amount, or the sum comes to no number. */
export function rightAmount(worked: WorkedCase, { find, byHand }: AskedAmount): RightAmount | undefined {
  const { plan } = worked;
  const plain = (value: number | undefined | null, unit: string, loose = false): RightAmount | undefined =>
    value === undefined || value === null
      ? undefined
      : { value, unit, loose, range: null, working: byHand.working, isLabelled: false };
  switch (find.kind) {
    case 'area':
      return plain(plan.lawn.areaM2, 'm2');
    case 'wait':
      return plain(stepOf(plan, find.to)?.after.find(({ step }) => step === find.from)?.minDays, 'd');
    case 'amount': {
      const amount = stepOf(plan, find.step)?.amounts.find((each) => each.materialId === find.material);
      if (amount === undefined || amount.amount === null) return undefined;
      const range = amount.basis === 'label' ? null : amount.range;
      return {
        value: amount.amount,
        unit: amount.unit,
        loose: amount.loose,
        range,
        working: amount.working,
        isLabelled: amount.basis === 'label',
      };
    }
    case 'loads': {
      const loads = loadsOf(plan, find.step);
      return (
        loads &&
        plain(
          loads.reduce((sum, { count }) => sum + count, 0),
          'loads',
        )
      );
    }
    case 'load': {
      const loads = loadsOf(plan, find.step);
      const load = find.which === 'full' ? loads?.[0] : loads?.at(-1);
      if (load === undefined) return undefined;
      const dose = plain(load.product, load.unit);
      return find.of === 'water' ? plain(load.waterL, 'L') : dose && { ...dose, isLabelled: true };
    }
    case 'sum':
      return plain(sumOf(worked, find), find.unit, find.loose);
    default:
      return find satisfies never;
  }
}

/** @throws {RuleFault} when the sum reads a name that there is none of; `checkCase` finds that first */
function sumOf(
  { pack, answers, lesson }: WorkedCase,
  { value, given = {} }: Extract<AskedAmount['find'], { kind: 'sum' }>,
): number | undefined {
  const rules = scopeFor({ pack, answers, today: parseIsoDate(lesson.today), assume: 'all' });
  const scope: Scope = (name) => {
    const told = name.startsWith(GIVEN) ? given[name.slice(GIVEN.length)] : undefined;
    return told === undefined ? rules(name) : { known: true, value: told, used: [], from: [] };
  };
  const outcome = evaluate(value, scope);
  return outcome.known && typeof outcome.value === 'number' ? outcome.value : undefined;
}

const stepOf = (plan: Plan, id: string): Plan['steps'][number] | undefined =>
  plan.steps.find((step) => step.id === id);

export function loadsOf(plan: Plan, step: string): PlanAmount['loads'] | undefined {
  return stepOf(plan, step)?.amounts.find(({ loads }) => loads.length > 0)?.loads;
}

/** `834 mL`, `14 days`, `28.2 fl oz`: an amount in the trainee's units; what a label allows as a plan tells it. */
export function amountWords(
  value: number,
  { unit, loose, isLabelled }: Pick<RightAmount, 'unit' | 'loose' | 'isLabelled'>,
  units: Units,
): string {
  const measure = unit === 'd' ? 'days' : measureOf({ unit, loose });
  return isLabelled ? doseQuantity(value, measure, units) : quantity(value, measure, units);
}

/** The unit of a number that is typed without one; of the US ones, that which suits the size of the amount. */
export const bareUnit = ({ value, unit, loose }: RightAmount, units: Units): string =>
  units === 'metric' ? unit : (usScale(value, measureOf({ unit, loose }))?.unit ?? unit);
