/** `reckon`: one figure at a time, with its equation and source. */

import { jsonText } from '../../base/clean-text.js';
import { describeKey } from '../../reckon/read-inputs.js';
import { RECKONERS, type Reckoned, reckon as work } from '../../reckon/reckon.js';
import { type Line, reckonedText } from '../../reckon/reckoned-text.js';
import type { Reckoner } from '../../reckon/reckoner.js';
import type { Pack } from '../../rules/pack.js';
import { wrapText } from '../../terminal/wrap-text.js';
import { type Command, UNITS_OPTION, unitsOf } from '../command.js';
import { CliStop, EXIT } from '../io.js';

const FORMATS = ['text', 'json'] as const;

export const reckon: Command = {
  name: 'reckon',
  summary: 'Work out one figure, with equation and source',
  usage: 'reckon NAME key=value … [--format text|json] [--units metric|us] | reckon --list',
  options: {
    list: { type: 'boolean', says: 'every name with its keys' },
    format: { type: 'string', value: 'FORMAT', allowed: FORMATS, says: 'text if not given' },
    units: {
      ...UNITS_OPTION,
      says: 'us adds the answer in US units, and means the US gallon and fluid ounce; keys are metric as they are named',
    },
  },
  words: RECKONERS.map(({ name }) => name),
  takes: { least: 0, most: Number.POSITIVE_INFINITY, says: 'a name and key=value words' },
  async run(args, io) {
    if (args.flag('list')) {
      if (args.positionals.length > 0) {
        throw new CliStop(EXIT.usage, '"reckon --list" takes no words: it shows every name.', reckon.usage);
      }
      io.out(wrapped(RECKONERS.flatMap(listed), io.width));
      return EXIT.done;
    }
    const [name, ...pairs] = args.positionals;
    if (name === undefined) {
      throw new CliStop(
        EXIT.usage,
        `"reckon" takes a name; "${io.commandLine('reckon --list')}" shows all.`,
        reckon.usage,
      );
    }
    const format = args.text('format') ?? 'text';
    const units = unitsOf(args);
    const pack = await io.loadPack(args.text('pack'));
    const figures = (id: string): number => {
      const figure = pack.figureById.get(id);
      if (figure !== undefined) return figure.typical;
      throw new CliStop(EXIT.pack, `The rules have no figure "${id}", which this needs.`);
    };
    const reckoning = work(name, typedPairs(pairs), figures, units);
    if (!reckoning.ok) {
      const code = reckoning.kind === 'usage' ? EXIT.usage : EXIT.answers;
      throw new CliStop(code, reckoning.problems.join('\n'));
    }
    io.out(
      format === 'json'
        ? `${jsonText(withTitles(reckoning.result, pack), 2)}\n`
        : wrapped(
            reckonedText(reckoning.result, {
              isUs: units === 'us',
              loose: RECKONERS.find((each) => each.name === name)?.loose,
              sourceNames: (id) => pack.sourceById.get(id),
            }),
            io.width,
          ),
    );
    return EXIT.done;
  },
};

/** What a source is called, beside its id: JSON is read by whoever has no rules at hand. */
const withTitles = (result: Reckoned, { sourceById }: Pack): unknown => ({
  ...result,
  sources: result.sources.map(({ id, at }) => {
    const { title, publisher, year } = sourceById.get(id) ?? {};
    return { id, title, publisher, year, at };
  }),
});

const wrapped = (lines: readonly Line[], width: number): string =>
  `${lines.flatMap(({ text, hang = '' }) => (text === '' ? [''] : wrapText(text, width, hang))).join('\n')}\n`;

/** @throws {CliStop} exit code 2 when an argument is no key=value, or a key stands twice */
function typedPairs(pairs: readonly string[]): Record<string, string> {
  const typed = new Map<string, string>();
  for (const pair of pairs) {
    const at = pair.indexOf('=');
    if (at < 1) throw new CliStop(EXIT.usage, `"${pair}" is no key=value, such as areaM2=84.`);
    const key = pair.slice(0, at);
    if (typed.has(key)) throw new CliStop(EXIT.usage, `"${key}" is given twice. Give it once.`);
    typed.set(key, pair.slice(at + 1));
  }
  return Object.fromEntries(typed);
}

function listed({ name, says, keys }: Reckoner): Line[] {
  const rows = keys.map((key) => {
    const left = key.isOptional === true ? `[${key.name}]` : key.name;
    const many = key.isList === true ? ', with commas between' : '';
    return { text: `  ${left}: ${describeKey(key)}${many}`, hang: '      ' };
  });
  return [{ text: `${name}: ${says}`, hang: '  ' }, ...rows];
}
