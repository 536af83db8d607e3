import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Carried, Hold } from '../../src/delivery/carried.js';
import {
  heldHeight,
  holdAt,
  holdFamilies,
  holdRank,
  holdsUnder,
  leastHeight,
  planLength,
  planShapeOf,
  tiltsUnder,
} from '../../src/delivery/holds.js';
import { bestHold } from '../../src/delivery/holds-best.js';
import { atRest, boxCorners, width } from './box-corners.js';
import { box, boxes, isHeldAsAllowed, mm } from './hold-samples.js';

const RUNS = { seed: 20260801, numRuns: 300 };
const DEGREE = Math.PI / 180;

/** Every hold on a grid of tilts, whether allowed or not decided by the angle of the upright alone. */
function gridHolds(carried: Carried, steps: number): Hold[] {
  const { l, w, h } = carried;
  const holds: Hold[] = [];
  for (const [along, across, up] of [
    [l, w, h],
    [l, h, w],
    [w, l, h],
  ] as const) {
    for (let i = 0; i <= steps; i++) {
      const hold = { along, across, up, tilt: (i / steps) * (Math.PI / 2) };
      if (isHeldAsAllowed(carried, hold)) holds.push(hold);
    }
  }
  return holds;
}

describe('planLength and heldHeight', () => {
  it('are what the corners of the turned box span', () => {
    fc.assert(
      fc.property(
        fc.tuple(mm(1, 3000), mm(1, 3000), mm(1, 3000), mm(0, Math.PI / 2)),
        ([along, across, up, tilt]) => {
          const hold = { along, across, up, tilt };
          const corners = boxCorners(hold, atRest(hold));
          expect(planLength(hold)).toBeCloseTo(width(corners, 0), 6);
          expect(across).toBeCloseTo(width(corners, 1), 6);
          expect(heldHeight(hold)).toBeCloseTo(width(corners, 2), 6);
          expect(planShapeOf(hold)).toEqual({
            halfLength: planLength(hold) / 2,
            halfWidth: across / 2,
            radius: 0,
          });
        },
      ),
      RUNS,
    );
  });
});

describe('holdFamilies', () => {
  it('keeps the tilt out of the held ways only', () => {
    const tilts = (held: Parameters<typeof box>[3], degrees: number) =>
      holdFamilies(box(2000, 900, 50, held, degrees)).map((family) =>
        family.tilts.map(([from, to]) => [from / DEGREE, to / DEGREE].map((d) => Math.round(d * 1e6) / 1e6)),
      );
    expect(tilts(['flat'], 20)).toEqual([[[0, 20]], [], [[0, 20]]]);
    expect(tilts(['on-edge'], 20)).toEqual([[], [[0, 20]], [[70, 90]]]);
    expect(tilts(['on-end'], 0)).toEqual([[[90, 90]], [[90, 90]], []]);
    expect(tilts(['flat', 'on-edge', 'on-end'], 45)).toEqual([[[0, 90]], [[0, 90]], [[0, 90]]]);
    expect(tilts(['flat', 'on-end'], 30)).toEqual([
      [
        [0, 30],
        [60, 90],
      ],
      [[60, 90]],
      [[0, 30]],
    ]);
    expect(tilts(['on-edge'], 90)).toEqual([[[0, 90]], [[0, 90]], [[0, 90]]]);
  });
});

describe('tiltsUnder', () => {
  it('is the stretch of tilts that stay under the height', () => {
    fc.assert(
      fc.property(fc.tuple(mm(10, 3000), mm(10, 3000), mm(1, 4000)), ([one, other, height]) => {
        const family = { along: Math.max(one, other), across: 1, up: Math.min(one, other) };
        const under = tiltsUnder(family, [0, Math.PI / 2], height);
        for (let i = 0; i <= 90; i++) {
          const tilt = i * DEGREE;
          const over = heldHeight({ ...family, tilt }) - height;
          if (Math.abs(over) < 1e-3) continue;
          expect(under.some(([from, to]) => from <= tilt && tilt <= to)).toBe(over < 0);
        }
        for (const tilt of under.flat())
          expect(heldHeight(holdAt(family, tilt))).toBeLessThanOrEqual(height + 1e-9);
      }),
      RUNS,
    );
  });
});

