import { describe, expect, it } from 'vitest';
import type { Placement, Point } from '../../src/geometry/types.js';
import { clearanceAt, clearanceProbe, distancesAt } from '../../src/placement/clearance-at.js';
import { distance, polygon, segment } from '../helpers/jsts.js';
import { fuzzProblem } from './bound-fuzz.js';
import { corners, plainClearance, plainFrameDistance, pointInside, sides } from './plain-distance.js';
import { problem, randomNumbers, rectangle } from './rooms.js';

const play = { length: 2000, width: 1000 };
const frame = { length: 2300, width: 1300 };
const room = rectangle(0, 0, 6000, 4000);
const middle: Placement = { x: 3000, y: 2000, angle: 0 };

describe('clearance of one pose', () => {
  it('is the distance to the nearest wall or tall thing, which it names', () => {
    const pillar = rectangle(4500, 1900, 4700, 2100);
    const low = rectangle(4100, 1900, 4300, 2100);
    const found = clearanceAt(problem(room, play, [pillar], [low], frame), middle);
    expect(found.clearance).toBeCloseTo(500, 9);
    expect(found.nearest).toEqual({ kind: 'tall', index: 0 });
    expect(found.stands).toBe(false);
    expect(found.hits).toEqual([{ kind: 'low', index: 0 }]);
    const bare = clearanceAt(problem(room, play, [], [], frame), { ...middle, y: 1400 });
    expect(bare).toEqual({ clearance: 900, stands: true, nearest: { kind: 'wall', index: 0 }, hits: [] });
  });

  it('is 0 where Q touches, and touching lets the frame stand', () => {
    expect(clearanceAt(problem(room, play, [], [], play), { ...middle, y: 500 })).toMatchObject({
      clearance: 0,
      stands: true,
    });
    expect(clearanceAt(problem(room, play, [], [], frame), { ...middle, y: 650 }).stands).toBe(true);
    expect(clearanceAt(problem(room, play, [], [], frame), { ...middle, y: 649.999 }).stands).toBe(false);
  });

  it('sees a small thing wholly inside the frame, and a frame wholly inside a large thing', () => {
    const stool = rectangle(2900, 1900, 3100, 2100);
    const under = clearanceAt(problem(room, play, [], [stool], frame), middle);
    expect(under).toMatchObject({ stands: false, hits: [{ kind: 'low', index: 0 }] });
    expect(clearanceAt(problem(room, play, [stool], [], frame), middle).clearance).toBeLessThan(0);
    const platform = rectangle(500, 500, 5500, 3500);
    const on = clearanceAt(problem(room, play, [], [platform], frame), middle);
    expect(on).toMatchObject({ stands: false, clearance: 1500, hits: [{ kind: 'low', index: 0 }] });
    const inside = clearanceAt(problem(room, play, [platform], [], frame), middle);
    expect(inside.nearest).toEqual({ kind: 'tall', index: 0 });
    expect(inside.clearance).toBeLessThan(0);
  });

  it('is negative outside the room', () => {
    const outside = clearanceAt(problem(room, play, [], [], frame), { ...middle, x: 9000 });
    expect(outside.clearance).toBeLessThan(-1000);
    expect(outside.stands).toBe(false);
    expect(outside.nearest).toEqual({ kind: 'wall', index: 1 });
    expect(outside.hits).toEqual([{ kind: 'wall', index: 1 }]);
    expect(clearanceAt(problem(room, play, [], [], frame), { ...middle, x: 1000 - 30 }).clearance).toBe(-30);
  });

  it('sees no hole where two footprints overlap', () => {
    const a = rectangle(1000, 500, 4500, 3500);
    const b = rectangle(1500, 500, 5000, 3500);
    const found = clearanceAt(problem(room, play, [a, b], [a, b], frame), middle);
    expect(found.clearance).toBeLessThan(0);
    expect(found.stands).toBe(false);
  });
});

const seed = 31;
/** Poses of random rooms with overlapping furniture, most of them near the middle. */
function randomPoses(rooms: number, poses: number) {
  const random = randomNumbers(seed);
  return Array.from({ length: rooms }, (_, k) => {
    const p = fuzzProblem(random, k + 1);
    const xs = p.outline.map(([x]) => x);
    const ys = p.outline.map(([, y]) => y);
    const between = (v: readonly number[]): number => {
      const share = (random() + random()) / 2;
      return Math.min(...v) + share * (Math.max(...v) - Math.min(...v));
    };
    return {
      room: p,
      poses: Array.from({ length: poses }, () => ({
        x: between(xs),
        y: between(ys),
        angle: Math.PI * random(),
      })),
    };
  });
}

