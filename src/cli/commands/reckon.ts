/** `reckon`: one figure at a time, with its equation and source. */

import { plainNumber } from '../../base/quantity-words.js';
import {
  AREA_IN_M2,
  convert,
  LENGTH_IN_M,
  MASS_IN_G,
  MASS_RATE_IN_G_PER_M2,
  VOLUME_IN_L,
} from '../../base/units.js';
import { RECKONERS, type Reckoned, reckon as work } from '../../reckon/reckon.js';
import type { Quantity } from '../../reckon/reckoner.js';
import type { Pack } from '../../rules/pack.js';
import { wrapText } from '../../terminal/wrap-text.js';
import type { Command } from '../command.js';
import { type CliIo, CliStop, EXIT } from '../io.js';

export const reckon: Command = {
  name: 'reckon',
  summary: 'Work out one figure, with equation and source',
  usage: 'reckon NAME key=value … [--format text|json] [--units metric|us] | reckon --list',
  options: {
    list: { type: 'boolean', says: 'every name with its keys' },
    format: { type: 'string', value: 'FORMAT', says: 'text or json; text if not given' },
    units: { type: 'string', value: 'UNITS', says: 'metric or us; us adds the answer in US units' },
  },
  async run(args, io) {
    if (args.flag('list')) {
      io.out(`${RECKONERS.map(listed).join('\n')}\n`);
      return EXIT.done;
    }
    const [name, ...pairs] = args.positionals;
    if (name === undefined)
      throw new CliStop(EXIT.usage, `"reckon" takes a name.\nUsage: seedbed ${reckon.usage}`);
    const format = oneOf('--format', args.text('format') ?? 'text', ['text', 'json']);
    const units = oneOf('--units', args.text('units') ?? 'metric', ['metric', 'us']);
    const pack = await io.loadPack(args.text('pack'));
    const figures = (id: string): number => {
      const figure = pack.figureById.get(id);
      if (figure === undefined)
        throw new CliStop(EXIT.pack, `The rules have no figure "${id}", which this needs.`);
      return figure.typical;
    };
    const reckoning = work(name, typedPairs(pairs), figures);
    if (!reckoning.ok)
      throw new CliStop(
        reckoning.kind === 'usage' ? EXIT.usage : EXIT.answers,
        reckoning.problems.join('\n'),
      );
    io.out(
      format === 'json'
        ? `${JSON.stringify(reckoning.result, null, 2)}\n`
        : asText(reckoning.result, units === 'us', pack, io),
    );
    return EXIT.done;
  },
};

function typedPairs(pairs: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    pairs.map((pair) => {
      const at = pair.indexOf('=');
      if (at < 1) throw new CliStop(EXIT.usage, `"${pair}" is no key=value, such as areaM2=84.`);
      return [pair.slice(0, at), pair.slice(at + 1)];
    }),
  );
}

function oneOf(option: string, typed: string, allowed: readonly string[]): string {
  if (allowed.includes(typed)) return typed;
  throw new CliStop(EXIT.usage, `${option} is "${typed}". Allowed: ${allowed.join(', ')}.`);
}

function listed({ name, says, keys }: (typeof RECKONERS)[number]): string {
  const words = keys.map((key) => (key.isOptional === true ? `[${key.name}]` : key.name));
  return `${name}: ${says}\n  ${words.join(' ')}`;
}

/** The answer first, then how it came about and where that stands in print. */
function asText(result: Reckoned, isUs: boolean, pack: Pack, io: CliIo): string {
  const lines = [
    shown(result, isUs),
    ...Object.entries(result.more ?? {}).map(([name, quantity]) => `${name}: ${shown(quantity, isUs)}`),
    '',
    `Equation: ${result.equation}`,
    `Working: ${result.working}`,
    ...result.inputs
      .filter(({ typed, value }) => typed !== String(value))
      .map(({ key, value, unit }) => `Read ${key} as ${plain(value)} ${unit}`),
    ...result.sources.map(({ id, at }) => {
      const source = pack.sourceById.get(id);
      return `Source: ${source?.title ?? id}. ${source?.publisher ?? ''}: ${at}`;
    }),
    ...(result.notes ?? []),
  ];
  return `${lines.flatMap((line) => (line === '' ? [''] : wrapText(line, io.width))).join('\n')}\n`;
}

const plain = (value: unknown): string =>
  typeof value === 'number' ? plainNumber(value) : JSON.stringify(value);

function shown({ value, unit }: Quantity, isUs: boolean): string {
  const metric = `${plainNumber(value)} ${unit}`;
  const us = isUs ? inUsUnits({ value, unit }) : undefined;
  return us === undefined ? metric : `${metric} (${plainNumber(us.value)} ${us.unit})`;
}

/** The same in the units of a US bag or tape; nothing where there is no such unit. */
function inUsUnits({ value, unit }: Quantity): Quantity | undefined {
  switch (unit) {
    case 'm2':
      return { value: convert(AREA_IN_M2, value, { from: 'm2', to: 'ft2' }), unit: 'sq ft' };
    case 'g':
      return { value: convert(MASS_IN_G, value, { from: 'g', to: 'lb' }), unit: 'lb' };
    case 'kg':
      return { value: convert(MASS_IN_G, value, { from: 'kg', to: 'lb' }), unit: 'lb' };
    case 'g/m2':
      return {
        value: convert(MASS_RATE_IN_G_PER_M2, value, { from: 'g/m2', to: 'lb/1000 ft2' }),
        unit: 'lb/1000 ft2',
      };
    case 'L':
      return { value: convert(VOLUME_IN_L, value, { from: 'L', to: 'US gal' }), unit: 'US gal' };
    case 'mL':
      return { value: convert(VOLUME_IN_L, value, { from: 'mL', to: 'US fl oz' }), unit: 'US fl oz' };
    case 'mm/day':
      return { value: convert(LENGTH_IN_M, value, { from: 'mm', to: 'in' }), unit: 'in/day' };
    default:
      return undefined;
  }
}
