import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alongCue, type CueLine } from '../../docs/try/probe/cue-line.js';
import { Estimate, FINE_PLANS, FRAME_PLANS, FrameBudget } from '../../docs/try/probe/frame-budget.js';
import type { Point } from '../../docs/try/probe/plan-geometry.js';
import { CELL_CLASSES, cellClass, mapPaths } from '../../docs/try/probe/shot-map.js';
import { sliderRange } from '../../docs/try/probe/slider-range.js';
import { standingSpot } from '../../docs/try/probe/standing-spot.js';
import { ENGLISH } from '../../docs/try/probe/strings.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { shotShares } from '../../src/stroke/shot-shares.js';
import {
  canStand,
  STANDING_ASIDE,
  standingFrom,
  standingRoom,
  standingTo,
} from '../../src/stroke/standing.js';
import { between, box, CUE, obstacle, random, rectangle, room, STROKE, TABLE } from '../stroke/scenes.js';

const seed = 20_250_712;

describe('what the frame has time for', () => {
  const settled = (microseconds: number): number => {
    const budget = new FrameBudget(6);
    for (let frame = 0; frame < 40; frame++) {
      const { shots } = budget.next();
      budget.took(shots, (shots * microseconds) / 1000);
    }
    return budget.next().shots;
  };

  it('takes the finest sample that fits, on quick and on slow machines', () => {
    expect(settled(0.4)).toBe(FRAME_PLANS[FRAME_PLANS.length - 1]?.shots);
    for (const microseconds of [1, 2, 5, 10, 20]) {
      const shots = settled(microseconds);
      expect((shots * microseconds) / 1000).toBeLessThanOrEqual(6);
      const finer = FRAME_PLANS.find((plan) => plan.shots > shots);
      if (finer !== undefined) expect((finer.shots * microseconds) / 1000).toBeGreaterThan(0.6 * 6);
    }
    expect(settled(1000)).toBe(FRAME_PLANS[0]?.shots);
  });

  it('draws less after slow frames and more again later', () => {
    const budget = new FrameBudget(6);
    const run = (microseconds: number): number => {
      for (let frame = 0; frame < 40; frame++) {
        const { shots } = budget.next();
        budget.took(shots, (shots * microseconds) / 1000);
      }
      return budget.next().shots;
    };
    const quick = run(1);
    expect(run(15)).toBeLessThan(quick);
    expect(run(1)).toBe(quick);
  });

  it('is not misled by a clock that stood still', () => {
    const budget = new FrameBudget();
    budget.took(0, 3);
    budget.took(100, Number.NaN);
    expect(FRAME_PLANS).toContain(budget.next());
  });

  it('puts off what was slow, and tries it again some time', () => {
    const estimate = new Estimate();
    expect(estimate.within(5)).toBe(true);
    for (let k = 0; k < 20; k++) estimate.took(30);
    let refused = 0;
    while (!estimate.within(5)) refused++;
    expect(refused).toBeGreaterThan(5);
    expect(refused).toBeLessThan(60);
  });

  it('asks for whole samples, as the library rounds them', () => {
    const scene = prepareStrokes(room(rectangle(-2600, -2000, 2600, 2000), [], []), TABLE, POSE, STROKE);
    for (const { columns, rows, shots } of [...FRAME_PLANS.slice(0, 4), ...FINE_PLANS.slice(0, 1)])
      expect(shotShares(scene, standingRoom(scene), [CUE], { shots, grid: { columns, rows } }).shots).toBe(
        shots,
      );
  });
});

const POSE = { x: 0, y: 0, angle: 0 };

describe('the steps of a slider', () => {
  it('meet the value of the input and hold the range', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3000, noNaN: true }), (value) => {
        const { min, max, step } = sliderRange(value, 900, 1700, 10);
        const steps = (value - min) / step;
        expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-6);
        expect(min).toBeLessThanOrEqual(value + 1e-6);
        expect(max).toBeGreaterThanOrEqual(value - 1e-6);
        expect(min).toBeLessThan(Math.max(910, value + 1e-6));
        expect(max).toBeGreaterThan(Math.min(1690, value - 1e-6));
      }),
      { seed },
    );
    expect(sliderRange(1447.8, 900, 1700, 10)).toEqual({ min: 907.8, max: 1697.8, step: 10 });
    expect(sliderRange(20, 0, 100, 2)).toEqual({ min: 0, max: 100, step: 2 });
  });
});

