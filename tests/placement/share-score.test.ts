import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangleRing, rotated, translated } from '../../src/geometry/ring.js';
import type { Ring } from '../../src/geometry/types.js';
import { compassSearch } from '../../src/placement/compass-search.js';
import { PLAYABLE, shareScorer } from '../../src/placement/share-score.js';

const play = { length: 2482.8, width: 1212.8 };

/** Mean of acos(y / X) over [y0, y1], from the antiderivative y acos(y / X) - sqrt(X^2 - y^2). */
function meanAcos(y0: number, y1: number, x: number): number {
  const g = (y: number): number => (y >= x ? 0 : y * Math.acos(y / x) - Math.sqrt(x * x - y * y));
  return (g(y1) - g(y0)) / (y1 - y0);
}

describe('the quick score of shares', () => {
  test('comes near the closed form of an empty rectangular room', () => {
    // Elementary integral geometry: a wall at distance y blocks 2 acos(y / X) of all directions; no corner is in reach.
    const [length, width, reach] = [4800, 3600, 1626.6];
    const ends = meanAcos((length - play.length) / 2, (length + play.length) / 2, reach);
    const sides = meanAcos((width - play.width) / 2, (width + play.width) / 2, reach);
    const share = 1 - (2 * (ends + sides)) / Math.PI;
    expect(share).toBeCloseTo(0.826296611203, 9);
    const ring = rectangleRing([0, 0], length, width);
    const score = shareScorer(
      [{ ring, inside: true, open: reach, playable: reach }],
      play,
    )({ x: 0, y: 0, angle: 0 });
    // Fifteen ball positions across a square-root kink: two per cent are good enough to steer by.
    expect(Math.abs(score - share)).toBeLessThan(0.02);
  });

  test('weighs playable shots nine parts and open ones one', () => {
    const ring = rectangleRing([0, 0], 4800, 3600);
    const at = (open: number, playable: number): number =>
      shareScorer([{ ring, inside: true, open, playable }], play)({ x: 0, y: 0, angle: 0 });
    const both = (1 - PLAYABLE) * at(1600, 1600) + PLAYABLE * at(1400, 1400);
    expect(at(1600, 1400)).toBeCloseTo(both, 12);
  });

  test('does not change with the frame, and never gains by one more thing', () => {
    const corner = fc.double({ min: -2000, max: 2000, noNaN: true });
    fc.assert(
      fc.property(corner, corner, fc.double({ min: 0, max: 3, noNaN: true }), (x, y, turn) => {
        const outline: Ring = [
          [-3500, -2500],
          [3500, -2400],
          [3000, 2600],
          [0, 2600],
          [0, 2200],
          [-3400, 2000],
        ];
        const thing = rectangleRing([x, y], 500, 300, turn);
        const rings = (map: (r: Ring) => Ring) => [
          { ring: map(outline), inside: true, open: 1600, playable: 1400 },
          { ring: map(thing), inside: false, open: 1600, playable: 900 },
        ];
        const still = shareScorer(
          rings((r) => r),
          play,
        )({ x: 0, y: 0, angle: 0.2 });
        const bare = shareScorer(rings((r) => r).slice(0, 1), play)({ x: 0, y: 0, angle: 0.2 });
        const moved = shareScorer(
          rings((r) => translated(rotated(r, turn), x, y)),
          play,
        )({ x, y, angle: 0.2 + turn });
        expect(moved).toBeCloseTo(still, 9);
        expect(still).toBeLessThanOrEqual(bare + 1e-12);
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});

describe('compass search', () => {
  test('climbs a hill along the axes of the table to within its last step', () => {
    const hill = ({ x, y }: { x: number; y: number }): number => -((x - 310) ** 2) - 2 * (y + 120) ** 2;
    const { pose, score } = compassSearch({ x: 0, y: 0, angle: 0.7 }, hill, {
      step: 240,
      stop: 4,
      most: 400,
    });
    expect(Math.hypot(pose.x - 310, pose.y + 120)).toBeLessThan(8);
    expect(score).toBe(hill(pose));
    expect(pose.angle).toBe(0.7);
  });

  test('never moves to a worse place, and counts its evaluations', () => {
    let used = 0;
    const flat = (): number => {
      used++;
      return 1;
    };
    const start = { x: 5, y: 6, angle: 0 };
    expect(compassSearch(start, flat, { step: 200, stop: 50, most: 7 }).pose).toEqual(start);
    expect(used).toBeLessThanOrEqual(7);
  });
});
