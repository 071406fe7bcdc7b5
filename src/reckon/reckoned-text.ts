/** A worked-out figure in words: the answer first, then how it came about and where that stands in print. */
import { plainNumber } from '../base/quantity-words.js';
import { measureOf, usScale } from '../base/us-units.js';
import type { Reckoned } from './reckon.js';
import type { Quantity } from './reckoner.js';

/** A line to be wrapped; `hang` stands before its second and later rows. */
export interface Line {
  readonly text: string;
  readonly hang?: string;
}

const HANG = '  ';

/** What a person reads of a source; undefined when the rules in use do not have it. */
export type SourceNames = (id: string) => { readonly title: string; readonly publisher: string } | undefined;

interface Wording {
  readonly isUs: boolean;
  readonly loose?: boolean | undefined;
  readonly sourceNames: SourceNames;
}

/**
 * The lines of a result, not yet wrapped.
 *
 * @param isUs true to put the answer in US units beside the metric one
 * @param loose litres are of soil, not of a liquid
 */
export function reckonedText(result: Reckoned, { isUs, loose = false, sourceNames }: Wording): Line[] {
  const said = (label: string, text: string): Line => ({ text: `${label}: ${text}`, hang: HANG });
  return [
    { text: shown(result, isUs, loose), hang: HANG },
    ...Object.entries(result.more).map(([name, quantity]) =>
      said(inWords(name), shown(quantity, isUs, loose)),
    ),
    { text: '' },
    said('Equation', result.equation),
    said('Working', result.working),
    ...result.inputs.map((input) => said('Read', readAs(input))),
    ...result.sources.map(({ id, at }) => {
      const source = sourceNames(id);
      return said(
        'Source',
        source === undefined ? `${id}: ${at}` : `${source.title}. ${source.publisher}: ${at}`,
      );
    }),
    ...result.notes.map((note) => said('Note', note)),
  ];
}

/** `lastProduct` as `last product`. */
const inWords = (name: string): string => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** `areaM2 "8000 sq ft" as 743.224 m2`, or only the value where nothing had to be understood. */
function readAs({ key, typed, value, unit }: Reckoned['inputs'][number]): string {
  const figure = asRead(value);
  const measured = unit === '' || unit === 'fraction' || unit === 'count' ? figure : `${figure} ${unit}`;
  const isAsTyped = typed.replace(/\s/g, '') === figure.replace(/\s/g, '');
  return isAsTyped ? `${key} ${measured}` : `${key} "${typed}" as ${measured}`;
}

const INPUT_DIGITS = 6;

function asRead(value: Reckoned['inputs'][number]['value']): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return String(Number(value.toPrecision(INPUT_DIGITS)));
  return value
    .map((item) => (typeof item === 'number' ? asRead(item) : item.map(asRead).join(',')))
    .join(value.some((item) => typeof item !== 'number') ? ' ' : ', ');
}

function shown({ value, unit }: Quantity, isUs: boolean, loose: boolean): string {
  const metric = withUnit({ value, unit });
  const us = isUs ? inUsUnits({ value, unit: measureOf({ unit, loose }) }) : undefined;
  return us === undefined ? metric : `${metric} (${withUnit(us)})`;
}

function withUnit({ value, unit }: Quantity): string {
  const figure = plainNumber(value, unit === 'm2' ? unit : '');
  if (unit === 'fraction') return figure;
  const isOneOfThem = value === 1 && (unit === 'loads' || unit === 'points');
  return `${figure} ${isOneOfThem ? unit.slice(0, -1) : unit}`;
}

/** The same in the units of a US bag or tape; nothing where there is no such unit. */
function inUsUnits({ value, unit }: Quantity): Quantity | undefined {
  const scale = usScale(value, unit);
  return scale === undefined ? undefined : { value: scale.of(value), unit: scale.unit };
}
