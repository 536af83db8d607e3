/**
 * What a measurement may be before it is taken for a slip, mostly of the unit: least and most, inclusive. Lengths in mm.
 * Wide on purpose: toys and halls pass. No source, except where a note names one.
 */
export const LIMITS = {
  field: { length: [300, 10_000], width: [150, 5000] },
  /** Widest rail: more than half as wide again as the widest of pool (190.5 mm). */
  rail: 300,
  bedHeight: [300, 1500],
  noseHeight: [5, 120],
  railHeight: [5, 200],
  ballDiameter: [15, 200],
  /** kg */
  mass: [1, 5000],
  cue: { length: [300, 3000], tipDiameter: [2, 30], buttDiameter: [5, 80], count: 20 },
  stroke: {
    backswing: [0, 1000],
    margin: [0, 300],
    /** b as a share of R: beyond it the tip slips off the ball (the miscue limit, from memory). */
    tipOffsetShare: 0.5,
    /** degrees; more than this is no ordinary stroke */
    maxElevation: 60,
  },
} as const;
