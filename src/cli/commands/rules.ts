/** `rules`: tasks for whoever writes rules: check, show, coverage, graph, schema. Each loads only what it needs. */
import { cleanLine } from '../../base/clean-text.js';
import { nearest } from '../../base/nearest.js';
import { type Command, metricUnits, type ParsedArgs } from '../command.js';
import { type CliIo, CliStop, EXIT } from '../io.js';
import { problemsOf } from '../load-pack.js';
import { RULES_FOLDER } from '../paths.js';

const RULES_TASKS = ['check', 'show', 'coverage', 'graph', 'schema'] as const;

type Task = (words: readonly string[], args: ParsedArgs, io: CliIo) => Promise<number>;

const TASKS: Readonly<Record<(typeof RULES_TASKS)[number], Task>> = { check, show, coverage, graph, schema };

export const rules: Command = {
  name: 'rules',
  summary: `Check and show the rules, for whoever writes them

  check     every problem of a pack at once, the examples of its findings included
  show      one record in plain words, with its sources and who reads it
  coverage  which findings, verdicts, steps and cautions the examples bring to life
  graph     who reads whom, in DOT
  schema    JSON Schema of the rules files, for an editor; of one kind, or of all

A PACK is a folder of rules; the bundled one if none is given.`,
  usage: 'rules check|coverage|graph [PACK] | rules show ID [PACK] | rules schema [KIND]',
  options: { units: metricUnits('rules are written in metric units, and are shown as they are written') },
  words: RULES_TASKS,
  takes: { least: 1, most: 3, says: 'a task: check, show, coverage, graph or schema' },
  async run(args, io) {
    const [typed = '', ...words] = args.positionals;
    const task = RULES_TASKS.find((each) => each === typed);
    if (task === undefined) {
      const near = nearest(typed, RULES_TASKS);
      throw usage(
        `"rules" has no task "${cleanLine(typed).slice(0, 60)}".${near === undefined ? '' : ` Did you mean "${near}"?`} Tasks: ${RULES_TASKS.join(', ')}.`,
      );
    }
    const most = task === 'show' ? 2 : 1;
    if (words.length > most) throw usage(`"${words[most]}" is one word too many for "rules ${task}".`);
    return TASKS[task](words, args, io);
  },
};

const usage = (says: string): CliStop => new CliStop(EXIT.usage, says, rules.usage);

const folderOf = (word: string | undefined, args: ParsedArgs): string =>
  word ?? args.text('pack') ?? RULES_FOLDER;

async function check([folder]: readonly string[], args: ParsedArgs, io: CliIo): Promise<number> {
  const at = folderOf(folder, args);
  const { data, problems: packProblems } = await problemsOf(at);
  const [{ casesIn }, { indexPack }] = await Promise.all([
    import('../load-cases.js'),
    import('../../rules/pack.js'),
  ]);
  // A case can be worked out only by rules that are sound.
  const sound = packProblems.length === 0 && data !== undefined ? indexPack(data) : undefined;
  const { book, problems: caseProblems } = await casesIn(at, sound);
  const problems = [...packProblems, ...caseProblems];
  const { explain } = await import('../../rules/problem.js');
  for (const problem of problems) io.out(`${explain(problem)}\n`);
  if (problems.length > 0 || data === undefined) {
    io.err(`${problems.length} to mend.\n`);
    return EXIT.rulesFound;
  }
  const [{ figuresUnread }, { PROGRAM_SIDE }] = await Promise.all([
    import('../../rules/readers.js'),
    import('../program-side.js'),
  ]);
  const examples = data.findings
    .flatMap(({ examples: each }) => Object.values(each))
    .reduce((sum, list) => sum + list.length, 0);
  io.out(
    `The rules are sound: ${data.questions.length} questions, ${data.findings.length} findings with ${examples} examples, ${data.steps.length} steps, ${data.cautions.length} cautions, ${data.figures.length} figures, ${data.sources.length} sources, ${book?.cases.length ?? 0} training cases.\n`,
  );
  const unread = figuresUnread(data, PROGRAM_SIDE.figures);
  if (unread.length > 0 && !args.flag('quiet')) {
    const { wrapText } = await import('../../terminal/wrap-text.js');
    const note = `${unread.length} figures are read by no rule and no sentence, so none of them changes a plan yet: ${unread.join(', ')}.`;
    for (const line of wrapText(note, io.width, '  ')) io.err(`${line}\n`);
  }
  return EXIT.done;
}

