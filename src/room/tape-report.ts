import type { PointInput } from './room-input.js';
import type { ReadingMeans } from './tape-input.js';

/** A corner as adjusted, mm, with its standard deviations and the axes of its standard error ellipse. The datum: the first corner, and the direction of the first wall. */
export interface TapedCorner {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly deviationX: number;
  readonly deviationY: number;
  readonly ellipse: {
    readonly major: number;
    readonly minor: number /** Degrees of the major axis from +x. */;
    readonly turn: number;
  };
}

/** One reading after the adjustment. Lengths in mm, angles in degrees. */
export interface TapedReading {
  /** `wall A-B`, `diagonal A-C`, `corner B`, ... */
  readonly name: string;
  readonly kind: 'wall' | 'distance' | 'corner' | 'offset';
  readonly by: ReadingMeans | 'assumed';
  readonly read: number;
  readonly deviation: number;
  readonly adjusted: number;
  /** adjusted - read */
  readonly residual: number;
  /** 0: nothing checks it, a slip in it cannot be seen; 1: wholly checked. */
  readonly redundancy: number;
  /** residual / its standard deviation; null where nothing checks it. */
  readonly standardized: number | null;
}

/** A reading that is probably wrong: which, what it should have been, and how sure that is. */
export interface SuspectReading {
  readonly reading: string;
  readonly read: number;
  readonly expected: number;
  readonly standardized: number;
  /** Readings that the test cannot tell apart from it. */
  readonly orElse: readonly string[];
}

/** A reading worth taking next, and what it brings. */
export interface NextReading {
  /** `diagonal A-C`, `wall A-B again`, `corner B by three distances`. */
  readonly reading: string;
  /** Greatest half width of a wall's band now and after that reading, mm. */
  readonly now: number;
  readonly after: number;
}

/** One wall, with how far off it may be. */
export interface TapedWall {
  readonly name: string;
  /**
   * Half width of the band that holds the whole wall, square to it, mm: all walls of the room lie in their bands at once at the
   * stated confidence, when the true room is laid over the adjusted one as well as its corners can be (least squares). So it does
   * not depend on the datum.
   */
  readonly band: number;
  /** Readings that would narrow this band most if they were repeated, best first, with the band each would leave. */
  readonly repeat: readonly { readonly reading: string; readonly band: number }[];
}

/** The outline that the readings make, and how well they agree. Plain JSON. */
export interface TapedRoom {
  /** Corners in the order of the survey, mm. */
  readonly outline: readonly PointInput[];
  readonly corners: readonly TapedCorner[];
  readonly walls: readonly TapedWall[];
  readonly readings: readonly TapedReading[];
  /** Covariance of all coordinates (x, y of the first corner, of the second, ...), mm2, row by row. */
  readonly covariance: readonly (readonly number[])[];
  /** Readings less unknowns. */
  readonly degreesOfFreedom: number;
  /** sqrt of the weighted square sum of residuals by the degrees of freedom; null where there are none. About 1 where the deviations are right. */
  readonly unitDeviation: number | null;
  /** True: the readings contradict each other more than their deviations explain (global test at 99.9 %). */
  readonly contradictory: boolean;
  readonly suspect: SuspectReading | null;
  /** How far the walls alone, walked round with the given corners, miss their start, mm. */
  readonly closure: {
    readonly x: number;
    readonly y: number;
    readonly length: number;
    readonly perimeter: number;
  };
  readonly next: readonly NextReading[];
  /** Of the bands: 0.95. */
  readonly confidence: number;
  /** Ceiling, mm, and its deviation; null where no height was read. */
  readonly ceiling: { readonly height: number; readonly deviation: number } | null;
  readonly assumptions: readonly string[];
}
