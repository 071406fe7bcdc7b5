/**
 * A person's own packs, prices, machines and what stands in the shed already, out of the rows of a price list.
 * Every fault is told with the line it stands on; nothing is half read.
 */
import { cleanLine } from '../base/clean-text.js';
import { nearest } from '../base/nearest.js';
import { AREA_IN_M2, MASS_IN_G, VOLUME_IN_L } from '../base/units.js';
import type { Pack } from '../rules/pack.js';
import type { Material } from '../rules/schema.js';
import type { PackOffer } from './choose-packs.js';
import { IN_NO_SHOP, WATER } from './not-bought.js';

export interface PriceList {
  /** Packs on offer, by material, in the material's unit. */
  readonly packs: ReadonlyMap<string, readonly PackOffer[]>;
  /** What is in the shed, by material, in its unit; pieces for tools and machines. */
  readonly have: ReadonlyMap<string, number>;
  /** Tools and machines: hire for a day and price to buy, in hundredths of the currency. */
  readonly machines: ReadonlyMap<string, { readonly hirePerDay?: number; readonly buy?: number }>;
}

export interface PriceRow {
  /** `line 3` or `entry 2`. */
  readonly at: string;
  readonly cells: Readonly<Record<string, string>>;
}

export type ReadPrices =
  | { readonly ok: true; readonly prices: PriceList }
  | { readonly ok: false; readonly faults: readonly string[] };

/** The columns of a price list, with what each holds. */
export const PRICE_COLUMNS: Readonly<Record<string, string>> = {
  material: 'what the shopping list calls it, or its id, such as topsoil; water for the tap',
  size: 'what one pack holds, a number',
  unit: 'unit of size and have, such as kg, L or each',
  price: 'of one pack, one machine, or one day of hire; 0 to 2 decimals',
  stock: 'how many packs are to be had; empty for as many as wanted',
  have: 'how much is in the shed already, in the same unit',
  how: 'hire or buy, for a machine or tool',
};

const GALLONS = ' (gal and fl oz as US gal or UK gal, US fl oz or UK fl oz)';
const PIECES: Readonly<Record<string, number>> = { each: 1 };
const inMl = Object.fromEntries(Object.entries(VOLUME_IN_L).map(([unit, litres]) => [unit, litres * 1000]));

/** How much of the material's own unit each unit of a row is. */
const UNITS_FOR: Readonly<Record<Material['unit'], Readonly<Record<string, number>>>> = {
  g: MASS_IN_G,
  mL: inMl,
  L: VOLUME_IN_L,
  m2: AREA_IN_M2,
  h: { h: 1 },
  each: PIECES,
};

export function readPriceRows(rows: readonly PriceRow[], pack: Pack): ReadPrices {
  const faults: string[] = [];
  const packs = new Map<string, PackOffer[]>();
  const have = new Map<string, number>();
  const machines = new Map<string, { hirePerDay?: number; buy?: number }>();
  for (const row of rows) {
    const read = readRow(row, pack);
    if ('faults' in read) {
      faults.push(...read.faults.map((fault) => `${row.at}: ${fault}`));
      continue;
    }
    const { materialId } = read;
    if (read.have !== undefined) have.set(materialId, (have.get(materialId) ?? 0) + read.have);
    if (read.offer !== undefined) packs.set(materialId, [...(packs.get(materialId) ?? []), read.offer]);
    if (read.machine !== undefined)
      machines.set(materialId, { ...machines.get(materialId), ...read.machine });
  }
  return faults.length === 0 ? { ok: true, prices: { packs, have, machines } } : { ok: false, faults };
}

interface Row {
  readonly materialId: string;
  readonly have?: number;
  readonly offer?: PackOffer;
  readonly machine?: { readonly hirePerDay?: number; readonly buy?: number };
}

function readRow({ cells }: PriceRow, pack: Pack): Row | { readonly faults: readonly string[] } {
  const faults: string[] = [];
  const cell = (name: string): string | undefined => cells[name]?.trim() || undefined;
  for (const name of Object.keys(cells))
    if (!Object.hasOwn(PRICE_COLUMNS, name))
      faults.push(`there is no column ${quoted(name)}. Allowed: ${Object.keys(PRICE_COLUMNS).join(', ')}.`);
  const typed = cell('material') ?? '';
  const material = pack.materialById.get(typed) ?? pack.materials.find(({ title }) => isTitle(title, typed));
  if (material === undefined) return { faults: [...faults, unknownMaterial(typed, pack)] };
  const read = { price: undefined as number | undefined, stock: undefined as number | undefined };
  const price = cell('price');
  if (price !== undefined) {
    read.price = moneyOf(price);
    if (read.price === undefined)
      faults.push(`price is ${quoted(price)}. Give an amount such as 4.50, without a currency sign.`);
  }
  const stock = cell('stock');
  if (stock !== undefined) {
    if (/^\d{1,6}$/.test(stock)) read.stock = Number(stock);
    else faults.push(`stock is ${quoted(stock)}. Give a whole number of packs, or leave it empty.`);
  }
  if (IN_NO_SHOP.includes(material.id)) faults.push(...faultsOfNoGoods(material, cell));
  const rest =
    material.kind === 'buy'
      ? readGoods(material, cell, { price: read.price ?? null, stock: read.stock ?? null })
      : readMachine(cell, read.price);
  faults.push(...rest.faults);
  return faults.length > 0 ? { faults } : { materialId: material.id, ...rest.row };
}

