/** Loads the training cases: the bundled ones as built, or those of a folder with every check. */
import { existsSync, readFileSync } from 'node:fs';
import type { Pack } from '../rules/pack.js';
import type { RuleProblem } from '../rules/problem.js';
import type { CaseBook } from '../rules/schema-case.js';
import { CliStop, EXIT } from './io.js';
import { BUILT_CASES, RULES_FOLDER } from './paths.js';

export async function loadCases(folder: string | undefined, pack: Pack): Promise<CaseBook> {
  if (folder === undefined && existsSync(BUILT_CASES))
    return JSON.parse(readFileSync(BUILT_CASES, 'utf8')) as CaseBook;
  return readCheckedCases(folder ?? RULES_FOLDER, pack);
}

/** @throws {CliStop} exit code 4 with every problem */
export async function readCheckedCases(folder: string, pack: Pack): Promise<CaseBook> {
  const { book, problems } = await casesIn(folder, pack);
  if (problems.length === 0 && book !== undefined) return book;
  const { explain } = await import('../rules/problem.js');
  const lines = problems.map((problem) => `  ${explain(problem)}`);
  throw new CliStop(
    EXIT.pack,
    lines.length === 0
      ? `There are no training cases in ${folder}/cases. A pack for drills needs marking.json there, and a file for each case.`
      : `The training cases in ${folder} are not sound:\n${lines.join('\n')}`,
  );
}

/** The cases of a folder and their problems; without a sound pack only their shapes are looked at. */
export async function casesIn(
  folder: string,
  pack: Pack | undefined,
): Promise<{ book: CaseBook | undefined; problems: readonly RuleProblem[] }> {
  const [{ readCases }, { checkBook }] = await Promise.all([
    import('../rules/read-cases.js'),
    import('../training/check-case.js'),
  ]);
  const { book, problems, fileOf } = readCases(folder);
  if (pack === undefined || book === undefined || problems.length > 0) return { book, problems };
  return {
    book,
    problems: checkBook(book, pack).map(({ caseId, says }) => ({
      code: 'case',
      file: fileOf(caseId),
      pointer: '',
      id: caseId,
      found: says,
    })),
  };
}
