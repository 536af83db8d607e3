import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capsuleInPlan } from '../../src/delivery/capsule.js';
import type { Carried } from '../../src/delivery/carried.js';
import { crossCorner } from '../../src/delivery/corner.js';
import { cornerSpare } from '../../src/delivery/corner-spare.js';
import { heldHeight, leastHeight, planShapeOf } from '../../src/delivery/holds.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Corner } from '../../src/delivery/passages.js';
import { boxCorners, extent, planHull, samplePoses } from './box-corners.js';
import { cornerSolids, separation } from './corner-slow.js';
import { box, boxes, isHeldAsAllowed, mm } from './hold-samples.js';

const SEED = 20260803;
const DEGREE = Math.PI / 180;

const anyCorners: fc.Arbitrary<Corner> = fc
  .tuple(mm(300, 1800), mm(300, 1800), mm(5, 175), mm(300, 3500), mm(300, 3500), fc.boolean())
  .map(([width, widthAfter, degrees, height, other, level]) =>
    corner(width, widthAfter, degrees, height, level ? height : other),
  );

function corner(
  width: number,
  widthAfter: number,
  degrees: number,
  height: number,
  heightAfter = height,
): Corner {
  return {
    kind: 'corner',
    name: 'corner',
    tolerance: 10,
    width,
    widthAfter,
    height,
    heightAfter,
    angle: degrees * DEGREE,
  };
}

function narrowed(passage: Corner, delta: number): Corner {
  const narrow = narrowPassage(passage, delta);
  if (narrow.kind !== 'corner') throw new Error('still a corner');
  return narrow;
}

