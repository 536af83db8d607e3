import { describe, expect, it } from 'vitest';
import { crossCheck } from './cross-check.js';

describe('the search against the plain solver', () => {
  it.each([7, 8])('agrees on random rooms with overlapping furniture (seed %i)', (seed) => {
    const count = crossCheck(seed, 15, 20, 4_000);
    expect(count.disagreements).toEqual([]);
    expect(count.standing).toBeGreaterThan(5);
    expect(count.unfinished).toBeLessThan(8);
  });
});
