import { describe, expect, it } from 'vitest';
import {
  belowCeilingUpTo,
  forbiddenByPrism,
  passesOverFrom,
  passesUnderUpTo,
  type Reach,
  stopsShortFrom,
} from '../../src/stroke/forbidden-elevations.js';
import { between, type Random, random } from './scenes.js';

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const out = new Float64Array(2);

/** Does a cue at elevation theta meet the prism? 4,000 points along its axis, each tried against the grown prism. */
function meets(reach: Reach, t0: number, t1: number, from: number, to: number, theta: number): boolean {
  const cos = Math.cos(theta);
  const a = reach.margin / cos;
  for (let k = 0; k <= 4000; k++) {
    const t = (reach.ell * cos * k) / 4000;
    if (t <= t0 || t >= t1) continue;
    const z = reach.tipOffset / cos + t * Math.tan(theta);
    if (z + a > from && z - a < to) return true;
  }
  return false;
}

function meetsCeiling(reach: Reach, height: number, slope: number, theta: number): boolean {
  const cos = Math.cos(theta);
  for (let k = 0; k <= 4000; k++) {
    const t = (reach.ell * cos * k) / 4000;
    if ((reach.tipOffset + reach.margin) / cos + t * Math.tan(theta) > height + slope * t) return true;
  }
  return false;
}

const randomReach = (next: Random): Reach => ({
  ell: between(next, 700, 1900),
  margin: next() < 0.2 ? 0 : between(next, 0, 60),
  tipOffset: next() < 0.2 ? 0 : between(next, 0, 12),
  steepest: between(next, 0.1, 1.3),
});

describe('elevations that a prism forbids', () => {
  it('are those at which points along the cue are in it', () => {
    const next = random(41);
    let checks = 0;
    let forbidden = 0;
    for (let k = 0; k < 1200; k++) {
      const reach = randomReach(next);
      const t0 = next() < 0.1 ? 0 : between(next, 0, reach.ell * 1.05);
      const t1 = t0 + between(next, 5, 900);
      const from = between(next, -900, 900);
      const to = next() < 0.2 ? Infinity : from + between(next, 5, 900);
      const any = forbiddenByPrism(reach, t0, t1, from, to, out);
      const lo = any ? out[0] : 1;
      const hi = any ? out[1] : 0;
      for (let i = 0; i < 10; i++) {
        const theta = next() * reach.steepest;
        // Away from the interval's ends by what the 4,000 points can tell.
        if (any && Math.min(Math.abs(theta - lo), Math.abs(theta - hi)) < 1e-3) continue;
        checks++;
        const closed = lo < theta && theta < hi;
        if (closed) forbidden++;
        if (closed === meets(reach, t0, t1, from, to, theta)) continue;
        // The one documented exception: things at ball height within a few centimetres of the ball.
        const gap = reach.margin - reach.tipOffset;
        expect(closed).toBe(true);
        expect(Math.hypot(t0, to)).toBeLessThan(gap / Math.cos(reach.steepest));
      }
    }
    expect(checks).toBeGreaterThan(10_000);
    expect(forbidden).toBeGreaterThan(2000);
  });

  // algorithms.md, section 4.1, of the design notes: checked there by brute force; b = a = 0, a cue of no thickness.
  it('are the published ones for a wall, a sofa, a shelf and a lamp', () => {
    const reach: Reach = { ell: 1626.6, margin: 0, tipOffset: 0, steepest: 1.5 };
    const z = (height: number): number => height - 826.6;
    expect(degrees(stopsShortFrom(reach.ell, 1500))).toBeCloseTo(22.7547, 4);
    expect(forbiddenByPrism(reach, 900, 1600, z(0), z(980), out)).toBe(true);
    expect(out[0]).toBe(-1);
    expect(degrees(out[1])).toBeCloseTo(9.6728, 4);
    expect(forbiddenByPrism(reach, 1000, 1500, z(1150), z(2100), out)).toBe(true);
    expect(degrees(out[0])).toBeCloseTo(12.1667, 4);
    expect(degrees(out[1])).toBeCloseTo(51.8575, 4);
    expect(forbiddenByPrism(reach, 600, 900, z(1500), z(2400), out)).toBe(true);
    expect(degrees(out[0])).toBeCloseTo(36.8047, 4);
    expect(degrees(out[1])).toBeCloseTo(68.3542, 4);
    expect(degrees(belowCeilingUpTo(reach, z(2400), 0))).toBeCloseTo(75.3059, 4);
    expect(degrees(belowCeilingUpTo(reach, z(1700), -0.5))).toBeCloseTo(2.1374, 4);
    expect(degrees(belowCeilingUpTo(reach, z(1100), 0.3))).toBeCloseTo(25.9637, 4);
  });

  it('never grow at the top when a prism begins later, nor at the bottom when it ends earlier', () => {
    const next = random(42);
    for (let k = 0; k < 20_000; k++) {
      const reach = randomReach(next);
      const height = between(next, -300, 600);
      const near = next() < 0.3 ? between(next, 0, 80) : between(next, 0, 1900);
      const far = near + between(next, 0, next() < 0.5 ? 5 : 500);
      const slack = 1e-12;
      // Over: least elevations, those that are never asked for (at or below 0) counting alike.
      expect(Math.max(0, passesOverFrom(reach, far, height))).toBeLessThanOrEqual(
        Math.max(0, passesOverFrom(reach, near, height)) + slack,
      );
      expect(passesUnderUpTo(reach, far, height)).toBeLessThanOrEqual(
        passesUnderUpTo(reach, near, height) + slack,
      );
      if (far < reach.ell)
        expect(stopsShortFrom(reach.ell, far)).toBeLessThanOrEqual(stopsShortFrom(reach.ell, near));
    }
  });

  it('take in more with a longer reach', () => {
    const next = random(43);
    const longer = new Float64Array(2);
    for (let k = 0; k < 20_000; k++) {
      const reach = randomReach(next);
      const t0 = between(next, 0, 1900);
      const t1 = t0 + between(next, 5, 900);
      const from = between(next, -500, 900);
      const to = from + between(next, 5, 900);
      if (!forbiddenByPrism(reach, t0, t1, from, to, out)) continue;
      expect(
        forbiddenByPrism({ ...reach, ell: reach.ell * between(next, 1, 1.2) }, t0, t1, from, to, longer),
      ).toBe(true);
      expect(longer[0]).toBeLessThanOrEqual(out[0] + 1e-12);
      expect(longer[1]).toBeGreaterThanOrEqual(out[1] - 1e-12);
    }
  });

  it('touching counts as clear', () => {
    const reach: Reach = { ell: 1500, margin: 20, tipOffset: 10, steepest: 0.35 };
    // Level, exactly 10 mm over the ball's centre: a top 10 mm below it less the margin of 20, an underside 30 over it.
    expect(forbiddenByPrism(reach, 500, 900, -900, -10, out)).toBe(false);
    expect(forbiddenByPrism(reach, 500, 900, -900, -10 + 1e-6, out)).toBe(true);
    expect(passesUnderUpTo(reach, 900, 30)).toBe(0);
    expect(passesUnderUpTo(reach, 900, 30 - 1e-9)).toBe(-1);
    expect(forbiddenByPrism(reach, 1500, 1900, -900, Infinity, out)).toBe(false);
    expect(forbiddenByPrism(reach, 1500 - 1e-6, 1900, -900, Infinity, out)).toBe(true);
  });
});

