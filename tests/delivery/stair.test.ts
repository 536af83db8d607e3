import { describe, expect, it } from 'vitest';
import type { Carried } from '../../src/delivery/carried.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Stair } from '../../src/delivery/passages.js';
import { replayPassage } from '../../src/delivery/replay.js';
import { crossStair } from '../../src/delivery/stair.js';
import { stairBound, stairFamilyBound } from '../../src/delivery/stair-bounds.js';
import { lowerSpare, stairWays } from '../../src/delivery/stair-cells.js';
import { nosingDip, slopeAgainst } from '../../src/delivery/stair-dip.js';
import { stairFamilies, tiltAllowed } from '../../src/delivery/stair-holds.js';
import {
  ceilingAt,
  floorAt,
  freeHeight,
  profileSpare,
  stairProfile,
} from '../../src/delivery/stair-profile.js';
import { widestWay } from '../../src/delivery/stair-search.js';
import { plainStairWay } from '../../src/delivery/stair-way.js';
import { leastRoom } from './stair-replay.js';
import { randomBox, randomSource, randomStair } from './stair-samples.js';

const SEED = 20261125;
const FAR = Number.POSITIVE_INFINITY;
const degrees = (angle: number): number => (angle * Math.PI) / 180;
const every = { held: ['flat', 'on-edge', 'on-end'] as const, tilt: Math.PI / 4 };
const budget = { maxBoxes: 60_000 };

function stairOf(changes: Partial<Stair> = {}): Stair {
  const room = { depth: FAR, height: 2400 };
  return {
    kind: 'stair',
    name: '',
    tolerance: 10,
    width: 900,
    pitch: degrees(42),
    rise: 200,
    headroom: 2000,
    run: 3000,
    bottom: room,
    top: room,
    ...changes,
  };
}

