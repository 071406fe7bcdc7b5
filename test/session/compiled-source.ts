/** Today's source as JavaScript in a folder of its own, for tests that start a real process. */
import { mkdirSync, mkdtempSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import ts from 'typescript';

/** The folder with these files and all that they import; no build is needed before. The caller removes it. */
export function compiledSource(files: readonly string[]): string {
  const folder = mkdtempSync(join(tmpdir(), 'compiled-'));
  symlinkSync(resolve('node_modules'), join(folder, 'node_modules'));
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
  const seen = new Set<string>();
  for (const file of files) compile(file, { folder, seen });
  return folder;
}

function compile(file: string, into: { readonly folder: string; readonly seen: Set<string> }): void {
  if (into.seen.has(file)) return;
  into.seen.add(file);
  const { outputText } = ts.transpileModule(readFileSync(file, 'utf8'), {
    compilerOptions: {
      target: ts.ScriptTarget.ES2023,
      module: ts.ModuleKind.ESNext,
      verbatimModuleSyntax: true,
    },
  });
  const target = join(into.folder, relative('src', file).replace(/\.ts$/, '.js'));
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, outputText);
  for (const [, path] of outputText.matchAll(/(?:from |import\()'(\.[^']+)'/g))
    compile(join(dirname(file), (path as string).replace(/\.js$/, '.ts')), into);
}