describe('the map of shots', () => {
  const share = fc.constantFrom(0, 0, 0.1, 0.25, 1);
  const grid = fc
    .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 6 }))
    .chain(([columns, rows]) =>
      fc.record({
        columns: fc.constant(columns),
        rows: fc.constant(rows),
        cramped: fc.array(share, { minLength: columns * rows, maxLength: columns * rows }),
        blocked: fc.array(share, { minLength: columns * rows, maxLength: columns * rows }),
      }),
    );

  it('covers each cell of a class once, and nothing else', () => {
    fc.assert(
      fc.property(grid, (map) => {
        const paths = mapPaths(map, 100 * map.columns, 100 * map.rows);
        for (const kind of CELL_CLASSES) {
          const covered = cellsOf(paths[kind], map.rows);
          const wanted = [...map.cramped.keys()].filter((cell) => cellClass(map, cell) === kind);
          expect(covered.map(([x, y]) => y * map.columns + x).sort((a, b) => a - b)).toEqual(wanted);
        }
      }),
      { seed },
    );
  });

  /** Cells of 100 by 100 under a path of rectangles, as column and row from the bottom. */
  function cellsOf(path: string, rows: number): readonly Point[] {
    return [...path.matchAll(/M(\d+) (\d+)H(\d+)V(\d+)H(\d+)Z/g)].flatMap((match) => {
      const [left = 0, top = 0, right = 0, bottom = 0] = match.slice(1).map((text) => Number(text) / 100);
      expect(top + 1 === bottom || top - 1 === bottom).toBe(true);
      const row = rows - Math.max(top, bottom);
      return Array.from({ length: right - left }, (_, k): Point => [left + k, row]);
    });
  }

  it('puts the worst class first', () => {
    const map = { columns: 5, rows: 1, cramped: [0, 0.1, 0.3, 0.9, 0], blocked: [0, 0, 0, 0.1, 0.25] };
    expect([0, 1, 2, 3, 4].map((cell) => cellClass(map, cell))).toEqual([
      null,
      'crampedSome',
      'crampedMany',
      'blockedSome',
      'blockedMany',
    ]);
  });
});

describe('what lies along the cue', () => {
  const outline = rectangle(-3000, -2000, 3000, 2000);
  const names = ['wall 1', 'wall 2', 'wall 3', 'wall 4'];
  const line: CueLine = {
    ball: [1000, 0],
    direction: [1, 0],
    elevation: 0,
    reach: 1500,
    fullReach: 1600,
    height: 830,
  };
  const thing = (name: string, at: number, from: number, to: number) => ({
    name,
    ring: rectangle(1000 + at, -100, 1000 + at + 200, 100),
    from,
    to,
  });

  it('passes over, under and short of things, and tells the first that it does not pass', () => {
    const things = [
      thing('stool', 300, 0, 500),
      thing('lamp', 700, 1500, 1800),
      thing('shelf', 1550, 0, 1900),
    ];
    const found = alongCue(line, outline, names, things, []);
    expect(found.clears.map(({ name, how }) => `${name} ${how}`)).toEqual([
      'stool over',
      'lamp under',
      'shelf short',
    ]);
    expect(found.first).toEqual({ name: 'shelf', at: 1550 });
  });

  it('marks what was asked for, the nearest first', () => {
    const things = [thing('shelf', 900, 0, 1900)];
    const found = alongCue(line, outline, names, things, ['wall 2', 'shelf', 'standing room']);
    expect(found.met).toEqual([
      { name: 'shelf', at: 900 },
      { name: 'wall 2', at: 2000 },
    ]);
    expect(found.clears).toEqual([]);
    expect(found.first).toEqual({ name: 'shelf', at: 900 });
  });

  it('goes over with a raised cue what a level one meets', () => {
    const things = [thing('cabinet', 1000, 0, 900)];
    expect(alongCue(line, outline, names, things, []).clears).toEqual([]);
    const raised = { ...line, elevation: 0.1 };
    expect(alongCue(raised, outline, names, things, []).clears).toEqual([
      { name: 'cabinet', at: 1000, how: 'over' },
    ]);
  });

  it('knows a lamp over the ball itself', () => {
    const lamp = { name: 'lamp', ring: rectangle(600, -200, 1400, 200), from: 1550, to: 1900 };
    expect(alongCue(line, outline, names, [lamp], []).clears).toEqual([
      { name: 'lamp', at: 0, how: 'under' },
    ]);
  });
});

