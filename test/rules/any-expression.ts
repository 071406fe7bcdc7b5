/** Random expressions of any shape, most of them wrong: what a hand or a hostile pack may write. */
import fc from 'fast-check';
import { OPERATOR_NAMES } from '../../src/rules/operators.js';
import type { Expression } from '../../src/rules/schema.js';
import { NAMES } from './any-rule.js';

const SLIPS = ['==', '!!', 'some', 'missing', 'log', 'constructor', 'toString', 'hasOwnProperty'];

export const { node: anyExpression } = fc.letrec<{ node: Expression }>((tie) => ({
  node: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom<Expression>(0, 1, -1, 5, true, false, '', '5', 'sand', 'soil', 'chalk'),
    fc.constantFrom(...NAMES.keys(), 'mos', '__proto__').map((name) => ({ var: name })),
    fc.array(tie('node'), { maxLength: 3 }),
    fc
      .tuple(
        fc.constantFrom(...OPERATOR_NAMES, ...OPERATOR_NAMES, ...SLIPS),
        fc.array(tie('node'), { maxLength: 4 }),
      )
      .map(([operator, operands]) => ({ [operator]: operands })),
    fc.constant<Expression>({ '<': [1, 0], '>': [1, 0] }),
  ),
}));