describe('crossCorner', () => {
  it('brackets the spare: 0.1 less passes, 0.1 more does not', () => {
    fc.assert(
      fc.property(anyCorners, boxes, (passage, carried) => {
        const { atLeast, atMost, atMostAnyMotion } = crossCorner(passage, carried);
        expect(atLeast).toBeLessThanOrEqual(atMost);
        expect(atMost).toBeLessThanOrEqual(atMostAnyMotion);
        if (passage.height === passage.heightAfter) expect(atMost - atLeast).toBeLessThan(0.1);
        expect(crossCorner(narrowed(passage, atLeast - 0.1), carried).atLeast).toBeGreaterThanOrEqual(0);
        expect(crossCorner(narrowed(passage, atMost + 0.1), carried).atMost).toBeLessThan(0);
        expect(crossCorner(narrowed(passage, atMostAnyMotion + 0.5), carried).atMostAnyMotion).toBeLessThan(
          0,
        );
      }),
      { seed: SEED, numRuns: 250 },
    );
  });

  it('moves through what it passes without touching anything, by rotated corners and plain polygons', () => {
    let moved = 0;
    fc.assert(
      fc.property(anyCorners, boxes, mm(0.1, 300), (given, carried, extra) => {
        const passage = narrowed(given, Math.min(0, crossCorner(given, carried).atLeast - extra));
        const { atLeast, motion, hold } = crossCorner(passage, carried);
        if (motion === null || hold === null) throw new Error('widened until it passes');
        moved++;
        expect([...sizes(motion)]).toEqual([
          ...sizes({ along: carried.l, across: carried.w, up: carried.h }),
        ]);
        expect(isHeldAsAllowed(carried, hold)).toBe(true);
        const solids = cornerSolids(passage);
        for (const pose of samplePoses(motion, 4)) {
          const corners = boxCorners(motion, pose);
          const [low, high] = extent(corners, 2);
          expect(low).toBeGreaterThan(0);
          expect(high).toBeLessThan(Math.min(passage.height, passage.heightAfter));
          const hull = planHull(corners);
          for (const solid of solids)
            expect(separation(hull, solid)).toBeGreaterThan(0.25 * Math.min(atLeast, 10));
        }
      }),
      { seed: SEED, numRuns: 60 },
    );
    expect(moved).toBeGreaterThan(50);

    function sizes({ along, across, up }: { along: number; across: number; up: number }): number[] {
      return [along, across, up].sort((a, b) => b - a);
    }
  });

  it('falls as any measure of the passage does, and as the box grows', () => {
    fc.assert(
      fc.property(
        anyCorners,
        boxes,
        fc.integer({ min: 0, max: 6 }),
        mm(0, 300),
        (passage, carried, which, by) => {
          const before = crossCorner(passage, carried);
          const cut = (i: number): number => (which === i ? by : 0);
          const sizes = [carried.l + cut(4), carried.w + cut(5), carried.h + cut(6)];
          // The ways it may be held go by the order of its measures: only grow it as long as that stays.
          const [l = 0, w = 0, h = 0] = sizes;
          if (!(l >= w && w >= h)) return;
          const after = crossCorner(
            {
              ...passage,
              width: passage.width - cut(0),
              widthAfter: passage.widthAfter - cut(1),
              height: passage.height - cut(2),
              heightAfter: passage.heightAfter - cut(3),
            },
            { ...carried, l, w, h },
          );
          expect(after.atLeast).toBeLessThanOrEqual(before.atMost + 1e-6);
          expect(after.atMostAnyMotion).toBeLessThanOrEqual(before.atMostAnyMotion + 0.5);
        },
      ),
      { seed: SEED, numRuns: 400 },
    );
  });

  it('is the same for the corridors in the other order', () => {
    fc.assert(
      fc.property(anyCorners, boxes, (passage, carried) => {
        const one = crossCorner(passage, carried);
        const other = crossCorner(
          {
            ...passage,
            width: passage.widthAfter,
            widthAfter: passage.width,
            height: passage.heightAfter,
            heightAfter: passage.height,
          },
          carried,
        );
        expect(other.atLeast).toBeLessThanOrEqual(one.atMost + 1e-6);
        expect(other.atMost).toBeGreaterThanOrEqual(one.atLeast - 1e-6);
        expect(Math.abs(other.atMostAnyMotion - one.atMostAnyMotion)).toBeLessThan(0.5);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('is best among holds tried one by one', () => {
    fc.assert(
      fc.property(anyCorners, boxes, (passage, carried) => {
        const { atLeast, atMost, hold } = crossCorner(passage, carried);
        const lower = Math.min(passage.height, passage.heightAfter);
        const spareWith = (held: Parameters<typeof heldHeight>[0]): number =>
          Math.min(lower - heldHeight(held), cornerSpare(passage, planShapeOf(held)).atLeast);
        if (hold === null) throw new Error('every box may be held somehow');
        expect(spareWith(hold)).toBeCloseTo(atLeast, 6);
        const { l, w, h } = carried;
        for (const [along, across, up] of [
          [l, w, h],
          [l, h, w],
          [w, l, h],
        ] as const) {
          for (let i = 0; i <= 18; i++) {
            const held = { along, across, up, tilt: i * 5 * DEGREE };
            if (isHeldAsAllowed(carried, held)) expect(spareWith(held)).toBeLessThanOrEqual(atMost + 1e-6);
          }
        }
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  it('has a bound for any motion that no spare exceeds, whatever the hold', () => {
    fc.assert(
      fc.property(anyCorners, boxes, mm(0, Math.PI / 2), (passage, carried, tilt) => {
        const free: Carried = { ...carried, held: ['flat', 'on-edge', 'on-end'], tilt: Math.PI / 2 };
        const { atMostAnyMotion } = crossCorner(passage, { ...carried, held: ['flat'], tilt: 0 });
        const { atLeast, hold } = crossCorner(passage, free);
        expect(atLeast).toBeLessThanOrEqual(atMostAnyMotion + 1e-6);
        // And the capsule itself: in no hold is there less plan than that.
        if (hold === null) throw new Error('every box may be held somehow');
        const held = { ...hold, tilt };
        const height = heldHeight(held);
        expect(cornerSpare(passage, planShapeOf(held)).atLeast).toBeLessThanOrEqual(
          cornerSpare(passage, capsuleInPlan(free, height)).atMost + 1e-6,
        );
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('stops at the ceiling where that is all that stops it', () => {
    const low = crossCorner(corner(3000, 3000, 90, 60), box(1000, 500, 80, ['flat'], 0));
    expect(low).toMatchObject({ atLeast: -20, atMost: -20, atMostAnyMotion: -20, motion: null });
    expect(leastHeight(box(1000, 500, 80, ['flat'], 0))).toBe(80);
  });

  it('tells where it sticks', () => {
    const { atLeast, narrowest } = crossCorner(corner(900, 900, 90, 2400), box(2500, 1300, 80, ['flat'], 0));
    expect(atLeast).toBeLessThan(-100);
    expect(narrowest).toMatchObject({ z: 1200, tilt: 0, roll: 0 });
  });
});
