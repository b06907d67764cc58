import { defineConfig } from 'vitest/config';

// The source condition makes tests read TypeScript sources; a list here replaces vite's own, so those are repeated.
export default defineConfig({
  ssr: { resolve: { conditions: ['@wattlewright/source', 'module', 'node', 'development|production'] } },
  test: {
    testTimeout: 120_000,
    hookTimeout: 120_000,
    projects: [
      { extends: true, test: { name: 'model', root: 'packages/model', include: ['test/**/*.test.ts'] } },
      { extends: true, test: { name: 'drafting', root: 'packages/drafting', include: ['test/**/*.test.ts'] } },
      { extends: true, test: { name: 'packet', root: 'packages/packet', include: ['test/**/*.test.ts'] } },
      { extends: true, test: { name: 'whole', root: 'test', include: ['**/*.test.ts'] } },
    ],
  },
});
