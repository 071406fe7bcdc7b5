/** What a person can lift, and whether a machine is better hired or bought. */
import { joinedWords } from '../base/joined-words.js';
import { quantity, roughQuantity } from '../base/quantity-words.js';
import { MASS_IN_G, VOLUME_IN_L } from '../base/units.js';
import { measureOf, type Units } from '../base/us-units.js';
import type { Pack } from '../rules/pack.js';
import type { Material } from '../rules/schema.js';
import { type Choice, choosePacks, type PackOffer } from './choose-packs.js';
import { worded, wordedInside } from './explain-words.js';
import type { PlanShoppingLine } from './plan.js';
import type { ShoppingInput } from './shopping.js';

type LoadInput = Pick<ShoppingInput, 'pack' | 'scope' | 'units' | 'note'>;

const G_PER_KG = 1000;

/** Figures that the program reads by itself; 0 in a pack that has none. */
export const figuresIn =
  ({ scope, note }: LoadInput) =>
  (figureId: string): number => {
    const found = scope(`figures.${figureId}`);
    if (!found.known || typeof found.value !== 'number') return 0;
    note(figureId);
    return found.value;
  };

/** What one US unit of a pack is in the material's own unit. */
const US_PACK = {
  lb: MASS_IN_G.lb,
  'fl oz': VOLUME_IN_L['US fl oz'] / VOLUME_IN_L.mL,
  ft3: VOLUME_IN_L.ft3,
} as const;

/** Common pack sizes in the material's unit; those of US shops where US units are read. */
export function typicalSizes({ packs, usPacks }: Material, units: Units): readonly number[] {
  if (units === 'metric' || usPacks === undefined) return packs;
  return usPacks.sizes.map((size) => size * US_PACK[usPacks.unit]);
}

/** More than a car takes: it is set down by a lorry, and neither lifted nor fetched. */
export function comesByLorry(kg: number | undefined, input: LoadInput): boolean {
  const figures = figuresIn(input);
  const carKg = figures('car-load-kg');
  return kg !== undefined && carKg > 0 && kg > carKg;
}

/** What a pack weighs, kg, its own sack or bottle not counted; undefined for what is sold by the piece or metre. */
export function kgOf(
  material: Material,
  size: number,
  { scope }: Pick<LoadInput, 'scope'>,
  how: 'likely' | 'at most' = 'at most',
): number | undefined {
  if (material.unit === 'g') return size / G_PER_KG;
  if (material.density === undefined) return undefined;
  const density = scope(`figures.${material.density}`);
  if (!density.known) return undefined;
  // t/m3 is kg/L; a wet bag weighs what the heavy end of the range says.
  const likely = density.value as number;
  const kgPerL = how === 'likely' ? likely : (density.most ?? likely);
  return (material.unit === 'mL' ? size / 1000 : size) * kgPerL;
}

function maxLiftKg({ scope }: LoadInput): number | undefined {
  const most = scope('maxLiftKg');
  return most.known ? (most.value as number) : undefined;
}

/** Whether somebody said what can be lifted; otherwise a guide weight stands in. */
const isSaid = ({ scope }: LoadInput): boolean => {
  const most = scope('maxLiftKg');
  return most.known && !most.from.some((name) => name.startsWith('figures.'));
};

export function liftable(kg: number | undefined, input: LoadInput): boolean {
  const most = maxLiftKg(input);
  return kg === undefined || most === undefined || kg <= most;
}

/** How a pack that no car takes comes to the lawn; null where none was chosen. */
export function lorryWords(
  material: Material,
  { offers, choice }: { readonly offers: readonly PackOffer[]; readonly choice: Choice },
  input: LoadInput,
): string | null {
  const isChosen = offers.some(
    ({ size }, index) => (choice.counts[index] ?? 0) > 0 && comesByLorry(kgOf(material, size, input), input),
  );
  return isChosen ? worded(input.pack, 'bulkChosen') : null;
}

/** A caution for a pack that is too heavy for one pair of hands, with the lighter packs where there are any. */
export function heavyWords(
  material: Material,
  {
    offers,
    choice,
    missing,
  }: { readonly offers: readonly PackOffer[]; readonly choice: Choice; readonly missing: number },
  input: LoadInput,
): string | null {
  const { pack, units, note } = input;
  const isHeavy = ({ size }: PackOffer): boolean => {
    const kg = kgOf(material, size, input);
    return !liftable(kg, input) && !comesByLorry(kg, input);
  };
  const heavy = offers.filter((offer, index) => (choice.counts[index] ?? 0) > 0 && isHeavy(offer));
  const [largest] = heavy.toSorted((a, b) => b.size - a.size);
  if (largest === undefined) return null;
  note('lift-guide-kg');
  if (material.density !== undefined) note(material.density);
  const said = (size: number): string =>
    quantity(size, measureOf({ unit: material.unit, loose: material.loose === true }), units);
  const weighs = roughQuantity((kgOf(material, largest.size, input) as number) * G_PER_KG, 'g', units);
  const most = roughQuantity((maxLiftKg(input) as number) * G_PER_KG, 'g', units);
  const limit = wordedInside(pack, isSaid(input) ? 'liftYours' : 'liftGuide', { weight: most });
  const caution = worded(pack, 'packTooHeavy', { size: said(largest.size), weight: weighs, limit });
  const light = offers.filter(
    (offer) => !isHeavy(offer) && !comesByLorry(kgOf(material, offer.size, input), input),
  );
  const lighter = light.length === 0 ? undefined : choosePacks(light, missing);
  if (lighter === undefined) return `${caution} ${worded(pack, 'liftTogether')}`;
  const packs = joinedWords(
    light
      .map(({ size }, index) => ({ size, count: lighter.counts[index] ?? 0 }))
      .filter(({ count }) => count > 0)
      .map(({ size, count }) => `${count} × ${said(size)}`),
  );
  const cost = lighter.cost === null ? '' : `, for ${(lighter.cost / 100).toFixed(2)}`;
  return `${caution} ${worded(pack, 'liftOrTake', { packs, cost })}`;
}

/** The cheaper of hire and buying for so many days of work; hire where they cost the same, as nothing is left to store. */
export function machineOf(
  { hirePerDay, buy }: { readonly hirePerDay?: number; readonly buy?: number },
  days: number,
  pack: Pack,
): Pick<PlanShoppingLine, 'cost' | 'note'> {
  const money = (hundredths: number): string => (hundredths / 100).toFixed(2);
  const span =
    days === 1 ? wordedInside(pack, 'oneDay') : wordedInside(pack, 'manyDays', { count: String(days) });
  if (hirePerDay === undefined)
    return { cost: (buy as number) / 100, note: worded(pack, 'boughtAt', { buy: money(buy as number) }) };
  const hire = hirePerDay * days;
  const words = { span, rate: money(hirePerDay), hire: money(hire) };
  if (buy === undefined) return { cost: hire / 100, note: worded(pack, 'hireOnly', words) };
  const both = { ...words, buy: money(buy) };
  return hire <= buy
    ? { cost: hire / 100, note: worded(pack, 'hireNotBuy', both) }
    : { cost: buy / 100, note: worded(pack, 'buyNotHire', both) };
}
