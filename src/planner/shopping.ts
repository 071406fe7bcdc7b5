/** One list of what to buy, hire and have ready: the amounts of all steps added up, in packs, with what they cost. */
import { daysBetween } from '../base/dates.js';
import { clean } from '../base/quantity/show.js';
import type { Units } from '../base/us-units.js';
import type { Scope } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Material } from '../rules/schema.js';
import { roundedFor } from './amounts.js';
import { type Choice, choosePacks, type PackOffer } from './choose-packs.js';
import { worded } from './explain-words.js';
import {
  comesByLorry,
  figuresIn,
  heavyWords,
  kgOf,
  liftable,
  lorryWords,
  machineOf,
  typicalSizes,
} from './loads-and-machines.js';
import { IN_NO_SHOP } from './not-bought.js';
import type { PlanShoppingLine, PlanStep } from './plan.js';
import type { PriceList } from './price-list.js';
import { wordedIn } from './worded-rule.js';

export interface ShoppingInput {
  readonly pack: Pack;
  readonly scope: Scope;
  readonly units: Units;
  readonly prices: PriceList | undefined;
  /** Takes every figure that was used. */
  readonly note: (figureId: string) => void;
}

interface Wanted {
  amount: number;
  /** For the largest area that the measuring allows. */
  largest: number;
  isDose: boolean;
  /** An amount that only a label can say. */
  isOpen: boolean;
  readonly forSteps: string[];
}

export function shoppingOf(steps: readonly PlanStep[], input: ShoppingInput): PlanShoppingLine[] {
  const wanted = wantedBy(steps);
  return input.pack.materials
    .filter(({ id }) => wanted.has(id) && !IN_NO_SHOP.includes(id))
    .map((listed) => {
      const material = wordedIn(input.units, listed);
      const want = wanted.get(material.id) as Wanted;
      return material.kind === 'buy'
        ? goodsLine(material, want, input)
        : machineLine(material, want, steps, input);
    });
}

function wantedBy(steps: readonly PlanStep[]): ReadonlyMap<string, Wanted> {
  const wanted = new Map<string, Wanted>();
  const wantOf = (materialId: string, stepId: string): Wanted => {
    const want = wanted.get(materialId) ?? {
      amount: 0,
      largest: 0,
      isDose: false,
      isOpen: false,
      forSteps: [],
    };
    if (!want.forSteps.includes(stepId)) want.forSteps.push(stepId);
    wanted.set(materialId, want);
    return want;
  };
  for (const step of steps) {
    for (const { materialId, amount, basis, timesForLargest } of step.amounts) {
      const want = wantOf(materialId, step.id);
      want.amount += amount ?? 0;
      want.largest += (amount ?? 0) * timesForLargest;
      want.isDose ||= basis === 'label';
      want.isOpen ||= amount === null;
    }
    for (const { id } of step.tools) wantOf(id, step.id);
  }
  return wanted;
}

function goodsLine(material: Material, want: Wanted, input: ShoppingInput): PlanShoppingLine {
  const { units, prices } = input;
  const figures = figuresIn(input);
  const have = prices?.have.get(material.id) ?? 0;
  const line = { ...lineOf(material, want), have: have === 0 ? null : have };
  if (want.isOpen) return line;
  const need = needOf(material, want, units);
  const missing = Math.max(0, need.toBuy - have);
  const own = prices?.packs.get(material.id);
  const { offers, isOwn } = offersFor(material, missing, own, input);
  const spare = figures('pack-spare-fraction');
  const choice =
    choosePacks(offers, missing, spare) ?? choosePacks(offers, Math.max(0, need.amount - have), spare);
  if (choice === undefined) {
    const short = isOwn && offers.some(({ stock }) => stock !== null);
    return { ...line, need, note: short ? worded(input.pack, 'stockShort') : null };
  }
  return {
    ...line,
    need,
    packs: packsOf(material, offers, choice),
    packsAre: isOwn ? 'yours' : 'typical',
    leftOver: missing > 0 && offers.length === 0 ? null : clean(have + choice.total - need.amount),
    cost: missing === 0 && prices !== undefined ? 0 : moneyOf(choice.cost),
    note:
      [
        lorryWords(material, { offers, choice }, input),
        heavyWords(material, { offers, choice, missing }, input),
      ]
        .filter((words) => words !== null)
        .join(' ') || null,
  };
}

/** A dose is never raised, not even in the shop: what stands on the shelf is poured. */
function needOf(
  { unit, spareForArea }: Material,
  { amount, largest, isDose }: Wanted,
  units: Units,
): NonNullable<PlanShoppingLine['need']> {
  const needed = isDose ? clean(amount) : roundedFor(units, amount);
  return {
    amount: needed,
    unit,
    toBuy: spareForArea === true ? roundedFor(units, largest) : needed,
    basis: isDose ? 'label' : 'reckoned',
  };
}

/**
 * A person's own packs, priced ones before others; else common sizes, the ones that can be lifted before others,
 * and those that a lorry brings once bags would be more than a car takes.
 */
function offersFor(
  material: Material,
  missing: number,
  own: readonly PackOffer[] | undefined,
  input: ShoppingInput,
): { readonly offers: readonly PackOffer[]; readonly isOwn: boolean } {
  if (own !== undefined) {
    const priced = own.filter(({ price }) => price !== null);
    return { offers: priced.length > 0 ? priced : own, isOwn: true };
  }
  const sizes = typicalSizes(material, input.units);
  const bags = sizes.filter((size) => !comesByLorry(kgOf(material, size, input), input));
  const light = bags.filter((size) => liftable(kgOf(material, size, input), input));
  const isCarload = comesByLorry(kgOf(material, missing, input, 'likely'), input);
  const offered = [
    ...(light.length > 0 ? light : bags.slice(0, 1)),
    ...(isCarload ? sizes.filter((size) => !bags.includes(size)) : []),
  ];
  return { offers: offered.map((size) => ({ size, price: null, stock: null })), isOwn: false };
}

function packsOf(
  material: Material,
  offers: readonly PackOffer[],
  { counts }: Choice,
): PlanShoppingLine['packs'] {
  return offers
    .map(({ size, price }, index) => ({
      size,
      unit: material.unit,
      count: counts[index] ?? 0,
      price: moneyOf(price),
    }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.size - a.size);
}

function machineLine(
  material: Material,
  want: Wanted,
  steps: readonly PlanStep[],
  { pack, prices }: ShoppingInput,
): PlanShoppingLine {
  const line = lineOf(material, want);
  const have = prices?.have.get(material.id) ?? 0;
  if (have > 0) return { ...line, have, cost: 0, note: worded(pack, 'inShed') };
  const offer = prices?.machines.get(material.id);
  if (offer === undefined) return line;
  const spans = steps.filter(({ id }) => want.forSteps.includes(id)).flatMap(({ parts }) => parts);
  const ends = new Map(spans.map(({ startOn, endOn }) => [startOn, endOn]));
  const days = [...ends].reduce((sum, [startOn, endOn]) => sum + 1 + daysBetween(startOn, endOn), 0);
  return { ...line, ...machineOf(offer, Math.max(1, days), pack) };
}

const lineOf = ({ id, title, kind, lookFor, loose }: Material, { forSteps }: Wanted): PlanShoppingLine => ({
  materialId: id,
  title,
  kind,
  lookFor,
  loose: loose === true,
  need: null,
  packs: [],
  packsAre: null,
  leftOver: null,
  cost: null,
  have: null,
  note: null,
  forSteps,
});

/** Hundredths as an amount of the currency. */
const moneyOf = (hundredths: number | null): number | null => (hundredths === null ? null : hundredths / 100);
