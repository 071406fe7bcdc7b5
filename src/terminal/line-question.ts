/** One question in the line mode: shown once, then lines are taken until one of them is a reply. */
import { cleanLine } from '../base/clean-text.js';
import { type AnswerValue, UNKNOWN } from '../interview/answers.js';
import type { Reading } from '../interview/reading.js';
import type { AskerSettings, Prompt, Reply } from './asker.js';
import type { LineScreen } from './line-screen.js';
import {
  type Command,
  commandIn,
  countLine,
  DONT_KNOW,
  howToAnswer,
  KEEP_IT,
  listedAnswers,
  NOTHING_TYPED,
  notedLine,
  optionLine,
  WHICH_ONE,
  WORDS_LINE,
} from './words.js';

type Doubt = Extract<Reading, { kind: 'odd' | 'which' }>;

/** A doubt that was raised, with what was typed; the next line may settle it. */
type Raised = { readonly about: Doubt; readonly typed: string } | undefined;

/** Either a reply, or go on with or without a doubt. */
interface Taken {
  readonly reply?: Reply;
  readonly doubt?: Raised;
}

interface Conversation {
  readonly prompt: Prompt;
  readonly screen: LineScreen;
  readonly read: AskerSettings['read'];
}

const YES = /^(?:y|yes|keep|keep it)$/i;
const NO = /^(?:n|no)$/i;

/** The reply to one prompt. */
export async function askInLines(conversation: Conversation, isFirst: boolean): Promise<Reply> {
  const { screen } = conversation;
  showPrompt(conversation, isFirst);
  let doubt: Raised;
  for (;;) {
    const line = await screen.next();
    if (typeof line !== 'string') return { kind: line.left };
    const taken = take(line, doubt, conversation);
    if (taken.reply !== undefined) return taken.reply;
    doubt = taken.doubt;
  }
}

function showPrompt({ prompt, screen }: Conversation, isFirst: boolean): void {
  screen.put('');
  screen.put(countLine(prompt));
  screen.put(prompt.question.text);
  const answers = listedAnswers(prompt.question);
  if (answers === undefined) screen.put(`${howToAnswer(prompt)} Or ${DONT_KNOW}.`);
  else screen.putList([...answers.map(optionLine), DONT_KNOW]);
  if (prompt.suggestedText !== undefined) screen.put(`Enter alone takes: ${cleanLine(prompt.suggestedText)}`);
  if (isFirst) screen.put(WORDS_LINE);
}

/** A word of the session first, then what settles an open doubt, then an answer. */
function take(line: string, doubt: Raised, conversation: Conversation): Taken {
  const { prompt, screen } = conversation;
  const command = commandOf(prompt, line);
  if (command !== undefined) return obey(command, doubt, conversation);
  const settled = doubt && settle(doubt.about, doubt.typed, line);
  if (settled !== undefined) return { reply: noted(settled, doubt?.typed ?? line, screen) };
  if (doubt?.about.kind === 'odd' && NO.test(line)) {
    screen.put(NOTHING_TYPED);
    return {};
  }
  if (line === '') return takeDefault(doubt, conversation);
  return takeAnswer(line, conversation);
}

function obey(command: Command, doubt: Raised, { prompt, screen }: Conversation): Taken {
  switch (command) {
    case 'why':
      screen.put(prompt.why);
      return { doubt };
    case 'walk':
      screen.put(prompt.walk);
      return { doubt };
    case 'help':
      screen.put(prompt.help);
      screen.put(howToAnswer(prompt));
      screen.put(WORDS_LINE);
      return { doubt };
    case 'save':
    case 'quit':
      screen.leave(command);
      return { reply: { kind: command } };
    default:
      return { reply: { kind: command } };
  }
}

/** An empty line takes the shown default; with a doubt open, or without a default, it says nothing. */
function takeDefault(doubt: Raised, { prompt, screen }: Conversation): Taken {
  const reply = doubt === undefined ? suggestedReply(prompt) : undefined;
  if (reply === undefined) {
    screen.put(doubt?.about.kind === 'odd' ? KEEP_IT : NOTHING_TYPED);
    return { doubt };
  }
  if (reply.kind === 'value') screen.put(notedLine(reply.understood));
  return { reply };
}

function takeAnswer(line: string, { prompt, screen, read }: Conversation): Taken {
  const reading = read(prompt.question, line);
  if (reading.kind === 'value') return { reply: noted(reading, line, screen) };
  screen.put(reading.says);
  if (reading.kind === 'refused') return {};
  if (reading.kind === 'which') screen.putList(reading.choices.map(({ label }) => label));
  screen.put(reading.kind === 'which' ? WHICH_ONE : KEEP_IT);
  return { doubt: { about: reading, typed: line } };
}

function noted(
  { value, understood }: { readonly value: AnswerValue; readonly understood: string },
  typed: string,
  screen: LineScreen,
): Reply {
  screen.put(notedLine(understood));
  return { kind: 'value', value, understood, typed };
}

/** A number chooses between readings; yes, or the same words again, keeps an odd value. */
function settle(
  about: Doubt,
  typed: string,
  line: string,
): { readonly value: AnswerValue; readonly understood: string } | undefined {
  if (about.kind === 'which') {
    const choice = about.choices[Number(line) - 1];
    return choice === undefined ? undefined : { value: choice.value, understood: choice.label };
  }
  const isKept = YES.test(line) || (line === typed && !NO.test(line));
  return isKept ? { value: about.value, understood: about.understood } : undefined;
}

/** The word that a line is; "don't know" is also the last number of a list. */
function commandOf({ question }: Prompt, line: string): Command | undefined {
  const answers = listedAnswers(question);
  return answers !== undefined && line === String(answers.length + 1) ? 'unknown' : commandIn(line);
}

/** The shown default as a reply, when there is one. */
export function suggestedReply({ suggested, suggestedText }: Prompt): Reply | undefined {
  if (suggested === undefined) return undefined;
  if (suggested === UNKNOWN) return { kind: 'unknown' };
  return { kind: 'value', value: suggested, understood: suggestedText ?? String(suggested), typed: '' };
}