async function show([id, folder]: readonly string[], args: ParsedArgs, io: CliIo): Promise<number> {
  if (id === undefined) throw usage('"rules show" takes the id of a record, such as mossy or "step sow".');
  const pack = await io.loadPack(folder ?? args.text('pack'));
  const [{ describe, recordsOf }, { wrapText }] = await Promise.all([
    import('../../rules/describe.js'),
    import('../../terminal/wrap-text.js'),
  ]);
  const lines = describe(id, pack);
  if (lines.length === 0) {
    const ids = recordsOf(pack).map((each) => each.id);
    const near = nearest(id.split(' ').at(-1) ?? id, ids);
    throw new CliStop(
      EXIT.answers,
      `No record is called "${cleanLine(id).slice(0, 60)}".${near === undefined ? '' : ` Did you mean "${near}"?`} Give the id of a figure, question, fact, finding, step, caution, material, verdict or source.`,
    );
  }
  for (const { text, level } of lines) {
    const indent = '  '.repeat(level);
    // Measures stand in braces so that they can be put into other units; here they are read as they are.
    const plain = cleanLine(text).replace(/\{(\d[^{}]*?)(?: as printed)?\}/g, '$1');
    for (const line of wrapText(`${indent}${plain}`, io.width, `${indent}  `)) io.out(`${line}\n`);
  }
  return EXIT.done;
}

async function coverage([folder]: readonly string[], args: ParsedArgs, io: CliIo): Promise<number> {
  const pack = await io.loadPack(folder ?? args.text('pack'));
  const [{ coverageOf }, { wrapText }] = await Promise.all([
    import('../../planner/coverage.js'),
    import('../../terminal/wrap-text.js'),
  ]);
  const { examples, failed, kinds } = coverageOf(pack);
  const say = (text: string): void => {
    for (const line of wrapText(text, io.width, '  ')) io.out(`${line}\n`);
  };
  say(
    `${examples} examples, each planned as if the rest were assumed.${failed === 0 ? '' : ` No plan could be made from ${failed} of them.`}`,
  );
  for (const { kind, counts } of kinds) {
    const never = counts.filter(({ count }) => count === 0).map(({ id }) => id);
    say(
      `${kind}: ${counts.length - never.length} of ${counts.length} fire.${never.length === 0 ? '' : ` Never: ${never.join(', ')}.`}`,
    );
  }
  return EXIT.done;
}

async function graph([folder]: readonly string[], args: ParsedArgs, io: CliIo): Promise<number> {
  const pack = await io.loadPack(folder ?? args.text('pack'));
  const { dotOf } = await import('../../rules/dot.js');
  io.out(dotOf(pack));
  return EXIT.done;
}

async function schema([kind]: readonly string[], _args: ParsedArgs, io: CliIo): Promise<number> {
  const { allFileSchemas, fileSchemaOf, SCHEMA_KINDS } = await import('../../rules/json-schema.js');
  if (kind !== undefined && !SCHEMA_KINDS.includes(kind)) {
    throw usage(`There is no kind "${cleanLine(kind).slice(0, 60)}". Kinds: ${SCHEMA_KINDS.join(', ')}.`);
  }
  io.out(`${JSON.stringify(kind === undefined ? allFileSchemas() : fileSchemaOf(kind), null, 2)}\n`);
  return EXIT.done;
}