describe('the elevation below a ceiling', () => {
  it('is the last at which no point along the cue comes too near to the face', () => {
    const next = random(44);
    let limited = 0;
    for (let k = 0; k < 2000; k++) {
      const reach = randomReach(next);
      const height = between(next, 0, 1500);
      const slope = between(next, -3, 1.5);
      const limit = belowCeilingUpTo(reach, height, slope);
      for (let i = 0; i < 6; i++) {
        const theta = next() * reach.steepest;
        if (Math.abs(theta - limit) < 1e-6) continue;
        const met = meetsCeiling(reach, height, slope, theta);
        if (theta < limit) expect(met).toBe(false);
        // Over a face that falls more steeply than the cue's end follows, more may be forbidden than need be.
        else if (slope >= 0 || Math.tan(reach.steepest) <= -1 / slope) expect(met).toBe(true);
        if (theta > limit) limited++;
      }
    }
    expect(limited).toBeGreaterThan(2000);
  });

  it('never falls with a higher face or one that rises more', () => {
    const next = random(45);
    for (let k = 0; k < 20_000; k++) {
      const reach = randomReach(next);
      const height = between(next, 0, 1500);
      const slope = between(next, -8, 2);
      const limit = belowCeilingUpTo(reach, height, slope);
      expect(belowCeilingUpTo(reach, height + between(next, 0, 100), slope)).toBeGreaterThanOrEqual(
        limit - 1e-12,
      );
      expect(belowCeilingUpTo(reach, height, slope + between(next, 0, 1))).toBeGreaterThanOrEqual(
        limit - 1e-12,
      );
    }
  });
});
