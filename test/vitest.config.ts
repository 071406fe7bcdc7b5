import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: { root: '.', include: ['test/**/*.test.ts'], testTimeout: 120_000 },
});
