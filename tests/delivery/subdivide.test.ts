import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roadmapPlan } from '../../bench/delivery-peer.js';
import type { PlanPose, PlanShape } from '../../src/delivery/plan-shape.js';
import { halfPlane, type PlanSpace, spaceInRing, wedge } from '../../src/delivery/plan-space.js';
import { findPath, type PathAnswer } from '../../src/delivery/subdivide.js';
import type { Ring } from '../../src/geometry/types.js';
import { distanceAlong } from './plan-collision.js';
import { bentCorridor, bentWidth, cornerWidth, rightCorridor } from './plan-rooms.js';

const SEED = 20261125;
const OPTIONS = { maxBoxes: 60_000, resolution: 2 };
const DEGREE = Math.PI / 180;

function rectangle(l: number, w: number): PlanShape {
  return { halfLength: l / 2, halfWidth: w / 2, radius: 0 };
}

/** Lined up in the two arms of a right corner. */
function rightEnds(a: number, b: number, l: number, length: number): [PlanPose, PlanPose] {
  const out = length - l / 2 - 120;
  return [
    { x: out, y: a / 2, heading: 0 },
    { x: b / 2, y: out, heading: Math.PI / 2 },
  ];
}

function bentEnds(a: number, b: number, g: number, l: number, length: number): [PlanPose, PlanPose] {
  const out = length - l / 2 - 150;
  const [c, s] = [Math.cos(g), Math.sin(g)];
  return [
    { x: out, y: a / 2, heading: 0 },
    { x: out * c + (b / 2) * s, y: out * s - (b / 2) * c, heading: g },
  ];
}

/** What must hold of every `path`: it starts and ends where it should, and clears the ring at every moment looked at. */
function expectWay(
  ring: Ring,
  shape: PlanShape,
  [start, goal]: [PlanPose, PlanPose],
  found: PathAnswer,
): void {
  const { poses } = found;
  const last = poses[poses.length - 1];
  expect([poses[0].x, poses[0].y, last.x, last.y]).toEqual([start.x, start.y, goal.x, goal.y]);
  for (const [pose, end] of [
    [poses[0], start],
    [last, goal],
  ]) {
    const halfTurns = (pose.heading - end.heading) / Math.PI;
    expect(Math.abs(halfTurns - Math.round(halfTurns))).toBeLessThan(1e-9);
  }
  expect(distanceAlong(ring, shape, poses, 5)).toBeGreaterThan(0);
}

describe('findPath round a right corner, against the closed form', () => {
  // Same corners as the prototype (algorithms.md 5.4), which needed 8,000 to 14,000 boxes and left 3 % of the width open.
  const corners = [
    [1000, 1000, 1900],
    [1000, 1300, 2300],
    [1200, 900, 2100],
  ] as const;
  for (const [a, b, l] of corners) {
    it(`decides a ${l} mm rectangle in corridors of ${a} and ${b} to 2 % of the width`, () => {
      const ring = rightCorridor(a, b, 4500);
      const space = spaceInRing(ring);
      const ends = rightEnds(a, b, l, 4500);
      const widest = cornerWidth(l, a, b);
      for (const share of [0.6, 0.8, 0.9, 0.95, 0.97, 0.98]) {
        const shape = rectangle(l, widest * share);
        const found = findPath(space, shape, ...ends, OPTIONS);
        expect(found.answer, `${share} of the widest`).toBe('path');
        expectWay(ring, shape, ends, found);
      }
      for (const share of [1.01, 1.02, 1.03, 1.1, 1.2]) {
        const found = findPath(space, rectangle(l, widest * share), ...ends, OPTIONS);
        expect(found, `${share} of the widest`).toMatchObject({ answer: 'no', poses: [], reason: 'proved' });
        expect(found.boxes).toBeLessThan(5000);
      }
    });
  }

  it('slides round where it need not turn', () => {
    const ring = rightCorridor(700, 2100, 4500);
    const shape = rectangle(2000, 600);
    const ends: [PlanPose, PlanPose] = [
      { x: 3300, y: 350, heading: 0 },
      { x: 1050, y: 4000, heading: 0 },
    ];
    const found = findPath(spaceInRing(ring), shape, ...ends, OPTIONS);
    expect(found.answer).toBe('path');
    expectWay(ring, shape, ends, found);
  });
});

