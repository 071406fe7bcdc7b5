/** What the packs weigh together: whether one trip by car will do, and what a lorry had better bring. */
import { joinedWords } from '../base/joined-words.js';
import { clean } from '../base/quantity/show.js';
import { quantity, roughQuantity } from '../base/quantity-words.js';
import { measureOf } from '../base/us-units.js';
import type { Pack } from '../rules/pack.js';
import type { Material } from '../rules/schema.js';
import { worded, wordedInside } from './explain-words.js';
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
  const hasLorry = shopping.some((line) => isByLorry(line, input));
  const bulk = trips > 1 ? bulkOf(shopping, input) : [];
  return {
    kg,
    carKg,
    trips,
    bulk,
    says: [...tripWords({ kg, carKg, trips, hasLorry }, input), ...bulkWords(bulk, input)],
  };
}

function tripWords(
  { kg, carKg, trips, hasLorry }: Pick<PlanHaul, 'kg' | 'carKg' | 'trips'> & { readonly hasLorry: boolean },
  input: HaulInput,
): string[] {
  const { pack, units } = input;
  const basis = pack.figureById.get('car-load-kg')?.basis.replace('-', ' ') ?? '';
  const [all = '', car = ''] = [kg, carKg].map((each) => roughQuantity(each, 'kg', units));
  const journeys =
    trips === 1 ? wordedInside(pack, 'oneTrip') : wordedInside(pack, 'manyTrips', { count: String(trips) });
  return [worded(pack, hasLorry ? 'haulApart' : 'haul', { all, car, basis, trips: journeys })];
}

/** With the need beside it, so that nobody orders twice what the lawn takes. */
function bulkWords(bulk: PlanHaul['bulk'], { pack, units }: HaulInput): string[] {
  if (bulk.length === 0) return [];
  const goods = bulk.map(({ title, size, need, unit, loose }) => {
    const measure = measureOf({ unit, loose });
    const [bag, wanted] = [size, need].map((each) => quantity(each, measure, units)) as [string, string];
    return wordedInside(pack, 'bulkGoods', { title: small(title), size: bag, need: wanted });
  });
  return [worded(pack, 'bulkToo', { goods: goods.join('; ') })];
}

function kgByCar(line: PlanShoppingLine, input: HaulInput): number {
  const material = materialOf(line, input.pack);
  return line.packs.reduce((sum, { size, count }) => {
    if (comesByLorry(kgOf(material, size, input), input)) return sum;
    return sum + count * (kgOf(material, size, input, 'likely') ?? 0);
  }, 0);
}

/** What can come in the same load is asked for as one: nobody needs a bag of each. */
function bulkOf(shopping: readonly PlanShoppingLine[], input: HaulInput): PlanHaul['bulk'] {
  const single = singleLoads(shopping, input);
  const joins = (of: PlanHaul['bulk'][number]) =>
    single.filter(({ materialId }) => input.pack.materialById.get(materialId)?.sameLoadAs === of.materialId);
  const isJoined = ({ materialId }: PlanHaul['bulk'][number]): boolean =>
    single.some((of) => joins(of).some((other) => other.materialId === materialId));
  return single
    .filter((load) => !isJoined(load))
    .map((load) => {
      const all = [load, ...joins(load)];
      const title = joinedWords(all.map((each, at) => (at === 0 ? each.title : small(each.title))));
      return { ...load, title, need: clean(all.reduce((sum, { need }) => sum + need, 0)) };
    });
}

const small = (title: string): string => `${title.charAt(0).toLowerCase()}${title.slice(1)}`;

function singleLoads(shopping: readonly PlanShoppingLine[], input: HaulInput): PlanHaul['bulk'] {
  return shopping.flatMap((line) => {
    const material = materialOf(line, input.pack);
    const size = typicalSizes(material, input.units).find((each) =>
      comesByLorry(kgOf(material, each, input), input),
    );
    if (size === undefined || line.packs.length === 0 || line.need === null || isByLorry(line, input))
      return [];
    const { id: materialId, title, unit } = material;
    return [{ materialId, title, size, need: line.need.amount, unit, loose: line.loose }];
  });
}

const isByLorry = (line: PlanShoppingLine, input: HaulInput): boolean =>
  line.packs.some(({ size }) => comesByLorry(kgOf(materialOf(line, input.pack), size, input), input));

const materialOf = ({ materialId }: PlanShoppingLine, pack: Pack): Material =>
  pack.materialById.get(materialId) as Material;
