/** What an operator can give when its operands lie anywhere between their bounds. */
export interface Span {
  readonly least: number;
  readonly most: number;
}

/**
 * The span of an arithmetic result, the outcome of a comparison that holds or fails for every operand,
 * or undefined when the comparison could come out either way.
 */
export function boundsOfResult(operator: string, spans: readonly Span[]): Span | boolean | undefined {
  const [a, b] = spans as [Span, Span | undefined];
  switch (operator) {
    case '<':
      return settled(a.most < (b as Span).least, a.least >= (b as Span).most);
    case '<=':
      return settled(a.most <= (b as Span).least, a.least > (b as Span).most);
    case '>':
      return boundsOfResult('<', [b as Span, a]);
    case '>=':
      return boundsOfResult('<=', [b as Span, a]);
    case '===':
      return settled(false, a.most < (b as Span).least || a.least > (b as Span).most);
    case '!==':
      return settled(a.most < (b as Span).least || a.least > (b as Span).most, false);
    case '-':
      return b === undefined
        ? { least: -a.most, most: -a.least }
        : { least: a.least - b.most, most: a.most - b.least };
    case '+':
      return spans.reduce((sum, span) => ({ least: sum.least + span.least, most: sum.most + span.most }));
    case 'min':
    case 'max': {
      const pick = operator === 'min' ? Math.min : Math.max;
      return {
        least: pick(...spans.map(({ least }) => least)),
        most: pick(...spans.map(({ most }) => most)),
      };
    }
    case '*':
      return spans.reduce((one, other) => ofCorners(one, other, (x, y) => x * y));
    case '/':
      return (b as Span).least <= 0 && (b as Span).most >= 0
        ? UNBOUNDED
        : ofCorners(a, b as Span, (x, y) => x / y);
    default:
      return undefined;
  }
}

const UNBOUNDED: Span = { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };

const settled = (holds: boolean, fails: boolean): boolean | undefined =>
  holds ? true : fails ? false : undefined;

function ofCorners(a: Span, b: Span, work: (x: number, y: number) => number): Span {
  const corners = [
    work(a.least, b.least),
    work(a.least, b.most),
    work(a.most, b.least),
    work(a.most, b.most),
  ];
  // Zero times boundless has no number.
  if (corners.some(Number.isNaN)) return UNBOUNDED;
  return { least: Math.min(...corners), most: Math.max(...corners) };
}
