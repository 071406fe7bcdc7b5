import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { explain } from '../../src/rules/problem.js';
import { readPack } from '../../src/rules/read.js';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'seedbed-read-'));
  cpSync('rules', folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

const write = (file: string, text: string): void => writeFileSync(join(folder, file), text);
const textOf = (file: string): string => readFileSync(join(folder, file), 'utf8');
const told = (): string[] => readPack(folder).problems.map(explain);

describe('a pack that is read', () => {
  it('has the same hash wherever it lies, and another once a byte of it differs', () => {
    const here = readPack('rules').data?.sha256;
    expect(readPack(folder).data?.sha256).toBe(here);
    expect(here).toMatch(/^[0-9a-f]{64}$/);
    write('outlook.json', `${textOf('outlook.json')} `);
    expect(readPack(folder).data?.sha256).not.toBe(here);
  });

  it('is the same whether records stand in one list or in a file each', () => {
    const list = JSON.parse(textOf('materials/hire.json')) as { id: string }[];
    rmSync(join(folder, 'materials/hire.json'));
    mkdirSync(join(folder, 'materials/hired'));
    for (const record of list) write(`materials/hired/${record.id}.json`, JSON.stringify(record));
    const { data, problems, placeOf } = readPack(folder);
    const idsOf = (records: readonly { id: string }[] | undefined) => records?.map(({ id }) => id).sort();
    expect(problems).toEqual([]);
    expect(idsOf(data?.materials)).toEqual(idsOf(readPack('rules').data?.materials));
    const first = list[0]?.id ?? '';
    expect(placeOf('material', first)).toEqual({ file: `materials/hired/${first}.json`, pointer: '' });
  });

  it('says in which file each record stands', () => {
    const { placeOf } = readPack(folder);
    expect(placeOf('finding', 'mossy', '/when')).toEqual({ file: 'findings/mossy.json', pointer: '/when' });
    expect(placeOf('question', 'dog')).toMatchObject({
      file: 'questions/safety.json',
      record: 'question dog',
    });
    expect(placeOf('source', 'no-such-source').file).toBe('source no-such-source');
  });
});

describe('a pack that cannot be read', () => {
  it('gives no data, and every problem of every file at once', () => {
    write('outlook.json', '[');
    write('findings/mossy.json', '{"id": "Mossy"}');
    rmSync(join(folder, 'not-done.json'));
    const { data, problems } = readPack(folder);
    expect(data).toBeUndefined();
    expect(new Set(problems.map(({ file }) => file))).toEqual(
      new Set(['outlook.json', 'findings/mossy.json', 'not-done.json']),
    );
    expect(new Set(problems.map(({ code }) => code))).toEqual(new Set(['not-json', 'shape', 'missing-file']));
  });

  it('points to the record in a list, and to the field in it', () => {
    const cautions = JSON.parse(textOf('cautions/body.json')) as Record<string, unknown>[];
    write(
      'cautions/body.json',
      JSON.stringify([...cautions, { ...cautions[0], id: 'x', severity: 'grave' }]),
    );
    expect(told()).toHaveLength(1);
    expect(told()[0]).toMatch(new RegExp(`^cautions/body\\.json at /${cautions.length}/severity: `));
    expect(told()[0]).toMatch(/note.*warning.*danger/);
  });

  it('says in which file an id was already used, at the second place', () => {
    const mossy = textOf('findings/mossy.json');
    write('findings/zz-mossy.json', mossy);
    expect(told()).toEqual([
      expect.stringContaining(
        'findings/zz-mossy.json: the finding "mossy" is already in findings/mossy.json. One id has one meaning',
      ),
    ]);
  });

  it.each(['pack.json', 'sources.json', 'facts.json', 'verdicts.json', 'climate/uk-stations.json'])(
    'says that %s is missing, and only that',
    (file) => {
      rmSync(join(folder, file));
      expect(told()).toEqual([expect.stringContaining(`${file}: the file is missing`)]);
    },
  );

  it('is no pack at all when the folder is not there: that is for the caller to say', () => {
    expect(() => readPack(join(folder, 'nowhere'))).toThrow(/ENOENT/);
  });

  it('keeps out keys that would reach into every object', () => {
    const mossy = textOf('findings/mossy.json').replace('{', '{"__proto__": {"polluted": true}, ');
    write('findings/mossy.json', mossy);
    readPack(folder);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});
