import { describe, expect, it } from 'vitest';
import { fuzzBounds } from './bound-fuzz.js';

describe('bounds over boxes of poses', () => {
  it.each([11, 12, 13])('never lie below what a pose of the box has (seed %i)', (seed) => {
    const count = fuzzBounds(seed, 24, 30, 8);
    expect(count.examples).toEqual([]);
    expect(count.violations).toBe(0);
    expect(count.playRows).toBeGreaterThan(50_000);
    expect(count.frameRows).toBeGreaterThan(50_000);
    expect(count.boxBounds).toBeGreaterThan(3_000);
  });
});
