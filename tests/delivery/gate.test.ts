import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Carried } from '../../src/delivery/carried.js';
import { crossCorridor } from '../../src/delivery/corridor.js';
import { carverFits, carverSpare, crossGateStraight } from '../../src/delivery/gate.js';
import { bestStraight, heldSectionSpare, sectionSpare } from '../../src/delivery/gate-section.js';
import { holdFamilies } from '../../src/delivery/holds.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Corridor, Gate, Space } from '../../src/delivery/passages.js';
import { boxCorners, extent, type Point3, samplePoses, width } from './box-corners.js';
import { box, boxes, isHeldAsAllowed, mm } from './hold-samples.js';

const SEED = 20260804;
const DEGREE = Math.PI / 180;
const ENDLESS = Number.POSITIVE_INFINITY;
const OPEN: Space = { depth: ENDLESS, left: ENDLESS, right: ENDLESS, height: ENDLESS };

function doorway(width: number, height: number, more: Partial<Gate> = {}): Gate {
  return {
    kind: 'doorway',
    name: 'door',
    tolerance: 10,
    width,
    height,
    depth: 150,
    sill: 0,
    leaf: 40,
    before: OPEN,
    after: OPEN,
    ...more,
  };
}

const spaces: fc.Arbitrary<Space> = fc.record({
  depth: fc.oneof(fc.constant(ENDLESS), mm(300, 4000)),
  left: fc.oneof(fc.constant(ENDLESS), mm(-50, 500)),
  right: fc.oneof(fc.constant(ENDLESS), mm(-50, 500)),
  height: fc.oneof(fc.constant(ENDLESS), mm(500, 3500)),
});

const gates: fc.Arbitrary<Gate> = fc
  .record({
    width: mm(200, 2500),
    height: mm(200, 2500),
    depth: mm(0, 400),
    sill: fc.oneof(fc.constant(0), mm(0, 900)),
    before: spaces,
    after: spaces,
  })
  .map((given) => doorway(given.width, given.height, given));

/** A unit vector that is anything, and one square to it that is anything. */
const frames = fc
  .tuple(mm(-1, 1), mm(0, 2 * Math.PI), mm(0, 2 * Math.PI))
  .map(([sin, longitude, turn]) => ({ heading: longitude, tilt: Math.asin(sin), roll: turn }));

