/** Loads rules: the bundled pack as built, or a folder with every check. */
import { existsSync, readFileSync } from 'node:fs';
import { indexPack, type Pack, type PackData } from '../rules/pack.js';
import { CliStop, EXIT } from './io.js';
import { BUILT_PACK, RULES_FOLDER } from './paths.js';

export async function loadPack(folder: string | undefined): Promise<Pack> {
  if (folder === undefined && existsSync(BUILT_PACK)) {
    return indexPack(JSON.parse(readFileSync(BUILT_PACK, 'utf8')) as PackData);
  }
  return indexPack(await readChecked(folder ?? RULES_FOLDER));
}

/** @throws {CliStop} exit code 4 with every problem, or 5 when the folder cannot be read */
export async function readChecked(folder: string): Promise<PackData> {
  const [{ explain }, found] = await Promise.all([import('../rules/problem.js'), problemsOf(folder)]);
  // A record that nobody uses is untidy, and no reason to refuse to plan; `rules check` reports it.
  const problems = found.problems.filter(({ code }) => code !== 'unused');
  if (found.data === undefined || problems.length > 0) {
    const lines = problems.map((problem) => `  ${explain(problem)}`);
    throw new CliStop(EXIT.pack, `The rules in ${folder} are not sound:\n${lines.join('\n')}`);
  }
  return found.data;
}

export async function problemsOf(
  folder: string,
): Promise<{ data: PackData | undefined; problems: readonly import('../rules/problem.js').RuleProblem[] }> {
  const [{ readPack }, { checkPack }, { PROGRAM_SIDE }] = await Promise.all([
    import('../rules/read.js'),
    import('../rules/check.js'),
    import('./program-side.js'),
  ]);
  try {
    const { data, problems, fileOf } = readPack(folder);
    return data === undefined
      ? { data, problems }
      : { data, problems: checkPack(data, PROGRAM_SIDE, fileOf) };
  } catch (error) {
    throw new CliStop(EXIT.files, `The rules folder ${folder} cannot be read: ${(error as Error).message}.`);
  }
}