describe(`clearance of random poses (seed ${seed})`, () => {
  it('agrees with plain distances and with JTS', () => {
    let free = 0;
    let standing = 0;
    for (const { room: p, poses } of randomPoses(40, 40)) {
      const probe = clearanceProbe(p);
      for (const pose of poses) {
        const ours = clearanceAt(p, pose);
        expect(probe.clearance(pose)).toBe(ours.clearance);
        expect(probe.stands(pose)).toBe(ours.stands);
        const plain = plainClearance(p, pose);
        expect(ours.clearance > 0).toBe(plain > 0);
        expect(ours.stands).toBe(plainFrameDistance(p, pose) > 0);
        expect(ours.hits.length === 0).toBe(ours.stands);
        if (ours.stands) standing++;
        if (plain <= 0) continue;
        free++;
        expect(ours.clearance).toBeCloseTo(plain, 7);
        const q = polygon(corners(p.play, pose));
        const walls = Math.min(...sides(p.outline).map(([a, b]) => distance(q, segment(a, b))));
        const things = Math.min(...p.tall.map((ring) => distance(q, polygon(ring))));
        expect(ours.clearance).toBeCloseTo(Math.min(walls, things), 7);
      }
    }
    expect(free).toBeGreaterThan(150);
    expect(standing).toBeGreaterThan(100);
  });

  it('agrees with points sampled all over Q', () => {
    let free = 0;
    const n = 21;
    for (const { room: p, poses } of randomPoses(24, 12)) {
      for (const pose of poses) {
        const { clearance } = clearanceAt(p, pose);
        const [a, b, , d] = corners(p.play, pose);
        let sampled = Number.POSITIVE_INFINITY;
        for (let i = 0; i < n; i++) {
          for (let j = 0; j < n; j++) {
            const [s, t] = [i / (n - 1), j / (n - 1)];
            const point: Point = [
              a[0] + s * (b[0] - a[0]) + t * (d[0] - a[0]),
              a[1] + s * (b[1] - a[1]) + t * (d[1] - a[1]),
            ];
            sampled = Math.min(sampled, pointClearance(p, point));
          }
        }
        const step = Math.max(p.play.length, p.play.width) / (n - 1);
        if (clearance > 0) {
          free++;
          expect(sampled).toBeGreaterThanOrEqual(clearance - 1e-6);
          expect(sampled).toBeLessThanOrEqual(clearance + step);
        } else {
          // Something pokes into Q: some sample lies in it or next to it.
          expect(sampled).toBeLessThanOrEqual(step);
        }
      }
    }
    expect(free).toBeGreaterThan(50);
  });

  it('gives for each thing a witness of its distance', () => {
    let witnesses = 0;
    for (const { room: p, poses } of randomPoses(20, 10)) {
      for (const pose of poses) {
        const q = corners(p.play, pose);
        const all = distancesAt(p, pose);
        expect(all.length).toBe(p.outline.length + p.tall.length);
        expect(Math.min(...all.map((thing) => thing.distance))).toBe(clearanceAt(p, pose).clearance);
        for (const { kind, index, distance: d, witness } of all) {
          expect(witness === null).toBe(d <= 0);
          if (witness === null) continue;
          witnesses++;
          const [on, off] = witness;
          expect(Math.hypot(on[0] - off[0], on[1] - off[1])).toBeCloseTo(d, 5);
          const thing =
            kind === 'wall'
              ? segment(...(sides(p.outline)[index] ?? [on, on]))
              : polygon(p.tall[index] ?? []);
          expect(distance(polygon(q), segment(on, on))).toBeLessThan(1e-6);
          expect(distance(thing, segment(off, off))).toBeLessThan(1e-6);
        }
      }
    }
    expect(witnesses).toBeGreaterThan(500);
  });
});

/** Distance of a point from walls and tall things; 0 outside free space. */
function pointClearance(
  p: { outline: readonly Point[]; tall: readonly (readonly Point[])[] },
  point: Point,
): number {
  if (!pointInside(p.outline, point) || p.tall.some((ring) => pointInside(ring, point))) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const ring of [p.outline, ...p.tall]) {
    for (const [[ax, ay], [bx, by]] of sides(ring)) {
      const [dx, dy] = [bx - ax, by - ay];
      const share = Math.max(
        0,
        Math.min(1, ((point[0] - ax) * dx + (point[1] - ay) * dy) / (dx * dx + dy * dy)),
      );
      least = Math.min(least, Math.hypot(point[0] - ax - share * dx, point[1] - ay - share * dy));
    }
  }
  return least;
}
