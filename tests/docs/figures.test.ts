import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { figures } from './figures.js';

describe('the figures of the guides', () => {
  it.each(figures())('is what the code draws: %s', (file, svg) => {
    // `npx tsx tests/docs/write-figures.ts` draws them anew.
    expect(readFileSync(new URL(`../../docs/guides/${file}`, import.meta.url), 'utf8')).toBe(svg);
  });
});
