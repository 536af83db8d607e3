import { CholeskyDecomposition, Matrix } from 'ml-matrix';

/** A distance or a corner as plainly as it can be written; radians for corners. */
export type PeerReading =
  | {
      readonly kind: 'distance';
      readonly p: number;
      readonly q: number;
      readonly read: number;
      readonly deviation: number;
    }
  | {
      readonly kind: 'corner';
      readonly before: number;
      readonly here: number;
      readonly after: number;
      readonly read: number;
      readonly deviation: number;
    };

export interface PeerResult {
  /** x, y, x, y, ... */
  readonly xy: number[];
  /** Of the free coordinates, in order. */
  readonly covariance: Matrix;
  readonly free: readonly number[];
  readonly squareSum: number;
}

/**
 * The adjustment of a survey by dense matrices of ml-matrix: residuals and derivatives written for x and y one by one, each row over its
 * deviation, whole steps only. Shares no code with the library.
 */
export function adjustByMatrices(
  start: readonly number[],
  held: readonly number[],
  clockwise: boolean,
  readings: readonly PeerReading[],
): PeerResult {
  const xy = [...start];
  const free = xy.map((_, k) => k).filter((k) => !held.includes(k));
  for (let step = 0; step < 50; step++) {
    const a = Matrix.zeros(readings.length, xy.length);
    const misfit = Matrix.zeros(readings.length, 1);
    readings.forEach((reading, i) => {
      const gradient = new Array<number>(xy.length).fill(0);
      const computed =
        reading.kind === 'distance'
          ? distance(reading, xy, gradient)
          : corner(reading, xy, clockwise, gradient);
      let left = reading.read - computed;
      if (reading.kind === 'corner') left = Math.atan2(Math.sin(left), Math.cos(left));
      misfit.set(i, 0, left / reading.deviation);
      gradient.forEach((slope, k) => void a.set(i, k, slope / reading.deviation));
    });
    const jacobian = a.subMatrixColumn([...free]);
    const left = jacobian.transpose();
    const normal = left.mmul(jacobian);
    const cholesky = new CholeskyDecomposition(normal);
    const change = cholesky.solve(left.mmul(misfit));
    free.forEach((k, i) => {
      xy[k] += change.get(i, 0);
    });
    const largest = Math.max(...change.to1DArray().map(Math.abs));
    if (largest < 1e-7) {
      const covariance = cholesky.solve(Matrix.eye(free.length));
      const squareSum = misfit.transpose().mmul(misfit).get(0, 0);
      return { xy, covariance, free, squareSum };
    }
  }
  throw new Error('The peer does not converge.');
}

function distance(
  { p, q }: { readonly p: number; readonly q: number },
  xy: readonly number[],
  gradient: number[],
): number {
  const dx = xy[2 * q] - xy[2 * p];
  const dy = xy[2 * q + 1] - xy[2 * p + 1];
  const d = Math.sqrt(dx * dx + dy * dy);
  gradient[2 * p] = -dx / d;
  gradient[2 * p + 1] = -dy / d;
  gradient[2 * q] = dx / d;
  gradient[2 * q + 1] = dy / d;
  return d;
}

/** Floor between the two walls at `here`: the difference of two azimuths. */
function corner(
  { before, here, after }: { readonly before: number; readonly here: number; readonly after: number },
  xy: readonly number[],
  clockwise: boolean,
  gradient: number[],
): number {
  const sign = clockwise ? 1 : -1;
  let angle = 0;
  for (const [to, weight] of [
    [after, sign],
    [before, -sign],
  ]) {
    const dx = xy[2 * to] - xy[2 * here];
    const dy = xy[2 * to + 1] - xy[2 * here + 1];
    const square = dx * dx + dy * dy;
    angle += weight * Math.atan2(dy, dx);
    gradient[2 * to] += (-weight * dy) / square;
    gradient[2 * to + 1] += (weight * dx) / square;
    gradient[2 * here] += (weight * dy) / square;
    gradient[2 * here + 1] -= (weight * dx) / square;
  }
  return angle;
}
