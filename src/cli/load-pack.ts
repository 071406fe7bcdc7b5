/** Loads rules: the bundled pack as built, or a folder with every check. */
import { existsSync, readFileSync } from 'node:fs';
import { indexPack, type Pack, type PackData } from '../rules/pack.js';
import type { RuleProblem } from '../rules/problem.js';
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

/** A pack as read, with everything that is wrong with it. */
interface FoundPack {
  readonly data: PackData | undefined;
  readonly problems: readonly RuleProblem[];
}

/** Every problem of a pack; the examples of its findings are run once the rest is sound. */
export async function problemsOf(folder: string): Promise<FoundPack> {
  const [{ readPack }, { checkPack }, { PROGRAM_SIDE }] = await Promise.all([
    import('../rules/read.js'),
    import('../rules/check.js'),
    import('./program-side.js'),
  ]);
  const { data, problems, placeOf } = readFolder(folder, readPack);
  if (data === undefined) return { data, problems };
  const found = checkPack(data, PROGRAM_SIDE, placeOf);
  if (found.some(({ code }) => code !== 'unused')) return { data, problems: found };
  const [{ checkExamples }, { answersContext }] = await Promise.all([
    import('../planner/check-examples.js'),
    import('./answers-context.js'),
  ]);
  const pack = indexPack(data);
  const examples = checkExamples(pack, placeOf, (today) => answersContext(pack, today));
  return { data, problems: [...found, ...examples] };
}

function readFolder<Read>(folder: string, readPack: (folder: string) => Read): Read {
  try {
    return readPack(folder);
  } catch (error) {
    throw new CliStop(EXIT.files, `The rules folder ${folder} cannot be read: ${(error as Error).message}.`);
  }
}
