import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossCorner } from '../../src/delivery/corner.js';
import { cornerSpare, cornerSpareAt } from '../../src/delivery/corner-spare.js';
import { carverFits, carverSpare } from '../../src/delivery/gate.js';
import { planLength } from '../../src/delivery/holds.js';

/**
 * Published theorems and worked examples of what gets round a corner or through a hole. Metres or plain numbers in the sources are
 * thousandfold here, so that 1e-3 is their sixth decimal.
 */
const DEGREE = Math.PI / 180;
const SEED = 20260806;

const corner = (a: number, b: number, degrees = 90) => ({
  width: 1000 * a,
  widthAfter: 1000 * b,
  angle: degrees * DEGREE,
});
const rectangle = (length: number, width: number) => ({
  halfLength: 500 * length,
  halfWidth: 500 * width,
  radius: 0,
});

/** The largest value that still passes, by bisection on the bracket; plain numbers. */
function largest(passes: (value: number) => boolean, high: number): number {
  let low = 0;
  let up = high;
  for (let k = 0; k < 50; k++) {
    const middle = (low + up) / 2;
    if (passes(middle)) low = middle;
    else up = middle;
  }
  return low;
}

const turns = (a: number, b: number, length: number, width: number, degrees = 90): boolean =>
  cornerSpare(corner(a, b, degrees), rectangle(length, width)).atLeast >= 0;

const mayTurn = (a: number, b: number, length: number, width: number, degrees = 90): boolean =>
  cornerSpare(corner(a, b, degrees), rectangle(length, width)).atMost >= 0;

/** The published figure, to its last printed decimal, lies between what surely passes and what is not surely blocked; and these are close. */
function expectWithin(least: number, most: number, published: number, decimals: number): void {
  const printed = 0.5 * 10 ** -decimals;
  expect(published).toBeGreaterThanOrEqual(least - printed);
  expect(published).toBeLessThanOrEqual(most + printed);
  expect(most - least).toBeLessThan(1e-5 * published);
}