describe('findPath round an obtuse corner, against the closed form', () => {
  for (const degrees of [110, 120, 135]) {
    it(`decides a 2600 mm rectangle where the outer walls meet at ${degrees} degrees to 2 % of the width`, () => {
      const [a, b, l, length] = [1000, 1100, 2600, 5200];
      const g = degrees * DEGREE;
      const ring = bentCorridor(a, b, g, length);
      const ends = bentEnds(a, b, g, l, length);
      const widest = bentWidth(l, a, b, g);
      for (const share of [0.93, 0.97, 0.98, 1.02, 1.03, 1.08]) {
        const shape = rectangle(l, widest * share);
        const found = findPath(spaceInRing(ring), shape, ...ends, { ...OPTIONS, resolution: 1 });
        expect(found.answer, `${share} of the widest`).toBe(share < 1 ? 'path' : 'no');
        if (found.answer === 'path') expectWay(ring, shape, ends, found);
      }
    });
  }
});

describe('findPath for what is round', () => {
  it('takes a disc through a gap a little wider than itself, and not through one a little narrower', () => {
    for (const [gap, answer] of [
      [604, 'path'],
      [596, 'no'],
    ] as const) {
      const ring = gapRoom(gap);
      const ends: [PlanPose, PlanPose] = [
        { x: 1000, y: 1000, heading: 0 },
        { x: 4000, y: 1000, heading: 0 },
      ];
      const shape = { halfLength: 0, halfWidth: 0, radius: 300 };
      const found = findPath(spaceInRing(ring), shape, ...ends, OPTIONS);
      expect(found.answer).toBe(answer);
      if (answer === 'path') expectWay(ring, shape, ends, found);
    }
  });

  it('lets a capsule pass wherever the rectangle round it does, and stops it wherever the rectangle in it is stopped', () => {
    const [a, b, l] = [1000, 1100, 2000];
    const ring = rightCorridor(a, b, 4500);
    const widest = cornerWidth(l, a, b);
    const ends = rightEnds(a, b, l, 4500);
    const capsule = (width: number, length: number): PlanShape => ({
      halfLength: (length - width) / 2,
      halfWidth: 0,
      radius: width / 2,
    });
    // Its round ends save it some width against the rectangle: the inner capsule is as long and as wide as the rectangle.
    const inner = capsule(widest * 0.98, l);
    const found = findPath(spaceInRing(ring), inner, ...ends, OPTIONS);
    expect(found.answer).toBe('path');
    expectWay(ring, inner, ends, found);
    // One that holds a rectangle of length l that cannot pass.
    const outer = capsule(widest * 1.02, l + widest * 1.02);
    expect(findPath(spaceInRing(ring), outer, ...ends, OPTIONS).answer).toBe('no');
  });
});

/** Two rooms of 2 m with a gap in the middle of the wall between. */
function gapRoom(gap: number): Ring {
  const [low, high] = [1000 - gap / 2, 1000 + gap / 2];
  return [
    [0, 0],
    [2000, 0],
    [2000, low],
    [3000, low],
    [3000, 0],
    [5000, 0],
    [5000, 2000],
    [3000, 2000],
    [3000, high],
    [2000, high],
    [2000, 2000],
    [0, 2000],
  ];
}

describe('findPath between zones', () => {
  // The L of endless arms from solids: two half-planes and the inner wedge; anywhere beyond the corner counts.
  const corner = (a: number, b: number): PlanSpace => ({
    solids: [halfPlane(0, 1, 0), halfPlane(1, 0, 0), wedge([b, a], [1, 0], [0, 1])],
    x0: 0,
    y0: 0,
    x1: 5000,
    y1: 5000,
  });
  const beyondX = (x: number) => [[{ nx: 1, ny: 0, offset: x }]];
  const beyondY = (y: number) => [[{ nx: 0, ny: 1, offset: y }]];

  it('agrees with the closed form from any pose of one arm to any of the other', () => {
    const [a, b, l] = [1000, 1300, 2300];
    const widest = cornerWidth(l, a, b);
    const no = findPath(corner(a, b), rectangle(l, widest * 1.02), beyondX(b), beyondY(a), OPTIONS);
    expect(no.answer).toBe('no');
    const shape = rectangle(l, widest * 0.98);
    const path = findPath(corner(a, b), shape, beyondX(b), beyondY(a), OPTIONS);
    expect(path.answer).toBe('path');
    expect(distanceAlong(rightCorridor(a, b, 9000), shape, path.poses, 5)).toBeGreaterThan(0);
    const [first, last] = [path.poses[0], path.poses[path.poses.length - 1]];
    // Wholly beyond: the centre less the support of the rectangle.
    const support = (n: number): number =>
      (l / 2) * Math.abs(Math.cos(n)) + ((widest * 0.98) / 2) * Math.abs(Math.sin(n));
    expect(first.x - support(first.heading)).toBeGreaterThan(b - 1e-6);
    expect(last.y - support(last.heading - Math.PI / 2)).toBeGreaterThan(a - 1e-6);
  });

  it('says no where a zone holds no free pose', () => {
    const answer = findPath(corner(1000, 900), rectangle(2000, 950), beyondX(900), beyondY(1000), OPTIONS);
    expect(answer.answer).toBe('no');
  });
});

