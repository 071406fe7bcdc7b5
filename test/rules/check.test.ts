import { describe, expect, it } from 'vitest';
import { PROGRAM_SIDE } from '../../src/cli/program-side.js';
import { checkPack } from '../../src/rules/check.js';
import type { PackData } from '../../src/rules/pack.js';
import { readPack } from '../../src/rules/read.js';
import { type Json, problemsWith, told, withField } from './broken-pack.js';

describe('the bundled rules', () => {
  it('have no problem', () => {
    const { data, problems, placeOf } = readPack('rules');
    expect(told(problems)).toBe('');
    expect(told(checkPack(data as PackData, PROGRAM_SIDE, placeOf))).toBe('');
  });
});

describe('a broken pack', () => {
  it.each<[string, string, (content: never) => unknown, string, RegExp]>([
    ['broken JSON', 'pack.json', () => '{', 'not-json', /^pack\.json: this is not JSON/],
    [
      'a missing file',
      'verdicts.json',
      () => undefined,
      'missing-file',
      /^verdicts\.json: the file is missing/,
    ],
    [
      'a wrong shape',
      'findings/mossy.json',
      withField('leadsTo', 'scarify'),
      'shape',
      /^findings\/mossy\.json at \/leadsTo/,
    ],
    ['a step without its phase', 'steps/soil-bed.json', withField('phase', undefined), 'shape', /at \/phase/],
    [
      'a phase that is none',
      'steps/soil-bed.json',
      withField('phase', 'levle'),
      'unknown-id',
      /no phase "levle"\. Did you mean "level"\?/,
    ],
    [
      'a step that serves nothing there is',
      'steps/soil-bed.json',
      withField('serves', ['sowing']),
      'unknown-id',
      /no step "sowing"/,
    ],
    [
      'a step listed before what its phase puts first',
      'steps/soil-bed.json',
      withField('order', 41),
      'order',
      /"soil-bed" stands in the list before "low-cut", but its phase "level" comes after "cut"/,
    ],
    [
      'a step listed before what it waits for',
      'steps/catch-test.json',
      withField('order', 4),
      'order',
      /"catch-test" stands in the list before "wait-for-season", but it waits for that one/,
    ],
    ['a stray key', 'findings/mossy.json', withField('note', 'x'), 'shape', /note/],
    [
      'an unknown source',
      'findings/mossy.json',
      withField('sources', [{ id: 'umn-renovating-law', at: 'x' }]),
      'unknown-id',
      /no source "umn-renovating-law"\. Did you mean "umn-renovating-lawn"\?/,
    ],
    [
      'an unknown step',
      'findings/mossy.json',
      withField('leadsTo', ['scarfy']),
      'unknown-id',
      /no step "scarfy"\. Did you mean "scarify"\?/,
    ],
    [
      'an unknown caution',
      'steps/cut.json',
      withField('cautions', ['mower-hand']),
      'unknown-id',
      /no caution "mower-hand"/,
    ],
    [
      'an unknown formula',
      'steps/cut.json',
      withField('labour', { formula: 'machine-hour', inputs: {} }),
      'unknown-id',
      /no formula "machine-hour"/,
    ],
    [
      'a formula without an input',
      'steps/cut.json',
      withField('labour', { formula: 'hand-hours', inputs: {} }),
      'no-input',
      /^steps\/cut\.json at \/labour\/inputs: the formula "hand-hours" needs the input "areaM2"/,
    ],
    [
      'an answer implied by a question that is not there',
      'questions/kit.json',
      (questions: Json[]) =>
        questions.map((each) =>
          each.impliedBy === undefined ? each : { ...each, impliedBy: [{ answered: 'dogg', value: 'dry' }] },
        ),
      'unknown-id',
      /\/impliedBy\/0\/answered \(question [A-Za-z]+\): there is no question "dogg"\. Did you mean "dog"\?/,
    ],
    [
      'an unknown name in a condition',
      'findings/mossy.json',
      withField('when', { '>=': [{ var: 'mosFraction' }, 0] }),
      'unknown-name',
      /reads "mosFraction".*Did you mean "mossFraction"\?/,
    ],
    [
      'a slot that names nothing',
      'steps/fork.json',
      withField('purpose', 'Push it in {figures.fork-dept-mm}.'),
      'unknown-name',
      /fork-dept-mm.*Did you mean "figures\.fork-depth-mm"\?/,
    ],
    [
      'a slot of no kind that is filled',
      'steps/fork.json',
      withField('purpose', 'Push it in {figure.fork-depth-mm}.'),
      'unknown-name',
      /reads "figure\.fork-depth-mm".*Did you mean "figures\.fork-depth-mm"\?/,
    ],
    [
      'a slot for an answer',
      'steps/fork.json',
      withField('purpose', 'Push it in {thatchDepthMm}.'),
      'unknown-name',
      /reads "thatchDepthMm"/,
    ],
    [
      'a missing climate',
      'climate/uk-stations.json',
      () => undefined,
      'missing-file',
      /uk-stations\.json: the file/,
    ],
    [
      'a finding that rests on itself',
      'findings/mossy.json',
      withField('when', { var: 'findings.mossy' }),
      'circle',
      /^findings\/mossy\.json: .*findings\.mossy -> findings\.mossy/,
    ],
    [
      'a question that hangs on its own answer',
      'questions/safety.json',
      (questions: Json[]) =>
        questions.map((each) => (each.id === 'dog' ? { ...each, askWhen: { var: 'dog' } } : each)),
      'circle',
      /^questions\/safety\.json at \/\d+ \(question dog\): .*circle: dog -> dog/,
    ],
    [
      'a step that waits for itself',
      'steps/cut.json',
      withField('after', [{ step: 'cut', minDays: 0, why: 'x' }]),
      'circle',
      /^steps\/cut\.json: these depend on each other in a circle: cut -> cut\. Break it/,
    ],
    [
      'steps that wait for each other, the long way round',
      'steps/cut.json',
      (step: Json) => ({
        ...step,
        after: [...(step.after as Json[]), { step: 'sow', minDays: 0, why: 'x' }],
      }),
      'circle',
      /^steps\/[a-z-]+\.json: .*in a circle: .*cut -> .*sow -> /,
    ],
    [
      'a question that no example can answer',
      'findings/mossy.json',
      (finding: { examples: Json }) => ({
        ...finding,
        examples: { ...finding.examples, found: [{ mosFraction: 0.5 }] },
      }),
      'unknown-id',
      /^findings\/mossy\.json at \/examples\/found\/0\/mosFraction: there is no question "mosFraction"/,
    ],
    [
      'a last verdict with a condition',
      'verdicts.json',
      (verdicts: Json[]) => verdicts.map((each) => ({ ...each, when: { var: 'facts.sows' } })),
      'last-verdict',
      /^verdicts\.json at \/\d+\/when \(verdict [a-z-]+\): the last verdict must always be left/,
    ],
    [
      'a fault under an operator whose name holds a slash',
      'findings/mossy.json',
      withField('when', { '>': [{ '/': [{ var: 'mosFraction' }, 1] }, 0] }),
      'unknown-name',
      /at \/when\/>\/0\/~1\/0\/var: this reads "mosFraction"/,
    ],
    [
      'a fault under an operand that stands alone',
      'findings/mossy.json',
      withField('when', { '!': { var: 'mosFraction' } }),
      'unknown-name',
      /at \/when\/!\/var: this reads "mosFraction"/,
    ],
    [
      'a key that stands twice',
      'findings/mossy.json',
      (finding: Json) => JSON.stringify(finding).replace('{', '{"why": "One.",'),
      'doubled-key',
      /^findings\/mossy\.json: the key "why" stands twice/,
    ],
    ['an id used twice', 'steps/cut.json', withField('id', 'clear'), 'twice', /"clear" is already in/],
  ])('%s is told with file and remedy', (_, file, change, code, says) => {
    const problems = problemsWith(file, change);
    expect(problems.map((problem) => problem.code)).toContain(code);
    expect(told(problems)).toMatch(says);
  });

  it('tells a published figure without a source', () => {
    const problems = problemsWith('figures/cover.json', (figures: Json[]) => [
      { ...figures[0], sources: [] },
      ...figures.slice(1),
    ]);
    expect(told(problems)).toContain('a published figure needs a source');
  });

  it('tells a figure whose typical value lies outside its range', () => {
    const problems = problemsWith('figures/cover.json', (figures: Json[]) => [
      { ...figures[0], typical: 99 },
      ...figures.slice(1),
    ]);
    expect(told(problems)).toContain('must lie inside the range');
  });

  it('tells a deciding question that assumes nothing', () => {
    const problems = problemsWith('questions/look.json', (questions: Json[]) =>
      questions.map((question) =>
        question.id === 'mossFraction'
          ? { ...question, dontKnow: { ...(question.dontKnow as Json), assume: null } }
          : question,
      ),
    );
    expect(problems.map(({ code }) => code)).toContain('unassumed');
    expect(told(problems)).toContain('"mossFraction"');
  });

  const assuming = (id: string, assume: unknown) => (questions: Json[]) =>
    questions.map((question) =>
      question.id === id ? { ...question, dontKnow: { ...(question.dontKnow as Json), assume } } : question,
    );

  it('tells an assumption that is no answer to its question', () => {
    const wrongKind = problemsWith('questions/look.json', assuming('mossFraction', 'none'));
    expect(told(wrongKind)).toMatch(
      /at \/\d+\/dontKnow\/assume \(question mossFraction\): a number is wanted here/,
    );
    const noOption = problemsWith('questions/dig.json', assuming('soilTexture', 'chalk'));
    expect(told(noOption)).toMatch(/"chalk" is no answer of "soilTexture"\. Allowed: sand, /);
    const hidden = { if: [{ var: 'dog' }, 'loam', 'chalk'] };
    expect(told(problemsWith('questions/dig.json', assuming('soilTexture', hidden)))).toContain('"chalk"');
  });

  it('tells a source that nobody cites', () => {
    const problems = problemsWith('sources.json', (sources: Json[]) => [
      ...sources,
      { ...sources[0], id: 'nobody-cites-this' },
    ]);
    expect(told(problems)).toContain('nothing uses the source "nobody-cites-this"');
  });

  it('tells everything at once', () => {
    const problems = problemsWith('findings/mossy.json', (finding: Json) => ({
      ...finding,
      leadsTo: ['scarfy'],
      sources: [{ id: 'no-such', at: 'x' }],
    }));
    expect(problems.filter(({ code }) => code === 'unknown-id').length).toBe(2);
  });
});
