/** What the packs weigh together: whether one trip by car will do, and what a lorry had better bring. */
import type { Pack } from '../rules/pack.js';
import type { Material } from '../rules/schema.js';
import { comesByLorry, figuresIn, kgOf, typicalSizes } from './loads-and-machines.js';
import type { PlanHaul, PlanShoppingLine } from './plan.js';
import type { ShoppingInput } from './shopping.js';

type HaulInput = Pick<ShoppingInput, 'pack' | 'scope' | 'units' | 'note'>;

/** Null where nothing on the list has a weight, or nobody says what a car takes. */
export function haulOf(shopping: readonly PlanShoppingLine[], input: HaulInput): PlanHaul | null {
  const figures = figuresIn(input);
  const carKg = figures('car-load-kg');
  const kg = shopping.reduce((sum, line) => sum + kgByCar(line, input), 0);
  if (kg === 0 || carKg === 0) return null;
  const trips = Math.ceil(kg / carKg);
  return { kg, carKg, trips, bulk: trips > 1 ? bulkOf(shopping, input) : [] };
}

function kgByCar(line: PlanShoppingLine, input: HaulInput): number {
  const material = materialOf(line, input.pack);
  return line.packs.reduce((sum, { size, count }) => {
    if (comesByLorry(kgOf(material, size, input), input)) return sum;
    return sum + count * (kgOf(material, size, input, 'likely') ?? 0);
  }, 0);
}

function bulkOf(shopping: readonly PlanShoppingLine[], input: HaulInput): PlanHaul['bulk'] {
  return shopping.flatMap((line) => {
    const material = materialOf(line, input.pack);
    const size = typicalSizes(material, input.units).find((each) =>
      comesByLorry(kgOf(material, each, input), input),
    );
    const isByLorry = line.packs.some((each) => comesByLorry(kgOf(material, each.size, input), input));
    if (size === undefined || line.packs.length === 0 || isByLorry) return [];
    return [{ materialId: material.id, title: material.title, size, unit: material.unit, loose: line.loose }];
  });
}

const materialOf = ({ materialId }: PlanShoppingLine, pack: Pack): Material =>
  pack.materialById.get(materialId) as Material;
