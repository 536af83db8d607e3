import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bracketSpare, type Decision } from '../../src/delivery/cross-by-boxes.js';

const SEED = 20261128;

/** A passage of which the spare is known: decisions within `doubt` of it come out undecided. Notes what was asked. */
function oracle(spare: number, doubt: number, asked: number[]): (delta: number) => Decision<number> {
  return (delta) => {
    asked.push(delta);
    if (delta <= spare - doubt) return { answer: 'path', proof: delta, boxes: 10 };
    return { answer: delta > spare + doubt ? 'no' : 'undecided', proof: null, boxes: 10 };
  };
}

describe('bracketSpare', () => {
  it('holds the spare between its ends, the proof being that of the lower one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3000, max: 3000, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.integer({ min: 0, max: 25 }),
        (spare, doubt, tolerance) => {
          const asked: number[] = [];
          const found = bracketSpare(oracle(spare, doubt, asked), { tolerance, maxBoxes: 1000 });
          expect(found.atLeast).toBeLessThanOrEqual(spare);
          expect(found.atMost).toBeGreaterThan(spare - 1e-6);
          expect(found.proof).toBe(Number.isFinite(found.atLeast) ? found.atLeast : null);
          expect(found.boxes).toBe(10 * asked.length);
          expect(asked[0]).toBe(0);
          expect(asked.length).toBeLessThanOrEqual(12);
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('is narrow near 0 and a twelfth of the figure far from it', () => {
    for (const spare of [-70, -12, -1, 0, 3, 25, 90]) {
      const { atLeast, atMost } = bracketSpare(oracle(spare, 1, []), { tolerance: 10, maxBoxes: 1000 });
      expect(atMost - atLeast).toBeLessThanOrEqual(10);
    }
    for (const spare of [-600, 400]) {
      const { atLeast, atMost } = bracketSpare(oracle(spare, 1, []), { tolerance: 10, maxBoxes: 1000 });
      expect(atMost - atLeast).toBeLessThanOrEqual(Math.abs(spare) / 8);
    }
  });

  it('settles what a tolerance either way would change, and `no` at 0 is less than 0', () => {
    expect(bracketSpare(oracle(-3, 0, []), { tolerance: 10, maxBoxes: 1000 }).atMost).toBeLessThan(0);
    for (const spare of [-11, -9, 9, 11]) {
      const { atLeast, atMost } = bracketSpare(oracle(spare, 0, []), { tolerance: 10, maxBoxes: 1000 });
      expect(atLeast >= 10 || atMost < -10).toBe(Math.abs(spare) > 10);
    }
  });

  it('starts from what is known and asks nothing twice', () => {
    const asked: number[] = [];
    const found = bracketSpare(oracle(33, 0, asked), {
      tolerance: 10,
      maxBoxes: 1000,
      atLeast: 20,
      atMost: 50,
    });
    expect(asked.every((delta) => delta > 20 && delta < 50)).toBe(true);
    expect(new Set(asked).size).toBe(asked.length);
    expect(found.atLeast).toBeLessThanOrEqual(33);
    expect(found.atMost).toBeGreaterThanOrEqual(33);
  });

  it('stops when the boxes are used up', () => {
    const asked: number[] = [];
    expect(bracketSpare(oracle(33, 0, asked), { tolerance: 10, maxBoxes: 25 }).boxes).toBe(30);
    expect(asked.length).toBe(3);
  });
});
