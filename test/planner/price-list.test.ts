import { describe, expect, it } from 'vitest';
import { readPriceRows } from '../../src/planner/price-list.js';
import { pack } from './any-lawn.js';

const read = (...cells: Record<string, string>[]) =>
  readPriceRows(
    cells.map((each, index) => ({ at: `line ${index + 2}`, cells: each })),
    pack,
  );

describe('a price list', () => {
  it('gives packs in the unit of the material, exactly', () => {
    const result = read(
      { material: 'seed-ryegrass-mix', size: '2.5', unit: 'kg', price: '29', stock: '3' },
      { material: 'seed-ryegrass-mix', size: '1', unit: 'lb', price: '7,5' },
      { material: 'topsoil', size: '0.75', unit: 'ft3', price: '4.25' },
      { material: 'moss-product', size: '1', unit: 'L', price: '' },
    );
    expect(result.ok && Object.fromEntries(result.prices.packs)).toEqual({
      // 453.59237 g to the pound, 28.316846592 L to the cubic foot: NIST Handbook 44, appendix C.
      'seed-ryegrass-mix': [
        { size: 2500, price: 2900, stock: 3 },
        { size: 453.59237, price: 750, stock: null },
      ],
      topsoil: [{ size: 21.237634944, price: 425, stock: null }],
      'moss-product': [{ size: 1000, price: null, stock: null }],
    });
  });

  it('adds up what is in the shed, and takes hire and price of a machine together', () => {
    const result = read(
      { material: 'starter-feed', have: '500', unit: 'g' },
      { material: 'starter-feed', have: '0.5', unit: 'kg' },
      { material: 'scarifier-electric', price: '38', how: 'hire' },
      { material: 'scarifier-electric', price: '120.00', how: 'buy' },
      { material: 'wheelbarrow', have: '1' },
    );
    expect(
      result.ok && [Object.fromEntries(result.prices.have), Object.fromEntries(result.prices.machines)],
    ).toEqual([
      { 'starter-feed': 1000, wheelbarrow: 1 },
      { 'scarifier-electric': { hirePerDay: 3800, buy: 12_000 } },
    ]);
  });

  it.each<[Record<string, string>, RegExp]>([
    [
      { material: 'topsol', size: '25', unit: 'L', price: '4' },
      /line 2: there is no material "topsol"\. Did you mean "topsoil"/,
    ],
    [{ material: '', size: '25' }, /line 2: material is empty/],
    [{ material: 'topsoil', size: 'big', unit: 'L' }, /line 2: size is "big"/],
    [{ material: 'topsoil', size: '0', unit: 'L' }, /line 2: size is "0"\. Give a number above 0/],
    [{ material: 'topsoil', size: '-5', unit: 'L' }, /size is "-5"/],
    [{ material: 'topsoil', size: '25', unit: 'kg' }, /unit is "kg"\. Allowed for topsoil: mL, L/],
    [{ material: 'moss-product', size: '1', unit: 'gal' }, /US gal or UK gal/],
    [{ material: 'topsoil', size: '25', unit: 'constructor' }, /unit is "constructor"/],
    [{ material: 'topsoil', size: '25', price: '£4' }, /price is "£4"\. Give an amount such as 4\.50/],
    [{ material: 'topsoil', size: '25', price: '4.999' }, /price is "4\.999"/],
    [{ material: 'topsoil', size: '25', price: '-1' }, /price is "-1"/],
    [{ material: 'topsoil', size: '25', stock: 'lots' }, /stock is "lots"/],
    [{ material: 'topsoil', price: '4' }, /neither size nor have/],
    [{ material: 'topsoil', have: '10', price: '4' }, /price has no size/],
    [{ material: 'topsoil', size: '25', how: 'hire' }, /how is for machines/],
    [{ material: 'wheelbarrow', price: '50', how: 'steal' }, /how is "steal"\. Allowed: hire, buy/],
    [{ material: 'wheelbarrow', size: '1' }, /size is for what comes in packs/],
    [{ material: 'wheelbarrow' }, /neither price nor have/],
    [
      { material: 'topsoil', size: '25', colour: 'brown' },
      /there is no column "colour"\. Allowed: material, size/,
    ],
    [{ material: '__proto__', size: '25' }, /there is no material "__proto__"/],
  ])('refuses %j, by line', (cells, says) => {
    const result = read(cells);
    expect(result.ok ? [] : result.faults.join('\n')).toMatch(says);
  });

  it('tells every fault of every line and reads nothing', () => {
    const result = read(
      { material: 'topsoil', size: 'x', price: 'y', stock: 'z' },
      { material: 'topsoil', size: '25', unit: 'L', price: '4' },
      { material: 'nothing' },
    );
    expect(result.ok ? 0 : result.faults.map((fault) => fault.slice(0, 6))).toEqual([
      'line 2',
      'line 2',
      'line 2',
      'line 4',
    ]);
  });
});
