/**
 * The few kinds of node a plan needs, as plain mdast objects.
 * Text goes in as strings and becomes text nodes only, so nothing typed can become a block, a link or HTML.
 */
import type {
  Heading,
  List,
  ListItem,
  Paragraph,
  PhrasingContent,
  Strong,
  Table,
  TableCell,
  TableRow,
} from 'mdast';
import { oneLine } from './one-line.js';

/** A piece of a line: words, or a node already made. Empty words are left out. */
export type Part = string | PhrasingContent;

/** The pieces as one line, joined by single spaces; a mark around nothing is left out like nothing. */
export function line(...parts: readonly Part[]): PhrasingContent[] {
  const children: PhrasingContent[] = [];
  for (const part of parts) {
    const cleaned = typeof part === 'string' ? oneLine(part) : part;
    if (cleaned === '' || isEmpty(cleaned)) continue;
    if (children.length > 0) append(children, ' ');
    append(children, cleaned);
  }
  return children;
}

export function heading(depth: 1 | 2 | 3, words: string): Heading {
  return { type: 'heading', depth, children: line(words) };
}

export function paragraph(...parts: readonly Part[]): Paragraph {
  return { type: 'paragraph', children: line(...parts) };
}

export function strong(words: string): Strong {
  return { type: 'strong', children: line(words) };
}

export function bullets(items: readonly (readonly Part[])[]): List {
  return { type: 'list', ordered: false, spread: false, children: items.map(listItem) };
}

export function numbered(items: readonly (readonly Part[])[]): List {
  return { type: 'list', ordered: true, start: 1, spread: false, children: items.map(listItem) };
}

/** A table; every row must have as many cells as the head. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): Table {
  return { type: 'table', align: head.map(() => null), children: [head, ...rows].map(tableRow) };
}

function listItem(parts: readonly Part[]): ListItem {
  return { type: 'listItem', spread: false, children: [paragraph(...parts)] };
}

function tableRow(cells: readonly string[]): TableRow {
  return { type: 'tableRow', children: cells.map(tableCell) };
}

function tableCell(words: string): TableCell {
  return { type: 'tableCell', children: line(words) };
}

function isEmpty(part: Part): boolean {
  return typeof part !== 'string' && 'children' in part && part.children.length === 0;
}

/** Neighbouring words become one text node, as a reader of Markdown would make them. */
function append(children: PhrasingContent[], part: Part): void {
  const last = children.at(-1);
  if (typeof part !== 'string') children.push(part);
  else if (last?.type === 'text') last.value += part;
  else children.push({ type: 'text', value: part });
}
