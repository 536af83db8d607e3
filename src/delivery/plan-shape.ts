/**
 * What moves in plan (or in an upright plane): a rectangle grown by a disc, mm. A box held at one tilt is the rectangle with `radius` 0; the capsule
 * that stands for every way of holding a box is the segment (halfWidth 0) with half the thickness as `radius`.
 */
export interface PlanShape {
  readonly halfLength: number;
  readonly halfWidth: number;
  readonly radius: number;
}

/** A centre, mm, and a heading (radians) of the long axis from +x. The shape is symmetric under a half turn. */
export interface PlanPose {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/**
 * A further condition on a pose besides the walls, met where slack >= 0, mm. It changes by at most `perMm` a millimetre of shift and by at
 * most `perRadian` a radian of turn, so that its value at the middle of a box of poses bounds it over the box.
 */
export interface PoseSlack {
  readonly slack: (x: number, y: number, heading: number) => number;
  readonly perMm: number;
  readonly perRadian: number;
}
