/** The plan as one page of HTML that needs nothing else: printable, readable by a screen reader, no script. */
import type { Element, ElementContent, Nodes, Root } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { toHast } from 'mdast-util-to-hast';
import type { Plan } from '../planner/plan.js';
import { drawingOf } from './drawing.js';
import { documentOf } from './from-plan.js';
import { titleOf } from './title-section.js';

const STYLE = `
:root { color-scheme: light; }
body { margin: 0; background: #fff; color: #1b1b1b; font: 1rem/1.5 system-ui, sans-serif; }
main { max-width: 46rem; margin: 0 auto; padding: 1rem 1.25rem 3rem; }
h1, h2, h3 { line-height: 1.25; break-after: avoid; }
h2 { margin-top: 2.5rem; border-bottom: 2px solid #1f6f43; }
h3 { margin-top: 2rem; }
li { margin: 0.25rem 0; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; }
th, td { padding: 0.35rem 0.6rem; border: 1px solid #767676; text-align: left; vertical-align: top; }
th { background: #f3f5f1; }
figure { margin: 1.5rem 0; }
svg { display: block; width: 100%; height: auto; }
@media screen { svg { min-width: 44rem; } }
code { overflow-wrap: anywhere; }
@media print {
  body { font-size: 10.5pt; }
  main { max-width: none; padding: 0; }
  tr, li, svg { break-inside: avoid; }
  .wide { overflow: visible; }
}`;

/** Nothing may be fetched and nothing may run, whatever stands in the text. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

export function htmlOf(plan: Plan): string {
  const body = toHast(documentOf(plan)) as Root;
  for (const node of elementsIn(body)) if (node.tagName === 'th') node.properties = { scope: 'col' };
  const content = body.children.map((node) => framed(node as ElementContent, plan));
  const page = element('html', { lang: 'en-GB' }, [
    element('head', {}, [
      element('meta', { charSet: 'utf-8' }),
      element('meta', { httpEquiv: 'Content-Security-Policy', content: POLICY }),
      element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      element('title', {}, [{ type: 'text', value: titleOf(plan) }]),
      element('style', {}, [{ type: 'text', value: STYLE }]),
    ]),
    element('body', {}, [element('main', {}, content)]),
  ]);
  const tree: Root = { type: 'root', children: [{ type: 'doctype' }, page] };
  return `${toHtml(tree, { allowDangerousHtml: true })}\n`;
}

/** A table may scroll by itself; the timeline in letters gives way to the drawing, the one thing that is put in raw. */
function framed(node: ElementContent, plan: Plan): ElementContent {
  if (node.type !== 'element') return node;
  if (node.tagName === 'table') {
    return element('div', scrolls('Table'), [node]);
  }
  if (node.tagName === 'pre')
    return element('figure', scrolls('The job as a drawing'), [{ type: 'raw', value: drawingOf(plan) }]);
  return node;
}

/** What is wider than the page scrolls by itself, by keyboard too. */
const scrolls = (ariaLabel: string): Element['properties'] => ({
  className: ['wide'],
  tabIndex: 0,
  role: 'group',
  ariaLabel,
});

function element(
  tagName: string,
  properties: Element['properties'],
  children: ElementContent[] = [],
): Element {
  return { type: 'element', tagName, properties, children };
}

function elementsIn(node: Nodes): Element[] {
  const inside = 'children' in node ? (node.children as Nodes[]).flatMap(elementsIn) : [];
  return node.type === 'element' ? [node, ...inside] : inside;
}
