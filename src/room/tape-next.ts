import type { Adjustment } from './tape-adjust.js';
import { angleBySides, deviationOfMean, usualDeviation } from './tape-deviation.js';
import { diagonalName, threeDistancesName } from './tape-names.js';
import type { Network } from './tape-network.js';
import { computeObservation, OBSERVATION_WIDTH, type Observation } from './tape-observations.js';
import type { SurveyMeans } from './tape-readings.js';

/** A reading that could be taken: how it depends on the corners, and its variance as a new, independent reading. */
export interface Candidate {
  readonly name: () => string;
  /** Coordinates and derivatives by them, mm or radians. */
  readonly columns: readonly number[];
  readonly slopes: readonly number[];
  readonly variance: number;
  /** Corners of a new diagonal, which must be in sight of one another; null for the others. */
  readonly sight: readonly [number, number] | null;
}

/** What has been read, to be read once more. The tape's own error stays; an estimate is measured instead. */
export function repeatCandidates(
  { observations }: Network,
  adjustment: Adjustment,
  means: SurveyMeans,
): Candidate[] {
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
    return [{ name: () => observation.name, columns, slopes, variance, sight: null }];
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
  return [...newDiagonals(network, xy, means), ...newCorners(network, xy, means)];
}

function newDiagonals({ names, observations }: Network, xy: Float64Array, means: SurveyMeans): Candidate[] {
  const n = names.length;
  const taken = new Uint8Array(n * n);
  for (const { form, points } of observations) {
    if (form !== 'distance') continue;
    taken[points[0] * n + points[1]] = 1;
    taken[points[1] * n + points[0]] = 1;
  }
  const out: Candidate[] = [];
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n; j++) {
      if ((i === 0 && j === n - 1) || taken[i * n + j] === 1) continue;
      const [dx, dy] = [xy[2 * j] - xy[2 * i], xy[2 * j + 1] - xy[2 * i + 1]];
      const d = Math.hypot(dx, dy);
      out.push({
        name: () => diagonalName(names[i], names[j]),
        columns: [2 * i, 2 * i + 1, 2 * j, 2 * j + 1],
        slopes: [-dx / d, -dy / d, dx / d, dy / d],
        variance: measuredDeviation(d, means) ** 2,
        sight: [i, j],
      });
    }
  }
  return out;
}

function newCorners(
  { names, main, observations }: Network,
  xy: Float64Array,
  means: SurveyMeans,
): Candidate[] {
  const measured = new Set(
    observations.filter(({ kind, by }) => kind === 'corner' && by !== 'assumed').map(({ name }) => name),
  );
  const slopes = new Float64Array(OBSERVATION_WIDTH);
  return main.flatMap((here, c): Candidate[] => {
    const name = threeDistancesName(names[here]);
    if (measured.has(name)) return [];
    const [before, after] = [main[(c + main.length - 1) % main.length], main[(c + 1) % main.length]];
    const points = [here, before, here, after];
    const angle = computeObservation({ form: 'angle', points }, xy, slopes, 0);
    const side = (to: number): { length: number; deviation: number } => {
      const wall = Math.hypot(xy[2 * to] - xy[2 * here], xy[2 * to + 1] - xy[2 * here + 1]);
      return measuredSide(Math.min(LONGEST_MARK, wall), means);
    };
    const [a, b] = [side(before), side(after)];
    // A flat or sharp corner is told badly: the triangle is kept from having no height at all.
    const cos = Math.max(-FLATTEST, Math.min(FLATTEST, Math.cos(angle)));
    const across = Math.sqrt(a.length ** 2 + b.length ** 2 - 2 * a.length * b.length * cos);
    return [
      {
        name: () => name,
        columns: points.flatMap((point) => [2 * point, 2 * point + 1]),
        slopes: Array.from(slopes),
        variance: angleBySides(a, b, measuredSide(across, means)).deviation ** 2,
        sight: null,
      },
    ];
  });
}

function measuredSide(length: number, means: SurveyMeans): { length: number; deviation: number } {
  return { length, deviation: measuredDeviation(length, means) };
}

/** Marks for a corner by three distances are set this far from it, mm, or at the wall's end: as far as one tape reaches at ease. */
const LONGEST_MARK = 2000;
/** Cosine of the flattest corner that is still told by three distances: 10 degrees. */
const FLATTEST = Math.cos(Math.PI / 18);
