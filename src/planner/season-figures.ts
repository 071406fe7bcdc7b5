/** The figures by which places and seasons go: what the seasons of the rules name, as numbers. */
import { namesIn } from '../rules/call.js';
import { evaluate } from '../rules/evaluate.js';
import type { Pack } from '../rules/pack.js';
import type { Expression } from '../rules/schema.js';

const FIGURES = 'figures.';

/** The number; undefined where the rules have none. */
export function seasonNumber(pack: Pack, expression: Expression | undefined): number | undefined {
  if (expression === undefined) return undefined;
  const outcome = evaluate(expression, (name) => {
    const figure = pack.figureById.get(name.slice(FIGURES.length));
    if (!name.startsWith(FIGURES) || figure === undefined) return { known: false, open: [] };
    return { known: true, value: figure.typical, used: [name], from: [name] };
  });
  return outcome.known && typeof outcome.value === 'number' ? outcome.value : undefined;
}

/** Ids of the figures in it. */
export const figuresIn = (expression: Expression | undefined): string[] =>
  expression === undefined
    ? []
    : namesIn(expression).flatMap((name) => (name.startsWith(FIGURES) ? [name.slice(FIGURES.length)] : []));

/** How far a weather station speaks, and how many speak together where none is near; none where the rules say nothing. */
export const stationReach = (pack: Pack): { readonly reachKm: number; readonly neighbours: number } => ({
  reachKm: seasonNumber(pack, pack.seasons?.stationReachKm) ?? 0,
  neighbours: seasonNumber(pack, pack.seasons?.neighbours) ?? 0,
});
