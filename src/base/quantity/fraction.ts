/** Reads shares of the lawn: `40%`, `0.4`, `2/5`, `about half`, `two thirds`, `1 in 4`. */

import { readNumber } from './number.js';
import { numberWords } from './number-words.js';
import { parse } from './readings.js';
import { type Parsed, type Reading, unclear } from './result.js';
import { clean, shown } from './show.js';

const PARTS: Readonly<Record<string, number>> = {
  half: 2,
  halve: 2,
  third: 3,
  quarter: 4,
  fifth: 5,
  sixth: 6,
  eighth: 8,
  tenth: 10,
};
const NAMED_PART = /^(?:(?:an? |the )?(\d+)?[ -]?)(half|halve|third|quarter|fifth|sixth|eighth|tenth)s?$/;
const NONE = /^(?:none|nothing|no|zero|none of it|none at all)$/;
const ALL = /^(?:all|everything|the whole|whole|the lot|all of it|the whole lawn|the whole of it|entire)$/;
const OUT_OF = /^(\S+) (?:in|out of|of) (\d+)$/;
const TAIL = / (?:of )?(?:it|the lawn|the area|the grass|them)$/;

/**
 * A share from 0 to 1.
 *
 * A bare number above 1 is taken as a percentage, and the reading says so. A bare 1 is asked about:
 * it may mean one per cent or all of it.
 *
 * @param typed as typed
 */
export function parseFraction(typed: string): Parsed<'fraction'> {
  return parse(numberWords(typed), 'fraction', (text) => {
    const share = NONE.test(text) || ALL.test(text) ? text : text.replace(TAIL, '');
    return inWords(share) ?? inNumbers(share);
  });
}

function inWords(text: string): Reading | undefined {
  if (NONE.test(text)) return share(0, text);
  if (ALL.test(text)) return share(1, text);
  const [, count, part] = NAMED_PART.exec(text) ?? [];
  if (part !== undefined) return share(Number(count ?? 1) / (PARTS[part] as number), text);
  const [, hits, of] = OUT_OF.exec(text) ?? [];
  if (hits === undefined || of === undefined) return undefined;
  const top = readNumber(hits);
  return top.ok && Number(of) > 0 ? share(top.value / Number(of), text) : undefined;
}

function inNumbers(text: string): Reading {
  const percent = text.endsWith('%');
  const number = readNumber(percent ? text.slice(0, -1).trim() : text);
  if (!number.ok) return unclear('That is not a share. Type it like 40 %, 0.4, 2/5 or half.');
  if (percent) return share(number.value / 100, `${number.echo} %`);
  if (number.value === 1 && !number.echo.includes('/')) return oneOrAll();
  if (number.value > 1)
    return share(number.value / 100, `${number.echo} %`, `${text} read as ${number.echo} %`);
  return share(number.value, number.echo);
}

function oneOrAll(): Reading {
  return unclear('1 can mean one per cent or all of it.', [
    { typed: '1 %', value: 0.01, understood: '1 %' },
    { typed: '100 %', value: 1, understood: '100 %' },
  ]);
}

function share(value: number, echo: string, understood?: string): Reading {
  if (value < 0) return unclear('A share cannot be below 0.');
  if (value > 1)
    return unclear(`A share cannot be more than all of it: ${shown(value * 100)} % is over 100 %.`);
  const percent = `${shown(clean(value * 100))} %`;
  return {
    ok: true,
    value,
    echo,
    understood: understood ?? (echo === percent ? echo : `${echo} = ${percent}`),
  };
}
