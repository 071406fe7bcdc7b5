import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnsOf, wrapText } from '../../src/terminal/wrap-text.js';
import { screenOf } from './screen.js';

describe('wrapText', () => {
  it('keeps words whole where they fit, and hangs further lines', () => {
    expect(wrapText('  1  springy, like a thin mattress', 20, '     ')).toEqual([
      '  1  springy, like a',
      '     thin mattress',
    ]);
  });

  it('cuts a word that is longer than the line', () => {
    expect(wrapText('x'.repeat(25), 10)).toEqual(['x'.repeat(10), 'x'.repeat(10), 'x'.repeat(5)]);
  });

  it('keeps line breaks and empty lines', () => {
    expect(wrapText('a\n\nb', 20)).toEqual(['a', '', 'b']);
  });

  it('never writes a line wider than the width, and loses nothing but spaces', () => {
    const text = fc.array(fc.constantFrom('lawn', 'a', '芝生', '🍀', 'é', 'x'.repeat(30), ' ', '\n', '  '), {
      maxLength: 30,
    });
    fc.assert(
      fc.property(text, fc.integer({ min: 10, max: 60 }), (pieces, width) => {
        const joined = pieces.join('');
        const lines = wrapText(joined, width);
        for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(width);
        expect(lines.join('').replace(/\s/g, '')).toBe(joined.replace(/\s/g, ''));
      }),
    );
  });
});

describe('columnsOf', () => {
  it.each(['lawn', 'café', 'cafe\u0301', '芝生', 'ﾊﾟ', '½ ✓'])(
    'of %s is where a terminal puts the cursor',
    async (text) => {
      // The emulator wraps at its edge, so a text of n columns and one sign more fits in n + 1 but not in n.
      const columns = columnsOf(text);
      const fits = await screenOf(`${text}|`, { columns: columns + 1, rows: 5 });
      const spills = await screenOf(`${text}|`, { columns, rows: 5 });
      expect(fits.rows).toHaveLength(1);
      expect(spills.rows.length).toBeGreaterThan(1);
    },
  );
});
