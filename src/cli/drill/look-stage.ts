/** The trainee looks, asks and digs in any order, until they are ready to say what is wrong. */
import type { Question } from '../../rules/schema.js';
import { type Attempt, lookIds } from '../../training/attempt.js';
import { nextHint, withHint } from '../../training/hints.js';
import { type JudgedLook, judgeLook } from '../../training/judge-look.js';
import {
  capital,
  hear,
  listedLooks,
  lookMeant,
  namedLooks,
  notMeant,
  whatIsSeen,
} from '../../training/looks.js';
import type { WorkedCase } from '../../training/worked-case.js';
import { type DrillParts, numberedList, saidHint, typedLine, wordsOf } from './parts.js';

const WORDS =
  'Type what you look at or ask about, several with commas between. "list" shows everything there is to look at, "seen" what you have seen, "hint" helps (and costs), "suppose screwdriver easy" plays with an answer. "commit" when you know what is wrong; after that there is no more looking. "quit" leaves.';
/** The session tells why at every question; here that would be a hint for nothing. */
const WHY_LATER =
  'Why a look is worth taking is yours to think out first. "hint" teaches it, at a cost; the debrief tells it for nothing.';
const NEXT = 'What do you do next?';
const COST_TITLES: Readonly<Record<Question['cost'], string>> = {
  chair: 'To ask, from a chair',
  look: 'To go and look at',
  dig: 'To dig, probe or test',
};

/**
 * @param keep is handed every state of the attempt, so that one who leaves loses nothing
 * @throws {DrillLeft} when they leave
 */
export async function lookStage(
  parts: DrillParts,
  start: Attempt,
  keep: (attempt: Attempt) => void,
): Promise<void> {
  const { asker } = parts;
  let attempt = start;
  let offered: string | undefined;
  asker.say(WORDS);
  for (;;) {
    keep(attempt);
    const typed = await typedLine(parts, NEXT);
    const line = offered !== undefined && YES.test(typed) ? offered : typed;
    offered = onlyOffer(parts, line);
    const word = line.toLowerCase();
    if (word === 'commit') return;
    if (word === 'list') asker.say(catalogue(parts, attempt));
    else if (word === 'seen' || word === 'review') asker.say(seenSoFar(parts, attempt));
    else if (word === '' || word === 'help' || word === '?') asker.say(WORDS);
    else if (/^(?:why|how)\b/.test(word)) asker.say(WHY_LATER);
    else if (word === 'hint') attempt = hinted(parts, attempt);
    else attempt = looked(parts, attempt, line);
  }
}

const YES = /^(?:y|yes)$/i;

/** The one look that they will be asked about: after that "yes" takes it. */
function onlyOffer({ worked }: DrillParts, line: string): string | undefined {
  const heard = wordsOf(line).map((word) => hear(word, namedLooks(worked)));
  const unclear = heard.flatMap((each) => (each.kind === 'which' ? [each.items] : []));
  return unclear.length === 1 && unclear[0]?.length === 1 ? unclear[0][0]?.label : undefined;
}

function looked(parts: DrillParts, start: Attempt, line: string): Attempt {
  const { asker, worked, feedback } = parts;
  let attempt = start;
  for (const word of wordsOf(line)) {
    const question = lookMeant(worked, word);
    if (question === undefined) {
      const isUnclear = hear(word, namedLooks(worked)).kind === 'which';
      const list = isUnclear ? '' : ' "list" shows everything there is to look at.';
      asker.say(`${notMeant(word, namedLooks(worked))}${list}`);
      continue;
    }
    asker.say(`${capital(question.label)}\n${whatIsSeen(worked, question)}`);
    if (lookIds(attempt).includes(question.id)) continue;
    const judged = judgeLook(worked, question, lookIds(attempt));
    if (feedback === 'at-once') asker.say(atOnce(worked, judged));
    attempt = { ...attempt, looks: [...attempt.looks, judged] };
  }
  return attempt;
}

const atOnce = ({ marking }: WorkedCase, { kind, says }: JudgedLook): string =>
  `(${marking.lookKinds[kind].atOnce} ${says})`;

function catalogue({ worked }: DrillParts, attempt: Attempt): string {
  const all = listedLooks(worked);
  const seen = lookIds(attempt);
  const lines = numberedList(
    all.map(({ id, label }) => ({ id, label: `${label}${seen.includes(id) ? ' (seen)' : ''}` })),
  ).split('\n');
  return all
    .flatMap(({ cost }, index) => [
      ...(cost === all[index - 1]?.cost ? [] : [COST_TITLES[cost]]),
      lines[index] as string,
    ])
    .join('\n');
}

function seenSoFar({ worked }: DrillParts, { looks }: Attempt): string {
  if (looks.length === 0) return 'Nothing yet.';
  return looks
    .map(({ question }) => `${capital(question.label)}: ${whatIsSeen(worked, question)}`)
    .join('\n');
}

function hinted({ asker, worked }: DrillParts, attempt: Attempt): Attempt {
  const hint = nextHint(worked, attempt);
  if (hint === undefined) {
    asker.say(worked.marking.lookHints.allSeen);
    return attempt;
  }
  asker.say(saidHint(worked, attempt.hints, hint));
  return { ...attempt, hints: withHint(attempt.hints, hint) };
}
