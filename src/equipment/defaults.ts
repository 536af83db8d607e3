/**
 * The one table of defaults. Lengths in mm, angles in degrees. Each is a modelling choice or common practice, no source,
 * unless a note names one; every one of them can be overridden through the API, and a report lists those that were used.
 */
export const DEFAULTS = {
  stroke: {
    /** s */
    backswing: 150,
    /** s' */
    shortBackswing: 45,
    /** a */
    margin: 20,
    /** b as a share of the ball's radius R; the miscue limit is about 0.5 R (from memory). */
    tipOffsetShare: 0.35,
    /** theta_max */
    maxElevation: 20,
  },
  cue: { tipRadius: 5, buttRadius: 15 },
  table: {
    /** Between the 743 to 787 mm of pool, the 750 to 850 mm of European sheets and the 851 to 876 mm rail top of snooker. */
    bedHeight: 790,
    /** Nose height as a share of the ball's diameter: WPA Recommended Equipment Specifications, s. 7 (63.5 %). */
    noseShare: 0.635,
    /** Rail top above the cloth. */
    railHeight: 42,
    /** WPA Recommended Equipment Specifications, s. 16. */
    ballDiameter: 57.15,
    /** The cushion rises from the nose to the rail's full height over this depth. */
    cushionDepth: 50,
    usualCue: 1448,
  },
  standing: {
    /** Radius of the disc of free floor that a player needs. */
    radius: 230,
    /** Its centre lies at most this far to either side of the cue's line, */
    sideways: 350,
    /** at least this share of the cue's length behind the ball's centre, */
    nearShare: 0.45,
    /** and at most the cue's length, or this far behind the outside of the rail. */
    behindRail: 460,
    /** Obstacles with their underside at or above this leave room to stand. */
    headHeight: 1900,
    /** Least ceiling height over a player (who bends down over the stroke). */
    ceiling: 1500,
  },
  room: { tolerance: 10 },
  survey: {
    /** Class of a tape that says nothing else: that of most good tapes. */
    tapeClass: 'II',
    /** Greatest error allowed, a + bL + c mm for L whole metres: Directive 2014/32/EU, Annex X (c: an end hook or the end face is used, as on a wall). */
    tapeClasses: {
      I: { a: 0.1, b: 0.1, c: 0.1 },
      II: { a: 0.3, b: 0.2, c: 0.2 },
      III: { a: 0.6, b: 0.4, c: 0.3 },
    },
    /** Standard deviation of one reading beside the tape's own error: sag, skew and plaster, which dominate. */
    tapeReading: 3,
    /** Of a laser: what is its own in every reading, and what changes with each. */
    laser: { own: 1, reading: 2 },
    /** Of a length by eye or paces: a share of it, at least so much. */
    estimate: { share: 0.03, least: 50 },
    /** Of a corner that is taken to be square, degrees: 35 mm at 4 m. */
    squareDeviation: 0.5,
    /** Of the parts of one wall from a straight line. */
    straightDeviation: 4,
    /** Of the depth of an alcove or chimney breast on one side against the other, and of the two splayed sides of a bay. */
    depthDeviation: 5,
    bayDeviation: 10,
  },
  search: { gap: 1, maxBoxes: 200_000, offSquareGain: 50, resolution: 5 },
  delivery: {
    /** Hands and packing, on every side of a piece. */
    handRoom: 25,
    /** How far off any measurement of the way may be. */
    tolerance: 10,
    /** Wall and lining: how deep an opening is. */
    wallDepth: 150,
    /** How far a piece may be tilted out of a level way of holding it, degrees; 45 takes every tilt between two of them. */
    tilt: 45,
    /** Of a corner, degrees. */
    turn: 90,
    /** One step, where a stair is given by its pitch: the most of a private stair (Approved Document K, table 1.1, second-hand). */
    stepRise: 220,
    /** Steps in the turn of a winder: three kites are usual. */
    winderSteps: 3,
    /** As many people carry a piece as keep each at or under this, kg, */
    carrierMass: 25,
    /** but never more than this: more do not find a hold. */
    mostCarriers: 6,
    maxBoxes: 60_000,
  },
  arrangement: {
    /** Width of a clear way: about what one person walking takes (Metric Handbook, from memory). */
    way: 600,
    /** Headroom of a use zone. */
    zoneHeight: 2000,
    /** A door's leaf takes the floor of its swing up to this height. */
    doorHeight: 2100,
    /** A piece that is to stand at a wall may be this far off it, for skirtings and pipes, where its pose is given. */
    wallGap: 100,
    /** Layouts of the whole room to weigh. */
    effort: 200,
    /** What a layout is worth: shares in 0..1 times these. With up to ten pieces, one more counts for more than any play; play counts for more than any sharing. */
    weights: { placed: 1000, play: 100, apart: 5 },
  },
} as const;
