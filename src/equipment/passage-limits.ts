/**
 * What a passage or a piece may measure before it is taken for a slip, mostly of the unit: least and most, inclusive. Lengths in mm,
 * angles in degrees, masses in kg. Wide on purpose. Common practice, no source.
 */
export const PASSAGE_LIMITS = {
  /** Clear widths and heights: no piece of a table and no carrier passes through less than the least. */
  width: [300, 10_000],
  height: [300, 20_000],
  /** Of a wall with its lining; 0 for a frame that stands free. */
  wallDepth: [0, 3000],
  leaf: [5, 150],
  /** Free floor square off a wall, or along a stair's foot or head. */
  floor: [100, 100_000],
  /** Free floor beside an opening; 0 where a wall runs on from its edge. */
  beside: [0, 100_000],
  sill: [0, 10_000],
  /** The formulas for corners want some room on both sides of a straight run and of a full turn. */
  turn: [5, 175],
  /** From a ramp to a loft ladder. */
  pitch: [2, 75],
  rise: [20, 400],
  going: [50, 1500],
  headroom: [500, 20_000],
  run: [100, 100_000],
  climb: [50, 3000],
  well: [0, 10_000],
  car: { width: [400, 10_000], depth: [400, 10_000], height: [1000, 10_000] },
  tolerance: [0, 200],
  handRoom: [0, 200],
  piece: {
    /** Any of the three measures, */
    side: [5, 12_000],
    /** and the longest of them: nothing smaller is worth the question. */
    longest: [200, 12_000],
    mass: [0.1, 5000],
    count: [1, 200],
    carriers: [1, 20],
    tilt: [0, 90],
  },
  maxBoxes: [1, 1e9],
  count: { passages: 100, pieces: 50 },
} as const;
