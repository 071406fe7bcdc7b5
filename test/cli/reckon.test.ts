import { describe, expect, it } from 'vitest';
import { run } from './run.js';

describe('reckon', () => {
  it('answers first, then shows the equation with its numbers, and the source', () => {
    const { code, out } = run(['reckon', 'seed', 'areaM2=84', 'rateGPerM2=30']);
    expect(code).toBe(0);
    expect(out.split('\n')[0]).toBe('2520 g');
    expect(out).toContain('84 m2 × 30 g/m2 = 2520 g');
    expect(out).toContain('Source: Seeding rates');
  });

  it('gives JSON with value and unit', () => {
    const { code, out } = run(['reckon', 'top-dressing', 'areaM2=150', 'depthMm=6', '--format', 'json']);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ name: 'top-dressing', value: 900, unit: 'L' });
  });

  it('lists every name with its keys', () => {
    const { code, out } = run(['reckon', '--list']);
    expect(code).toBe(0);
    for (const name of ['area-offsets', 'germination', 'plug-cover', 'water-use'])
      expect(out).toContain(`${name}: `);
  });

  it('adds US units on request', () => {
    // 1 lb is 453.59237 g, exactly.
    expect(run(['reckon', 'seed', 'areaM2=45.359237', 'rateGPerM2=10', '--units', 'us']).out).toMatch(
      /\(1 lb\)/,
    );
  });

  it.each<[string[], number, RegExp]>([
    [['reckon'], 2, /takes a name/],
    [['reckon', 'sed'], 2, /Did you mean "seed"/],
    [['reckon', 'seed', 'areaM2'], 2, /no key=value/],
    [['reckon', 'seed', 'areaM2=84'], 2, /"rateGPerM2" is missing/],
    [['reckon', 'seed', 'areaM2=-1', 'rateGPerM2=1'], 3, /areaM2/],
    [['reckon', 'area-outline', 'pointsM=0,0 2,2 2,0 0,2'], 3, /cross/],
    [['reckon', 'seed', 'areaM2=1', 'rateGPerM2=1', '--format', 'xml'], 2, /Allowed: text, json/],
  ])('%j exits with %i', (args, code, says) => {
    const ran = run(args);
    expect([ran.code, ran.out]).toEqual([code, '']);
    expect(ran.err).toMatch(says);
  });
});