describe('a rectangle in a rectangle: Carver, American Mathematical Monthly 64 (1957); Wetzel, Mathematics Magazine 73 (2000)', () => {
  it('does not put 9 x 4 into 8 x 6, though area, diagonal, perimeter and thickness would allow it (Wetzel)', () => {
    expect(carverFits(9, 4, 8, 6)).toBe(false);
    expect(9 * 4).toBeLessThan(8 * 6);
    expect(Math.hypot(9, 4)).toBeLessThan(Math.hypot(8, 6));
    expect(9 + 4).toBeLessThan(8 + 6);
  });

  it.each([
    // Least b for p x q in a x b, derived from the theorem.
    { p: 5, q: 1, a: 4, b: 4.457487 },
    { p: 13, q: 1, a: 12, b: 6.874325 },
    { p: 10, q: 1, a: 9, b: 6.165757 },
  ])('puts $p x $q into $a x b from b = $b on', ({ p, q, a, b }) => {
    expect(carverFits(p, q, a, b + 1e-6)).toBe(true);
    expect(carverFits(p, q, a, b - 1e-6)).toBe(false);
  });

  it.each([
    // Largest q with p in a x b, derived from the theorem; 4 sqrt 2 - 5 by hand.
    { p: 9, a: 8, b: 6, q: 1.060374 },
    { p: 8.5, a: 8, b: 6, q: 1.61519 },
    { p: 9.9, a: 8, b: 6, q: 0.1043 },
    { p: 10, a: 8, b: 7, q: 0.636979 },
    { p: 5, a: 4, b: 4, q: 4 * Math.SQRT2 - 5 },
  ])('lets q be $q beside p = $p in $a x $b', ({ p, a, b, q }) => {
    expect(largest((wide) => carverFits(p, wide, a, b), p)).toBeCloseTo(q, 5);
    expect(carverSpare(p, q, a, b)).toBeCloseTo(0, 5);
  });

  it('does not put 10 x 10 into 8 x 8, as the formula without its guard would (a reader of the same theorem)', () => {
    expect(carverFits(10, 10, 8, 8)).toBe(false);
    expect(carverSpare(10, 10, 8, 8)).toBeCloseTo(-2, 9);
  });

  it('agrees with the second form ((a+b)/(p+q))^2 + ((a-b)/(p-q))^2 >= 2 where p > a >= b >= q', () => {
    const side = fc.double({ min: 0.1, max: 20, noNaN: true });
    let told = 0;
    fc.assert(
      fc.property(side, side, side, side, (one, two, three, four) => {
        const [p, q] = [Math.max(one, two), Math.min(one, two)];
        const [a, b] = [Math.max(three, four), Math.min(three, four)];
        if (!(p > a && q <= b && q < p)) return;
        const form = ((a + b) / (p + q)) ** 2 + ((a - b) / (p - q)) ** 2 - 2;
        if (Math.abs(form) < 1e-9) return;
        told++;
        expect(carverFits(p, q, a, b)).toBe(form > 0);
      }),
      { seed: SEED, numRuns: 5000 },
    );
    expect(told).toBeGreaterThan(500);
  });

  it('is enough that q <= b and p + q <= the diagonal (Wetzel)', () => {
    const side = fc.double({ min: 0.1, max: 20, noNaN: true });
    fc.assert(
      fc.property(side, side, side, side, (p, q, a, b) => {
        if (Math.min(p, q) > Math.min(a, b) || p + q > Math.hypot(a, b)) return;
        expect(carverSpare(p, q, a, b)).toBeGreaterThanOrEqual(-1e-9);
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });
});

describe('a ladder round a corner: (a^(2/3) + b^(2/3))^(3/2)', () => {
  it.each([
    { a: 1, b: 1, length: 2.828427, source: 'MathWorld' },
    { a: 3, b: 4, length: 9.865663, source: 'published as 9.87' },
    { a: 5, b: 3, length: 11.1941, source: 'published problem, value derived' },
    { a: 8, b: 4, length: 16.647753, source: 'derived' },
    { a: 8, b: 27, length: 46.872167, source: 'derived, 13^(3/2)' },
    { a: 1, b: 8, length: 11.18034, source: 'derived, 5^(3/2)' },
    { a: 0.9, b: 1.2, length: 2.959699, source: 'derived' },
    { a: 1.2, b: 1.2, length: 3.394113, source: 'derived' },
  ])('$a, $b: $length ($source)', ({ a, b, length }) => {
    const least = largest((l) => turns(a, b, l, 0), 100);
    expectWithin(
      least,
      largest((l) => mayTurn(a, b, l, 0), 100),
      length,
      6,
    );
  });

  it('of length 3 does not get round unit corridors (Wilson, Davenport, England and Bradford)', () => {
    expect(cornerSpare(corner(1, 1), rectangle(3, 0)).atMost).toBeLessThan(0);
  });
});

describe('a rectangle of width w round a right corner: Moretti, College Mathematics Journal 33 (2002)', () => {
  /** L(t) = a / sin t + b / cos t - w / (sin t cos t): the ends on the outer walls, the side on the inner corner. */
  it('reaches 12.8927 at 31 degrees in the couch example: 3, 8, 1', () => {
    // At that turn against the first wall it touches: next to nothing is left over or wanting.
    const left = cornerSpareAt(corner(3, 8), rectangle(12.8927, 1), (180 - 31) * DEGREE);
    expect(Math.abs(left)).toBeLessThan(0.05);
    // A tenth of a millimetre in the printed length is what that is worth.
    expect(cornerSpareAt(corner(3, 8), rectangle(12.893, 1), (180 - 31) * DEGREE)).toBeLessThan(0);
    expect(cornerSpareAt(corner(3, 8), rectangle(12.8926, 1), (180 - 31) * DEGREE)).toBeGreaterThan(0);
  });

  it.each([
    { a: 3, b: 8, w: 1, length: 12.856318 },
    { a: 1, b: 1, w: 0.5, length: 1.828427 },
    { a: 1, b: 1, w: 0.25, length: 2.328427 },
    { a: 1, b: 1, w: Math.SQRT1_2, length: Math.SQRT2 },
    { a: 0.9, b: 0.9, w: 0.5, length: 1.545584 },
    { a: 0.9, b: 1.2, w: 0.6, length: 1.747413 },
    { a: 1.2, b: 1.2, w: 0.3, length: 2.794113 },
    { a: 0.9, b: 0.9, w: 0.15, length: 2.245584 },
  ])('$a, $b, width $w: longest $length', ({ a, b, w, length }) => {
    const least = largest((l) => turns(a, b, l, w), 30);
    expectWithin(
      least,
      largest((l) => mayTurn(a, b, l, w), 30),
      length,
      6,
    );
  });

  it('turns with w = a b / l where l = sqrt(a^2 + b^2), the largest area that turns (Bending)', () => {
    for (const [a, b] of [
      [1, 1],
      [1, 1.5],
      [1, 2],
    ] as const) {
      const length = Math.hypot(a, b);
      const { atLeast, atMost } = cornerSpare(corner(a, b), rectangle(length, (a * b) / length));
      expect(atLeast).toBeGreaterThan(-0.02);
      expect(atMost).toBeLessThan(0.02);
    }
  });

  it('slides where it need not turn: a unit square in unit corridors, and what is as long as a corridor is wide', () => {
    expect(turns(1, 1, 1, 1)).toBe(true);
    expect(turns(1, 1.7, 1.7, 1)).toBe(true);
    expect(turns(1, 1.7, 1.71, 1)).toBe(false);
    // The turning formula alone gives 0.828 for the width 1.
    expect(2 * (Math.SQRT2 - 1)).toBeLessThan(1);
  });
});

describe('corners at other angles: width by (Ix - p) sin t + a cos t, confirmed by subdivision in our notes', () => {
  it.each([
    { degrees: 110, width: 0.37065 },
    { degrees: 120, width: 0.46084 },
    { degrees: 135, width: 0.59666 },
  ])('2.6 long, corridors 1.0 and 1.1, $degrees degrees: $width wide', ({ degrees, width }) => {
    const least = largest((w) => turns(1, 1.1, 2.6, w, degrees), 2);
    expectWithin(
      least,
      largest((w) => mayTurn(1, 1.1, 2.6, w, degrees), 2),
      width,
      5,
    );
  });
});

describe('moving sofa constants as bounds', () => {
  /** Gerver (1992), optimal after Baek (preprint 2024). */
  const GERVER = 2.219531668871;
  const unit = fc.double({ min: 0.05, max: 3, noNaN: true });

  it('lets no rectangle of a larger area round a unit corner, and of those that turn none above 1', () => {
    let turned = 0;
    fc.assert(
      fc.property(unit, unit, (length, share) => {
        const width = largest((w) => turns(1, 1, length, w), 3);
        expect(length * width).toBeLessThan(GERVER);
        const narrower = Math.min(1, share) * width;
        const { from, to } = cornerSpare(corner(1, 1), rectangle(length, narrower));
        if (from === to || narrower === 0) return;
        turned++;
        expect(length * narrower).toBeLessThanOrEqual(1 + 1e-5);
      }),
      { seed: SEED, numRuns: 200 },
    );
    expect(turned).toBeGreaterThan(20);
  });

  it('blocks what is larger, whatever its proportions', () => {
    fc.assert(
      fc.property(unit, fc.double({ min: 1.001, max: 2, noNaN: true }), (length, more) => {
        const spare = cornerSpare(corner(1, 1), rectangle(length, (GERVER * more) / length));
        expect(spare.atMost).toBeLessThan(0);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

describe('a box of 4.3 x 0.2 x 0.07 in halls 1.5 wide and 2.5 high (a mathematics forum, question 51671)', () => {
  const hall = {
    kind: 'corner',
    name: 'hall',
    tolerance: 0,
    ...corner(1.5, 1.5),
    height: 2500,
    heightAfter: 2500,
  } as const;
  const crate = { l: 4300, w: 200, h: 70, tilt: Math.PI / 2 } as const;

  it('does not turn level on its edge: 2 (1.5 sqrt 2 - 0.07) = 4.103', () => {
    const level = crossCorner(hall, { ...crate, held: ['on-edge'], tilt: 0 });
    expect(level.atMost).toBeLessThan(0);
    const most = largest((l) => mayTurn(1.5, 1.5, l, 0.07), 10);
    expectWithin(
      largest((l) => turns(1.5, 1.5, l, 0.07), 10),
      most,
      4.103,
      3,
    );
  });

  it('turns with an end lifted by 32.84 degrees, 3.7212 in plan, which 1.365 wide halls would do for', () => {
    const tilt = 32.84 * DEGREE;
    expect(planLength({ along: 4300, across: 70, up: 200, tilt })).toBeCloseTo(3721.2, 0);
    // Lifted as far as the ceiling allows, it needs halls of 1.365.
    const { atLeast, atMost } = cornerSpare(corner(1.365, 1.365), rectangle(3.7212, 0.07));
    expect(atLeast).toBeGreaterThan(-1);
    expect(atMost).toBeLessThan(1);
    const lifted = crossCorner(hall, { ...crate, held: ['on-edge'] });
    expect(lifted.atLeast).toBeGreaterThan(0);
    expect(lifted.hold).toMatchObject({ across: 70 });
    expect(lifted.motion).not.toBeNull();
  });
});
