/**
 * What a room and what is in it may measure before it is taken for a slip, mostly of the unit, and how much of it is read.
 * Least and most, inclusive; lengths in mm. Wide on purpose. Common practice, no source.
 */
export const ROOM_LIMITS = {
  /** Longer side of the box around the room. */
  extent: [1000, 200_000],
  /** Least mean width of a room (twice its area by its perimeter): no passage is as narrow. */
  meanWidth: 50,
  /** Longer side of the box around an obstacle. */
  footprint: [10, 200_000],
  /** Coordinates: 10,000 km, where doubles still tell 0.000002 mm. */
  coordinate: 1e10,
  ceiling: [1000, 20_000],
  /** Undersides (or 0) and tops of obstacles. */
  height: [5, 20_000],
  doorWidth: [300, 3000],
  tolerance: [0, 200],
  /** A door's ends may lie this far off their wall, or the tolerance if that is more. */
  doorOffWall: 50,
  /** The three points of a ceiling's face lie at least this far from one line in plan; nearer, their errors tilt the face. */
  ceilingPointsOffLine: 50,
  /** A sloping face may dip this far under the floor at a corner of the room: its three points are never exact. */
  ceilingUnderFloor: 100,
  /** Rise of a ceiling's face by its run: 80 degrees. Steeper is a wall. */
  ceilingSlope: 5.67,
  /** Corners: of the outline, and of all footprints together. */
  count: {
    corners: 10_000,
    footprintCorners: 1000,
    obstacles: 1000,
    doors: 100,
    ceilingFaces: 100,
    contacts: 20,
  },
} as const;
