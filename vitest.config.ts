import { configDefaults, defineConfig } from 'vitest/config';

const inCi = process.env.CI !== undefined && process.env.CI !== '';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Those need a browser and have a configuration of their own.
    exclude: [...configDefaults.exclude, 'tests/browser/**'],
    // Against hanging only: the longest test takes 16 s, and three times as long where coverage is measured.
    testTimeout: 120_000,
    // The runner's own choice leaves a core idle, which is half of them on a small machine.
    maxWorkers: '100%',
    // .ci/run counts the tests from the file; a person reads the list.
    reporters: inCi ? ['default', 'json'] : ['default'],
    outputFile: { json: 'reports/vitest.json' },
    coverage: {
      provider: 'v8',
      include: ['src/**/*.ts'],
      reporter: ['text', 'json-summary'],
      reportsDirectory: 'coverage',
    },
  },
});
