/** One drill from the gate to the last step: the trainee drives, nothing is revealed before the commit. */
import { formatDay, parseIsoDate } from '../../base/dates.js';
import { type Attempt, type DrillMode, freshAttempt, lookIds } from '../../training/attempt.js';
import { suppose } from '../../training/suppose.js';
import { alsoRightSays, verdictReason } from '../../training/verdict-words.js';
import { amountStage, commitStage, orderStage } from './commit-stage.js';
import { lookStage } from './look-stage.js';
import { DrillLeft, type DrillParts, typedLine } from './parts.js';
import { showWorked } from './worked-example.js';

export type DrillEnd =
  | { readonly outcome: 'done'; readonly attempt: Attempt }
  | { readonly outcome: 'left'; readonly attempt: Attempt };

/** Who is asked, about which case, and when they hear how it goes. */
export type Setting = Omit<DrillParts, 'whatIf'>;

/** @param minutes whole minutes since the drill began */
export async function runDrill(setting: Setting, mode: DrillMode, minutes: () => number): Promise<DrillEnd> {
  const { asker, worked } = setting;
  let attempt = freshAttempt(mode);
  // Who finishes a case was shown its looks.
  const seen = (): readonly string[] => (mode === 'whole' ? lookIds(attempt) : [...worked.good]);
  const parts: DrillParts = {
    ...setting,
    whatIf: (typed) => suppose(worked, seen(), typed).join('\n'),
  };
  asker.say(gate(parts));
  try {
    if (mode === 'whole') {
      while (attempt.commitment === undefined) {
        await lookStage(parts, attempt, (now) => {
          attempt = now;
        });
        attempt = { ...attempt, commitment: await commitStage(parts) };
      }
      if (parts.feedback === 'at-once') asker.say(atCommit(parts, attempt));
    } else await showWorked(parts, mode);
    if (mode !== 'watch') {
      if (worked.lesson.amounts.length > 0) attempt = await amountStage(parts, attempt);
      attempt = await orderStage(parts, attempt);
    }
    return { outcome: 'done', attempt: { ...attempt, minutes: minutes() } };
  } catch (error) {
    if (!(error instanceof DrillLeft)) throw error;
    return { outcome: 'left', attempt: { ...attempt, minutes: minutes() } };
  }
}

/** Title, day and what the owner says. */
function gate({ worked }: DrillParts): string {
  const { title, invented, story, today, level, minutes } = worked.lesson;
  return [
    `${title} (${invented ? 'an invented case' : 'a real lawn'}; ${level}, about ${minutes} min)`,
    `${formatDay(parseIsoDate(today))}.`,
    ...story,
  ].join('\n');
}

/** With feedback at once: the truth as soon as it can no longer help. */
function atCommit({ worked }: DrillParts, { commitment }: Attempt): string {
  const { lesson, pack, marking, plan } = worked;
  const isRight = commitment?.verdict === lesson.expected.verdict;
  const also = alsoRightSays(worked, commitment?.verdict);
  const judged = isRight ? 'Right' : also === undefined ? 'Not so. It is this' : `${also} The rules call it`;
  const found = lesson.expected.findings.map((id) => {
    const named = commitment?.findings.some((finding) => finding.id === id) === true;
    const because = plan.findings.find((finding) => finding.id === id)?.because ?? '';
    return `${named ? 'Named' : 'Missed'}: ${pack.findingById.get(id)?.title ?? id}. ${because}`;
  });
  return [
    `${judged}: ${marking.verdicts[lesson.expected.verdict]}. ${verdictReason(worked, false)}`,
    ...found,
  ].join('\n');
}

/** After the debrief: as many what-ifs as they like. */
export async function supposeStage({ asker, worked }: Setting): Promise<void> {
  const whatIf = (typed: string): string => suppose(worked, 'over', typed).join('\n');
  try {
    for (;;) {
      const line = await typedLine(
        { asker, whatIf },
        'Suppose something had been different? Type such as: screwdriver easy. An empty line ends.',
      );
      if (line === '') return;
      asker.say(whatIf(line));
    }
  } catch (error) {
    if (!(error instanceof DrillLeft)) throw error;
  }
}
