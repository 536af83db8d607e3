/** A closed walk along walls by their lengths and the corners between them. */
export interface Walk {
  /** Corners x, y, x, y, ... from (0, 0). */
  readonly xy: Float64Array;
  /** Where the last wall ends, less where the first began. */
  readonly gapX: number;
  readonly gapY: number;
}

/**
 * Walks the walls from the origin; corner i lies at the far end of wall i. The first wall runs along +y where the walk is
 * clockwise and along +x where it is not, so that the room lies at x >= 0 and y >= 0 for the most part, never mirrored.
 */
export function walkWalls(lengths: readonly number[], corners: readonly number[], clockwise: boolean): Walk {
  const xy = new Float64Array(2 * lengths.length);
  let heading = clockwise ? Math.PI / 2 : 0;
  let [x, y] = [0, 0];
  for (let i = 0; i < lengths.length; i++) {
    xy[2 * i] = x;
    xy[2 * i + 1] = y;
    x += lengths[i] * Math.cos(heading);
    y += lengths[i] * Math.sin(heading);
    const turn = Math.PI - corners[i];
    heading += clockwise ? -turn : turn;
  }
  return { xy, gapX: x, gapY: y };
}

/** Standard deviation of the gap along its worst direction, at most: every wall's own, and every corner's turn of what follows it. */
export function gapDeviation(
  { xy, gapX, gapY }: Walk,
  lengthDeviations: readonly number[],
  cornerDeviations: readonly number[],
): number {
  let variance = 0;
  const n = lengthDeviations.length;
  for (let i = 0; i < n; i++) {
    variance += lengthDeviations[i] ** 2;
    if (i + 1 === n) break;
    const lever = Math.hypot(gapX - xy[2 * i + 2], gapY - xy[2 * i + 3]);
    variance += (lever * cornerDeviations[i]) ** 2;
  }
  return Math.sqrt(variance);
}

/**
 * A closed start for the adjustment: the corners' misfit to (n - 2) half turns spread by their variances, then the gap by the
 * walls' lengths (the compass rule), all turned so that the first wall keeps its direction.
 */
export function closedStart(
  lengths: readonly number[],
  corners: readonly number[],
  cornerDeviations: readonly number[],
  clockwise: boolean,
): Float64Array {
  const n = lengths.length;
  const misfit = (n - 2) * Math.PI - corners.reduce((sum, angle) => sum + angle, 0);
  const whole = cornerDeviations.reduce((sum, deviation) => sum + deviation ** 2, 0);
  const spread = corners.map((angle, i) => angle + (misfit * cornerDeviations[i] ** 2) / whole);
  const { xy, gapX, gapY } = walkWalls(lengths, spread, clockwise);
  const perimeter = lengths.reduce((sum, length) => sum + length, 0);
  let walked = 0;
  for (let i = 0; i < n; i++) {
    xy[2 * i] -= (gapX * walked) / perimeter;
    xy[2 * i + 1] -= (gapY * walked) / perimeter;
    walked += lengths[i];
  }
  const back = (clockwise ? Math.PI / 2 : 0) - Math.atan2(xy[3], xy[2]);
  const [cos, sin] = [Math.cos(back), Math.sin(back)];
  for (let i = 0; i < n; i++) {
    const [x, y] = [xy[2 * i], xy[2 * i + 1]];
    xy[2 * i] = cos * x - sin * y;
    xy[2 * i + 1] = sin * x + cos * y;
  }
  // Held exactly.
  xy[clockwise ? 2 : 3] = 0;
  return xy;
}
