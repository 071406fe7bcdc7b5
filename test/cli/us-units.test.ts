/** `--units us` in every command: it words what is read, leaves data metric, and is refused where nothing is worded. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newFolder, run } from './run.js';

const A = 'transcripts-examples/mossy-family-lawn/answers.json';
const DAY = ['--today', '2027-03-13'];
const US = ['--units', 'us'];

/** A metric measure; a label's own stands in brackets behind its US reading. */
const METRIC = /\d[\s\u00a0](?:mm|cm|m|km|m2|m²|g|kg|mL|L|°C|g\/m²|mL\/m²|L\/m²|g\/m2|mL\/m2)(?![\w²/])/;
const read = (text: string): string =>
  text.replace(/\s+/g, ' ').replace(/\([\d.]+ (?:mL|g|L)(?:\/m.)?\)/g, '');

describe('--units us', () => {
  it('words a comparison: answers, amounts, reasons', () => {
    const set = ['--set', 'thatchDepthMm=8', 'areaM2=140'];
    const { code, out, err } = run(['compare', A, ...set, ...DAY, ...US, '--width', '200']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('thatch depth: 11/16 in; now: 5/16 in.');
    expect(out).toContain('area: 904 ft²; now: 1507 ft².');
    expect(out).toMatch(/Topsoil: [\d.]+ ft³; now: [\d.]+ ft³\. By area\. 1507 ft² ×/);
    expect(read(out)).not.toMatch(METRIC);
  });

  it('changes no more and no less than in metric, and leaves the JSON metric', () => {
    const args = ['compare', A, '--set', 'thatchDepthMm=8', 'areaM2=140', ...DAY, '--width', '400'];
    const heads = (text: string): string[] =>
      text
        .split('\n')
        .map((line) => (line.startsWith('- ') ? (line.split(/: |, /)[0] ?? '') : line.slice(0, 20)));
    expect(heads(run([...args, ...US]).out)).toEqual(heads(run(args).out));
    const json = [...args, '--format', 'json'];
    expect(run([...json, ...US]).out).toBe(run(json).out);
  });

  it('words how a plan came to what it says', () => {
    const explain = (name: string): string => run(['plan', A, ...DAY, ...US, '--explain', name]).out;
    expect(explain('thick-thatch')).toContain('thatch depth: 11/16 in (the same with above 1/2 in)');
    expect(explain('core')).toContain('thatch depth were 1 in or more and not 11/16 in');
    expect(explain('seed-ryegrass-mix')).toMatch(/4\.17 lb\. 904 ft² ×[\s\S]*3\.07 lb\/1000 ft², published/);
    for (const name of ['thick-thatch', 'core', 'topsoil', 'starter-feed', 'scarify', 'verdict'])
      expect(read(explain(name))).not.toMatch(METRIC);
  });

  it('says why a question is asked, and how and why not after the session', () => {
    const { thatchDepthMm: _, ...rest } = JSON.parse(readFileSync(A, 'utf8')).answers;
    const file = join(newFolder(), 'answers.json');
    writeFileSync(file, JSON.stringify({ format: 1, answers: rest }));
    const asked = run(
      ['ask', '--plain', '--answers', file, ...US, '--width', '200'],
      'why\n11/16\n\nwhy not core\nhow topsoil\n\n',
    );
    const said = asked.out + asked.err;
    expect(said).toMatch(/1\/2 in/);
    expect(said).toContain('thatch depth were 1 in or more and not 11/16 in');
    expect(said).toMatch(/Topsoil: 11\.9 ft³/);
  });

  it('words the visits to a plan, its log and how to come back', () => {
    const folder = newFolder();
    const [plan, out, log] = ['plan.json', 'now.md', 'log.md'].map((name) => join(folder, name)) as [
      string,
      string,
      string,
    ];
    run(['plan', A, ...DAY, '--format', 'json', '--out', plan]);
    const told = ['treat', '27 march', 'used it all', ''].join('\n');
    const at = ['--plain', '--today', '2027-04-01', '--width', '300'];
    const ran = run(['follow', plan, ...at, ...US, '--out', out, '--log', log], told);
    expect(ran.code).toBe(0);
    expect(ran.err).toContain('Planned: Liquid moss killer for lawns 28.39 fl oz (839.8 mL).');
    expect(ran.err).toContain('plan.session.json --units us');
    expect(readFileSync(out, 'utf8')).toMatch(/904 ft²/);
    expect(readFileSync(out, 'utf8')).toMatch(/\d ft³/);
  });

  it('offers the plan of the example in US units, and says that its answers were typed in metric ones', () => {
    const { code, out, err } = run(US);
    expect(code).toBe(0);
    expect(err).toContain('typed in metric units; the plan is in US units');
    expect(out).toMatch(/904 ft²/);
  });

  it('words a drill from the handout to the marks', () => {
    const handout = run(['drill', 'kiln-lane', '--handout', ...US]).out;
    expect(handout).toContain('one load of the 2.11 gal sprayer');
    const key = run(['drill', 'kiln-lane', '--key', ...US]).out;
    expect(key).toContain('By tape 36.1 ft by 23 ft, with a round bed 6.56 ft across.');
    expect(key).toContain('47.1 fl oz/1000 ft² (15 mL/m²)');
    const lines = ['', '', '', '', '', '', '', '', '', '', '', '', '', '', '', ''];
    const finish = run(['drill', 'kiln-lane', '--mode', 'finish', '--plain', ...US], lines.join('\n'));
    expect(finish.err + finish.out).toContain('without one I take square feet');
  });

  it('keeps a drill in US units apart from the same one in metric', () => {
    const state = newFolder();
    const left = run(['drill', 'spongy-green', '--plain', ...US], 'dog\n', state);
    expect(left.err.replace(/\s+/g, ' ')).toContain('drill spongy-green --units us --plain --resume');
    expect(run(['drill', 'spongy-green', '--plain'], 'dog\n', state).err).not.toContain('unfinished drill');
    expect(run(['drill', 'spongy-green', '--plain', ...US], 'dog\n', state).err).toContain(
      'unfinished drill',
    );
  });

  it.each([
    [['batch', A], 'A plan as JSON is metric always'],
    [['rules', 'check'], 'Rules are written in metric units'],
    [['completion', 'bash'], 'The script is the same in all units'],
  ])('is refused by %j, which says why in its help too', (args, why) => {
    const { code, out, err } = run([...args, ...US]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(`--units is "us". Allowed: metric. ${why}`);
    expect(run([args[0] as string, '--help']).out.toLowerCase()).toContain(why.toLowerCase());
    expect(run([...args, '--units', 'metric']).code).toBe(run(args).code);
  });

  it.each(['ask', 'plan', 'compare', 'follow', 'drill', 'reckon'])('stands in the help of %s', (name) => {
    expect(run([name, '--help']).out).toMatch(/--units UNITS +metric, us; /);
  });
});