describe('the upright plane of a stair', () => {
  it('gives the free heights that sampling the outline of the slab gives', () => {
    const random = randomSource(SEED);
    const free = { lo: 0, hi: 0, walls: 0 };
    for (let i = 0; i < 300; i++) {
      const { profile } = stairProfile(randomStair(random), 4000);
      const slab = { halfAlong: 200 + 1200 * random(), halfUp: 30 + 600 * random() };
      const tilt = Math.PI * (random() - 0.5);
      const x = -1500 + (profile.run + 3000) * random();
      freeHeight(profile, slab, 0, x, tilt, free);
      let lo = Number.NEGATIVE_INFINITY;
      let hi = FAR;
      const n = 400;
      for (let k = 0; k <= n; k++) {
        for (const side of [-1, 1]) {
          for (const [a, b] of [
            [(2 * k) / n - 1, side],
            [side, (2 * k) / n - 1],
          ]) {
            const [ra, rb] = [a * slab.halfAlong, b * slab.halfUp];
            const q = x + ra * Math.cos(tilt) - rb * Math.sin(tilt);
            const z = ra * Math.sin(tilt) + rb * Math.cos(tilt);
            lo = Math.max(lo, floorAt(profile, q, 0) - z);
            hi = Math.min(hi, ceilingAt(profile, q) - z);
          }
        }
      }
      // Samples miss a corner of the floor or the ceiling by less than one part of the outline each way.
      const part = (2 * Math.max(slab.halfAlong, slab.halfUp)) / n;
      const steep = 1 + profile.tan + Math.min(1 / Math.abs(Math.tan(tilt)), Math.abs(Math.tan(tilt)) + 60);
      expect(free.lo).toBeGreaterThanOrEqual(lo - 1e-6);
      expect(free.lo).toBeLessThanOrEqual(lo + 2 * part * steep);
      if (hi < FAR) expect(free.hi).toBeLessThanOrEqual(hi + 1e-6);
    }
  });

  it('bounds the spare of every pose of a cell from both sides', () => {
    const random = randomSource(SEED + 1);
    const scratch = { lo: 0, hi: 0, walls: 0 };
    for (let i = 0; i < 150; i++) {
      const stair = randomStair(random);
      const box = { ...randomBox(random), held: every.held };
      const family = stairFamilies(box)[Math.floor(3 * random())];
      if (family === undefined) continue;
      const { profile } = stairProfile(stair, 3000);
      const plane = { profile, pitch: stair.pitch, rise: 0, endless: stair.run === FAR };
      const slab = { halfAlong: family.along / 2, halfUp: family.up / 2 };
      const reach = Math.hypot(slab.halfAlong, slab.halfUp);
      const ways = stairWays(plane, family);
      const cell = {
        tilt: Math.PI * (random() - 0.5),
        x: -1000 + (profile.run + 2000) * random(),
        halfTilt: 0.2 * random() ** 3,
        halfX: 200 * random() ** 3,
      };
      const upper = ways.upper(cell);
      const lower = lowerSpare(profile, slab, reach, cell, scratch);
      for (let k = 0; k < 30; k++) {
        const tilt = cell.tilt + (2 * random() - 1) * cell.halfTilt;
        const x = cell.x + (2 * random() - 1) * cell.halfX;
        const spare = profileSpare(profile, slab, 0, x, tilt, scratch);
        expect(spare).toBeGreaterThanOrEqual(lower - 1e-6);
        expect(spare).toBeLessThanOrEqual(upper + 1e-6);
      }
    }
  });

  it('never says less than a corner truly dips in between nosings', () => {
    const random = randomSource(SEED + 2);
    for (let i = 0; i < 300; i++) {
      const pitch = degrees(20 + 30 * random());
      const rise = 150 + 70 * random();
      const going = rise / Math.tan(pitch);
      const [along, up] = [100 + 2000 * random(), 30 + 1000 * random()];
      const tilt = Math.PI * (random() - 0.5);
      const { from, to } = slopeAgainst(tilt, pitch, 0);
      const dip = nosingDip(along, up, pitch, rise, from, to);
      expect(dip).toBeLessThanOrEqual(rise + 1e-9);
      // The slab set down on true steps at every phase: treads at k rise from k going on, the nosing at its edge.
      for (let k = 0; k < 12; k++) {
        const x = (going * k) / 12;
        let z = Number.NEGATIVE_INFINITY;
        let line = Number.NEGATIVE_INFINITY;
        for (const [a, b] of outline(along, up, 240)) {
          const q = x + a * Math.cos(tilt) - b * Math.sin(tilt);
          const h = a * Math.sin(tilt) + b * Math.cos(tilt);
          z = Math.max(z, Math.floor(q / going) * rise - h);
          line = Math.max(line, q * Math.tan(pitch) - h);
        }
        // The nosings themselves, which samples of the outline may straddle.
        for (let step = -20; step <= 20; step++) {
          const below = lowerAt(along, up, tilt, step * going - x);
          if (below !== null) z = Math.max(z, step * rise - below);
        }
        expect(line - z).toBeLessThanOrEqual(dip + 1e-6);
      }
    }
  });
});

function outline(along: number, up: number, n: number): [number, number][] {
  const points: [number, number][] = [];
  for (let k = 0; k <= n; k++) {
    for (const side of [-0.5, 0.5]) {
      points.push([(k / n - 0.5) * along, side * up], [side * along, (k / n - 0.5) * up]);
    }
  }
  return points;
}

/** Least z of the rectangle over the offset t, by cutting its four sides; null beside it. */
function lowerAt(along: number, up: number, tilt: number, t: number): number | null {
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([a, b]) => [
    (a * along * Math.cos(tilt) - b * up * Math.sin(tilt)) / 2,
    (a * along * Math.sin(tilt) + b * up * Math.cos(tilt)) / 2,
  ]);
  let least: number | null = null;
  corners.forEach(([px, pz], i) => {
    const [qx, qz] = corners[(i + 1) % 4];
    if (px === qx || (t - px) * (t - qx) > 0) return;
    const z = pz + ((t - px) / (qx - px)) * (qz - pz);
    if (least === null || z < least) least = z;
  });
  return least;
}

