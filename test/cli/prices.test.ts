/** A price list from a file, through the commands that take one. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newFolder, run } from './run.js';

const example = 'transcripts-examples/mossy-family-lawn/answers.json';
const fileOf = (name: string, text: string): string => {
  const path = join(newFolder(), name);
  writeFileSync(path, text);
  return path;
};
const planned = (prices: string) =>
  run(['plan', example, '--today', '2027-03-13', '--format', 'json', '--prices', prices]);
interface Line {
  readonly materialId: string;
  readonly packs: readonly { size: number; unit: string; count: number; price: number | null }[];
  readonly cost: number | null;
  readonly leftOver: number | null;
  readonly need: { readonly amount: number } | null;
}
const lineOf = (out: string, id: string): Line | undefined =>
  (JSON.parse(out).shopping as Line[]).find(({ materialId }) => materialId === id);

const CSV = 'material,size,unit,price\ntopsoil,25,L,4.50\nTopsoil,40,L,6.95\nseed-ryegrass-mix,1,kg,13.50\n';

describe('--prices FILE', () => {
  it('takes the packs of least cost from a CSV, by id or by the name on the list', () => {
    const { code, out, err } = planned(fileOf('prices.csv', CSV));
    expect([code, err]).toEqual([0, '']);
    // 84 m2 by 4 mm are 336 L, and 369.6 L for a tenth more, since it was paced. By hand, from no bag of 40 L to ten,
    // filled up with 25 L: 67.50, 69.95, 67.90, 65.85, 68.30, 66.25, 68.70, 66.65, 64.60, 67.05, 69.50. Eight is the least.
    expect(lineOf(out, 'topsoil')).toMatchObject({
      need: { amount: 336 },
      packs: [
        { size: 40, unit: 'L', count: 8, price: 6.95 },
        { size: 25, unit: 'L', count: 2, price: 4.5 },
      ],
      cost: 64.6,
      leftOver: 34,
    });
    // What the list does not name keeps a common size and has no price.
    expect(lineOf(out, 'starter-feed')?.cost).toBeNull();
    expect(lineOf(out, 'starter-feed')?.packs[0]?.price).toBeNull();
  });

  it('reads JSON, semicolons and a byte order mark alike', () => {
    const wanted = lineOf(planned(fileOf('prices.csv', CSV)).out, 'topsoil');
    const rows = CSV.trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split(','))
      .map(([material, size, unit, price]) => ({ material, size: Number(size), unit, price: Number(price) }));
    const json = fileOf('prices.json', JSON.stringify({ format: 1, prices: rows }));
    expect(lineOf(planned(json).out, 'topsoil')).toEqual(wanted);
    const semicolons = fileOf('p.csv', `\uFEFF${CSV.replaceAll(',', ';')}`);
    expect(lineOf(planned(semicolons).out, 'topsoil')).toEqual(wanted);
  });

  it.each([
    ['material,size\ntopsol,25\n', 3, /line 2: there is no material "topsol"\. Did you mean "topsoil"/],
    ['material,size\ngold,25\n', 3, /line 2: there is no material "gold"\. Give the name .* topsoil, /],
    ['material,size\ntopsoil,25,L\n', 3, /line 2: 3 values do not fit the columns/],
    ['what,size\ntopsoil,25\n', 3, /line 1: no column "material"/],
    ['material,size,size\ntopsoil,25,3\n', 3, /line 1: the column "size" stands twice/],
    ['material,size\n"topsoil,25\n', 3, /this is no CSV/],
    ['{"format": 2}', 3, /format 1 and a list "prices"/],
    ['{"format": 1, "prices": [5]}', 3, /entry 1 is no object/],
    ['{"format": 1, ', 3, /no JSON/],
  ])('refuses %j and plans nothing', (text, code, says) => {
    const result = planned(fileOf('prices.csv', text));
    expect([result.code, result.out]).toEqual([code, '']);
    expect(result.err).toMatch(says);
  });

  it('that is not there ends with exit code 5', () => {
    expect(planned(join(newFolder(), 'none.csv')).code).toBe(5);
  });

  it('stands in the Markdown and in the table for a spreadsheet', () => {
    const asked = ['plan', example, '--today', '2027-03-13', '--prices', fileOf('prices.csv', CSV)];
    const { out } = run(asked);
    expect(out).toContain('8 × 40 L at 6.95 and 2 × 25 L at 4.50, 34 L left over');
    // 64.60 and 3 x 13.50 for 1.89 kg of seed and a tenth more.
    expect(out).toContain('What has a price comes to 105.10');
    expect(run([...asked, '--format', 'csv']).out).toContain('8 x 40 L + 2 x 25 L,34,64.6');
  });

  it('is taken by compare and batch too', () => {
    const prices = fileOf('prices.csv', CSV);
    const compared = run([
      'compare',
      example,
      '--set',
      'areaM2=168',
      '--today',
      '2027-03-13',
      '--prices',
      prices,
    ]);
    // Twice the lawn, a tenth more: 739.2 L are 16 x 40 + 4 x 25 L at 129.20; 4.16 kg of seed 67.50.
    expect(compared.out.replace(/\s+/g, ' ')).toContain('Cost of the shopping: 105.10; now: 196.70.');
    const lines = `${JSON.stringify(JSON.parse(readFileSync(example, 'utf8')))}\n`;
    const file = fileOf('lawns.ndjson', lines);
    for (const jobs of ['1', '2']) {
      const { code, out } = run(['batch', file, '--today', '2027-03-13', '--prices', prices, '--jobs', jobs]);
      expect([code, lineOf(out, 'topsoil')?.cost]).toEqual([0, 64.6]);
    }
  });
});

describe('ask --prices', () => {
  const open = JSON.parse(readFileSync(example, 'utf8')).answers;
  const { budget: _, maxLiftKg: __, ...rest } = open;
  const answers = () => fileOf('answers.json', JSON.stringify({ format: 1, answers: rest }));

  it('asks what can be lifted and what it may cost, and sets the list against it', () => {
    const plan = join(newFolder(), 'plan.md');
    const asked = ['ask', '--plain', '--answers', answers(), '--out', plan, '--prices', fileOf('p.csv', CSV)];
    const { err } = run(asked, '25\n50\n\n');
    expect(err).toMatch(/How many kilograms can you lift/);
    expect(readFileSync(plan, 'utf8')).toMatch(/your budget is 50\.00\. \*\*It is 55\.10 over\.\*\*/);
  });

  it('tells a fault in the list before the first question', () => {
    const { code, err } = run(['ask', '--plain', '--prices', fileOf('p.csv', 'material,size\ntopsol,25\n')]);
    expect(code).toBe(3);
    expect(err).not.toMatch(/Question 1/);
    expect(err).toMatch(/line 2/);
  });
});
