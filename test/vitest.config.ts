import { defineConfig } from 'vitest/config';

/** Folders whose tests touch no process, screen or file of their own: they can share one worker, which saves its start. */
const PURE = [
  'agronomy',
  'base',
  'data',
  'diagnosis',
  'document',
  'interview',
  'planner',
  'published',
  'reckon',
  'training',
];

const folders = (names: readonly string[]): string[] => names.map((name) => `test/${name}/**/*.test.ts`);

export default defineConfig({
  test: {
    root: '.',
    testTimeout: 120_000,
    globalSetup: 'test/temporary-folder.ts',
    setupFiles: 'test/fixed-seed.ts',
    projects: [
      { extends: true, test: { name: 'pure', include: folders(PURE), isolate: false } },
      { extends: true, test: { name: 'apart', include: ['test/**/*.test.ts'], exclude: folders(PURE) } },
    ],
  },
});
