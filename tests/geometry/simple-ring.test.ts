import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { segmentContact } from '../../src/geometry/predicates.js';
import { rotated } from '../../src/geometry/ring.js';
import { findSelfContacts, isSimple } from '../../src/geometry/simple-ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import * as jts from '../helpers/jsts.js';
import { crookedRings, randomFrom, skylineRings, starRings } from '../helpers/rings.js';

const SEED = 71_004;

/** Every pair of sides, one by one. */
function pairsThatMeet(ring: Ring): Set<string> {
  const n = ring.length;
  const found = new Set<string>();
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const contact = segmentContact(ring[i], ring[i + 1], ring[j], ring[(j + 1) % n]);
      const neighbours = j === i + 1 || (i === 0 && j === n - 1);
      if (neighbours ? contact === 'overlap' : contact !== 'apart') found.add(`${i} ${j}`);
    }
  }
  return found;
}

describe('findSelfContacts', () => {
  it('finds nothing on a simple ring', () => {
    fc.assert(
      fc.property(fc.oneof(starRings(), skylineRings(), crookedRings()), (ring) => {
        expect(findSelfContacts(ring)).toEqual([]);
        expect(isSimple(ring)).toBe(true);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('tells which sides cross, and where', () => {
    const bow: Ring = [
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ];
    expect(findSelfContacts(bow)).toEqual([{ kind: 'cross', sides: [0, 2], at: [5, 5] }]);
    expect(isSimple(bow)).toBe(false);
  });

  it('lists a corner upon a corner once', () => {
    const hourglass: Ring = [
      [0, 0],
      [10, 0],
      [5, 5],
      [10, 10],
      [0, 10],
      [5, 5],
    ];
    expect(findSelfContacts(hourglass)).toEqual([{ kind: 'touch', sides: [1, 4], at: [5, 5] }]);
  });

  it('finds a corner on a side, sides along one another, and a spike', () => {
    const onSide: Ring = [
      [0, 0],
      [10, 0],
      [10, 10],
      [5, 0],
      [0, 10],
    ];
    expect(findSelfContacts(onSide)).toEqual([{ kind: 'touch', sides: [0, 2], at: [5, 0] }]);
    const slit: Ring = [
      [0, 0],
      [10, 0],
      [10, 5],
      [4, 5],
      [10, 5],
      [10, 10],
      [0, 10],
    ];
    expect(findSelfContacts(slit).map((c) => c.kind)).toContain('overlap');
    const closing: Ring = [
      [4, 5],
      [10, 5],
      [10, 10],
      [0, 10],
      [0, 0],
      [10, 0],
      [10, 5],
    ];
    expect(findSelfContacts(closing).map((c) => c.kind)).toContain('overlap');
    expect(
      isSimple([
        [0, 0],
        [10, 0],
        [5, 0],
      ]),
    ).toBe(false);
    expect(
      isSimple([
        [0, 0],
        [10, 0],
      ]),
    ).toBe(false);
  });

  it('counts sides that come nearer than asked as touching, so that a turned pinch is a pinch still', () => {
    const pinch: Ring = [
      [0, 0],
      [8000, 0],
      [8000, 3000],
      [4000, 1000],
      [0, 3000],
      [0, 5000],
      [4000, 1000],
      [8000, 5000],
      [8000, 9000],
      [-2000, 9000],
      [-2000, 0],
    ];
    const spike: Ring = [
      [0, 0],
      [5000, 0],
      [5000, 2000],
      [9000, 3500],
      [5000, 2000],
      [5000, 4000],
      [0, 4000],
    ];
    for (const turn of [0, 0.1, 0.7, 1, 2, 3, 4, 5, 6]) {
      expect(findSelfContacts(rotated(pinch, turn), 0.001).length).toBeGreaterThan(0);
      expect(findSelfContacts(rotated(spike, turn), 0.001).length).toBeGreaterThan(0);
    }
    const narrow: Ring = [
      [0, 0],
      [10, 0],
      [10, 10],
      [5, 0.0005],
      [0, 10],
    ];
    expect(findSelfContacts(narrow, 0.0004)).toEqual([]);
    expect(findSelfContacts(narrow, 0.0006)).toHaveLength(1);
  });

  it('agrees with every pair of sides, one by one, and with JTS, on rings that mostly cross', () => {
    const grid = fc.integer({ min: 0, max: 12 });
    const rings = fc
      .uniqueArray(fc.tuple(grid, grid), { minLength: 3, maxLength: 9, selector: (p) => p.join() })
      .map((ring): Ring => ring);
    fc.assert(
      fc.property(rings, fc.constantFrom(1, 7), (ring, scale) => {
        const big = ring.map(([x, y]): Point => [x * scale, y * scale]);
        const meet = pairsThatMeet(big);
        const found = findSelfContacts(big);
        expect(found.length > 0).toBe(meet.size > 0);
        for (const { sides } of found) expect(meet).toContain(`${sides[0]} ${sides[1]}`);
        expect(isSimple(big)).toBe(jts.isValid(jts.polygon(big)));
      }),
      { seed: SEED, numRuns: 1500 },
    );
  });

  it('agrees with JTS and with every pair on longer rings in general position', () => {
    const random = randomFrom(SEED);
    let simple = 0;
    for (let run = 0; run < 40; run++) {
      const ring = Array.from({ length: 60 }, (_, i): Point => {
        const t = (2 * Math.PI * i) / 60;
        // Rough enough that some of these rings cross themselves.
        const r = 3000 + 600 * random();
        const wobble = 1.4 * random();
        return [r * Math.cos(t + wobble * 0.16), r * Math.sin(t + wobble * 0.16)];
      });
      const meet = pairsThatMeet(ring);
      const found = findSelfContacts(ring, 0, Number.POSITIVE_INFINITY);
      expect(new Set(found.map((c) => `${c.sides[0]} ${c.sides[1]}`))).toEqual(meet);
      expect(isSimple(ring)).toBe(jts.isValid(jts.polygon(ring)));
      if (isSimple(ring)) simple++;
    }
    expect(simple).toBeGreaterThan(5);
    expect(simple).toBeLessThan(35);
  });

  it('takes a comb of 10,000 corners, at any angle, and stops at the limit on a tangle', () => {
    const comb: Point[] = [[0, 0]];
    for (let i = 0; i < 2500; i++) {
      comb.push([4 * i, 10_000], [4 * i + 1, 10_000], [4 * i + 1, 10], [4 * i + 4, 10]);
    }
    comb.push([10_000, 0]);
    for (const turn of [0, 0.4, Math.PI / 4]) expect(findSelfContacts(rotated(comb, turn))).toEqual([]);
    const n = 9999;
    const tangle = Array.from({ length: n }, (_, i): Point => {
      const t = (2 * Math.PI * i * ((n - 1) / 2)) / n;
      return [5000 * Math.cos(t), 5000 * Math.sin(t)];
    });
    expect(findSelfContacts(tangle, 0, 20)).toHaveLength(20);
  });
});
