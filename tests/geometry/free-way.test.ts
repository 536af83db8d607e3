import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FoundWay, findWays } from '../../src/geometry/free-way.js';
import { keepsWidth } from '../../src/geometry/free-way-check.js';
import { arrivalsAt, goTogether, wayField, wayLayout } from '../../src/geometry/free-way-field.js';
import { wayPlan } from '../../src/geometry/free-way-plan.js';
import type { Side, WayTarget } from '../../src/geometry/free-way-target.js';
import { rectangleRing } from '../../src/geometry/ring.js';
import type { Ring } from '../../src/geometry/types.js';
import { randomFrom } from '../helpers/rings.js';
import {
  beside,
  connectedByJts,
  inside,
  movedCase,
  randomCase,
  SAMPLE_STEP,
  sampledClearance,
  upright,
  type WayCase,
} from './free-way-oracle.js';

const HALL = upright(0, 0, 6000, 4000);
const LEFT = inside(upright(300, 300, 900, 900));
const RIGHT = inside(upright(5000, 3000, 5700, 3700));

function ask({ outline, blocked, targets }: WayCase, width: number, most = 2 * width): FoundWay {
  return findWays(outline, blocked, targets, [{ from: 0, to: 1, most }], width, width / 4)[0];
}

function across(blocked: readonly Ring[], width = 600): FoundWay {
  return ask({ outline: HALL, blocked, targets: [LEFT, RIGHT] }, width);
}

/** Two things that leave a gap in the middle of the hall. */
function withGap(gap: number): Ring[] {
  return [upright(2500, 0, 3000, 1500), upright(2500, 1500 + gap, 3000, 4000)];
}

