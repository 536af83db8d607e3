import fc from 'fast-check';
import type { Point, Ring } from '../../src/geometry/types.js';
import { crookedRings, skylineRings, starRings } from '../helpers/rings.js';

/** Good ones, and now and then one that is not: one bad number spoils a whole question. */
export function mostly<T>(good: fc.Arbitrary<T>, bad: fc.Arbitrary<T>): fc.Arbitrary<T> {
  return fc.oneof({ weight: 50, arbitrary: good }, { weight: 1, arbitrary: bad });
}

/** Numbers of the size that rooms have, and now and then of one that they should not have. */
export const coordinate: fc.Arbitrary<number> = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -10_000, max: 10_000 }) },
  { weight: 3, arbitrary: fc.double({ min: -10_000, max: 10_000, noNaN: true }) },
  { weight: 1, arbitrary: fc.constantFrom(0, 1e-6, -1e-6, 1e-12, 1e9, -1e9, 2 ** -10, 1e7) },
);

export const point: fc.Arbitrary<Point> = fc.tuple(coordinate, coordinate);

/** An angle: square ones, nearly square ones, any. */
export const angle: fc.Arbitrary<number> = fc.oneof(
  fc.constantFrom(0, Math.PI / 2, Math.PI / 4, Math.PI, 1e-9, -1e-6, Math.PI / 2 + 1e-7),
  fc.double({ min: -7, max: 7, noNaN: true }),
);

function rectangle(length: number, width: number): Ring {
  return [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ];
}

const size = fc.oneof(
  fc.integer({ min: 900, max: 12_000 }),
  fc.double({ min: 900, max: 12_000, noNaN: true }),
);

/** Radii that jump between two: a spiky room. */
const spiky: fc.Arbitrary<Ring> = fc
  .tuple(fc.integer({ min: 3, max: 40 }), size, fc.double({ min: 0.02, max: 0.98, noNaN: true }))
  .map(([spikes, radius, share]) =>
    Array.from({ length: 2 * spikes }, (_, i): Point => {
      const r = i % 2 === 0 ? radius : radius * share;
      return [r * Math.cos((Math.PI * i) / spikes), r * Math.sin((Math.PI * i) / spikes)];
    }),
  );

/** A rectangle with a spike, out of the room or into it, as thin as it comes. */
const spiked: fc.Arbitrary<Ring> = fc
  .tuple(
    size,
    size,
    fc.integer({ min: -3000, max: 3000 }),
    fc.constantFrom(0, 1e-12, 1e-9, 1e-6, 1e-3, 1, 50),
  )
  .map(([length, width, out, thin]) => [
    [0, 0],
    [length / 2 - thin, 0],
    [length / 2, -out],
    [length / 2 + thin, 0],
    [length, 0],
    [length, width],
    [0, width],
  ]);

/** Two rooms that touch in a corner, in a wall, or by a slit: T-junctions and rings that touch themselves. */
const touching: fc.Arbitrary<Ring> = fc
  .tuple(size, size, fc.constantFrom(0, 1e-9, -1e-9, 1e-6, 1e-3, 1, 700))
  .map(([length, width, gap]) => [
    [0, 0],
    [length, 0],
    [length, width],
    [length / 2 + gap, width],
    [length / 2 + gap, gap],
    [length / 2, gap],
    [length / 2, width],
    [0, width],
  ]);

const sliver: fc.Arbitrary<Ring> = fc
  .tuple(size, fc.oneof(fc.constantFrom(1e-9, 1e-3, 1, 49, 51), fc.integer({ min: 50, max: 900 })))
  .map(([length, width]) => rectangle(length, width));

const scribble: fc.Arbitrary<Ring> = fc.array(point, { minLength: 0, maxLength: 12 });

/** Corners that add nothing, or almost: on a wall, or beside it by so little. */
function withExtraCorners(ring: Ring, extra: readonly (readonly [number, number, number])[]): Ring {
  const out: Point[] = [...ring];
  for (const [pick, share, off] of extra) {
    if (out.length < 2) break;
    const i = pick % out.length;
    const [ax, ay] = out[i];
    const [bx, by] = out[(i + 1) % out.length];
    const length = Math.hypot(bx - ax, by - ay) || 1;
    const x = ax + share * (bx - ax) - (off * (by - ay)) / length;
    const y = ay + share * (by - ay) + (off * (bx - ax)) / length;
    out.splice(i + 1, 0, [x, y]);
  }
  return out;
}

const extraCorner = fc.tuple(
  fc.nat(100),
  fc.oneof(fc.constantFrom(0, 1, 0.5), fc.double({ min: 0, max: 1, noNaN: true })),
  fc.constantFrom(0, 1e-12, -1e-12, 1e-9, -1e-9, 1e-6, -1e-6, 1e-3, 1, -1),
);

interface Move {
  readonly turn: number;
  readonly dx: number;
  readonly dy: number;
  readonly scale: number;
  readonly backwards: boolean;
  readonly closed: boolean;
}

const move: fc.Arbitrary<Move> = fc.record({
  turn: fc.oneof({ weight: 2, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: angle }),
  dx: fc.oneof(
    { weight: 4, arbitrary: fc.constant(0) },
    { weight: 1, arbitrary: fc.constantFrom(1e-6, 1e6 + 0.1, 1e9 + 1 / 3, -1e9) },
  ),
  dy: fc.oneof(
    { weight: 4, arbitrary: fc.constant(0) },
    { weight: 1, arbitrary: fc.constantFrom(-1e-6, 12345.678, 1e9) },
  ),
  scale: fc.oneof(
    { weight: 60, arbitrary: fc.constant(1) },
    { weight: 1, arbitrary: fc.constantFrom(1e-6, 1e-3, 0.5, 10, 1e5) },
  ),
  backwards: fc.boolean(),
  closed: fc.boolean(),
});

/** Moved about, which a room may be without changing the answer. */
export function moved(ring: Ring, { turn, dx, dy, scale, backwards, closed }: Move): Ring {
  const cos = turn === 0 ? 1 : Math.cos(turn);
  const sin = turn === 0 ? 0 : Math.sin(turn);
  const out = ring.map(
    ([x, y]): Point => [scale * (cos * x - sin * y) + dx, scale * (sin * x + cos * y) + dy],
  );
  if (backwards) out.reverse();
  return closed && out.length > 0 ? [...out, out[0]] : out;
}

/** Simple rings, anticlockwise but for rounding, at the origin. */
export const plainRing: fc.Arbitrary<Ring> = fc.oneof(
  { weight: 3, arbitrary: fc.tuple(size, size).map(([length, width]) => rectangle(length, width)) },
  { weight: 3, arbitrary: skylineRings() },
  { weight: 2, arbitrary: starRings() },
  { weight: 1, arbitrary: crookedRings(16) },
  { weight: 1, arbitrary: spiky },
);

/** Outlines of every shape, good and bad. */
export const outline: fc.Arbitrary<Ring> = fc
  .tuple(
    fc.oneof(
      { weight: 40, arbitrary: plainRing },
      { weight: 3, arbitrary: spiked },
      { weight: 2, arbitrary: touching },
      { weight: 2, arbitrary: sliver },
      { weight: 1, arbitrary: scribble },
    ),
    fc.oneof(
      { weight: 3, arbitrary: fc.constant([]) },
      { weight: 1, arbitrary: fc.array(extraCorner, { maxLength: 4 }) },
    ),
    move,
  )
  .map(([ring, extra, how]) => moved(withExtraCorners(ring, extra), how));

/** Rings as the parts of the library take them, and worse. */
export const anyRing: fc.Arbitrary<Ring> = fc.oneof(outline, scribble);
