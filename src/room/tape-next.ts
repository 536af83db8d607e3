import { pointInRing, segmentContact } from '../geometry/predicates.js';
import type { Point } from '../geometry/types.js';
import type { Adjustment } from './tape-adjust.js';
import type { WallEnd } from './tape-bands.js';
import { angleBySides, deviationOfMean, usualDeviation } from './tape-deviation.js';
import { againName, diagonalName, threeDistancesName } from './tape-names.js';
import { type Network, pairKey } from './tape-network.js';
import { computeObservation, OBSERVATION_WIDTH, type Observation } from './tape-observations.js';
import type { SurveyMeans } from './tape-readings.js';

/** A reading that could be taken: how it depends on the corners, and its variance as a new, independent reading. */
export interface Candidate {
  readonly name: string;
  /** Coordinates and derivatives by them, mm or radians. */
  readonly columns: readonly number[];
  readonly slopes: readonly number[];
  readonly variance: number;
  /** Corners of a new diagonal, which must be in sight of one another; null for the others. */
  readonly sight: readonly [number, number] | null;
}

/** What the bands become with one more reading: factor times the greater deviation of each wall's two ends. */
export interface Outlook {
  readonly candidate: Candidate;
  /** Half widths of all walls. */
  readonly bands: Float64Array;
  readonly greatest: number;
  /** Sum of the squares of the bands, which ranks readings that leave the same greatest band. */
  readonly squareSum: number;
}

/** What has been read, to be read once more. The tape's own error stays; an estimate is measured instead. */
export function repeatCandidates({ observations }: Network, adjustment: Adjustment, means: SurveyMeans) {
  const { rows } = adjustment;
  return observations.flatMap((observation, i): Candidate[] => {
    const variance = repeatVariance(observation, means);
    if (variance === null) return [];
    const columns: number[] = [];
    const slopes: number[] = [];
    for (let k = i * rows.width; k < (i + 1) * rows.width; k++) {
      if (rows.columns[k] < 0) continue;
      columns.push(rows.columns[k]);
      slopes.push(rows.slopes[k] * observation.deviation);
    }
    return [{ name: observation.name, columns, slopes, variance, sight: null }];
  });
}

/** Of the one more independent reading that brings the mean of n to the variance of the mean of n + 1. Null: nothing to gain. */
function repeatVariance({ by, deviation, source }: Observation, means: SurveyMeans): number | null {
  if (by === 'assumed') return null;
  if (source === null) return deviation ** 2;
  if (by === 'estimate') return measuredDeviation(source.length, means) ** 2;
  const { parts, count } = source;
  const more = deviationOfMean(parts, count + 1);
  const gain = more ** -2 - deviation ** -2;
  return gain > LEAST_GAIN * deviation ** -2 ? 1 / gain : null;
}

const LEAST_GAIN = 1e-9;

/** By the means of the survey, or by tape where that is the eye. */
function measuredDeviation(length: number, { by, tapeClass }: SurveyMeans): number {
  return deviationOfMean(usualDeviation(by === 'estimate' ? 'tape' : by, tapeClass, length), 1);
}

/** Diagonals that were not taken, in sight or not, and corners that were not measured by three distances. */
export function newCandidates(network: Network, { xy }: Adjustment, means: SurveyMeans): Candidate[] {
  const { names, main, observations } = network;
  const n = names.length;
  const taken = new Set<string>();
  const measured = new Set<string>();
  for (const { form, points, kind, by, name } of observations) {
    if (form === 'distance') taken.add(pairKey(points[0], points[1]));
    if (kind === 'corner' && by !== 'assumed') measured.add(name);
  }
  const slopes = new Float64Array(OBSERVATION_WIDTH);
  const out: Candidate[] = [];
  const add = (
    name: string,
    form: 'distance' | 'angle',
    points: readonly number[],
    variance: (value: number) => number,
    sight: Candidate['sight'],
  ): void => {
    const plain: Observation = {
      name,
      kind: 'distance',
      by: 'tape',
      form,
      points,
      read: 0,
      deviation: 1,
      source: null,
    };
    const value = computeObservation(plain, xy, slopes, 0);
    out.push({
      name,
      columns: points.flatMap((point) => [2 * point, 2 * point + 1]),
      slopes: Array.from(slopes.subarray(0, 2 * points.length)),
      variance: variance(value),
      sight,
    });
  };
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n; j++) {
      if ((i === 0 && j === n - 1) || taken.has(pairKey(i, j))) continue;
      add(diagonalName(names[i], names[j]), 'distance', [i, j], (d) => measuredDeviation(d, means) ** 2, [
        i,
        j,
      ]);
    }
  }
  main.forEach((here, c) => {
    const name = threeDistancesName(names[here]);
    if (measured.has(name)) return;
    const [before, after] = [main[(c + main.length - 1) % main.length], main[(c + 1) % main.length]];
    const reach = (to: number): number =>
      Math.min(LONGEST_MARK, Math.hypot(xy[2 * to] - xy[2 * here], xy[2 * to + 1] - xy[2 * here + 1]));
    const side = (length: number): { length: number; deviation: number } => ({
      length,
      deviation: measuredDeviation(length, means),
    });
    add(
      name,
      'angle',
      [here, before, here, after],
      (value) => {
        const [a, b] = [reach(before), reach(after)];
        // A flat or sharp corner is told badly: the triangle is kept from having no height at all.
        const cos = Math.max(-FLATTEST, Math.min(FLATTEST, Math.cos(value)));
        const across = Math.sqrt(a * a + b * b - 2 * a * b * cos);
        return angleBySides(side(a), side(b), side(across)).deviation ** 2;
      },
      null,
    );
  });
  return out;
}