describe('carverFits', () => {
  const sides = mm(1, 100);

  it('agrees with turning by every hundredth of a degree', () => {
    fc.assert(
      fc.property(sides, sides, sides, sides, (p, q, a, b) => {
        const turned = bruteFits(p, q, a, b);
        // The grid misses the best turn by less than this much of a side.
        if (turned < -2e-2) expect(carverFits(p, q, a, b)).toBe(false);
        if (turned >= 0) expect(carverFits(p, q, a, b)).toBe(true);
      }),
      { seed: SEED, numRuns: 300 },
    );

    function bruteFits(p: number, q: number, a: number, b: number): number {
      let best = Number.NEGATIVE_INFINITY;
      for (let i = 0; i <= 9000; i++) {
        const c = Math.cos(i * 0.01 * DEGREE);
        const s = Math.sin(i * 0.01 * DEGREE);
        best = Math.max(best, Math.min(a - p * c - q * s, b - p * s - q * c));
      }
      return best;
    }
  });

  it('is where the spare changes sign', () => {
    fc.assert(
      fc.property(sides, sides, sides, sides, (p, q, a, b) => {
        const spare = carverSpare(p, q, a, b);
        expect(carverFits(p, q, a - spare + 1e-6, b - spare + 1e-6)).toBe(true);
        if (Math.min(a, b) - spare > 1e-5)
          expect(carverFits(p, q, a - spare - 1e-6, b - spare - 1e-6)).toBe(false);
        if (Math.abs(spare) > 1e-9) expect(carverFits(p, q, a, b)).toBe(spare > 0);
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });
});

describe('bestStraight', () => {
  it('is the best of all allowed tilts and both ways round', () => {
    fc.assert(
      fc.property(boxes, spaces, mm(200, 2500), mm(200, 2500), (carried, space, wide, high) => {
        const hole = { width: wide, height: high, left: space.left, right: space.right, depth: space.depth };
        const way = bestStraight(hole, carried);
        if (way === null) throw new Error('every box may be held somehow');
        expect(isHeldAsAllowed(carried, way.hold)).toBe(true);
        let grid = Number.NEGATIVE_INFINITY;
        for (const { tilts, ...edges } of holdFamilies(carried)) {
          for (let i = 0; i <= 60; i++) {
            const tilt = (i / 60) * (Math.PI / 2);
            if (!tilts.some(([from, to]) => from <= tilt && tilt <= to)) continue;
            for (const heading of [0, Math.PI / 2])
              grid = Math.max(grid, spareOf({ ...edges, tilt }, heading));
          }
        }
        expect(way.spare).toBeGreaterThanOrEqual(grid - 1e-6);
        expect(spareOf(way.hold, way.sideways ? 0 : Math.PI / 2)).toBeCloseTo(way.spare, 6);

        /** Narrowed bit by bit until the box's own corners no longer go through. */
        function spareOf(
          hold: { along: number; across: number; up: number; tilt: number },
          heading: number,
        ): number {
          const corners = boxCorners(hold, { x: 0, y: 0, z: 0, heading, tilt: hold.tilt, roll: 0 });
          const fits = (delta: number): boolean =>
            Math.min(0, hole.left - delta) + Math.min(0, hole.right - delta) + hole.width - delta >=
              width(corners, 0) &&
            hole.height - delta >= width(corners, 2) &&
            hole.depth - delta >= width(corners, 1);
          let low = -20_000;
          let high = 5000;
          for (let k = 0; k < 60; k++) {
            const middle = (low + high) / 2;
            if (fits(middle)) low = middle;
            else high = middle;
          }
          return low;
        }
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});

describe('sectionSpare', () => {
  it('lets through every section through the middle of a box, turned anyhow', () => {
    fc.assert(
      fc.property(boxes, frames, (carried, turn) => {
        const [wide, high] = sectionExtents(carried, turn);
        expect(sectionSpare(carried, wide, high)).toBeGreaterThanOrEqual(-1e-6);
      }),
      { seed: SEED, numRuns: 3000 },
    );
  });

  it('lets through what Carver lets through, and never less than the thickness', () => {
    fc.assert(
      fc.property(boxes, mm(10, 2500), mm(10, 2500), ({ w, h }, a, b) => {
        const most = sectionSpare({ w, h }, a, b);
        expect(most).toBeGreaterThanOrEqual(carverSpare(w, h, a, b) - 1e-6);
        expect(most).toBeLessThanOrEqual(Math.min(a, b) - h + 1e-9);
        // By area and by the longest chord, the weaker bounds of the same moment.
        const c = a - most + 1e-6;
        const d = b - most + 1e-6;
        expect(Math.hypot(c, d)).toBeGreaterThanOrEqual(w);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it('for the ways it may be held lets through every section of those', () => {
    fc.assert(
      fc.property(boxes, mm(0, 1), mm(0, Math.PI), fc.nat(5), (carried, share, heading, which) => {
        const intervals = holdFamilies(carried).flatMap(({ tilts, ...edges }) =>
          tilts.map((tilt) => ({ edges, tilt })),
        );
        const picked = intervals[which % intervals.length];
        if (picked === undefined) throw new Error('every box may be held somehow');
        const [from, to] = picked.tilt;
        const pose = { heading, tilt: from + share * (to - from), roll: 0 };
        const { along, across, up } = picked.edges;
        const [wide, high] = sectionExtents({ l: along, w: across, h: up }, pose);
        expect(heldSectionSpare(carried, wide, high)).toBeGreaterThanOrEqual(-1e-6);
      }),
      { seed: SEED, numRuns: 3000 },
    );
  });

  /** Width and height of the cut of a box by the plane y = 0 through its middle: its edges and faces cut one by one. */
  function sectionExtents(
    { l, w, h }: Pick<Carried, 'l' | 'w' | 'h'>,
    turn: { heading: number; tilt: number; roll: number },
  ): readonly [wide: number, high: number] {
    const corners = boxCorners({ along: l, across: w, up: h }, { x: 0, y: 0, z: 0, ...turn });
    const cut: Point3[] = [];
    for (let i = 0; i < 8; i++) {
      for (const bit of [1, 2, 4]) {
        const p = corners[i];
        const q = corners[i ^ bit];
        if (p === undefined || q === undefined || p[1] * q[1] > 0) continue;
        const t = p[1] === q[1] ? 0 : p[1] / (p[1] - q[1]);
        cut.push([p[0] + t * (q[0] - p[0]), 0, p[2] + t * (q[2] - p[2])]);
      }
    }
    return [width(cut, 0), width(cut, 2)];
  }
});

describe('crossGateStraight', () => {
  it('goes through what it passes, by the corners of the turned box', () => {
    let moved = 0;
    fc.assert(
      fc.property(gates, boxes, (gate, carried) => {
        const { atLeast, atMost, atMostAnyMotion, hold, motion } = crossGateStraight(gate, carried);
        expect(atLeast).toBeLessThanOrEqual(atMost);
        expect(atMost).toBeLessThanOrEqual(atMostAnyMotion);
        expect(motion !== null).toBe(atLeast >= 0);
        if (motion === null || hold === null) return;
        moved++;
        expect(isHeldAsAllowed(carried, hold)).toBe(true);
        const first = extent(boxCorners(motion, motion.poses[0] ?? never()), 1);
        const last = extent(boxCorners(motion, motion.poses[motion.poses.length - 1] ?? never()), 1);
        const gap = Math.min(atLeast, 10) * 0.3;
        expect(first[0]).toBeGreaterThanOrEqual(-gate.before.depth + gap);
        expect(first[1]).toBeLessThanOrEqual(-gap);
        expect(last[0]).toBeGreaterThanOrEqual(gate.depth + gap);
        expect(last[1]).toBeLessThanOrEqual(gate.depth + gate.after.depth - gap);
        for (const pose of samplePoses(motion, 20)) {
          const corners = boxCorners(motion, pose);
          const [x0, x1] = extent(corners, 0);
          const [y0, y1] = extent(corners, 1);
          const [z0, z1] = extent(corners, 2);
          expect(z0).toBeGreaterThanOrEqual(gap);
          if (y0 < gate.depth && y1 > 0) {
            expect(x0).toBeGreaterThanOrEqual(-gate.width / 2 + gap);
            expect(x1).toBeLessThanOrEqual(gate.width / 2 - gap);
            expect(z0).toBeGreaterThanOrEqual(gate.sill + gap);
            expect(z1).toBeLessThanOrEqual(gate.sill + gate.height - gap);
          }
          for (const [inside, space] of [
            [y0 < 0, gate.before],
            [y1 > gate.depth, gate.after],
          ] as const) {
            if (!inside) continue;
            expect(x0).toBeGreaterThanOrEqual(-gate.width / 2 - space.left + gap);
            expect(x1).toBeLessThanOrEqual(gate.width / 2 + space.right - gap);
            expect(z1).toBeLessThanOrEqual(space.height - gap);
          }
        }
      }),
      { seed: SEED, numRuns: 600 },
    );
    expect(moved).toBeGreaterThan(100);

    function never(): never {
      throw new Error('a motion has poses');
    }
  });

  it('has to spare what the narrowed gate still passes, and falls with every measure', () => {
    fc.assert(
      fc.property(gates, boxes, fc.integer({ min: 0, max: 9 }), mm(0, 300), (gate, carried, which, by) => {
        const before = crossGateStraight(gate, carried);
        const narrowed = (delta: number) => {
          const narrow = narrowPassage(gate, delta);
          if (narrow.kind !== 'doorway') throw new Error('still a doorway');
          return crossGateStraight(narrow, carried);
        };
        expect(narrowed(before.atLeast).atLeast).toBeCloseTo(0, 6);
        expect(narrowed(before.atMost + 0.1).atMost).toBeLessThan(0);
        expect(narrowed(before.atMostAnyMotion + 0.1).atMostAnyMotion).toBeLessThan(0);
        const cut = (i: number): number => (which === i ? by : 0);
        const space = ({ depth, left, right, height }: Space, from: number): Space => ({
          depth: depth - cut(from),
          left: left - cut(from + 1),
          right: right - cut(from + 2),
          height: height - cut(from + 3),
        });
        const after = crossGateStraight(
          {
            ...gate,
            width: gate.width - cut(0),
            height: gate.height - cut(1),
            before: space(gate.before, 2),
            after: space(gate.after, 6),
          },
          carried,
        );
        expect(after.atLeast).toBeLessThanOrEqual(before.atLeast + 1e-9);
        expect(after.atMost).toBeLessThanOrEqual(before.atMost + 1e-6);
        expect(after.atMostAnyMotion).toBeLessThanOrEqual(before.atMostAnyMotion + 1e-6);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('needs its own length before and behind', () => {
    const before = { ...OPEN, depth: 1500 };
    const short = crossGateStraight(doorway(800, 2000, { before }), box(2000, 700, 50, ['flat'], 0));
    expect(short).toMatchObject({ atLeast: -500, motion: null });
    // Shallow spaces prove nothing: it might still turn in.
    expect(short.atMost).toBe(100);
    const after = { ...OPEN, depth: 2200 };
    expect(crossGateStraight(doorway(800, 2000, { after }), box(2000, 700, 50, ['flat'], 0)).atLeast).toBe(
      100,
    );
  });

  it('is raised by a sill and has to find height for it inside', () => {
    const window = (height: number) =>
      doorway(900, 1200, { kind: 'opening', sill: 900, after: { ...OPEN, height } });
    const slate = box(2000, 800, 50, ['flat'], 0);
    expect(crossGateStraight(window(2400), slate).atLeast).toBe(100);
    expect(crossGateStraight(window(1000), slate).atLeast).toBe(50);
    expect(crossGateStraight(window(900), slate)).toMatchObject({ atLeast: -50, motion: null });
  });

  it('is blocked for any motion where the opening is thinner than the box or too small for its section', () => {
    expect(crossGateStraight(doorway(800, 2000), box(2500, 1000, 810)).atMostAnyMotion).toBe(-10);
    // 1400 x 80 in 800 x 1200: Carver says no by 22 mm, the section by 20.5 whatever the motion.
    const { atLeast, atMostAnyMotion } = crossGateStraight(doorway(800, 1200), box(2500, 1400, 80));
    expect(atLeast).toBeLessThan(-22);
    expect(atMostAnyMotion).toBeLessThan(-20);
  });
});

describe('crossCorridor', () => {
  const corridor = (width: number, height: number): Corridor => ({
    kind: 'corridor',
    name: 'corridor',
    tolerance: 10,
    width,
    height,
  });

  it('is Carver for a box held anyhow', () => {
    fc.assert(
      fc.property(boxes, mm(20, 2500), mm(20, 2500), (carried, a, b) => {
        const free = { ...carried, held: ['flat', 'on-edge', 'on-end'] as const, tilt: Math.PI / 4 };
        const crossing = crossCorridor(corridor(a, b), free);
        expect(crossing.atLeast).toBe(crossing.atMost);
        expect(crossing.atMostAnyMotion).toBeCloseTo(carverSpare(carried.w, carried.h, a, b), 6);
        expect(crossing.atLeast).toBeCloseTo(crossing.atMostAnyMotion, 6);
        const held = crossCorridor(corridor(a, b), carried);
        expect(held.atLeast).toBeLessThanOrEqual(crossing.atLeast + 1e-9);
        expect(held.atMostAnyMotion).toBeCloseTo(crossing.atMostAnyMotion, 6);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('bounds every attitude: no turned box is narrower and lower at once', () => {
    fc.assert(
      fc.property(boxes, frames, ({ l, w, h }, turn) => {
        const corners = boxCorners({ along: l, across: w, up: h }, { x: 0, y: 0, z: 0, ...turn });
        expect(carverSpare(w, h, width(corners, 1), width(corners, 2))).toBeGreaterThanOrEqual(-1e-6);
      }),
      { seed: SEED, numRuns: 3000 },
    );
  });

  it('slides between the walls, by the corners of the turned box', () => {
    let moved = 0;
    fc.assert(
      fc.property(boxes, mm(20, 2500), mm(20, 2500), (carried, a, b) => {
        const { atLeast, motion } = crossCorridor(corridor(a, b), carried);
        if (motion === null) return;
        moved++;
        for (const pose of samplePoses(motion, 3)) {
          const corners = boxCorners(motion, pose);
          for (const [axis, limit] of [
            [1, a],
            [2, b],
          ] as const) {
            const [low, high] = extent(corners, axis);
            expect(low).toBeGreaterThanOrEqual(0.45 * atLeast - 1e-6);
            expect(high).toBeLessThanOrEqual(limit - 0.45 * atLeast + 1e-6);
          }
        }
      }),
      { seed: SEED, numRuns: 500 },
    );
    expect(moved).toBeGreaterThan(100);
  });
});
