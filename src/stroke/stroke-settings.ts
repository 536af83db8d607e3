import type { Length } from '../length/length.js';

/** How a stroke is played. Every field is a modelling choice with a default. */
export interface StrokeInput {
  /** s: full backswing; default 150 mm. */
  readonly backswing: Length;
  /** s': short backswing, for a ball in a tight place; default 45 mm. */
  readonly shortBackswing: Length;
  /** a: margin kept between the cue's axis and anything it must not touch; default 20 mm. */
  readonly margin: Length;
  /** b: highest the axis passes over the ball's centre, perpendicular to the axis; default 0.35 of the ball's radius. */
  readonly tipOffset: Length;
  /** theta_max: steepest elevation that still counts as an ordinary stroke, degrees; default 20. */
  readonly maxElevation: number;
}

/** Checked stroke settings: mm and radians. */
export interface StrokeSettings {
  readonly backswing: number;
  readonly shortBackswing: number;
  readonly margin: number;
  readonly tipOffset: number;
  readonly maxElevation: number;
}