/** Slow: whether tilts and places 1 degree and 15 mm apart with more spare than `delta` join the two levels, neighbours in eight directions. */
function floods(stair: Stair, along: number, up: number, delta: number): boolean {
  const { profile } = stairProfile(stair, FAR);
  const reach = Math.hypot(along, up) / 2 + 20;
  const slab = { halfAlong: along / 2, halfUp: up / 2 };
  const scratch = { lo: 0, hi: 0, walls: 0 };
  const turns = 180;
  const places = Math.ceil((profile.run + 2 * reach) / 15);
  const free: boolean[] = [];
  for (let p = 0; p <= places; p++) {
    for (let t = 0; t < turns; t++) {
      const x = -reach + p * 15;
      free.push(profileSpare(profile, slab, 0, x, (t * Math.PI) / turns, scratch) > delta);
    }
  }
  const seen = new Uint8Array(free.length);
  const stack: number[] = [];
  for (let t = 0; t < turns; t++) if (free[t]) stack.push(t);
  for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
    if (seen[at]) continue;
    seen[at] = 1;
    const p = Math.floor(at / turns);
    if (p === places) return true;
    for (let dp = -1; dp <= 1; dp++) {
      for (let dt = -1; dt <= 1; dt++) {
        const next = (p + dp) * turns + (((((at % turns) + dt) % turns) + turns) % turns);
        if (p + dp >= 0 && free[next] && !seen[next]) stack.push(next);
      }
    }
  }
  return false;
}

describe('turning at the foot and at the head', () => {
  const random = randomSource(SEED + 3);
  const cases = Array.from({ length: 8 }, () => {
    const high = 1900 + 400 * random();
    return {
      stair: stairOf({
        pitch: degrees(25 + 20 * random()),
        headroom: high,
        run: 3600,
        // Ceilings that meet at the steps: there the closed form is exact.
        bottom: { depth: FAR, height: high },
        top: { depth: FAR, height: high },
      }),
      box: { l: 1200 + 1400 * random(), w: 700 + 500 * random(), h: 40, ...every },
    };
  });

  it.each(cases)('agrees with a flood of sampled tilts and places, $box.l x $box.w', ({ stair, box }) => {
    const [family] = stairFamilies(box).filter(({ across }) => across === box.h);
    const { profile } = stairProfile(stair, Math.hypot(box.l, box.w) + 10);
    const way = plainStairWay({ profile, pitch: stair.pitch, rise: 0, endless: false }, family);
    const spare = way?.spare ?? Number.NaN;
    expect(floods(stair, box.l, box.w, spare + 2)).toBe(false);
    expect(floods(stair, box.l, box.w, spare - 15)).toBe(true);
  });

  it.each(cases.slice(0, 3))('agrees with the search of the plane, $box.l x $box.w', ({ stair, box }) => {
    const [family] = stairFamilies(box).filter(({ across }) => across === box.h);
    const { profile } = stairProfile(stair, Math.hypot(box.l, box.w) + 10);
    const plane = { profile, pitch: stair.pitch, rise: 0, endless: false };
    const spare = plainStairWay(plane, family)?.spare ?? Number.NaN;
    const stop = { maxCells: 30_000, within: 1 };
    expect(
      widestWay(stairWays(plane, family), { ...stop, above: spare - 1.5, below: -FAR }).atLeast,
    ).toBeGreaterThan(spare - 2.6);
    expect(
      widestWay(stairWays(plane, family), { ...stop, above: FAR, below: spare + 2 }).atMost,
    ).toBeLessThan(spare + 2);
  });
});