describe('a way past things', () => {
  it('is as wide as the gap between two of them', () => {
    const way = across(withGap(730));
    expect(way.found).toBe(true);
    expect(way.widest?.width).toBeCloseTo(730, 9);
    expect(way.widest?.narrowest?.between).toEqual([
      { kind: 'ring', index: 0 },
      { kind: 'ring', index: 1 },
    ]);
    const [x, y] = way.widest?.narrowest?.at ?? [0, 0];
    expect(y).toBeCloseTo(1865, 6);
    expect(x).toBeGreaterThanOrEqual(2500);
    expect(x).toBeLessThanOrEqual(3000);
  });

  it('goes through a gap exactly as wide as it, and through none that is a hundredth of a millimetre narrower', () => {
    const through = across(withGap(600));
    expect(through.found).toBe(true);
    expect(sampledClearance(HALL, withGap(600), through.path)).toBeGreaterThanOrEqual(300 - 2e-6);
    const not = across(withGap(599.99));
    expect([not.found, not.certain, not.path]).toEqual([false, true, []]);
    expect(not.widest?.width).toBeCloseTo(599.99, 9);
  });

  it('goes through a gap between two corners that is exactly as wide', () => {
    for (const angle of [0, 0.3, 1.1]) {
      // Corners 600 apart on a slanting line, nothing else near.
      const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
      const low = [3000 - 300 * ux, 2000 - 300 * uy] as const;
      const high = [3000 + 300 * ux, 2000 + 300 * uy] as const;
      const far = 20_000;
      const wedge = ([x, y]: readonly [number, number], s: number): Ring => [
        [x, y],
        [x + s * far * (ux - 0.2 * uy), y + s * far * (uy + 0.2 * ux)],
        [x + s * far * (ux + 0.2 * uy), y + s * far * (uy - 0.2 * ux)],
      ];
      const blocked = [wedge(high, 1), wedge(low, -1)];
      const before = rectangleRing([3000 - 900 * uy, 2000 + 900 * ux], 100, 100);
      const behind = rectangleRing([3000 + 900 * uy, 2000 - 900 * ux], 100, 100);
      const way = ask({ outline: HALL, blocked, targets: [inside(before), inside(behind)] }, 600);
      expect(way.found).toBe(true);
      expect(way.widest?.width).toBeCloseTo(600, 6);
    }
  });

  it('goes along a corridor exactly as wide', () => {
    const corridor = upright(0, 0, 9000, 600);
    const targets: [WayTarget, WayTarget] = [
      inside(upright(0, 0, 700, 600)),
      inside(upright(8300, 0, 9000, 600)),
    ];
    for (const angle of [0, 0.4, 1.3]) {
      const turned = movedCase({ outline: corridor, blocked: [], targets }, angle, [1000, 2000], false);
      expect(ask(turned, 600).found).toBe(true);
      const wider = ask(turned, 600.01);
      expect([wider.found, wider.certain]).toEqual([false, true]);
      expect(wider.widest?.width).toBeCloseTo(600, 6);
    }
  });

  it('goes round an island on either side', () => {
    const island = upright(2000, 1300, 4000, 3200);
    // 1300 below, 800 above.
    expect(across([island]).widest?.width).toBeCloseTo(1200, 6);
    expect(across([island], 900).found).toBe(true);
    expect(across([island, upright(2500, 0, 3000, 1000)], 800).widest?.width).toBeCloseTo(800, 9);
    const shut = across([island, upright(2500, 0, 3000, 1000), upright(2500, 3500, 3000, 4000)]);
    expect([shut.found, shut.certain]).toEqual([false, true]);
    expect(shut.widest?.width).toBeCloseTo(300, 9);
  });

  it('goes on round a room like a ring while one arm is shut, not while both are', () => {
    const core = upright(1000, 1000, 5000, 3000);
    const shutLow = upright(2900, -100, 3000, 700);
    const shutHigh = upright(2900, 3300, 3000, 4100);
    const start = inside(upright(200, 1800, 800, 2200));
    const end = inside(upright(5200, 1800, 5800, 2200));
    const go = (...shut: Ring[]): FoundWay =>
      ask({ outline: HALL, blocked: [core, ...shut], targets: [start, end] }, 600);
    expect(go().widest?.width).toBeCloseTo(1000, 9);
    expect(go(shutLow).found).toBe(true);
    expect(go(shutHigh).found).toBe(true);
    expect(go(shutLow, shutHigh).found).toBe(false);
    expect(go(shutLow, shutHigh).certain).toBe(true);
  });

  it('does not reach what is walled in', () => {
    const walls = [
      upright(4000, 2200, 6000, 2300),
      upright(4000, 2300, 4100, 3900),
      upright(4100, 3800, 4500, 3900),
    ];
    // 100 mm are left behind the last, by the wall.
    const way = across(walls);
    expect([way.found, way.certain, way.widest]).toEqual([false, true, null]);
    expect(across(walls, 90).found).toBe(true);
  });

  it('does not count floor inside a thing or beyond the walls', () => {
    const inThing = inside(upright(3000, 1500, 3100, 1600));
    const thing = upright(2000, 500, 4500, 3000);
    expect(ask({ outline: HALL, blocked: [thing], targets: [LEFT, inThing] }, 300).found).toBe(false);
    const outside = inside(upright(7000, 1500, 7500, 2000));
    expect(ask({ outline: HALL, blocked: [], targets: [LEFT, outside] }, 300).found).toBe(false);
  });

  it('crosses a hall of a hectare, through a gap exactly as wide', () => {
    const hall = upright(0, 0, 200_000, 50_000);
    const blocked = [upright(90_000, -1, 90_500, 30_000), upright(90_000, 30_600, 90_500, 50_001)];
    const targets: [WayTarget, WayTarget] = [LEFT, inside(upright(199_000, 100, 199_900, 900))];
    const way = ask({ outline: hall, blocked, targets }, 600);
    expect(way.found).toBe(true);
    expect(way.widest?.width).toBeCloseTo(600, 6);
  });

  it('turns into a nook of one thing only as far as it is wide', () => {
    const nook = (opening: number): Ring => [
      [2000, 0],
      [5000, 0],
      [5000, 3000],
      [2000, 3000],
      [2000, 1000 + opening],
      [4500, 1000 + opening],
      [4500, 1000],
      [2000, 1000],
    ];
    const end = inside(upright(3800, 1000, 4500, 1000 + 700));
    const into = (opening: number): FoundWay =>
      ask({ outline: HALL, blocked: [nook(opening)], targets: [LEFT, end] }, 600);
    expect(into(700).found).toBe(true);
    expect(into(590).found).toBe(false);
    expect(into(590).widest?.width).toBeCloseTo(590, 6);
    expect(into(590).widest?.narrowest?.between).toEqual([{ kind: 'ring', index: 0 }]);
  });
});

