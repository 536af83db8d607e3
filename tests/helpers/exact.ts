import type { Point } from '../../src/geometry/types.js';

/** A double as a whole number of 2^-1074, exactly. */
export function exactly(value: number): bigint {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  const bits = view.getBigUint64(0);
  const exponent = (bits >> 52n) & 0x7ffn;
  const fraction = bits & 0xfffffffffffffn;
  const size = exponent === 0n ? fraction : (fraction | 0x10000000000000n) << (exponent - 1n);
  return bits >> 63n === 1n ? -size : size;
}

/** Sign of the area of a, b, c in whole numbers of any size: slow, obvious and exact. */
export function exactOrientation(a: Point, b: Point, c: Point): -1 | 0 | 1 {
  const [ax, ay, bx, by, cx, cy] = [a[0], a[1], b[0], b[1], c[0], c[1]].map(exactly);
  const twice = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  return twice > 0n ? 1 : twice < 0n ? -1 : 0;
}

/** The next double towards plus infinity. */
export function nextUp(value: number): number {
  if (value === 0) return Number.MIN_VALUE;
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  view.setBigInt64(0, view.getBigInt64(0) + (value > 0 ? 1n : -1n));
  return view.getFloat64(0);
}