describe('crossStair', () => {
  it('proves what it says passes, by two replays, and narrowed by its spare too', () => {
    const random = randomSource(SEED + 4);
    let passed = 0;
    for (let i = 0; i < 60; i++) {
      const stair = randomStair(random);
      const box = randomBox(random);
      const crossing = crossStair(stair, box, budget);
      expect(crossing.atLeast).toBeLessThanOrEqual(crossing.atMost);
      expect(crossing.atMost).toBeLessThanOrEqual(crossing.atMostAnyMotion);
      expect(crossing.motion !== null).toBe(crossing.atLeast >= 0);
      if (crossing.motion === null || crossing.atLeast < 0.1) continue;
      passed++;
      expect(leastRoom(stair, crossing.motion)).toBeGreaterThan(0);
      const replay = replayPassage(stair, crossing.motion);
      expect(replay.clearance).toBeGreaterThan(0);
      expect(replay.startsNear && replay.endsFar).toBe(true);
      const { along, across, up } = crossing.motion;
      // Two edges may be alike, and so two families.
      const families = stairFamilies(box).filter(
        (one) => one.along === along && one.across === across && one.up === up,
      );
      const isHeld = families.some(({ ranges }) =>
        crossing.motion?.poses.every(({ tilt }) => tiltAllowed(ranges, tilt)),
      );
      expect(isHeld).toBe(true);
    }
    expect(passed).toBeGreaterThan(30);
  });

  it('has bounds above every way that is known', () => {
    const random = randomSource(SEED + 6);
    for (let i = 0; i < 60; i++) {
      const stair = randomStair(random);
      const box = { ...randomBox(random), held: every.held };
      for (const family of stairFamilies(box)) {
        const { profile } = stairProfile(stair, Math.hypot(family.along, family.up) + 10);
        const plane = { profile, pitch: stair.pitch, rise: 0, endless: stair.run === FAR };
        const way = plainStairWay(plane, family);
        if (way === null) continue;
        const spare = Math.min(way.spare, stair.width - family.across);
        expect(stairFamilyBound(stair, family)).toBeGreaterThanOrEqual(spare - 1e-6);
        expect(stairBound(stair, box)).toBeGreaterThanOrEqual(spare - 1e-6);
      }
    }
  });

  it('shrinks with the readings, and never gains when they do', () => {
    const random = randomSource(SEED + 5);
    for (let i = 0; i < 40; i++) {
      const stair = randomStair(random);
      const box = randomBox(random);
      const given = crossStair(stair, box, budget);
      const cut = narrowPassage(stair, 25);
      if (cut.kind !== 'stair') throw new Error('a stair stays a stair');
      const narrower = crossStair(cut, box, budget);
      expect(narrower.atLeast).toBeLessThanOrEqual(given.atMost - 25 + 0.01);
      expect(given.atLeast - 25).toBeLessThanOrEqual(narrower.atMost + 0.01);
      for (const wider of [
        { ...stair, width: stair.width + 50 },
        { ...stair, headroom: stair.headroom + 50 },
      ]) {
        expect(crossStair(wider, box, budget).atMost).toBeGreaterThanOrEqual(given.atLeast);
      }
    }
  });

  it('is the same stair in other units', () => {
    const stair = stairOf();
    const box: Carried = { l: 1920, w: 780, h: 100, ...every };
    const twice = (n: number): number => 2 * n;
    const doubled = stairOf({
      width: twice(900),
      rise: twice(200),
      headroom: twice(2000),
      run: twice(3000),
      bottom: { depth: FAR, height: twice(2400) },
      top: { depth: FAR, height: twice(2400) },
    });
    const small = crossStair(stair, box, budget).atLeast;
    const large = crossStair(
      doubled,
      { ...box, l: twice(box.l), w: twice(box.w), h: twice(box.h) },
      budget,
    ).atLeast;
    expect(Math.abs(large - 2 * small)).toBeLessThan(0.1);
  });

  it('is the width where only the width counts', () => {
    // By hand: 700 wide, held on edge or level only across 650.
    const box: Carried = { l: 800, w: 650, h: 600, held: ['flat'], tilt: Math.PI / 4 };
    const crossing = crossStair(
      stairOf({ width: 700, headroom: 4000, bottom: { depth: FAR, height: FAR } }),
      box,
      budget,
    );
    expect(crossing.atLeast).toBeCloseTo(50, 6);
    expect(crossing.atMost).toBeCloseTo(50, 6);
  });

  it('is the height square to the flight where only that counts', () => {
    // By hand: lying along the flight a slab needs its height over cos 42 degrees, upright.
    const box: Carried = { l: 2000, w: 500, h: 450, held: ['flat'], tilt: degrees(42) };
    const endless = stairOf({ width: 3000, headroom: 900, run: FAR, bottom: { depth: FAR, height: FAR } });
    const crossing = crossStair(endless, box, budget);
    expect(crossing.atMost).toBeGreaterThanOrEqual(900 - 450 / Math.cos(degrees(42)) - 1e-6);
    expect(crossing.atLeast).toBeLessThanOrEqual(900 - 450 / Math.cos(degrees(42)) + 1e-6);
  });

  it('blocks every motion of what is thicker than the stair is wide or high', () => {
    const cube: Carried = { l: 1000, w: 1000, h: 1000, ...every };
    const crossing = crossStair(stairOf(), cube, budget);
    expect(crossing.atMostAnyMotion).toBeCloseTo(-100, 6);
    expect(stairBound(stairOf({ width: 2000, headroom: 1000, rise: 0 }), cube)).toBeCloseTo(
      1000 - 1000 / Math.cos(degrees(42)),
      6,
    );
  });

  it('lets nothing pass that may be held in no way', () => {
    expect(crossStair(stairOf(), { l: 500, w: 400, h: 300, held: [], tilt: 1 }, budget)).toMatchObject({
      atLeast: -FAR,
      hold: null,
      method: 'none',
    });
  });

  it('finds a way over a level at the foot that is too shallow for the closed form', () => {
    const shallow = { depth: 900, height: 2400 };
    const stair = stairOf({ bottom: shallow, top: shallow });
    const box: Carried = { l: 1770, w: 730, h: 60, held: ['on-edge'], tilt: degrees(42) };
    const [family] = stairFamilies(box).filter(({ across }) => across === box.h);
    const { profile } = stairProfile(stair, 2000);
    const plane = { profile, pitch: stair.pitch, rise: 0, endless: false };
    expect(plainStairWay(plane, family)?.spare).toBeLessThan(stair.tolerance);
    const crossing = crossStair(stair, box, budget);
    expect(crossing.method).toBe('subdivision');
    expect(crossing.atLeast).toBeGreaterThanOrEqual(stair.tolerance);
    expect(
      replayPassage(stair, crossing.motion ?? { along: 0, across: 0, up: 0, poses: [] }).clearance,
    ).toBeGreaterThan(0);
  });
});

describe('stairs of the building codes', () => {
  // AD K private stair: rise 220, going 220 and more, pitch at most 42 degrees [second-hand]; headroom 2.0 m [memory]; standards.md section 7.
  const adk = stairOf({ pitch: degrees(42), rise: 200, headroom: 2000, width: 800, run: 2700 });
  // IRC 2018 R311.7: 36 in wide, headroom 80 in, riser 7 3/4 in, tread 10 in [seen]; standards.md section 7.
  const irc = stairOf({ pitch: Math.atan2(7.75, 10), rise: 196.85, headroom: 2032, width: 914.4, run: 3302 });

  it.each([
    ['AD K', adk],
    ['IRC', irc],
  ])('%s: a slate of a nine-foot table passes, a sheet as wide as the headroom does not', (_, stair) => {
    // Slate 1.45 x 0.91 x 0.03 m [derived], standards.md section 7, with 25 mm of hand room.
    const slate: Carried = { l: 1500, w: 960, h: 80, ...every };
    expect(crossStair(stair, slate, budget).atLeast).toBeGreaterThan(10);
    const sheet: Carried = { l: 3000, w: 2000, h: 50, ...every };
    expect(crossStair(stair, sheet, budget).atMost).toBeLessThan(0);
  });
});