describe('holdsUnder', () => {
  it('names each way once, in a steady order', () => {
    expect(holdsUnder(box(2000, 900, 50, ['flat'], 0), 2400)).toEqual([
      { along: 2000, across: 900, up: 50, tilt: 0 },
    ]);
    expect(holdsUnder(box(2000, 900, 50, ['flat', 'on-edge'], 0), 850)).toEqual([
      { along: 2000, across: 900, up: 50, tilt: 0 },
    ]);
    // On edge covers less than flat; standing covers less than both.
    expect(holdsUnder(box(2000, 900, 50, ['flat', 'on-edge'], 0), 1000)).toEqual([
      { along: 2000, across: 50, up: 900, tilt: 0 },
    ]);
    expect(holdsUnder(box(2000, 900, 50, ['flat', 'on-edge', 'on-end'], 0), 2000)).toEqual([
      { along: 900, across: 50, up: 2000, tilt: 0 },
    ]);
    expect(holdsUnder(box(2000, 900, 50), 40)).toEqual([]);
  });

  it('holds under the height, in allowed ways, ordered, none covering another', () => {
    fc.assert(
      fc.property(boxes, mm(10, 3500), (carried, height) => {
        const holds = holdsUnder(carried, height);
        const ranks = holds.map((hold) => holdRank(carried, hold));
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        for (const hold of holds) {
          expect(heldHeight(hold)).toBeLessThanOrEqual(height + 1e-9);
          expect(isHeldAsAllowed(carried, hold)).toBe(true);
          for (const other of holds) expect(hold !== other && coversPlan(hold, other, -1e-9)).toBe(false);
        }
        expect(holds.length > 0).toBe(height >= leastHeight(carried));
      }),
      RUNS,
    );
  });

  it('leaves nothing out: every allowed hold under the height covers one of them', () => {
    fc.assert(
      fc.property(boxes, mm(10, 3500), (carried, height) => {
        const holds = holdsUnder(carried, height);
        for (const hold of gridHolds(carried, 45)) {
          if (heldHeight(hold) > height) continue;
          expect(holds.some((best) => coversPlan(hold, best, 1e-6))).toBe(true);
        }
      }),
      RUNS,
    );
  });

  function coversPlan(one: Hold, other: Hold, slack: number): boolean {
    const [a, b] = [planLength(one), one.across].sort((x, y) => x - y);
    const [p, q] = [planLength(other), other.across].sort((x, y) => x - y);
    return (a ?? 0) >= (p ?? 0) - slack && (b ?? 0) >= (q ?? 0) - slack;
  }
});

describe('bestHold', () => {
  /** A passage in plan whose spare falls with both sides, whichever way round. */
  const bySize = (limit: number) => (length: number, across: number) => {
    const spare = limit - Math.max(length, across) - 0.4 * Math.min(length, across);
    return { atLeast: spare, atMost: spare };
  };

  it('is the best of all tilts, from both sides', () => {
    fc.assert(
      fc.property(boxes, mm(100, 3500), mm(100, 4000), (carried, height, limit) => {
        const worthOf = (hold: Hold): number =>
          Math.min(height - heldHeight(hold), bySize(limit)(planLength(hold), hold.across).atLeast);
        const found = bestHold(carried, height, bySize(limit));
        if (found === null) throw new Error('every box may be held somehow');
        expect(found.atLeast).toBeLessThanOrEqual(found.atMost);
        expect(found.atMost - found.atLeast).toBeLessThan(2e-5 * carried.l);
        expect(found.atLeast).toBeCloseTo(worthOf(found.hold), 9);
        expect(isHeldAsAllowed(carried, found.hold)).toBe(true);
        const grid = Math.max(...gridHolds(carried, 180).map(worthOf));
        expect(found.atMost).toBeGreaterThanOrEqual(grid - 1e-6);
      }),
      RUNS,
    );
  });
});
