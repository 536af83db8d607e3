import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyBits, listBits, setBit } from '../../src/arrangement/bits.js';
import { floodCells, floodRuns } from '../../src/arrangement/flood-cells.js';

/** Cell by cell, from the start to every free neighbour by a side. */
function slowFlood(
  columns: number,
  rows: number,
  free: readonly boolean[],
  starts: readonly number[],
): number[] {
  const seen = new Set(starts.filter((i) => free[i]));
  for (const i of seen) {
    const column = i % columns;
    const next = [
      ...(column > 0 ? [i - 1] : []),
      ...(column + 1 < columns ? [i + 1] : []),
      ...(i >= columns ? [i - columns] : []),
      ...(i + columns < columns * rows ? [i + columns] : []),
    ];
    for (const j of next) if (free[j]) seen.add(j);
  }
  return [...seen].sort((a, b) => a - b);
}

const grids = fc
  .record({ columns: fc.integer({ min: 1, max: 70 }), rows: fc.integer({ min: 1, max: 24 }) })
  .chain(({ columns, rows }) =>
    fc.record({
      columns: fc.constant(columns),
      rows: fc.constant(rows),
      // More free floor than not, so that some of it hangs together.
      free: fc.array(
        fc.integer({ min: 0, max: 9 }).map((n) => n < 7),
        { minLength: columns * rows, maxLength: columns * rows },
      ),
      starts: fc.array(fc.nat({ max: columns * rows - 1 }), { maxLength: 3 }),
    }),
  );

describe('floodCells', () => {
  it('reaches what a walk from cell to cell reaches, and again with the same room for its runs', () => {
    fc.assert(
      fc.property(grids, ({ columns, rows, free, starts }) => {
        const runs = floodRuns(columns, rows);
        const freeBits = emptyBits(columns * rows);
        free.forEach((is, i) => {
          if (is) setBit(freeBits, i);
        });
        const startBits = emptyBits(columns * rows);
        for (const i of starts) setBit(startBits, i);
        const expected = slowFlood(columns, rows, free, starts);
        expect(listBits(floodCells(runs, freeBits, startBits))).toEqual(expected);
        expect(listBits(floodCells(runs, freeBits, startBits))).toEqual(expected);
      }),
      { seed: 5001, numRuns: 400 },
    );
  });

  it('follows a winding corridor to its end and does not pass a corner', () => {
    const plan = ['.#...', '.#.#.', '.#.#.', '...#.', '####.', '.....'];
    const free = emptyBits(30);
    plan
      .join('')
      .split('')
      .forEach((c, i) => {
        if (c === '.') setBit(free, i);
      });
    const start = emptyBits(30);
    setBit(start, 0);
    expect(listBits(floodCells(floodRuns(5, 6), free, start))).toEqual(listBits(free));
    const diagonal = emptyBits(4);
    setBit(diagonal, 0);
    setBit(diagonal, 3);
    const corner = emptyBits(4);
    setBit(corner, 0);
    expect(listBits(floodCells(floodRuns(2, 2), diagonal, corner))).toEqual([0]);
  });
});
