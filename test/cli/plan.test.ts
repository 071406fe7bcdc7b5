import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newFolder, run } from './run.js';

const example = 'transcripts-examples/mossy-family-lawn/answers.json';
const answersFile = (answers: object): string => {
  const path = join(newFolder(), 'answers.json');
  writeFileSync(path, JSON.stringify({ format: 1, answers }));
  return path;
};

describe('plan FILE', () => {
  it('writes Markdown to standard output and nothing else', () => {
    const { code, out, err } = run(['plan', example, '--today', '2027-03-13']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toBe(readFileSync('transcripts-examples/mossy-family-lawn/plan.md', 'utf8'));
  });

  it('is read in US units when asked, with the label in both, while JSON stays metric', () => {
    const asked = ['plan', example, '--today', '2027-03-13'];
    const us = run([...asked, '--units', 'us']);
    expect([us.code, us.err]).toEqual([0, '']);
    // 84 m2 by 0.09290304 m2 to the square foot is 904; 904 ft2 at 10 mL/m2 are 839.8 mL, by 29.5735 mL to the fluid ounce 28.39.
    expect(us.out).toContain('The lawn is 904 ft²');
    expect(us.out).toContain('28.39 fl oz (839.8 mL)');
    const json = [...asked, '--format', 'json'];
    expect(run([...json, '--units', 'us']).out).toBe(run(json).out);
    expect(run([...asked, '--units', 'metric']).out).toBe(run(asked).out);
    const wrong = run([...asked, '--units', 'stone']);
    expect([wrong.code, wrong.out]).toEqual([2, '']);
    expect(wrong.err).toContain('Allowed: metric, us');
  });

  it('writes JSON with the fields of the contract', () => {
    const { code, out } = run(['plan', example, '--today', '2027-03-13', '--format', 'json']);
    const plan = JSON.parse(out);
    expect(code).toBe(0);
    expect(plan.format).toBe(1);
    expect(plan.madeOn).toBe('2027-03-13');
    for (const key of [
      'pack',
      'lawn',
      'verdict',
      'findings',
      'steps',
      'shopping',
      'assumptions',
      'cautions',
      'sources',
      'notDone',
    ]) {
      expect(plan).toHaveProperty(key);
    }
    for (const key of [
      'id',
      'title',
      'startOn',
      'endOn',
      'earliestOn',
      'latestOn',
      'after',
      'workHours',
      'amounts',
      'cautions',
      'doneWhen',
      'ifNot',
      'sources',
    ]) {
      expect(plan.steps[0]).toHaveProperty(key);
    }
    expect(plan.pack.sha256).toMatch(/^[0-9a-f]{64}$/);
  });

  it('reads standard input for -', () => {
    const { code, out } = run(['plan', '-', '--today', '2027-03-13'], readFileSync(example, 'utf8'));
    expect(code).toBe(0);
    expect(out).toContain('# Lawn plan');
  });

  it('lists every open question together and stops with 3, unless assumptions may stand', () => {
    const file = answersFile({ areaM2: 84, mossFraction: 0.4 });
    const { code, out, err } = run(['plan', file]);
    expect([code, out]).toEqual([3, '']);
    for (const id of ['dog', 'weedFraction', 'bareFraction', 'sunHoursPerDay'])
      expect(err).toContain(`  ${id}: `);
    expect(err).toContain('--assume');
    expect(run(['plan', file, '--assume']).code).toBe(0);
  });

  it('takes "unknown" as an answer', () => {
    const file = answersFile(
      Object.fromEntries(
        Object.keys(
          JSON.parse(readFileSync('transcripts-examples/hardly-anything-known/answers.json', 'utf8')).answers,
        ).map((id) => [id, 'unknown']),
      ),
    );
    const { code, out } = run(['plan', file, '--today', '2027-04-01']);
    expect(code).toBe(0);
    expect(out).toContain('100 m²');
  });

  it('lists every fault of a wrong file in one message, and writes nothing', () => {
    const out = join(newFolder(), 'plan.md');
    const file = answersFile({
      mosFraction: 0.4,
      dog: 'perhaps',
      sunHoursPerDay: 40,
      screwdriver: 'stop',
      areaM2: 84,
      lawnParts: [{ shape: 'circle', diameterM: 3 }],
      startOn: '2027-02-30',
    });
    const { code, err } = run(['plan', file, '--out', out, '--assume']);
    expect(code).toBe(3);
    expect(existsSync(out)).toBe(false);
    expect(err).toContain('6 faults');
    expect(err).toMatch(/"mosFraction" is no question\. Did you mean "mossFraction"\?/);
    expect(err).toMatch(/"dog" is "perhaps"\. Allowed: true, false or "unknown"/);
    expect(err).toMatch(/"sunHoursPerDay" is 40\. Allowed: a number from 0 to 18/);
    expect(err).toMatch(/"screwdriver" is "stop"\..*Did you mean "stops"\?/);
    expect(err).toMatch(/"startOn" is "2027-02-30"/);
    expect(err).toMatch(/"areaM2" and "lawnParts" both give the area/);
  });

  it('calls a weather station by its own name, however it was typed', () => {
    const { out } = run(['plan', answersFile({ place: 'oxford' }), '--assume', '--format', 'json']);
    expect(JSON.parse(out).place).toBe('Oxford');
  });

  it('assumes no area where the parts of the lawn are measured', () => {
    const file = answersFile({ lawnParts: [{ shape: 'rectangle', lengthM: 12, widthM: 7 }] });
    const { out } = run(['plan', file, '--assume', '--today', '2027-04-01', '--format', 'json']);
    const { lawn, assumptions } = JSON.parse(out);
    expect([lawn.areaM2, lawn.areaAssumed]).toEqual([84, false]);
    expect(assumptions.map(({ questionId }: { questionId: string }) => questionId)).not.toContain('areaM2');
  });

  it('refuses shares that add up to more than the lawn', () => {
    const { code, err } = run([
      'plan',
      answersFile({ mossFraction: 0.6, weedFraction: 0.3, bareFraction: 0.3 }),
      '--assume',
    ]);
    expect(code).toBe(3);
    expect(err).toMatch(
      /"mossFraction" is 0\.6, "weedFraction" is 0\.3 and "bareFraction" is 0\.3\. .*cannot be more than the whole/,
    );
  });

  it('never writes over a file unasked', () => {
    const out = join(newFolder(), 'plan.md');
    writeFileSync(out, 'mine');
    expect(run(['plan', example, '--today', '2027-03-13', '--out', out]).code).toBe(5);
    expect(readFileSync(out, 'utf8')).toBe('mine');
    expect(run(['plan', example, '--today', '2027-03-13', '--out', out, '--force']).code).toBe(0);
    expect(readFileSync(out, 'utf8')).toContain('# Lawn plan');
  });

  it.each([
    [['plan', 'no-such-file.json'], 5, 'there is no such file'],
    [['plan'], 2, 'takes one answers file'],
    [['plan', example, 'extra'], 2, '"extra" is one too many'],
    [['ask', 'extra'], 2, '"extra" is one too many'],
    [['--plain', 'extra'], 2, '"extra" is one too many'],
    [['reckon', '--list', 'seed'], 2, 'takes no words'],
    [['rules', 'check', 'rules', 'extra'], 2, '"extra" is one word too many'],
    [['help', 'plan', 'ask'], 2, 'one command'],
    [['plan', example, '--tody', '2027-01-01'], 2, 'Did you mean --today?'],
    [['plan', example, '--today', '2027-02-30'], 2, 'Give a date that exists'],
    [['plan', example, '--format', 'pdf'], 2, 'Allowed: md, json, ics, html, svg, csv'],
    [['plna'], 2, 'Did you mean "plan"?'],
    [['plan', example, '--pack', 'test'], 4, 'not sound'],
    [['plan', example, '--pack', 'no-such-folder'], 5, 'cannot be read'],
  ])('%j exits with %i and says what to do', (args, code, says) => {
    const ran = run(args);
    expect(ran.code).toBe(code);
    expect(ran.err).toContain(says);
    expect(ran.out).toBe('');
  });
});
