import { readFileSync } from 'node:fs';
import { describe, it } from 'vitest';
import type { FitInput } from '../../src/index.js';
import { fitsAndWords } from './fit-laws.js';

interface Case {
  readonly found: string;
  readonly input: FitInput;
}

const { cases }: { cases: Case[] } = JSON.parse(
  readFileSync(new URL('../fixtures/fuzz/fits.json', import.meta.url), 'utf8'),
);

/** Inputs that the fuzz found once and that were answered wrongly; each throws here when it is again. */
describe('inputs found by fuzz', () => {
  it.each(cases)('$found', ({ input }) => {
    for (const units of ['mm', 'cm', 'ftin'] as const) fitsAndWords(input, units);
  });
});