describe('where the player is drawn', () => {
  it('finds a place wherever the library says that there is one, and only free ones', () => {
    const next = random(11);
    let asked = 0;
    let found = 0;
    for (let k = 0; k < 12; k++) {
      const x = between(next, 1500, 2300);
      const y = between(next, 950, 1700);
      const things = [0, 1, 2].map((i) =>
        obstacle(
          `thing ${i}`,
          box(
            between(next, -x, x),
            (i === 0 ? -1 : 1) * between(next, 0.8 * y, y),
            500,
            400,
            between(next, 0, 3),
          ),
          0,
          1200,
        ),
      );
      const scene = prepareStrokes(room(rectangle(-x, -y, x, y), things, []), TABLE, POSE, STROKE);
      const standing = standingRoom(scene);
      for (let shot = 0; shot < 60; shot++) {
        const phi = between(next, 0, 2 * Math.PI);
        const [ux, uy] = [Math.cos(phi), Math.sin(phi)];
        const window = {
          x: between(next, -scene.qx, scene.qx),
          y: between(next, -scene.qy, scene.qy),
          ux,
          uy,
          from: standingFrom(CUE.length),
          to: standingTo(CUE.length, 1500),
          half: STANDING_ASIDE,
        };
        const { from, to, half } = window;
        const can = canStand(scene, standing, window.x, window.y, ux, uy, from, to, half);
        const spot = standingSpot(window, 1000, (px, py) => standing.slack(px, py));
        if (spot !== null) {
          const [dx, dy] = [spot.x - window.x, spot.y - window.y];
          const along = dx * ux + dy * uy;
          expect(Math.abs(dy * ux - dx * uy)).toBeLessThanOrEqual(half + 1e-6);
          expect(along).toBeGreaterThanOrEqual(from - 1e-6);
          expect(along).toBeLessThanOrEqual(to + 1e-6);
          expect(standing.slack(spot.x, spot.y)).toBeGreaterThanOrEqual(-1);
        }
        if (!can) continue;
        asked++;
        if (spot !== null) found++;
      }
    }
    expect(asked).toBeGreaterThan(200);
    // A sliver between the samples may be missed: then nothing is drawn, and the words say that there is room.
    expect(found / asked).toBeGreaterThan(0.99);
  });

  it('stays on the cue’s own line where there is room', () => {
    const window = { x: 0, y: 0, ux: 1, uy: 0, from: 600, to: 1500, half: 350 };
    expect(standingSpot(window, 1000, () => 10)).toEqual({ x: 1000, y: 0 });
    expect(standingSpot(window, 9000, () => 10)).toEqual({ x: 1500, y: 0 });
    expect(standingSpot(window, 1000, () => -10)).toBeNull();
    expect(standingSpot({ ...window, to: 500 }, 1000, () => 10)).toBeNull();
  });
});

describe('the words', () => {
  it('tell a shot in one breath', () => {
    const shot = {
      class: 'cramped',
      x: -120,
      y: 88.4,
      direction: 271.25,
      elevation: 9.04,
      meets: ['wall 2'],
    };
    expect(ENGLISH.summary({ ...shot, class: 'cramped', canStand: true })).toBe(
      'Cramped. Ball -120 along and 88 across, cue towards 271.3°. Least elevation 9°. The open stroke is forbidden by wall 2. There is room to stand.',
    );
    expect(ENGLISH.summary({ ...shot, class: 'blocked', elevation: null, meets: [], canStand: false })).toBe(
      'Blocked. Ball -120 along and 88 across, cue towards 271.3°. No elevation will do. There is no room to stand.',
    );
  });

  it('give a share with its error, or none where it is proved', () => {
    expect(ENGLISH.share(12.345, 0.5)).toContain('± 0.5 %');
    expect(ENGLISH.share(100, 0)).toBe('100 %');
  });
});
