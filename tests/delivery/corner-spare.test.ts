import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornerCentre, cornerPoses } from '../../src/delivery/corner-poses.js';
import { cornerSpare, cornerSpareAt } from '../../src/delivery/corner-spare.js';
import { cornerSetting, nodeAt, stretchAt } from '../../src/delivery/corner-spare-node.js';
import { clearanceAt, floods, slowSpare } from './corner-slow.js';
import { mm } from './hold-samples.js';

const SEED = 20260802;
const DEGREE = Math.PI / 180;

const corners = fc
  .tuple(mm(200, 1800), mm(200, 1800), mm(5, 175))
  .map(([width, widthAfter, degrees]) => ({ width, widthAfter, angle: degrees * DEGREE }));

const halves = mm(5, 1200);
const rectangles = fc
  .tuple(halves, halves)
  .map(([halfLength, halfWidth]) => ({ halfLength, halfWidth, radius: 0 }));
const stadiums = fc
  .tuple(halves, mm(5, 300))
  .map(([halfLength, radius]) => ({ halfLength, halfWidth: 0, radius }));
const rounded = fc
  .tuple(halves, mm(5, 600), mm(5, 300))
  .map(([halfLength, halfWidth, radius]) => ({ halfLength, halfWidth, radius }));
const shapes = fc.oneof(rectangles, stadiums, rounded);

/** The bracket's promise: 2e-6 of all sizes. */
const close = 0.02;

