import type { WeightedRows } from '../geometry/least-squares.js';
import type { CheckedReading } from './tape-readings.js';
import type { TapedReading } from './tape-report.js';

/**
 * What a reading says of the corners `points`, as a function of their coordinates:
 * - `distance`: between p and q, mm;
 * - `angle`: anticlockwise turn from the direction p -> q to r -> s, radians;
 * - `line`: how far r lies to the left of the line p -> q, mm;
 * - `difference`: distance p to q less distance r to s, mm.
 */
export type ObservationForm = 'distance' | 'angle' | 'line' | 'difference';

/** One reading or assumption that the adjustment weighs. */
export interface Observation {
  readonly name: string;
  readonly kind: TapedReading['kind'];
  readonly by: TapedReading['by'];
  readonly form: ObservationForm;
  readonly points: readonly number[];
  /** mm or radians, as is the deviation. */
  readonly read: number;
  readonly deviation: number;
  /** The distance that was read; null for assumptions and for corners by three distances. */
  readonly source: CheckedReading | null;
}

/** Most coordinates that one observation depends on: two for each of four points. */
export const OBSERVATION_WIDTH = 8;

/** Every form as derivatives by the coordinates of its points, written into `slopes` from `at` on; returns the computed value. */
export function computeObservation(
  { form, points }: Pick<Observation, 'form' | 'points'>,
  xy: Float64Array,
  slopes: Float64Array,
  at: number,
): number {
  slopes.fill(0, at, at + OBSERVATION_WIDTH);
  const [p, q, r, s] = points;
  const dx = xy[2 * q] - xy[2 * p];
  const dy = xy[2 * q + 1] - xy[2 * p + 1];
  const d = Math.hypot(dx, dy);
  if (form === 'distance') {
    put(slopes, at, 0, 1, dx / d, dy / d);
    return d;
  }
  if (form === 'line') {
    const ex = xy[2 * r] - xy[2 * p];
    const ey = xy[2 * r + 1] - xy[2 * p + 1];
    const left = (dx * ey - dy * ex) / d;
    // With the foot of r at the share t of p -> q, the line there moves by 1 - t of p and t of q.
    const t = (dx * ex + dy * ey) / (d * d);
    const [nx, ny] = [-dy / d, dx / d];
    slopes[at] = (t - 1) * nx;
    slopes[at + 1] = (t - 1) * ny;
    slopes[at + 2] = -t * nx;
    slopes[at + 3] = -t * ny;
    slopes[at + 4] = nx;
    slopes[at + 5] = ny;
    return left;
  }
  const ex = xy[2 * s] - xy[2 * r];
  const ey = xy[2 * s + 1] - xy[2 * r + 1];
  const e = Math.hypot(ex, ey);
  if (form === 'difference') {
    put(slopes, at, 0, 1, dx / d, dy / d);
    put(slopes, at, 2, 3, -ex / e, -ey / e);
    return d - e;
  }
  put(slopes, at, 0, 1, dy / (d * d), -dx / (d * d));
  put(slopes, at, 2, 3, -ey / (e * e), ex / (e * e));
  return Math.atan2(dx * ey - dy * ex, dx * ex + dy * ey);
}

/** Adds the derivative of something that grows with (x, y) of point `to` less that of point `from`. */
function put(slopes: Float64Array, at: number, from: number, to: number, x: number, y: number): void {
  slopes[at + 2 * from] -= x;
  slopes[at + 2 * from + 1] -= y;
  slopes[at + 2 * to] += x;
  slopes[at + 2 * to + 1] += y;
}

/** Read less computed; of angles the short way round. */
export function misfitOf({ form, read }: Observation, computed: number): number {
  const misfit = read - computed;
  return form === 'angle' ? misfit - 2 * Math.PI * Math.round(misfit / (2 * Math.PI)) : misfit;
}

/** The weighted rows of all observations at the coordinates `xy`; `columnOf` numbers the unknown of each coordinate, -1 where it is held. */
export function fillRows(
  observations: readonly Observation[],
  xy: Float64Array,
  columnOf: Int32Array,
  { columns, slopes, misfits }: WeightedRows,
): void {
  for (let i = 0; i < observations.length; i++) {
    const observation = observations[i];
    const at = i * OBSERVATION_WIDTH;
    const misfit = misfitOf(observation, computeObservation(observation, xy, slopes, at));
    misfits[i] = misfit / observation.deviation;
    for (let k = 0; k < OBSERVATION_WIDTH; k++) {
      const point = observation.points[k >> 1];
      columns[at + k] = k >> 1 < observation.points.length ? columnOf[2 * point + (k & 1)] : -1;
      slopes[at + k] /= observation.deviation;
    }
  }
}
