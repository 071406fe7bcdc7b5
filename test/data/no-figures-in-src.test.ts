/**
 * No figure of the trade stands in src: it would have no unit, no source and no gardener to correct it.
 * Every number in the source is small counting, a power of ten, or a named constant; outside the equations,
 * the unit tables and the calendar, each named constant is listed here with what it is.
 */
import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

/** Not searched: equations, units and the calendar (their constants carry a source), screens, files and typed forms. */
const NOT_SEARCHED = [
  /^(agronomy|base|reckon|cli|terminal|session)\//,
  /^interview\/read-/,
  /^rules\/schema/,
];
const COUNTING = new Set([0, 1, 2, 3, 4, 10, 100, 1000]);

/** Named constants in the rest: none of them is about lawns. */
const OF_THE_PROGRAM: Readonly<Record<string, string>> = {
  LAYOUT: 'lengths in a drawing',
  MOST_COLUMNS: 'columns of a drawing',
  TITLE_WIDTH: 'columns of a drawing',
  MOST_OCTETS: 'octets of a line in a calendar file',
  LONGEST_SHOWN: 'characters of a wrong value',
  LONGEST_TEXT: 'characters of a name',
  LONGEST_NAME: 'characters of the name of an area',
  MOST_AREAS: 'areas of one file',
  DEEPEST: 'nesting of an answers file',
  MOST_OPEN: 'questions up to which the thorough look is worth its time',
  MOST_DIAGRAMS: 'diagrams up to which it is',
  DEPTH_LIMIT: 'nesting of a condition',
  DAYS_PER_WEEK: 'd',
  DAYS_PER_YEAR: 'd',
  DAYS_PER_COLUMN: 'd',
  MINUTES_PER_HOUR: 'min',
  MONTHS_PER_YEAR: 'months',
  MONTH_ENDS: 'days of each month',
  HORIZON_DAYS: 'd that a search may go on, not a wait',
  POLE_DEG: 'degrees of latitude',
  DATE_LINE_DEG: 'degrees of longitude',
  MOST_TOTALS: 'entries of a table',
  DUST: 'what binary arithmetic leaves',
  COUNTS: 'what a word counts by where it stands in a record',
  TYPO: 'letters from which a mistyped word is known, and what it counts',
  HEARING: 'shares of what was typed that are understood',
  DIGITS: 'digits that are printed',
  MOST_DIGITS: 'digits that are printed',
  NEARLY_ALL: 'what rounding leaves',
  LEAST_WATER_L: 'no water to speak of, below which nothing is divided by it',
};

interface Found {
  readonly text: string;
  readonly line: number;
  /** Name of the top-level constant that holds it. */
  readonly constant: string | undefined;
}

function numbersIn(path: string): Found[] {
  const source = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.ES2023, true);
  const found: Found[] = [];
  const visit = (node: ts.Node, constant: string | undefined): void => {
    const named =
      ts.isVariableDeclaration(node) &&
      ts.isIdentifier(node.name) &&
      /^[A-Z][A-Z0-9_]*$/.test(node.name.text);
    const inside = named ? ((node as ts.VariableDeclaration).name as ts.Identifier).text : constant;
    if (ts.isNumericLiteral(node) && !COUNTING.has(Number(node.text.replace(/_/g, '')))) {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart());
      found.push({ text: node.getText(), line: line + 1, constant: inside });
    }
    ts.forEachChild(node, (child) => visit(child, inside));
  };
  visit(source, undefined);
  return found;
}

const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter(
  (file) => file.endsWith('.ts') && !NOT_SEARCHED.some((pattern) => pattern.test(file)),
);

describe('the source', () => {
  it.each(files)('%s holds no figure', (file) => {
    const bare = numbersIn(`src/${file}`).filter(
      ({ constant }) => constant === undefined || !Object.hasOwn(OF_THE_PROGRAM, constant),
    );
    expect(
      bare.map(
        ({ text, line, constant }) =>
          `line ${line}: ${text}${constant === undefined ? '' : ` in ${constant}`}`,
      ),
    ).toEqual([]);
  });

  it('is really searched', () => {
    expect(numbersIn('src/agronomy/sun.ts').length).toBeGreaterThan(5);
    expect(files.length).toBeGreaterThan(40);
  });
});
