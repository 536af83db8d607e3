import fc from 'fast-check';
import type { Carried, Hold } from '../../src/delivery/carried.js';
import type { HoldName } from '../../src/delivery/delivery-input.js';

const WAYS: readonly HoldName[] = ['flat', 'on-edge', 'on-end'];

/** Boxes of up to 3 m with any set of ways to hold them. */
export const boxes: fc.Arbitrary<Carried> = fc
  .record({
    measures: fc.tuple(mm(20, 3000), mm(20, 1500), mm(20, 600)),
    held: fc.subarray([...WAYS], { minLength: 1 }),
    tilt: fc.oneof(fc.constantFrom(0, Math.PI / 4, Math.PI / 2), mm(0, Math.PI / 2)),
  })
  .map(({ measures, held, tilt }) => {
    const [l = 0, w = 0, h = 0] = [...measures].sort((a, b) => b - a);
    return { l, w, h, held, tilt };
  });

/** Even over the range: fc.double is even over the doubles, which are nearly all next to nought. */
export function mm(min: number, max: number): fc.Arbitrary<number> {
  const steps = 1 << 24;
  return fc.integer({ min: 0, max: steps }).map((k) => min + ((max - min) * k) / steps);
}

export function box(
  l: number,
  w: number,
  h: number,
  held: readonly HoldName[] = WAYS,
  tiltDegrees = 45,
): Carried {
  return { l, w, h, held, tilt: (tiltDegrees * Math.PI) / 180 };
}

/** Whether an upright that makes these cosines with l, w and h is within the tilt of an edge that is upright in a held way. */
export function isAllowed(
  { held, tilt }: Carried,
  cosines: readonly [l: number, w: number, h: number],
): boolean {
  const [l, w, h] = cosines;
  const cosine: Readonly<Record<HoldName, number>> = { flat: h, 'on-edge': w, 'on-end': l };
  return held.some((way) => Math.acos(Math.min(1, Math.abs(cosine[way]))) <= tilt + 1e-9);
}

const ORDERS = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
] as const;

/** Whether a hold is one in which the box may be held, read off the lengths of its edges; of equal edges either may be meant. */
export function isHeldAsAllowed(carried: Carried, { along, across, up, tilt }: Hold): boolean {
  const sizes = [carried.l, carried.w, carried.h];
  return ORDERS.some(([a, b, c]) => {
    if (sizes[a] !== along || sizes[b] !== across || sizes[c] !== up) return false;
    const cosines: [number, number, number] = [0, 0, 0];
    cosines[a] = Math.sin(tilt);
    cosines[c] = Math.cos(tilt);
    return isAllowed(carried, cosines);
  });
}
