/** A pack of a few invented records, for tests that need to know all of it. */
import { indexPack, type Pack, type PackData } from '../../src/rules/pack.js';
import { readPack } from '../../src/rules/read.js';
import type { Fact, Figure, Finding, Question } from '../../src/rules/schema.js';

export const figure = (id: string, typical: number, min = typical, max = typical): Figure => ({
  id,
  what: id,
  unit: 'mm',
  typical,
  range: { min, max },
  basis: 'assumption',
  sources: [],
  checkedOn: '2026-11-25',
});

export const question = (id: string, rest: Partial<Question> = {}): Question => ({
  id,
  section: 'all',
  label: id,
  text: `${id}?`,
  help: 'Look.',
  why: 'It matters.',
  kind: 'yes-no',
  dontKnow: { assume: null, effect: 'Left open.' },
  cost: 'chair',
  ...rest,
});

export const finding = (
  id: string,
  when: Finding['when'],
  evidence: readonly NonNullable<Finding['evidence']>[number][] = [],
): Finding => ({
  id,
  title: id,
  when,
  ...(evidence.length === 0 ? {} : { evidence: [...evidence] }),
  why: 'Because.',
  sources: [],
  tellsApart: 'Look.',
  leadsTo: [],
  examples: { found: [{}], notFound: [{}], cannotTell: [{}] },
});

interface Records {
  readonly questions?: readonly Question[];
  readonly figures?: readonly Figure[];
  readonly facts?: readonly Fact[];
  readonly findings?: readonly Finding[];
}

export function tinyPack({ questions = [], figures = [], facts = [], findings = [] }: Records): Pack {
  const data: PackData = {
    id: 'tiny',
    version: '1.0.0',
    title: 'Tiny',
    effort: { chair: 1, look: 2, dig: 4 },
    sections: [{ id: 'all', title: 'All' }],
    phases: [{ id: 'all', what: 'All.' }],
    wording: readPack('rules').data?.wording as PackData['wording'],
    sha256: '',
    sources: [],
    figures,
    facts,
    questions,
    findings,
    steps: [],
    materials: [],
    cautions: [],
    verdicts: [],
    outlook: [],
    troubles: [],
    watering: [],
    notDone: [],
    together: [],
    signs: [],
    daySigns: [],
    climate: { licenceLine: 'x', sourceId: 'x', period: 'x', stations: [] },
  };
  return indexPack(data);
}
