/** Guided authoring: a case made of answers gets its story, its words, its misleading sign and its lesson, and is checked. */
import { parseIsoDate } from '../../base/dates.js';
import type { DrillCase } from '../../rules/schema-case.js';
import type { Asker } from '../../terminal/asker.js';
import { checkCase } from '../../training/check-case.js';
import { capital, nameMeant, whatIsSeen } from '../../training/looks.js';
import { workOut } from '../../training/worked-case.js';
import { unitsOf } from '../command.js';
import type { Choosing } from './choose-case.js';
import { DrillLeft, typedLine } from './parts.js';

const LEVELS = ['easy', 'middling', 'hard'] as const;

export interface Authored {
  readonly lesson: DrillCase;
  readonly faults: readonly string[];
}

/** @throws {DrillLeft} when they leave before the end */
export async function authored(
  draft: DrillCase,
  { args, pack, book }: Choosing,
  asker: Asker,
): Promise<Authored> {
  const parts = { asker };
  const words = (message: string, suggested: string): Promise<string> => typedOr(parts, message, suggested);
  const { marking } = book;
  asker.say(summaryOf(draft, { pack, book }));
  const title = await words('What is the case called?', draft.title);
  const id = idOf(await words('A short name for it, in lower-case words joined by hyphens?', idOf(title)));
  const level = await pickedLevel(asker);
  const topic = await words('Its topic, in a few words?', draft.topic);
  const minutes = await typedMinutes(parts, draft.minutes);
  const story = await words(
    'What does the owner say at the gate? Invent the people and the place.',
    draft.story[0] ?? '',
  );
  asker.say(
    'Now the looks that are needed. Say what is seen, so that the trainee has to think; an empty line keeps mine.',
  );
  const worked = workOut(draft, pack, marking, unitsOf(args));
  const seen: Record<string, string> = { ...draft.seen };
  for (const look of worked.looks.filter((each) => worked.good.has(each.id))) {
    const said = await typedLine(parts, `${capital(look.label)} (mine: ${whatIsSeen(worked, look)})`);
    if (said !== '') seen[look.id] = said;
  }
  asker.say('Now what is said afterwards: of each danger, and to those who take a wrong turn.');
  const dangers = await eachSaid(
    parts,
    draft.dangers,
    ({ look }) => pack.questionById.get(look)?.label ?? look,
  );
  const wrongTurns = await eachSaid(parts, draft.wrongTurns, (turn) => turnTitle(turn, { pack, book }));
  const misleads = await typedMisleads(parts, draft, { pack, book });
  const lesson = await words('And what does the trainee take home, in one sentence?', draft.lesson);
  const made: DrillCase = {
    ...draft,
    id,
    title,
    level,
    topic,
    minutes,
    story: [story],
    seen,
    dangers,
    wrongTurns,
    misleads,
    lesson,
  };
  return { lesson: made, faults: [...checkCase(made, pack, marking), ...sameAs(made, book.cases)] };
}

function summaryOf(
  { expected, needs, dangers }: DrillCase,
  { pack }: Pick<Choosing, 'pack' | 'book'>,
): string {
  const label = (ids: readonly string[]): string =>
    ids.map((id) => pack.questionById.get(id)?.label ?? id).join(', ') || 'none';
  return [
    `The rules come to: ${expected.verdict}.`,
    `They find: ${expected.findings.map((id) => pack.findingById.get(id)?.title ?? id).join('; ') || 'nothing'}.`,
    `Needed looks: ${label(needs)}.`,
    `Dangers: ${label(dangers.map(({ look }) => look))}.`,
    'All of that can be changed in the file afterwards. An empty line takes what I suggest.',
  ].join('\n');
}

/** Each with the words for it; an empty line keeps those of the draft. */
async function eachSaid<Item extends { readonly says: string }>(
  parts: { asker: Asker },
  items: readonly Item[],
  title: (item: Item) => string,
): Promise<Item[]> {
  const said: Item[] = [];
  for (const item of items)
    said.push({ ...item, says: await typedOr(parts, `${capital(title(item))}.`, item.says) });
  return said;
}

function turnTitle(
  { finding, step, verdict }: DrillCase['wrongTurns'][number],
  { pack, book }: Pick<Choosing, 'pack' | 'book'>,
): string {
  const turn = finding ?? step ?? verdict ?? '';
  const title = pack.findingById.get(turn)?.title ?? pack.stepById.get(turn)?.title;
  return `Wrong here: ${title ?? (book.marking.verdicts as Record<string, string>)[turn] ?? turn}`;
}

async function typedOr(parts: { asker: Asker }, message: string, suggested: string): Promise<string> {
  const line = await typedLine(parts, suggested === '' ? message : `${message} (empty: ${suggested})`);
  return line === '' ? suggested : line;
}

async function pickedLevel(asker: Asker): Promise<DrillCase['level']> {
  const level = await asker.pick(
    'How hard is it?',
    LEVELS.map((each) => ({ value: each, label: each })),
  );
  if (level === undefined && asker.left?.() !== undefined) throw new DrillLeft();
  return LEVELS.find((each) => each === level) ?? 'middling';
}

async function typedMinutes(parts: { asker: Asker }, suggested: number): Promise<number> {
  for (;;) {
    const minutes = Number(await typedOr(parts, 'How many minutes does it take?', String(suggested)));
    if (Number.isInteger(minutes) && minutes > 0) return minutes;
    parts.asker.say('Type a whole number of minutes.');
  }
}

async function typedMisleads(
  parts: { asker: Asker },
  draft: DrillCase,
  { pack, book }: Pick<Choosing, 'pack' | 'book'>,
): Promise<DrillCase['misleads']> {
  const { looks } = workOut(draft, pack, book.marking);
  for (;;) {
    const line = await typedLine(
      parts,
      'Which look points the wrong way? Words of its name, or an empty line for none.',
    );
    if (line === '') return [];
    const look = nameMeant(line, looks);
    if (look !== undefined) {
      const says = await typedLine(parts, `What does ${look.label} suggest, and what is true of it?`);
      return says === '' ? [] : [{ look: look.id, says }];
    }
    parts.asker.say(`"${line}" fits no look, or more than one.`);
  }
}

function sameAs({ id, lesson }: DrillCase, cases: readonly DrillCase[]): string[] {
  return cases
    .filter((each) => each.id === id || each.lesson === lesson)
    .map((each) => `there is already a case "${each.id}" of that name or lesson. Change it.`);
}

const idOf = (text: string): string => {
  const words = text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[-0-9]+|-+$/g, '');
  return words === '' ? 'own-lawn' : words;
};

/** The file's text; the day is proved to be one. */
export function caseText(lesson: DrillCase): string {
  return `${JSON.stringify({ ...lesson, today: parseIsoDate(lesson.today) }, null, 2)}\n`;
}
