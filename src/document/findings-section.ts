/** What is wrong and how sure, likeliest first; then what cannot be told yet and what would settle it. */
import type { Paragraph, RootContent } from 'mdast';
import type { Plan, PlanFinding } from '../planner/plan.js';
import { bullets, heading, type Part, paragraph, strong } from './nodes.js';
import { markOf, type References } from './references.js';
import { clause, counted, markedSentence, midSentence, said, sentence, withoutStop } from './words.js';

const STRENGTHS = ['likely', 'possible', 'unlikely'] as const;

export function findingsSection(plan: Plan, references: References): RootContent[] {
  const found = plan.findings
    .filter(({ verdict }) => verdict === 'found')
    .sort((a, b) => STRENGTHS.indexOf(a.strength) - STRENGTHS.indexOf(b.strength));
  const assumed = new Set(plan.assumptions.map(({ questionId }) => questionId));
  // What was not asked because it could not change the plan is no gap in it.
  const open = plan.findings.filter(
    ({ verdict, open: questions }) => verdict === 'cannotTell' && questions.some((id) => assumed.has(id)),
  );
  const nodes = [
    ...found.map((finding) => foundParagraph(finding, references)),
    ...notFoundLines(plan.findings),
    ...openSection(open),
  ];
  if (nodes.length === 0) return [];
  const nothingFound = found.length === 0 ? [paragraph('Nothing for certain, from the answers given.')] : [];
  return [heading(2, 'What is wrong'), ...nothingFound, ...nodes];
}

/** Title and strength, why it matters, the signs, and the hand test unless it is beyond doubt. */
function foundParagraph(finding: PlanFinding, references: References): Paragraph {
  const isSure = finding.strength === 'likely';
  const isTested = !isSure || doSignsDisagree(finding);
  return paragraph(
    strong(sentence(`${withoutStop(finding.title)}: ${finding.strength}`)),
    sentence(finding.because),
    markedSentence(finding.why, markOf('published', finding.sources, references)),
    ...(isSure && finding.signsAgainst.length === 0 ? [] : signLines(finding)),
    isTested && said(finding.tellsApart) !== '' ? `To be surer: ${clause(finding.tellsApart)}` : '',
  );
}

function openSection(open: readonly PlanFinding[]): RootContent[] {
  if (open.length === 0) return [];
  const hasSign = ({ signsFor }: PlanFinding) => signsFor.length > 0;
  const notSo = open.filter(({ assumedSo }) => !assumedSo);
  return [
    heading(3, 'What I cannot tell yet'),
    ...openList(
      'The plan goes on as if this were so:',
      open.filter(({ assumedSo }) => assumedSo),
      openItem,
    ),
    ...openList(
      'There is a sign of this, but the plan goes on as if it were not so:',
      notSo.filter(hasSign),
      openItem,
    ),
    ...openList(
      'Nothing points to this, and the plan goes on as if it were not so:',
      notSo.filter((finding) => !hasSign(finding)),
      openItemInShort,
    ),
  ];
}

function openList(
  lead: string,
  open: readonly PlanFinding[],
  item: (finding: PlanFinding) => Part[],
): RootContent[] {
  return open.length === 0 ? [] : [paragraph(lead), bullets(open.map(item))];
}

function openItem(finding: PlanFinding): Part[] {
  return [
    strong(sentence(`${withoutStop(finding.title)}: ${finding.strength}`)),
    sentence(finding.because),
    ...signLines(finding),
    said(finding.tellsApart) === '' ? '' : `To settle it: ${clause(finding.tellsApart)}`,
  ];
}

/** What is missing says enough where nothing hints at the finding. */
function openItemInShort(finding: PlanFinding): Part[] {
  return [strong(sentence(finding.title)), sentence(finding.because)];
}

/** Their count; by name only one that the signs disagree about. */
function notFoundLines(findings: readonly PlanFinding[]): RootContent[] {
  const notFound = findings.filter(({ verdict }) => verdict === 'notFound');
  if (notFound.length === 0) return [];
  const line = paragraph(`${counted(notFound.length, 'other fault')} looked for and not found.`);
  const doubtful = notFound.filter((each) => each.strength !== 'unlikely' && doSignsDisagree(each));
  return [line, ...openList('Not found, although signs speak for it:', doubtful, openItem)];
}

const doSignsDisagree = ({ signsFor, signsAgainst }: PlanFinding): boolean =>
  signsFor.length > 0 && signsAgainst.length > 0;

/** Both columns of signs, and that they disagree; left out where nothing speaks against a finding that is sure. */
function signLines(finding: PlanFinding): string[] {
  return [
    signsLine('Signs for it', finding.signsFor),
    signsLine('Signs against it', finding.signsAgainst),
    doSignsDisagree(finding) ? 'The signs disagree.' : '',
  ];
}

function signsLine(lead: string, signs: readonly string[]): string {
  return signs.length === 0 ? '' : `${lead}: ${signs.map(midSentence).join('; ')}.`;
}
