/**
 * What a tape survey may hold before it is taken for a slip, least and most, inclusive. Lengths in mm, angles in degrees.
 * Wide on purpose. Common practice, no source.
 */
export const TAPE_LIMITS = {
  /** Walls, and what is measured along them. */
  length: [10, 200_000],
  deviation: [0.01, 20_000],
  /** Corners, by the floor between their walls. */
  corner: [5, 355],
  cornerDeviation: [0.001, 90],
  /** Corners by three distances: flatter or sharper ones are told badly by them. */
  threeDistances: [10, 170],
  /** What is left of a wall on either side of an offset, and between two of them. */
  besideOffset: 10,
  count: { walls: 120, distances: 1000, angles: 240, offsets: 40, heights: 100, repeats: 50 },
} as const;