/** Marks for a corner by three distances are set this far from it, mm, or at the wall's end: as far as one tape reaches at ease. */
const LONGEST_MARK = 2000;
/** Cosine of the flattest corner that is still told by three distances: 10 degrees. */
const FLATTEST = Math.cos(Math.PI / 18);

/**
 * The bands with each candidate added: one rank-one update of the covariance each, no new adjustment, since how corners depend
 * on readings does not depend on what will be read. The factor is the one of now.
 */
export function outlooks(
  candidates: readonly Candidate[],
  ends: readonly WallEnd[],
  covariance: Float64Array,
  size: number,
  factor: number,
): Outlook[] {
  const variances = Float64Array.from(ends, ({ corner, nx, ny }) => {
    const at = 2 * corner * (size + 1);
    return nx * nx * covariance[at] + 2 * nx * ny * covariance[at + 1] + ny * ny * covariance[at + size + 1];
  });
  const moved = new Float64Array(size);
  return candidates.map((candidate) => {
    const { columns, slopes, variance } = candidate;
    moved.fill(0);
    let own = variance;
    for (let p = 0; p < columns.length; p++) {
      const row = columns[p] * size;
      for (let k = 0; k < size; k++) moved[k] += slopes[p] * covariance[row + k];
    }
    for (let p = 0; p < columns.length; p++) own += slopes[p] * moved[columns[p]];
    const bands = new Float64Array(ends.length / 2);
    let greatest = 0;
    let squareSum = 0;
    for (let e = 0; e < ends.length; e++) {
      const { corner, nx, ny } = ends[e];
      const along = nx * moved[2 * corner] + ny * moved[2 * corner + 1];
      const left = Math.max(0, variances[e] - (along * along) / own);
      const wall = e >> 1;
      bands[wall] = Math.max(bands[wall], factor * Math.sqrt(left));
    }
    for (const band of bands) {
      greatest = Math.max(greatest, band);
      squareSum += band * band;
    }
    return { candidate, bands, greatest, squareSum };
  });
}

/** The readings that leave the least greatest band, best first; diagonals only where one corner sees the other. */
export function bestNext(
  repeats: readonly Outlook[],
  others: readonly Outlook[],
  xy: Float64Array,
  most: number,
  worthwhile: (outlook: Outlook) => boolean,
): { readonly name: string; readonly greatest: number }[] {
  const ring = Array.from({ length: xy.length / 2 }, (_, i): Point => [xy[2 * i], xy[2 * i + 1]]);
  const all = [
    ...repeats.map((outlook) => ({ outlook, name: againName(outlook.candidate.name) })),
    ...others.map((outlook) => ({ outlook, name: outlook.candidate.name })),
  ].sort((a, b) => a.outlook.greatest - b.outlook.greatest || a.outlook.squareSum - b.outlook.squareSum);
  const best: { name: string; greatest: number }[] = [];
  for (const { outlook, name } of all) {
    if (best.length === most) break;
    const { sight } = outlook.candidate;
    if (!worthwhile(outlook) || (sight !== null && !seesEachOther(ring, ...sight))) continue;
    best.push({ name, greatest: outlook.greatest });
  }
  return best;
}

/** Whether a tape runs straight from one corner to the other without touching a wall. */
function seesEachOther(ring: readonly Point[], i: number, j: number): boolean {
  const n = ring.length;
  const [a, b] = [ring[i], ring[j]];
  for (let k = 0; k < n; k++) {
    const next = k + 1 === n ? 0 : k + 1;
    if (k === i || k === j || next === i || next === j) continue;
    if (segmentContact(a, b, ring[k], ring[next]) !== 'apart') return false;
  }
  return pointInRing(ring, (a[0] + b[0]) / 2, (a[1] + b[1]) / 2) > 0;
}