describe('findPath with a slack', () => {
  const room: Ring = [
    [0, 0],
    [6000, 0],
    [6000, 3000],
    [0, 3000],
  ];
  const shape = rectangle(400, 200);
  const start = { x: 500, y: 1500, heading: 0 };
  const goal = { x: 5500, y: 1500, heading: 0 };

  it('goes round a disc that only the slack knows of, and not where the disc leaves no room', () => {
    // Centres must keep `keepOff` from (3000, 1500); the shape itself may come within 100 mm (half its width) of a wall.
    const disc = (keepOff: number) => ({
      slack: (x: number, y: number) => Math.hypot(x - 3000, y - 1500) - keepOff,
      perMm: 1,
      perRadian: 0,
    });
    const found = findPath(spaceInRing(room), shape, start, goal, { ...OPTIONS, slack: disc(1385) });
    expect(found.answer).toBe('path');
    expect(distanceAlong(room, shape, found.poses, 5)).toBeGreaterThan(0);
    for (let i = 1; i < found.poses.length; i++) {
      for (let k = 0; k <= 50; k++) {
        const [p, q] = [found.poses[i - 1], found.poses[i]];
        const [x, y] = [p.x + (k / 50) * (q.x - p.x), p.y + (k / 50) * (q.y - p.y)];
        expect(Math.hypot(x - 3000, y - 1500)).toBeGreaterThanOrEqual(1385);
      }
    }
    const none = findPath(spaceInRing(room), shape, start, goal, { ...OPTIONS, slack: disc(1405) });
    expect(none.answer).toBe('no');
  });

  it('tells a heading from the same after half a turn', () => {
    // Front end within 60 degrees of +x: the shape, though symmetric, cannot be turned end for end.
    const slack = {
      slack: (_x: number, _y: number, heading: number) => 1000 * (Math.cos(heading) - 0.5),
      perMm: 0,
      perRadian: 1000,
    };
    const options = { ...OPTIONS, slack };
    expect(findPath(spaceInRing(room), shape, start, goal, options).answer).toBe('path');
    const turned = { ...goal, heading: Math.PI };
    expect(findPath(spaceInRing(room), shape, start, turned, options).answer).toBe('no');
    const through = { ...OPTIONS, slack: { slack: () => 1, perMm: 0, perRadian: 0 } };
    const about = findPath(spaceInRing(room), shape, start, turned, through);
    expect(about.answer).toBe('path');
    expect(Math.abs(about.poses[about.poses.length - 1].heading)).toBeCloseTo(Math.PI, 9);
  });
});

function both([start, goal]: [PlanPose, PlanPose], move: (pose: PlanPose) => PlanPose): [PlanPose, PlanPose] {
  return [move(start), move(goal)];
}