describe('cornerSpare', () => {
  it('agrees with trying every heading with plain polygons', () => {
    fc.assert(
      fc.property(corners, shapes, (corner, shape) => {
        const count = 360;
        const slow = slowSpare(corner, shape, count);
        const { atLeast, atMost } = cornerSpare(corner, shape);
        // Between two headings no point of the shape moves further than this, and a corner of the plane magnifies it.
        const reach = Math.hypot(shape.halfLength, shape.halfWidth);
        const miss = ((Math.PI / count) * 2 * reach) / Math.min(1, 2 * Math.sin(corner.angle / 2)) + close;
        expect(slow).toBeLessThanOrEqual(atMost + miss);
        expect(slow).toBeGreaterThanOrEqual(atLeast - miss);
      }),
      // A slow method: no shrinking.
      { seed: SEED, numRuns: 30, endOnFailure: true },
    );
  });

  it.each([
    // A dozen corners whose answer is neither plain: right, acute, obtuse; long, square; just over and just under.
    { width: 900, widthAfter: 900, degrees: 90, length: 1500, across: 250 },
    { width: 900, widthAfter: 900, degrees: 90, length: 2000, across: 500 },
    { width: 700, widthAfter: 1200, degrees: 60, length: 1500, across: 200 },
    { width: 700, widthAfter: 1200, degrees: 60, length: 2400, across: 600 },
    { width: 900, widthAfter: 700, degrees: 40, length: 1300, across: 200 },
    { width: 800, widthAfter: 800, degrees: 130, length: 2200, across: 200 },
    { width: 800, widthAfter: 800, degrees: 130, length: 2600, across: 750 },
    { width: 1000, widthAfter: 1000, degrees: 90, length: 840, across: 840 },
  ])('agrees with a flood of all poses: $length x $across, $degrees degrees', (given) => {
    const step = 40;
    const corner = { width: given.width, widthAfter: given.widthAfter, angle: given.degrees * DEGREE };
    const shape = { halfLength: given.length / 2, halfWidth: given.across / 2, radius: 0 };
    const { atLeast } = cornerSpare(corner, shape);
    // Nearer to nought the grid is too coarse to tell.
    expect(Math.abs(atLeast)).toBeGreaterThan(2 * step);
    expect(floods(corner, shape, step)).toBe(atLeast > 0);
  });

  it('is the same for the corridors in the other order, and for the shape turned by a quarter', () => {
    fc.assert(
      fc.property(corners, shapes, (corner, shape) => {
        const { atLeast, atMost } = cornerSpare(corner, shape);
        const back = cornerSpare({ ...corner, width: corner.widthAfter, widthAfter: corner.width }, shape);
        const turned = cornerSpare(corner, {
          ...shape,
          halfLength: shape.halfWidth,
          halfWidth: shape.halfLength,
        });
        for (const other of [back, turned]) {
          expect(other.atLeast).toBeLessThanOrEqual(atMost + 1e-6);
          expect(other.atMost).toBeGreaterThanOrEqual(atLeast - 1e-6);
        }
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('scales with all measures', () => {
    fc.assert(
      fc.property(corners, shapes, mm(0.001, 50), (corner, shape, scale) => {
        const { atLeast, atMost } = cornerSpare(corner, shape);
        const grown = cornerSpare(
          { ...corner, width: scale * corner.width, widthAfter: scale * corner.widthAfter },
          {
            halfLength: scale * shape.halfLength,
            halfWidth: scale * shape.halfWidth,
            radius: scale * shape.radius,
          },
        );
        expect(grown.atLeast / scale).toBeLessThanOrEqual(atMost + 1e-6);
        expect(grown.atMost / scale).toBeGreaterThanOrEqual(atLeast - 1e-6);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('brackets closely, and what it narrows by is what passes', () => {
    fc.assert(
      fc.property(corners, shapes, (corner, shape) => {
        const { atLeast, atMost } = cornerSpare(corner, shape);
        expect(atMost).toBeGreaterThanOrEqual(atLeast);
        expect(atMost - atLeast).toBeLessThan(close);
        const narrowed = (delta: number) =>
          cornerSpare(
            { ...corner, width: corner.width - delta, widthAfter: corner.widthAfter - delta },
            shape,
          );
        expect(narrowed(atLeast - 0.1).atLeast).toBeGreaterThan(0);
        expect(narrowed(atMost + 0.1).atMost).toBeLessThan(0);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('falls as a corridor narrows or the shape grows', () => {
    fc.assert(
      fc.property(corners, shapes, fc.integer({ min: 0, max: 4 }), mm(0, 300), (corner, shape, which, by) => {
        const before = cornerSpare(corner, shape);
        const after = cornerSpare(
          {
            ...corner,
            width: corner.width - (which === 0 ? by : 0),
            widthAfter: corner.widthAfter - (which === 1 ? by : 0),
          },
          {
            halfLength: shape.halfLength + (which === 2 ? by : 0),
            halfWidth: shape.halfWidth + (which === 3 ? by : 0),
            radius: shape.radius + (which === 4 ? by : 0),
          },
        );
        expect(after.atLeast).toBeLessThanOrEqual(before.atMost + 1e-6);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('asks no more of a corridor that is wide enough to turn in', () => {
    const shape = { halfLength: 1000, halfWidth: 200, radius: 0 };
    const wide = cornerSpare({ width: 1e6, widthAfter: 900, angle: 70 * DEGREE }, shape);
    const endless = cornerSpare(
      { width: Number.POSITIVE_INFINITY, widthAfter: 900, angle: 70 * DEGREE },
      shape,
    );
    expect(wide).toMatchObject({ atLeast: 500, atMost: 500 });
    expect(endless).toEqual(wide);
  });

  it('takes widths of nothing and less', () => {
    const shape = { halfLength: 1000, halfWidth: 200, radius: 0 };
    const { atLeast, atMost } = cornerSpare({ width: -100, widthAfter: 0, angle: 70 * DEGREE }, shape);
    expect(atMost).toBeLessThan(0);
    expect(atMost - atLeast).toBeLessThan(close);
  });

  it('passes a square that only slides and just touches', () => {
    // Unit square in unit corridors: standards.md 8.3, the trap of pure translation.
    const spare = cornerSpare(
      { width: 1000, widthAfter: 1000, angle: Math.PI / 2 },
      { halfLength: 500, halfWidth: 500, radius: 0 },
    );
    expect(spare).toMatchObject({ atLeast: 0, atMost: 0 });
    expect(spare.from).toBe(spare.to);
  });

  describe('with only some headings allowed', () => {
    it('has the spare of the free corner where all are, and less where fewer are', () => {
      fc.assert(
        fc.property(corners, shapes, mm(-4, 4), mm(0, 3.1), (corner, shape, from, turn) => {
          const free = cornerSpare(corner, shape);
          expect(cornerSpare(corner, shape, { headings: [[from, from + Math.PI]] })).toEqual(free);
          const held = cornerSpare(corner, shape, { headings: [[from, from + turn]] });
          expect(held.atLeast).toBeLessThanOrEqual(free.atMost + 1e-6);
          expect(held.atLeast).toBeLessThanOrEqual(held.atMost);
          for (const heading of [held.from, held.to, held.heading]) {
            expect(heading).toBeGreaterThanOrEqual(from - 1e-9);
            expect(heading).toBeLessThanOrEqual(from + turn + 1e-9);
          }
        }),
        { seed: SEED, numRuns: 300 },
      );
    });

    it('is what one heading leaves where it may not turn at all', () => {
      fc.assert(
        fc.property(corners, shapes, mm(0, 3), (corner, shape, heading) => {
          const { atLeast, atMost } = cornerSpare(corner, shape, { headings: [[heading, heading]] });
          const first = corner.width - 2 * cornerCentre(corner, shape, heading, 0).y;
          const c0 = cornerCentre(corner, shape, heading, 0);
          const second =
            corner.widthAfter - 2 * (c0.x * Math.sin(corner.angle) - c0.y * Math.cos(corner.angle));
          expect(atLeast).toBeCloseTo(Math.min(first, second), 6);
          expect(atMost).toBeCloseTo(atLeast, 9);
        }),
        { seed: SEED, numRuns: 300 },
      );
    });

    it('knows nothing where no heading is allowed', () => {
      const spare = cornerSpare(
        { width: 1000, widthAfter: 1000, angle: 1 },
        { halfLength: 500, halfWidth: 5, radius: 0 },
        { headings: [] },
      );
      expect(spare.atLeast).toBe(Number.NEGATIVE_INFINITY);
    });
  });
});

describe('cornerSpareAt', () => {
  it('is the width left over at a heading: narrowed by it the shape touches, by polygons', () => {
    fc.assert(
      fc.property(corners, shapes, mm(0, Math.PI), (corner, shape, heading) => {
        const spare = cornerSpareAt(corner, shape, heading);
        const { x, y } = cornerCentre(corner, shape, heading, 0);
        const clear = (delta: number): number =>
          clearanceAt(
            { ...corner, width: corner.width - delta, widthAfter: corner.widthAfter - delta },
            shape,
            x,
            y,
            heading,
          );
        expect(clear(spare - 0.01)).toBeGreaterThanOrEqual(-1e-6);
        expect(clear(spare + 0.01)).toBeLessThan(0);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('nodeAt', () => {
  it('tells the slopes of its figures, by small steps', () => {
    let sides = 0;
    fc.assert(
      fc.property(corners, shapes, mm(0.01, 3.13), ({ width, widthAfter, angle }, shape, heading) => {
        const setting = cornerSetting(width, widthAfter, angle, shape, 0.01);
        const stretch = stretchAt(setting, heading);
        const step = 1e-5;
        // The figures are smooth on a stretch, so they may be told a little beyond it as well.
        const before = nodeAt(setting, stretch, heading - step);
        const at = nodeAt(setting, stretch, heading);
        const after = nodeAt(setting, stretch, heading + step);
        const scale = 10 * (shape.halfLength + shape.halfWidth + width + widthAfter);
        const near = (slope: number, rise: number, run: number): void => {
          expect(Math.abs(slope - rise / run) / scale / Math.max(1, 1 / Math.sin(angle))).toBeLessThan(1e-5);
        };
        near(at.d1, after.v1 - before.v1, 2 * step);
        near(at.d2, after.v2 - before.v2, 2 * step);
        if (stretch.sideA !== null) near(at.dA, after.vA - before.vA, after.uA - before.uA);
        if (stretch.sideB !== null) near(at.dB, after.vB - before.vB, after.uB - before.uB);
        sides += (stretch.sideA?.stands === 0 ? 0 : 1) + (stretch.sideB === null ? 0 : 1);
      }),
      { seed: SEED, numRuns: 500 },
    );
    expect(sides).toBeGreaterThan(50);
  });
});

describe('cornerPoses', () => {
  it('touches nothing on the way, by polygons, and starts and ends out of the corner', () => {
    let moved = 0;
    fc.assert(
      fc.property(corners, shapes, mm(0, 400), (given, shape, extra) => {
        // Widened until it passes with `extra` to spare, so that every run has a motion.
        const { atLeast } = cornerSpare(given, shape);
        const wider = Math.max(0, extra - atLeast);
        const corner = { ...given, width: given.width + wider, widthAfter: given.widthAfter + wider };
        const spare = cornerSpare(corner, shape);
        if (spare.atLeast < 0) return;
        const poses = cornerPoses(corner, shape, spare);
        moved++;
        const least = spare.atLeast > 0.05 ? 0.3 * spare.atLeast : -0.003;
        poses.forEach((pose, i) => {
          const next = poses[i + 1] ?? pose;
          for (const t of [0, 0.2, 0.5, 0.8]) {
            const mix = (a: number, b: number): number => a + t * (b - a);
            expect(
              clearanceAt(
                corner,
                shape,
                mix(pose.x, next.x),
                mix(pose.y, next.y),
                mix(pose.heading, next.heading),
              ),
            ).toBeGreaterThanOrEqual(least - 1e-6);
          }
        });
        const reach = Math.hypot(shape.halfLength, shape.halfWidth) + shape.radius;
        const first = poses[0];
        const last = poses[poses.length - 1];
        if (first === undefined || last === undefined) throw new Error('a motion has poses');
        const { angle, width, widthAfter } = corner;
        const innerX = (widthAfter + width * Math.cos(angle)) / Math.sin(angle);
        const inner2 = innerX * Math.cos(angle) + width * Math.sin(angle);
        expect(first.x - reach).toBeGreaterThan(Math.max(0, innerX));
        expect(last.x * Math.cos(angle) + last.y * Math.sin(angle) - reach).toBeGreaterThan(
          Math.max(0, inner2),
        );
        expect([first.heading, last.heading]).toEqual([spare.from, spare.to]);
      }),
      { seed: SEED, numRuns: 80 },
    );
    expect(moved).toBeGreaterThan(70);
  });
});