/** Water runs from the tap by the litre; the rest of what no shop sells has no price at all. */
function faultsOfNoGoods({ id }: Material, cell: Cell): string[] {
  if (id !== WATER) return [`${id} is not bought, so it has no place here. Remove the line.`];
  const strange = ['stock', 'have'].filter((name) => cell(name) !== undefined);
  const isPriced = cell('price') !== undefined && cell('size') !== undefined;
  return [
    ...strange.map((name) => `${name} is not counted for water. Leave it empty.`),
    ...(isPriced ? [] : ['water has a price for a size, such as size 1, unit m3, price 3.50.']),
  ];
}

type Cell = (name: string) => string | undefined;
type Rest = { readonly row: Omit<Row, 'materialId'>; readonly faults: readonly string[] };

function readGoods(
  material: Material,
  cell: Cell,
  { price, stock }: { readonly price: number | null; readonly stock: number | null },
): Rest {
  const faults: string[] = [];
  const units = UNITS_FOR[material.unit];
  const unit = cell('unit') ?? material.unit;
  const factor = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (factor === undefined)
    faults.push(
      `unit is ${quoted(unit)}. Allowed for ${material.id}: ${Object.keys(units).join(', ')}${unit in { gal: 1, 'fl oz': 1 } ? GALLONS : ''}.`,
    );
  const amountOf = (name: string): number | undefined => {
    const typed = cell(name);
    if (typed === undefined) return undefined;
    const value = numberOf(typed);
    if (value === undefined || (name === 'size' && value === 0))
      faults.push(
        `${name} is ${quoted(typed)}. Give a number${name === 'size' ? ' above 0' : ''}, and its unit in the column unit.`,
      );
    return value === undefined ? undefined : value * (factor ?? 1);
  };
  const [size, have] = [amountOf('size'), amountOf('have')];
  if (cell('size') === undefined && cell('have') === undefined)
    faults.push('neither size nor have is given. Give the size of a pack, or what is in the shed.');
  if (cell('size') === undefined && price !== null)
    faults.push('price has no size: give the size of the pack too.');
  if (cell('how') !== undefined) faults.push('how is for machines and tools. Leave it empty here.');
  const offer = size === undefined ? {} : { offer: { size, price, stock } };
  return { row: { ...offer, ...(have === undefined ? {} : { have }) }, faults };
}

function readMachine(cell: Cell, price: number | undefined): Rest {
  const faults: string[] = [];
  const [how, typedHave] = [cell('how') ?? (cell('have') === undefined ? 'buy' : undefined), cell('have')];
  const have = typedHave === undefined ? undefined : numberOf(typedHave);
  if (typedHave !== undefined && have === undefined)
    faults.push(`have is ${quoted(typedHave)}. Give the number of pieces.`);
  if (how !== undefined && how !== 'hire' && how !== 'buy')
    faults.push(`how is ${quoted(how)}. Allowed: hire, buy.`);
  if (cell('size') !== undefined) faults.push('size is for what comes in packs. Leave it empty here.');
  if (price === undefined && have === undefined && cell('price') === undefined)
    faults.push('neither price nor have is given. Give the price, or how many are in the shed.');
  const machine =
    price === undefined ? {} : { machine: how === 'hire' ? { hirePerDay: price } : { buy: price } };
  return { row: { ...machine, ...(have === undefined ? {} : { have }) }, faults };
}

const isTitle = (title: string, typed: string): boolean => title.toLowerCase() === typed.toLowerCase();

function unknownMaterial(typed: string, pack: Pack): string {
  if (typed === '') return 'material is empty. Give the name on the shopping list, such as topsoil.';
  const ids = pack.materials.map(({ id }) => id);
  const near = nearest(typed, ids);
  const hint =
    near === undefined
      ? `Give the name on the shopping list, or one of: ${ids.join(', ')}.`
      : `Did you mean "${near}"?`;
  return `there is no material ${quoted(typed)}. ${hint}`;
}

/** Hundredths of the currency; undefined for anything but a plain amount. */
function moneyOf(typed: string): number | undefined {
  const [, whole = '', decimals = ''] = /^(\d{1,9})(?:[.,](\d{1,2}))?$/.exec(typed) ?? [];
  return whole === '' ? undefined : Number(`${whole}${decimals.padEnd(2, '0')}`);
}

const numberOf = (typed: string): number | undefined =>
  /^\d{1,9}(?:[.,]\d{1,6})?$/.test(typed) ? Number(typed.replace(',', '.')) : undefined;

const quoted = (typed: string): string => `"${cleanLine(typed).slice(0, LONGEST_SHOWN)}"`;
const LONGEST_SHOWN = 60;
