/**
 * What the program knows of lawns stands in rules/. An id of a rule record written out in src ties the program to it:
 * these are counted, and the count may only fall. Lower the ceiling whenever it does.
 */
import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { pack } from '../planner/any-lawn.js';

/** The equations, their keyboard names, and the training that teaches this one trade. */
const THE_TRADE_ITSELF = /^(agronomy|reckon|training)\//;

const CEILING = 234;

const lists: readonly (readonly { readonly id: string }[])[] = [
  pack.questions,
  pack.figures,
  pack.findings,
  pack.facts,
  pack.steps,
  pack.verdicts,
  pack.cautions,
  pack.materials,
];
const ids = new Set(lists.flatMap((records) => records.map(({ id }) => id)));

/** Texts in a file that are ids of rules, with their lines; what a file is imported by is no text. */
function idsIn(path: string): string[] {
  const source = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.ES2023, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isLiteralTypeNode(node)) return;
    if (ts.isStringLiteralLike(node) && ids.has(node.text.replace(/^(figures|facts|findings)\./, '')))
      found.push(`${path}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${node.text}`);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

describe('ids of rules in src', () => {
  it('become no more than they are', () => {
    const found = readdirSync('src', { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts') && !THE_TRADE_ITSELF.test(file))
      .flatMap((file) => idsIn(`src/${file}`));
    expect(ids.size).toBeGreaterThan(300);
    expect(found.length, `${found.length} places:\n${found.join('\n')}`).toBeLessThanOrEqual(CEILING);
  });
});
