import { defineConfig } from 'vitest/config';

/** The tests that look at equations and rules directly; a mutant must not live until a journey happens to fail. */
export default defineConfig({
  test: {
    include: [
      'test/agronomy/**/*.test.ts',
      'test/published/**/*.test.ts',
      'test/rules/**/*.test.ts',
      'test/diagnosis/**/*.test.ts',
      'test/data/findings.test.ts',
    ],
    testTimeout: 120_000,
  },
});
