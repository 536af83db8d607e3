import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import { TABLES } from '../../src/equipment/tables.js';
import { changed, places } from '../helpers/fit-inputs.js';
import { GOOD_WAYS, good, read } from './read-inputs.js';

const ways = Object.values(GOOD_WAYS);

describe('reading a way in', () => {
  it('never throws, whatever it is given, and never answers without problems or a way', () => {
    const anything = fc.oneof(
      fc.anything({
        withBigInt: true,
        withSparseArray: true,
        withNullPrototype: true,
        withDate: true,
        withMap: true,
      }),
      fc.record({ route: fc.array(fc.anything()), pieces: fc.anything() }),
      // Something strange in one place of a good way.
      fc.tuple(fc.constantFrom(...ways), fc.nat(), fc.anything()).map(([way, pick, other]) => {
        const all = places(way);
        return changed(way, all[pick % all.length].path, () => other);
      }),
    );
    fc.assert(
      fc.property(anything, fc.constantFrom(null, ...Object.values(TABLES)), (value, table) => {
        const { checked, problems, assumptions } = read(value, table);
        expect(checked === null).toBe(problems.length > 0);
        if (checked === null) expect(assumptions).toEqual([]);
        for (const { path, message } of problems) {
          expect(path.startsWith('delivery')).toBe(true);
          expect(message.length).toBeGreaterThan(10);
        }
      }),
      { seed: 20251128, numRuns: 1500 },
    );
  });

  it('reads the same after a trip through JSON', () => {
    for (const way of ways) {
      const trip: unknown = JSON.parse(JSON.stringify(way));
      expect(read(trip)).toEqual(read(way));
    }
  });

  it('reads -0 as 0, which JSON cannot tell apart', () => {
    const zero = (nought: number) => ({
      route: [
        {
          kind: 'doorway',
          width: 800,
          height: 2000,
          depth: nought,
          tolerance: nought,
          after: { depth: 900, left: nought },
        },
        { kind: 'opening', width: 800, height: 2000, sill: nought },
        { kind: 'half-landing', width: 800, headroom: 2000, pitch: 40, well: nought },
      ],
      pieces: [{ name: 'Crate', length: 900, width: 800, thickness: 700, tilt: nought }],
      handRoom: nought,
      tolerance: nought,
    });
    expect(good(zero(-0))).toEqual(good(zero(0)));
  });

  it('reads text with a unit as the number of millimetres', () => {
    const unit = fc.constantFrom(['mm', 1], ['cm', 10], ['m', 1000], ['in', 25.4]);
    const size = fc.integer({ min: 700, max: 2400 });
    fc.assert(
      fc.property(unit, size, size, size, ([word, mm], width, height, floor) => {
        const way = (write: (value: number) => number | string) => ({
          route: [
            { kind: 'doorway', width: write(width), height: write(height), before: { depth: write(floor) } },
            { kind: 'corner', width: write(width), height: write(height), widthAfter: write(floor) },
            { kind: 'winder', width: write(width), headroom: write(height), pitch: 40, climb: write(floor) },
          ],
          pieces: [{ name: 'Crate', length: write(floor), width: write(width), thickness: write(height) }],
        });
        // Through the same division, so that both are one number of millimetres to within rounding.
        const text = good(way((value) => `${(value / Number(mm)).toFixed(6)} ${word}`));
        const numbers = good(way((value) => value));
        expect(rounded(text)).toEqual(rounded(numbers));
      }),
      { seed: 20251129, numRuns: 200 },
    );
  });

  it('does not change what it is given, and shares nothing with it', () => {
    for (const way of ways) {
      const before = JSON.stringify(way);
      const first = good(way);
      expect(JSON.stringify(way)).toBe(before);
      expect(good(way)).toEqual(first);
    }
    const held = ['flat'];
    const way = {
      route: [{ kind: 'corridor', width: 900, height: 2000 }],
      pieces: [{ name: 'Crate', length: 900, width: 800, thickness: 700, held }],
    };
    const checked = good(way);
    held[0] = 'on-end';
    expect(checked.pieces[0]?.held).toEqual(['flat']);
  });

  it('gives passages that can be narrowed and widened', () => {
    for (const way of ways) {
      for (const passage of good(way).route) {
        expect(narrowPassage(narrowPassage(passage, 10), -10).kind).toBe(passage.kind);
        const numbers = (value: unknown): number[] =>
          typeof value === 'number'
            ? [value]
            : typeof value === 'object' && value !== null
              ? Object.values(value).flatMap(numbers)
              : [];
        expect(numbers(narrowPassage(passage, 25)).some(Number.isNaN)).toBe(false);
      }
    }
  });

  it('takes a hundred passages and fifty pieces at once', () => {
    const route = Array.from({ length: 100 }, () => ({ kind: 'doorway', width: 900, height: 2000 }));
    const pieces = Array.from({ length: 50 }, (_, i) => ({
      name: `Crate ${i}`,
      length: 900,
      width: 500,
      thickness: 300,
    }));
    const { checked, assumptions } = read({ route, pieces });
    expect(checked?.route[99]?.name).toBe('Doorway 100');
    expect(checked?.pieces).toHaveLength(50);
    for (const sentence of assumptions) expect(sentence.length).toBeLessThan(200);
  });
});

/** All numbers to the micrometre. */
function rounded(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (_, part: unknown) =>
      typeof part === 'number' ? Math.round(part * 1000) / 1000 : part,
    ),
  );
}