describe('findPath in general', () => {
  const corners = fc.record({
    a: fc.integer({ min: 700, max: 1500 }),
    b: fc.integer({ min: 700, max: 1500 }),
    l: fc.integer({ min: 1600, max: 2800 }),
    share: fc.integer({ min: 75, max: 125 }),
  });
  const ask = (ring: Ring, shape: PlanShape, ends: [PlanPose, PlanPose]): PathAnswer =>
    findPath(spaceInRing(ring), shape, ...ends, { maxBoxes: 20_000, resolution: 4 });

  it('never contradicts the closed form', () => {
    fc.assert(
      fc.property(corners, ({ a, b, l, share }) => {
        const widest = cornerWidth(l, a, b);
        fc.pre(widest > 40 && l > Math.max(a, b));
        const shape = rectangle(l, (widest * share) / 100);
        const ring = rightCorridor(a, b, 6000);
        const ends = rightEnds(a, b, l, 6000);
        const found = ask(ring, shape, ends);
        if (found.answer === 'path') {
          expect(share).toBeLessThanOrEqual(100);
          expectWay(ring, shape, ends, found);
        }
        if (found.answer === 'no') expect(share).toBeGreaterThanOrEqual(100);
      }),
      { seed: SEED, numRuns: 50 },
    );
  });

  it('takes whatever is narrower or shorter wherever it takes the larger', () => {
    fc.assert(
      fc.property(corners, fc.integer({ min: 50, max: 100 }), ({ a, b, l, share }, part) => {
        const width = (cornerWidth(l, a, b) * share) / 100;
        fc.pre(width > 40 && l > Math.max(a, b));
        const ring = rightCorridor(a, b, 6000);
        const ends = rightEnds(a, b, l, 6000);
        const whole = ask(ring, rectangle(l, width), ends).answer;
        const slim = ask(ring, rectangle(l, (width * part) / 100), ends).answer;
        const short = ask(ring, rectangle(l * (0.9 + part / 1000), width), ends).answer;
        if (whole === 'path') expect([slim, short]).not.toContain('no');
        if (slim === 'no' || short === 'no') expect(whole).not.toBe('path');
      }),
      { seed: SEED, numRuns: 20 },
    );
  });

  it('answers alike (never the opposite) for the plan mirrored, moved and turned', () => {
    fc.assert(
      fc.property(
        corners,
        fc.integer({ min: -20_000, max: 20_000 }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        ({ a, b, l, share }, shift, turn) => {
          const width = (cornerWidth(l, a, b) * share) / 100;
          fc.pre(width > 40 && l > Math.max(a, b));
          const ring = rightCorridor(a, b, 6000);
          const ends = rightEnds(a, b, l, 6000);
          const shape = rectangle(l, width);
          const here = ask(ring, shape, ends).answer;
          const [c, s] = [Math.cos(turn), Math.sin(turn)];
          const moved = ask(
            ring.map(([x, y]) => [c * x - s * y + shift, s * x + c * y - shift]),
            shape,
            both(ends, ({ x, y, heading }) => ({
              x: c * x - s * y + shift,
              y: s * x + c * y - shift,
              heading: heading + turn,
            })),
          ).answer;
          const mirrored = ask(
            ring.map(([x, y]): [number, number] => [-x, y]).reverse(),
            shape,
            both(ends, ({ x, y, heading }) => ({ x: -x, y, heading: -heading })),
          ).answer;
          const answers = new Set([here, moved, mirrored]);
          expect(answers.has('path') && answers.has('no')).toBe(false);
        },
      ),
      { seed: SEED, numRuns: 15 },
    );
  });

  it('is never refuted by a roadmap', () => {
    for (const [a, b, l] of [
      [1000, 1000, 1900],
      [1200, 900, 2100],
    ]) {
      const space = spaceInRing(rightCorridor(a, b, 4500));
      const ends = rightEnds(a, b, l, 4500);
      const shape = rectangle(l, cornerWidth(l, a, b) * 1.01);
      expect(findPath(space, shape, ...ends, OPTIONS).answer).toBe('no');
      expect(roadmapPlan(space, shape, ...ends, 700).found).toBe(false);
      // The roadmap is no straw man: it does find a way where there is room.
      expect(roadmapPlan(space, rectangle(l, cornerWidth(l, a, b) * 0.5), ...ends, 700).found).toBe(true);
    }
  });

  it('stops undecided when boxes or resolution run out, and says which', () => {
    const space = spaceInRing(rightCorridor(1000, 1000, 4500));
    const ends = rightEnds(1000, 1000, 1900, 4500);
    const exact = rectangle(1900, cornerWidth(1900, 1000, 1000));
    expect(findPath(space, exact, ...ends, { maxBoxes: 500, resolution: 1 })).toMatchObject({
      answer: 'undecided',
      reason: 'budget',
    });
    expect(findPath(space, exact, ...ends, { maxBoxes: 60_000, resolution: 50 })).toMatchObject({
      answer: 'undecided',
      reason: 'resolution',
    });
  });

  it('gives the same answer every time', () => {
    const space = spaceInRing(rightCorridor(1000, 1300, 4500));
    const ends = rightEnds(1000, 1300, 2300, 4500);
    const ask = () => findPath(space, rectangle(2300, 430), ...ends, OPTIONS);
    expect(ask()).toEqual(ask());
  });
});
