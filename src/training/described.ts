/** Records as they can be named: by number, id, name, the words that people say, and all that is written about them. */
import { once } from '../base/once.js';
import type { Pack } from '../rules/pack.js';
import type { Finding, Question, Step } from '../rules/schema.js';
import type { Named } from './looks.js';
import type { About } from './ranker.js';

/** What a word counts where it stands: in a name, in the question itself, among its answers, in an explanation. */
const COUNTS = { name: 1, question: 0.7, answer: 0.5, explanation: 0.3 } as const;

const about = (counts: keyof typeof COUNTS, ...texts: readonly string[]): About => ({
  text: texts.join(' '),
  counts: COUNTS[counts],
});

export const describedLook = once(
  (question: Question): Named => ({
    id: question.id,
    label: question.label,
    says: question.says,
    about: [
      about('name', question.label, ...(question.says ?? [])),
      about('question', question.text),
      about('answer', ...(question.options ?? []).map(({ label }) => label)),
      about('explanation', question.help, question.why),
    ],
  }),
);

/** What tells a finding from its look-alikes names those, so it is left out. */
export const namedFindings = once((pack: Pack): Named[] =>
  pack.findings.map((finding) => ({
    id: finding.id,
    label: finding.title,
    says: finding.says,
    about: aboutFinding(finding),
  })),
);

function aboutFinding({ id, title, says = [], evidence = [], why }: Finding): About[] {
  const signs = evidence.filter(({ weight }) => weight > 0).map((sign) => sign.says);
  return [
    about('name', title, ...says),
    about('question', id),
    about('answer', ...signs),
    about('explanation', why),
  ];
}

export const namedStep = ({ id, title, purpose, how }: Step): Named => ({
  id,
  label: title,
  about: [about('name', title), about('question', id), about('explanation', purpose, ...how)],
});
