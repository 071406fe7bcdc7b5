/** Gathers what a plan leans on: figures used, and every source cited, numbered in order of first use. */
import type { Pack } from '../rules/pack.js';
import type { Citation } from '../rules/schema.js';
import type { PlanFigure, PlanSource } from './plan.js';

export interface Ledger {
  readonly noteFigure: (id: string) => void;
  readonly cite: (citations: readonly Citation[]) => readonly Citation[];
  readonly figures: () => readonly PlanFigure[];
  readonly sources: () => readonly PlanSource[];
}

export function openLedger(pack: Pack): Ledger {
  const figures = new Map<string, PlanFigure>();
  const places = new Map<string, Set<string>>();
  const cite = (citations: readonly Citation[]): readonly Citation[] => {
    for (const { id, at } of citations) places.set(id, (places.get(id) ?? new Set()).add(at));
    return citations;
  };
  return {
    cite,
    noteFigure: (id) => {
      const figure = pack.figureById.get(id);
      if (figure === undefined || figures.has(id)) return;
      const { what, typical, unit, range, basis, sources } = figure;
      figures.set(id, { id, what, typical, unit, range, basis, sources });
      cite(sources);
    },
    figures: () => [...figures.values()],
    sources: () =>
      [...places].map(([id, at], index) => {
        const source = pack.sourceById.get(id);
        return {
          number: index + 1,
          id,
          title: source?.title ?? id,
          publisher: source?.publisher ?? '',
          year: source?.year ?? null,
          address: source?.address ?? null,
          standing: source?.standing ?? 'general',
          at: [...at],
        };
      }),
  };
}
