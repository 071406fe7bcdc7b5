/** The layers of the house: who may import whom, and which few files may touch the world. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const files = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
  .map((file) => ({
    file,
    folder: file.split('/')[0] as string,
    text: readFileSync(join('src', file), 'utf8'),
  }));

/** Folder to the folders of ours that it may import, beside its own. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  base: [],
  rules: ['base'],
  agronomy: ['base'],
  diagnosis: ['base', 'rules'],
  interview: ['base', 'rules', 'agronomy'],
  planner: ['base', 'rules', 'agronomy', 'interview', 'diagnosis'],
  reckon: ['base', 'agronomy'],
  document: ['base', 'planner', 'rules', 'training'],
  training: ['base', 'rules', 'agronomy', 'interview', 'diagnosis', 'planner'],
  session: ['base', 'interview', 'rules', 'planner'],
  terminal: ['base', 'interview', 'rules', 'document'],
  cli: [
    'base',
    'rules',
    'agronomy',
    'interview',
    'diagnosis',
    'planner',
    'reckon',
    'document',
    'training',
    'session',
    'terminal',
  ],
};

/** Only these may reach for files, the clock, the process or the screen. */
const IMPURE = [
  /^cli\//,
  /^terminal\//,
  /^session\/(store|lock|write-file)\.ts$/,
  /^rules\/read(-cases)?\.ts$/,
];
const WORLD =
  /from 'node:(?!zlib)|\bDate\.now\(|new Date\(\)|Math\.random\(|\bprocess\.|\bconsole\.|\bglobalThis\./;

const importsOf = (text: string): string[] =>
  [...text.matchAll(/(?:from|import\()\s*'(\.[^']+)'/g)].map((match) => match[1] as string);

/** Files are written by one function; a lock is one that must not be there yet, and the built pack is no user's file. */
const WRITES = /\b(writeFile(Sync)?|appendFile(Sync)?|createWriteStream|copyFile(Sync)?|cp(Sync)?)\(/;
const MAY_WRITE = /^(session\/(write-file|lock)|cli\/build-pack)\.ts$/;

describe('the source tree', () => {
  it.each(files.filter(({ file }) => !MAY_WRITE.test(file)))(
    '$file writes through the one writer',
    ({ text }) => {
      expect(text).not.toMatch(WRITES);
    },
  );

  it('is really read by these checks', () => {
    expect(files.length).toBeGreaterThan(80);
    expect(files.flatMap(({ text }) => importsOf(text)).length).toBeGreaterThan(200);
  });

  it.each(files)('$file imports only from layers below', ({ file, folder, text }) => {
    const allowed = MAY_IMPORT[folder];
    expect(allowed, `src/${folder} is no layer: add it to the table and to DEVELOPERS.md`).toBeDefined();
    for (const path of importsOf(text)) {
      const target = join('src', file, '..', path).split('/')[1] as string;
      expect([folder, ...(allowed ?? [])], `${file} imports ${path}`).toContain(target);
    }
  });

  it.each(files.filter(({ file }) => !IMPURE.some((pattern) => pattern.test(file))))(
    '$file touches no file, clock, process or screen',
    ({ text }) => {
      expect(text).not.toMatch(WORLD);
    },
  );

  it.each(files)('$file stays under 310 lines', ({ text }) => {
    expect(text.split('\n').length).toBeLessThanOrEqual(310);
  });
});
