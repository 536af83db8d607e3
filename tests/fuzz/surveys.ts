import fc from 'fast-check';
import type { Point } from '../../src/geometry/types.js';
import type { Reading, TapeSurvey } from '../../src/room/tape-input.js';
import { plainRing } from './shapes.js';

/** How far off a reading is: mostly a little, now and then a slip. */
const off = fc.oneof(
  { weight: 80, arbitrary: fc.double({ min: -4, max: 4, noNaN: true }) },
  { weight: 1, arbitrary: fc.constantFrom(0, 100, -1000, 1e-9, 5000) },
);

const reading = (mm: number, by: number): Reading => Math.max(mm + by, 1e-6);

/** Surveys of a ring: its walls and corners with their errors, some diagonals, heights and offsets. */
export const survey: fc.Arbitrary<TapeSurvey> = fc
  .record({
    ring: plainRing.filter((ring) => ring.length <= 30),
    errors: fc.array(off, { minLength: 40, maxLength: 40 }),
    known: fc.boolean(),
    diagonals: fc.array(fc.tuple(fc.nat(40), fc.nat(40), off), { maxLength: 4 }),
    heights: fc.array(fc.integer({ min: 900, max: 4000 }), { maxLength: 3 }),
    offset: fc.option(
      fc.tuple(fc.constantFrom('alcove', 'breast', 'bay'), fc.nat(30), fc.integer({ min: 0, max: 900 })),
      { nil: undefined, freq: 5 },
    ),
    by: fc.constantFrom('tape', 'laser', 'estimate'),
    walk: fc.constantFrom('clockwise', 'anticlockwise'),
  })
  .map(({ ring, errors, known, diagonals, heights, offset, by, walk }) => {
    const walked = walk === 'anticlockwise' ? ring : ring.toReversed();
    const n = walked.length;
    const name = (i: number): string => `P${i % n}`;
    const between = ([ax, ay]: Point, [bx, by_]: Point): number => Math.hypot(bx - ax, by_ - ay);
    return {
      walls: walked.map((corner, i) => {
        const next = walked[(i + 1) % n];
        const length = reading(between(corner, next), errors[i % errors.length]);
        const interior = floorAngle(corner, next, walked[(i + 2) % n], walk === 'anticlockwise');
        return known
          ? { from: name(i), length, corner: Math.round(interior * 10) / 10 }
          : { from: name(i), length, corner: interior > 180 ? ('external' as const) : ('internal' as const) };
      }),
      walk,
      by,
      diagonals: diagonals.map(([a, b, by_]) => ({
        from: name(a),
        to: name(b),
        length: reading(between(walked[a % n], walked[b % n]), by_),
      })),
      heights,
      offsets:
        offset === undefined
          ? []
          : [{ kind: offset[0], wall: name(offset[1]), start: 100, width: offset[2], depth: 200 }],
    };
  });

/** Degrees of floor at the corner b. */
function floorAngle(a: Point, b: Point, c: Point, anticlockwise: boolean): number {
  const before = Math.atan2(a[1] - b[1], a[0] - b[0]);
  const after = Math.atan2(c[1] - b[1], c[0] - b[0]);
  const left = ((anticlockwise ? before - after : after - before) * 180) / Math.PI;
  return (left + 720) % 360;
}
