/** The words for each unit, in tidy spelling, and the units' sizes. */
import { AREA_IN_M2, LENGTH_IN_M, MASS_IN_G, VOLUME_IN_L } from '../units.js';

export interface Vocabulary<Unit extends string> {
  /** What the words measure, for sentences: `a length`. */
  readonly what: string;
  /** Units to suggest. */
  readonly usual: string;
  readonly words: Readonly<Record<string, Unit>>;
  readonly table: Readonly<Record<Unit, number>>;
}

function spelt<Unit extends string>(lists: Readonly<Partial<Record<Unit, string>>>): Record<string, Unit> {
  const words: Record<string, Unit> = Object.create(null);
  for (const [unit, list] of Object.entries(lists) as [Unit, string][]) {
    for (const word of list.split(' ')) words[word] = unit;
  }
  return words;
}

export const LENGTHS: Vocabulary<keyof typeof LENGTH_IN_M> = {
  what: 'a length',
  usual: 'm, cm, mm, ft, in or yd',
  table: LENGTH_IN_M,
  words: spelt({
    mm: 'mm mms millimetre millimetres millimeter millimeters',
    cm: 'cm cms centimetre centimetres centimeter centimeters',
    m: 'm metre metres meter meters mtr mtrs',
    km: 'km kilometre kilometres kilometer kilometers',
    in: 'in ins inch inches "',
    ft: "ft foot feet '",
    yd: 'yd yds yard yards',
    mile: 'mile miles',
  }),
};

export const AREAS: Vocabulary<keyof typeof AREA_IN_M2> = {
  what: 'an area',
  usual: 'm2, sq ft, sq yd, acre or ha',
  table: AREA_IN_M2,
  words: spelt({
    cm2: 'cm2',
    m2: 'm2',
    ha: 'ha hectare hectares',
    in2: 'in2',
    ft2: 'ft2 sf',
    yd2: 'yd2',
    acre: 'acre acres ac',
  }),
};

export const MASSES: Vocabulary<keyof typeof MASS_IN_G> = {
  what: 'a weight',
  usual: 'g, kg, oz or lb',
  table: MASS_IN_G,
  words: spelt({
    g: 'g gram grams gramme grammes gm gms',
    kg: 'kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes',
    t: 't tonne tonnes',
    oz: 'oz ozs ounce ounces',
    lb: 'lb lbs pound pounds',
  }),
};

export const VOLUMES: Vocabulary<keyof typeof VOLUME_IN_L> = {
  what: 'a volume',
  usual: 'mL, L, US gal or UK gal',
  table: VOLUME_IN_L,
  words: spelt({
    mL: 'ml mls millilitre millilitres milliliter milliliters cc',
    L: 'l litre litres liter liters ltr ltrs',
    m3: 'm3',
    ft3: 'ft3',
    yd3: 'yd3',
    'US fl oz': 'usfloz',
    'US pint': 'uspint',
    'US quart': 'usquart',
    'US gal': 'usgal',
    'UK fl oz': 'ukfloz',
    'UK pint': 'ukpint',
    'UK quart': 'ukquart',
    'UK gal': 'ukgal',
  }),
};