describe('arriving', () => {
  const side: Side = [
    [5000, 1000],
    [5000, 3000],
  ];

  it('at a side takes a disc square before it, within a touch', () => {
    const thing = upright(3000, 1000, 5000, 3000);
    // 590 mm are left on every side: nothing as wide as 600 comes to it.
    const tight = upright(2410, 410, 5590, 3590);
    const target = { ...inside(), sides: [side] };
    const ways = (width: number): FoundWay =>
      ask({ outline: tight, blocked: [thing], targets: [beside(thing), target] }, width);
    expect(ways(590).found).toBe(true);
    expect(ways(600).found).toBe(false);
    // From its other side nobody touches it.
    const back: WayTarget = { ...inside(), sides: [[side[1], side[0]]] };
    expect(ask({ outline: HALL, blocked: [thing], targets: [LEFT, back] }, 600).found).toBe(false);
  });

  it('through an opening takes room between its jambs', () => {
    const door = (from: number, to: number): WayTarget => ({
      ...inside(),
      openings: [
        [
          [from, 0],
          [to, 0],
        ],
      ],
    });
    const to = (target: WayTarget, blocked: readonly Ring[], width = 600): FoundWay =>
      ask({ outline: HALL, blocked, targets: [target, RIGHT] }, width);
    // In a corner.
    expect(to(door(0, 800), []).found).toBe(true);
    expect(to(door(600, 0), []).found).toBe(true);
    // A thing before it: 700 of it are free, then 500.
    expect(to(door(0, 800), [upright(700, 0, 1200, 700)]).found).toBe(true);
    expect(to(door(0, 800), [upright(500, 0, 1200, 700)]).found).toBe(false);
    // Beside the way through it, but in front of a jamb only.
    expect(to(door(2000, 2800), [upright(1000, 50, 2100, 700)]).found).toBe(true);
    expect(to(door(2000, 2800), [upright(1000, 50, 2300, 700)]).found).toBe(false);
    // Narrower than the way: its own width does, also in a corner, unless something stands in it.
    expect(to(door(0, 500), []).found).toBe(true);
    expect(to(door(0, 500), [upright(480, 0, 700, 700)]).found).toBe(false);
    expect(to(door(2000, 2500), [upright(1000, 0, 2000, 700)], 600).found).toBe(true);
    expect(to(door(2000, 2500), [upright(1000, 0, 2040, 700)], 600).found).toBe(false);
    expect(to(door(2000, 2500), [upright(1000, 0, 2040, 700)], 450).found).toBe(true);
    // A low step by the jamb: a wide disc touches the opening beside it, but one as wide as the opening does not come through.
    const step = upright(1990, 0, 2060, 110);
    expect(Math.hypot(2300 - 2060, 300 - 110)).toBeGreaterThan(300);
    expect(Math.hypot(2250 - 2060, 250 - 110)).toBeLessThan(250);
    expect(to(door(2000, 2500), [step]).found).toBe(false);
  });
});

