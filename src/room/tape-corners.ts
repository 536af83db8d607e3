import { DEFAULTS } from '../equipment/defaults.js';
import { listNames } from './names.js';
import { cornerName, threeDistancesName } from './tape-names.js';
import type { TapedReading } from './tape-report.js';
import type { CheckedSurvey } from './tape-survey.js';

/** One thing that is known of a corner's angle, radians of floor. */
export interface CornerReading {
  readonly name: string;
  readonly by: TapedReading['by'];
  readonly angle: number;
  readonly deviation: number;
}

/**
 * What is known of each corner, in the order of the walls that start there. A corner that was measured by three distances is not
 * taken to be square besides; one that was given in degrees, or with its deviation, keeps that as well.
 */
export function cornerReadings({ walls, angles }: CheckedSurvey): readonly (readonly CornerReading[])[] {
  return walls.map(({ from }, c) => {
    const { corner } = walls[(c + walls.length - 1) % walls.length];
    const measured = angles
      .filter((angle) => angle.corner === from)
      .map(({ angle, deviation, across }): CornerReading => {
        const reflex = corner.angle > Math.PI;
        return {
          name: threeDistancesName(from),
          by: across.by,
          angle: reflex ? 2 * Math.PI - angle : angle,
          deviation,
        };
      });
    if (corner.source === 'square' && measured.length > 0) return measured;
    const { angle, deviation } = corner;
    return [{ name: cornerName(from), by: 'assumed', angle, deviation }, ...measured];
  });
}

/** The weighted mean of what is known of a corner. */
export function bestCorner(readings: readonly CornerReading[]): {
  readonly angle: number;
  readonly deviation: number;
} {
  let weight = 0;
  let sum = 0;
  for (const { angle, deviation } of readings) {
    weight += deviation ** -2;
    sum += angle * deviation ** -2;
  }
  return { angle: sum / weight, deviation: weight ** -0.5 };
}

/** What was assumed of the corners, in sentences. */
export function cornerAssumptions({ walls, angles }: CheckedSurvey): string[] {
  const { squareDeviation } = DEFAULTS.survey;
  const measured = new Set(angles.map(({ corner }) => corner));
  const square: string[] = [];
  const unsure: string[] = [];
  walls.forEach(({ from }, c) => {
    const { corner } = walls[(c + walls.length - 1) % walls.length];
    if (corner.source === 'square' && !measured.has(from)) square.push(from);
    if (corner.source === 'given') unsure.push(from);
  });
  const sentences: string[] = [];
  if (square.length > 0) {
    sentences.push(
      `Nobody measured the angle of ${corners(square)}: taken to be square, with a standard deviation of ${squareDeviation} degrees (default).`,
    );
  }
  if (unsure.length > 0) {
    sentences.push(
      `The angle given for ${corners(unsure)} counts as a reading with its deviation (${squareDeviation} degrees where none was given).`,
    );
  }
  return sentences;
}

function corners(names: readonly string[]): string {
  return `${names.length === 1 ? 'corner' : 'corners'} ${listNames(names)}`;
}
