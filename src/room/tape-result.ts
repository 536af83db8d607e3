import type { Point } from '../geometry/types.js';
import type { Adjustment } from './tape-adjust.js';
import { endCovariance, innerCovariance, simultaneousFactor, wallEnds } from './tape-bands.js';
import { wallName } from './tape-names.js';
import type { Network } from './tape-network.js';
import { newCandidates, repeatCandidates } from './tape-next.js';
import type { Observation } from './tape-observations.js';
import { bestNext, bestRepeats, Outlook } from './tape-outlook.js';
import type { CheckedReading } from './tape-readings.js';
import type {
  NextReading,
  SuspectReading,
  TapedCorner,
  TapedReading,
  TapedRoom,
  TapedWall,
} from './tape-report.js';
import { chiSquareTail } from './tape-statistics.js';
import type { CheckedSurvey } from './tape-survey.js';
import { findSuspect, standardizedResiduals } from './tape-suspect.js';

/** All walls lie in their bands at once with this confidence. */
export const BAND_CONFIDENCE = 0.95;
/** Sound readings contradict each other so much in one of a thousand surveys (global test). */
const CONTRADICTION_CHANCE = 0.001;
/** Most readings that are named for one wall, and to be taken next. */
const MOST_REPEATS = 3;
const MOST_NEXT = 5;

/** The adjusted survey as plain data. */
export function reportRoom(
  survey: CheckedSurvey,
  network: Network,
  adjustment: Adjustment,
  assumptions: readonly string[],
): TapedRoom {
  const { names, observations, closure } = network;
  const { xy, squareSum, degreesOfFreedom } = adjustment;
  const size = xy.length;
  const unitDeviation = degreesOfFreedom > 0 ? Math.sqrt(squareSum / degreesOfFreedom) : null;
  const contradictory =
    degreesOfFreedom > 0 && chiSquareTail(squareSum, degreesOfFreedom) < CONTRADICTION_CHANCE;
  const scale = contradictory && unitDeviation !== null ? unitDeviation : 1;
  const covariance = adjustment.covariance.map((value) => value * scale * scale);
  const { walls, next } = reportWalls(survey, network, adjustment, scale);
  return {
    outline: names.map((_, i) => [xy[2 * i], xy[2 * i + 1]]),
    corners: names.map((name, i) => reportCorner(name, i, xy, covariance)),
    walls,
    readings: reportReadings(observations, adjustment),
    covariance: Array.from({ length: size }, (_, i) =>
      Array.from(covariance.subarray(i * size, (i + 1) * size)),
    ),
    degreesOfFreedom,
    unitDeviation,
    contradictory,
    suspect: reportSuspect(observations, adjustment),
    closure,
    next,
    confidence: BAND_CONFIDENCE,
    ceiling: reportCeiling(survey.heights),
    assumptions: contradictory
      ? [
          ...assumptions,
          `The readings contradict each other ${scale.toFixed(1)} times as much as their deviations explain: all deviations and bands of the room were raised by that factor.`,
        ]
      : assumptions,
  };
}

function reportCorner(name: string, i: number, xy: Float64Array, covariance: Float64Array): TapedCorner {
  const at = 2 * i * (xy.length + 1);
  const [xx, xyBoth, yy] = [covariance[at], covariance[at + 1], covariance[at + xy.length + 1]];
  const middle = (xx + yy) / 2;
  const half = Math.hypot((xx - yy) / 2, xyBoth);
  return {
    name,
    x: xy[2 * i],
    y: xy[2 * i + 1],
    deviationX: Math.sqrt(Math.max(0, xx)),
    deviationY: Math.sqrt(Math.max(0, yy)),
    ellipse: {
      major: Math.sqrt(Math.max(0, middle + half)),
      minor: middle - half > ROUND * middle ? Math.sqrt(middle - half) : 0,
      turn: half > ROUND * middle ? upright((Math.atan2(2 * xyBoth, xx - yy) * 90) / Math.PI) : 0,
    },
  };
}

/** Of half the sum of the squared radii: a difference, or a lesser radius, that is none but for rounding. */
const ROUND = 1e-9;
/** Turns that differ by less (degrees) differ by rounding. */
const SAME_TURN = 1e-6;

/** A turn of an ellipse in (-90, 90]: upright has one sign, whatever the last bits say. */
function upright(turn: number): number {
  return Math.abs(turn) > 90 - SAME_TURN ? 90 : turn;
}

function reportReadings(observations: readonly Observation[], adjustment: Adjustment): TapedReading[] {
  const standardized = standardizedResiduals(adjustment);
  return observations.map((observation, i) => {
    const { name, kind, by, form, read, deviation } = observation;
    const unit = unitOf(form);
    // 0 less: no -0.
    const residual = 0 - adjustment.rows.misfits[i] * deviation;
    return {
      name,
      kind,
      by,
      read: read * unit,
      deviation: deviation * unit,
      adjusted: (read + residual) * unit,
      residual: residual * unit,
      redundancy: adjustment.redundancy[i],
      standardized: standardized[i],
    };
  });
}

/** Angles are written in degrees. */
function unitOf(form: Observation['form']): number {
  return form === 'angle' ? 180 / Math.PI : 1;
}

function reportSuspect(observations: readonly Observation[], adjustment: Adjustment): SuspectReading | null {
  const suspicion = findSuspect(adjustment);
  if (suspicion === null) return null;
  const { name, form, read, deviation } = observations[suspicion.index];
  const unit = unitOf(form);
  return {
    reading: name,
    read: read * unit,
    expected: (read + suspicion.correction * deviation) * unit,
    standardized: suspicion.standardized,
    orElse: suspicion.orElse.map((i) => observations[i].name),
  };
}

function reportWalls(
  { means }: CheckedSurvey,
  network: Network,
  adjustment: Adjustment,
  scale: number,
): { readonly walls: readonly TapedWall[]; readonly next: readonly NextReading[] } {
  const { names } = network;
  const { xy } = adjustment;
  const size = xy.length;
  const inner = innerCovariance(xy, adjustment.covariance);
  const ends = wallEnds(xy);
  const deviations = Float64Array.from(ends, (end) =>
    Math.sqrt(Math.max(0, endCovariance(end, end, inner, size))),
  );
  const factor = simultaneousFactor(ends, deviations, inner, size, BAND_CONFIDENCE) * scale;
  const outlook = new Outlook(ends, inner, size, factor);
  const repeats = repeatCandidates(network, adjustment, means);
  const ring = names.map((_, i): Point => [xy[2 * i], xy[2 * i + 1]]);
  return {
    walls: names.map((name, w) => ({
      name: wallName(name, names[(w + 1) % names.length]),
      band: outlook.bandNow(w),
      repeat: bestRepeats(repeats, outlook, w, MOST_REPEATS),
    })),
    next: bestNext(repeats, newCandidates(network, adjustment, means), outlook, ring, MOST_NEXT),
  };
}

/** The least height that was read: a table and a cue meet that one first. */
function reportCeiling(heights: readonly CheckedReading[]): TapedRoom['ceiling'] {
  if (heights.length === 0) return null;
  const least = heights.reduce((a, b) => (b.length < a.length ? b : a));
  return { height: least.length, deviation: least.deviation };
}
