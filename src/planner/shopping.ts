/** One list of what to buy, hire and have ready, with the amounts of all steps added up. */
import type { Units } from '../base/us-units.js';
import type { Pack } from '../rules/pack.js';
import { roundedFor } from './amounts.js';
import type { PlanShoppingLine, PlanStep } from './plan.js';

/** Water and waste are in the steps' amounts, but no shop sells them. */
const IN_NO_SHOP: readonly string[] = ['water', 'debris', 'old-turf'];

export function shoppingOf(steps: readonly PlanStep[], pack: Pack, units: Units): PlanShoppingLine[] {
  const needs = new Map<string, { amount: number; most: number; isOpen: boolean; forSteps: string[] }>();
  const want = (materialId: string, stepId: string, amount: number | null, most: number): void => {
    const need = needs.get(materialId) ?? { amount: 0, most: 0, isOpen: false, forSteps: [] };
    need.amount += amount ?? 0;
    need.most += most;
    need.isOpen ||= amount === null;
    if (!need.forSteps.includes(stepId)) need.forSteps.push(stepId);
    needs.set(materialId, need);
  };
  for (const step of steps) {
    for (const { materialId, amount, range } of step.amounts)
      want(materialId, step.id, amount, range?.max ?? amount ?? 0);
    for (const { id } of step.tools) want(id, step.id, 0, 0);
  }
  return pack.materials
    .filter(({ id }) => needs.has(id) && !IN_NO_SHOP.includes(id))
    .map((material) => {
      const { amount, most, isOpen, forSteps } = needs.get(material.id) as {
        amount: number;
        most: number;
        isOpen: boolean;
        forSteps: string[];
      };
      return {
        materialId: material.id,
        title: material.title,
        kind: material.kind,
        lookFor: material.lookFor,
        loose: material.loose === true,
        need:
          material.kind !== 'buy' || isOpen
            ? null
            : { amount: roundedFor(units, amount), unit: material.unit, most: roundedFor(units, most) },
        packs: [],
        leftOver: null,
        cost: null,
        forSteps,
      };
    });
}
