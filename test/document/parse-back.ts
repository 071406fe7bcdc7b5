/**
 * Reads our Markdown with parsers that are not ours: mdast-util-from-markdown for CommonMark, marked for the
 * tables of GFM, which the first does not know.
 */
import { marked, type Token, type Tokens } from 'marked';
import type { Nodes, Root, Table, TableCell, TableRow } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';

/** The Markdown as a tree, without positions and empty fields. */
export function parseBack(markdown: string): unknown {
  const root = fromMarkdown(markdown);
  const children = root.children.map((node) => {
    const source = markdown.slice(node.position?.start.offset, node.position?.end.offset);
    return node.type === 'paragraph' && isTable(source) ? tableFrom(source) : node;
  });
  return bare({ ...root, children });
}

/** The tree without positions and null or undefined fields, so that a built and a parsed one compare. */
export function bare(node: Nodes): unknown {
  return JSON.parse(
    JSON.stringify(node, (key, value) => (key === 'position' ? undefined : (value ?? undefined))),
  );
}

/** Kinds and sizes of everything in the Markdown as GFM reads it, inline marks included. */
export function gfmOutline(markdown: string): string[] {
  return marked.lexer(markdown, { gfm: true }).flatMap(outlineOf);
}

/** The tree as a Root again, for writing. */
export function asRoot(tree: unknown): Root {
  return tree as Root;
}

function outlineOf(token: Token): string[] {
  const inner = 'tokens' in token && Array.isArray(token.tokens) ? token.tokens.flatMap(outlineOf) : [];
  const words = token.type === 'text' && inner.length === 0;
  if (words || token.type === 'escape' || token.type === 'space') return [];
  if (token.type === 'list')
    return ['list', ...(token as Tokens.List).items.flatMap(outlineOf), 'end of list'];
  if (token.type === 'table') {
    const { header, rows } = token as Tokens.Table;
    const cells = [header, ...rows].flat().flatMap((cell) => cell.tokens.flatMap(outlineOf));
    return [`table ${header.length} × ${rows.length}`, ...cells];
  }
  return [token.type === 'heading' ? `heading ${(token as Tokens.Heading).depth}` : token.type, ...inner];
}

function isTable(source: string): boolean {
  return /^\|.*\n\|(?: -+ \|)+(?:\n|$)/.test(source);
}

function tableFrom(source: string): Table {
  const token = marked.lexer(source)[0] as Tokens.Table;
  const rows = [token.header, ...token.rows];
  return {
    type: 'table',
    align: token.align.map(() => null),
    children: rows.map((cells): TableRow => ({ type: 'tableRow', children: cells.map(cellFrom) })),
  };
}

/** Words become one text node; anything that is not words shows as a node of its kind. */
function cellFrom({ tokens }: Tokens.TableCell): TableCell {
  const other = tokens.filter(({ type }) => type !== 'text' && type !== 'escape');
  const value = tokens.map(textOf).join('');
  const words = value === '' ? [] : [{ type: 'text' as const, value }];
  return { type: 'tableCell', children: [...words, ...other.map(({ type }) => ({ type }) as never)] };
}

function textOf(token: Token): string {
  const { text } = token as Tokens.Text;
  if (token.type === 'escape') return text;
  return text.replace(/&#x([\da-f]+);/gi, (_, hex: string) => String.fromCodePoint(Number.parseInt(hex, 16)));
}
