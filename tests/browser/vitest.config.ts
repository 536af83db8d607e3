import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const inCi = process.env.CI !== undefined && process.env.CI !== '';

/** Tests in a real browser: `npm run test:browser`, or with a part of a file's name behind it. */
export default defineConfig({
  test: {
    root: fileURLToPath(new URL('../..', import.meta.url)),
    include: ['tests/browser/**/*.browser.test.ts'],
    // Against hanging only.
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // Every file starts a chromium of its own.
    maxWorkers: 2,
    reporters: inCi ? ['default', 'json'] : ['default'],
    outputFile: { json: 'reports/browser.json' },
  },
});
