import { DEFAULTS } from '../equipment/defaults.js';
import type { ReadingMeans } from './tape-input.js';

/** Accuracy class of a tape. */
export type TapeClass = 'I' | 'II' | 'III';

/** The two parts of a reading's standard deviation, mm. */
export interface DeviationParts {
  /** The same in every reading of this length: the tape's or the laser's own error. Repeating does not lessen it. */
  readonly own: number;
  /** New in each reading: n readings have a mean with 1 / sqrt(n) of it. */
  readonly each: number;
}

/**
 * Greatest error allowed of a tape for a length of so many mm, mm: a + bL, L in metres rounded up to the next whole one,
 * and c because a wall is measured from the hook or the end face.
 *
 * Source: Directive 2014/32/EU, Annex X, table 1 and section 2.
 */
export function greatestTapeError(tapeClass: TapeClass, length: number): number {
  const { a, b, c } = DEFAULTS.survey.tapeClasses[tapeClass];
  return a + b * wholeMetres(length) + c;
}

/** A length of 5 m stays 5 m, also where it was written in inches and is a rounding off. */
function wholeMetres(mm: number): number {
  return Math.ceil(mm / 1000 - 1e-9);
}

/**
 * Deviation of a reading of so many mm. A tape's own error is anywhere within what its class allows, each value as likely as any
 * other: its standard deviation is the greatest error by sqrt(3) (a type B evaluation of the GUM, JCGM 100:2008, 4.3.7).
 * Readings count as independent of one another, although one tape has one error: for the shape of a room it is small beside
 * the reading.
 */
export function usualDeviation(means: ReadingMeans, tapeClass: TapeClass, length: number): DeviationParts {
  const { tapeReading, laser, estimate } = DEFAULTS.survey;
  if (means === 'tape') {
    return { own: greatestTapeError(tapeClass, length) / Math.sqrt(3), each: tapeReading };
  }
  if (means === 'laser') return { own: laser.own, each: laser.reading };
  // Guessing twice is no better than once.
  return { own: Math.max(estimate.least, estimate.share * length), each: 0 };
}

/** The usual deviation with the caller's own for one reading: what the instrument has for its own stays in it, as far as it goes. */
export function givenDeviation(deviation: number, usual: DeviationParts): DeviationParts {
  const own = Math.min(usual.each === 0 ? 0 : usual.own, deviation);
  return { own, each: Math.sqrt(deviation * deviation - own * own) };
}

/** Standard deviation of the mean of so many readings. */
export function deviationOfMean({ own, each }: DeviationParts, count: number): number {
  return Math.sqrt(own * own + (each * each) / count);
}

/** The angle opposite to `across` in a triangle, radians, and its standard deviation when all three sides are off by theirs. */
export function angleBySides(
  before: { readonly length: number; readonly deviation: number },
  after: { readonly length: number; readonly deviation: number },
  across: { readonly length: number; readonly deviation: number },
): { readonly angle: number; readonly deviation: number } {
  const [a, b, c] = [before.length, after.length, across.length];
  const cos = Math.max(-1, Math.min(1, (a * a + b * b - c * c) / (2 * a * b)));
  const angle = Math.acos(cos);
  // d angle = (c dc - (a - b cos) da - (b - a cos) db) / (a b sin)
  const scale = a * b * Math.sin(angle);
  const deviation =
    Math.hypot(c * across.deviation, (a - b * cos) * before.deviation, (b - a * cos) * after.deviation) /
    scale;
  return { angle, deviation };
}
