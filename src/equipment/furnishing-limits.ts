/**
 * What a piece of furniture or a use zone may measure before it is taken for a slip, mostly of the unit: least and most, inclusive.
 * Lengths in mm, mass in kg. Wide on purpose. Common practice, no source.
 */
export const FURNISHING_LIMITS = {
  /** Either side of the bounding rectangle: a picture on the wall is thin; */
  side: [5, 20_000],
  /** but the longer one is not. */
  longest: [100, 20_000],
  height: [5, 5000],
  /** Of what does not stand on the floor. */
  from: [20, 10_000],
  /** A piece of a kind measures at least a fifth and at most five times what is usual. */
  ofUsual: 5,
  mass: [0.1, 5000],
  zone: { side: [10, 20_000], from: [20, 10_000], to: [50, 10_000] },
  way: [300, 3000],
  effort: [1, 100_000],
  count: { pieces: 12, zones: 10, corners: 200, turns: 72 },
} as const;