describe('ways in random rooms', () => {
  const widths = [300, 450, 600, 800, 1000];

  it('agree with JTS wherever its answer is the same for 5 mm more and less, and keep their width all along', () => {
    let compared = 0;
    let found = 0;
    for (let seed = 0; seed < 100; seed++) {
      const given = randomCase(seed);
      const width = widths[seed % widths.length];
      const way = ask(given, width);
      expect(way.certain, `seed ${seed}`).toBe(true);
      if (way.found) {
        found++;
        expect(
          sampledClearance(given.outline, given.blocked, way.path),
          `seed ${seed}`,
        ).toBeGreaterThanOrEqual(width / 2 - 2e-6);
      } else expect(way.path).toEqual([]);
      const wider = connectedByJts(given, width + 5);
      if (connectedByJts(given, width - 5) !== wider) continue;
      compared++;
      expect(way.found, `seed ${seed}`).toBe(wider);
    }
    expect(compared).toBeGreaterThan(90);
    expect(found).toBeGreaterThan(30);
    expect(found).toBeLessThan(70);
  });

  it('are as wide as JTS says they are', () => {
    let held = 0;
    for (let seed = 1000; seed < 1080; seed++) {
      const given = randomCase(seed);
      const { widest } = ask(given, 600);
      const width = widest?.width ?? 0;
      if (width > 0) expect(connectedByJts(given, width - 5), `seed ${seed}`).toBe(true);
      if (width === 1200) continue;
      held++;
      expect(connectedByJts(given, (width === 0 ? 150 : width) + 5), `seed ${seed}`).toBe(false);
      if (widest === null) continue;
      expect(widest.narrowest?.between.length).toBeGreaterThanOrEqual(1);
      // That wide a way is proved by a path as well.
      const there = ask(given, width, width);
      expect(there.found, `seed ${seed}`).toBe(true);
      expect(sampledClearance(given.outline, given.blocked, there.path)).toBeGreaterThanOrEqual(
        width / 2 - 2e-6,
      );
    }
    expect(held).toBeGreaterThan(30);
  });

  it('never get wider by one more thing, and are there for every narrower width', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 200, max: 1000 }), (seed, width) => {
        const given = randomCase(seed);
        const more = randomCase(seed + 1).blocked.slice(0, 2);
        const together = (c: WayCase, w: number): boolean => {
          const layout = wayLayout(wayField(c.outline, [], w), c.blocked);
          return goTogether(arrivalsAt(layout, c.targets, w), 0, 1);
        };
        const here = together(given, width);
        if (here) expect(together(given, width * 0.8)).toBe(true);
        else expect(together({ ...given, blocked: [...given.blocked, ...more] }, width)).toBe(false);
      }),
      { seed: 501, numRuns: 400 },
    );
  });

  it('do not change with the room turned, moved or mirrored', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e6 }),
        fc.double({ min: 0, max: 6.3, noNaN: true }),
        fc.integer({ min: -50_000, max: 50_000 }),
        fc.boolean(),
        (seed, angle, shift, mirror) => {
          const given = randomCase(seed);
          const moved = movedCase(given, angle, [shift, -2 * shift], mirror);
          const [a, b] = [ask(given, 600), ask(moved, 600)];
          // A way that is as wide as a gap by less than rounding may go either way; none of these seeds has one.
          expect([b.found, b.certain]).toEqual([a.found, a.certain]);
          expect(Math.abs((a.widest?.width ?? 0) - (b.widest?.width ?? 0))).toBeLessThan(1);
        },
      ),
      { seed: 502, numRuns: 100 },
    );
  });

  it('give the same answer every time, whatever else is asked at once', () => {
    for (let seed = 2000; seed < 2020; seed++) {
      const { outline, blocked, targets } = randomCase(seed);
      const pairs = [
        { from: 0, to: 1, most: 1200 },
        { from: 1, to: 0, most: 1200 },
        { from: 0, to: 2, most: 1200 },
      ];
      const all = findWays(outline, blocked, [...targets, LEFT], pairs, 600, 150);
      expect(findWays(outline, blocked, [...targets, LEFT], pairs, 600, 150)).toEqual(all);
      expect(all[1].found).toBe(all[0].found);
      expect(Math.abs((all[1].widest?.width ?? 0) - (all[0].widest?.width ?? 0))).toBeLessThan(1);
      expect(ask({ outline, blocked, targets }, 600).found).toBe(all[0].found);
    }
  });
});

describe('the check of a path', () => {
  it('finds what a plain look along the path finds', () => {
    const random = randomFrom(77);
    let good = 0;
    for (let k = 0; k < 300; k++) {
      const { outline, blocked } = randomCase(3000 + (k % 20));
      const spot = (): readonly [number, number] => [random() * 6000, random() * 4000];
      const path = [spot(), spot()];
      const least = sampledClearance(outline, blocked, path);
      const plan = wayPlan(outline, blocked);
      if (least <= 0) expect(keepsWidth(plan, path, 1)).toBe(false);
      else {
        good++;
        expect(keepsWidth(plan, path, 2 * least + 0.01)).toBe(false);
        // Half a step from the nearest sample it is at most as much nearer.
        const sure = 2 * least - SAMPLE_STEP;
        if (sure > 0) expect(keepsWidth(plan, path, sure)).toBe(true);
      }
    }
    expect(good).toBeGreaterThan(20);
    expect(keepsWidth(wayPlan(HALL, []), [], 10)).toBe(false);
  });
});
