import { readPlausible, writeMm } from '../equipment/read-plausible.js';
import { at, type ProblemList, readObject, readWord } from '../length/read-input.js';
import { readList } from './read-corners.js';
import {
  type DeviationParts,
  deviationOfMean,
  givenDeviation,
  type TapeClass,
  usualDeviation,
} from './tape-deviation.js';
import type { ReadingMeans } from './tape-input.js';
import { TAPE_LIMITS } from './tape-limits.js';

/** A distance as it counts: the mean of its readings. */
export interface CheckedReading {
  readonly length: number;
  /** How many readings it is the mean of. */
  readonly count: number;
  readonly by: ReadingMeans;
  readonly parts: DeviationParts;
  /** Of the mean. */
  readonly deviation: number;
  readonly path: string;
}

/** With what all readings of a survey were taken that say nothing else. */
export interface SurveyMeans {
  readonly by: ReadingMeans;
  readonly tapeClass: TapeClass;
}

export const MEANS: readonly ReadingMeans[] = ['tape', 'laser', 'estimate'];

/** Readings of one length may lie this many deviations of one apart (the range of 20 is under 7 in 9,999 of 10,000). */
const WIDEST_RANGE = 7;

/** One distance, read once or several times, or null with problems. */
export function readReading(
  value: unknown,
  path: string,
  what: string,
  limits: readonly [number, number],
  survey: SurveyMeans,
  problems: ProblemList,
): CheckedReading | null {
  if (value === undefined) {
    return problems.add(path, 'missing', `The ${what} is missing.`);
  }
  if (typeof value !== 'object') {
    const length = readPlausible(value, path, what, limits, problems);
    return length === null ? null : toReading([length], survey.by, null, survey, path);
  }
  const fields = readObject(value, path, ['length', 'by', 'deviation'], problems);
  if (fields === null) return null;
  const byValue = fields.get('by');
  const by = byValue === undefined ? survey.by : readWord(byValue, at(path, 'by'), MEANS, problems);
  const deviation = fields.has('deviation')
    ? readPlausible(
        fields.get('deviation'),
        at(path, 'deviation'),
        `standard deviation of the ${what}`,
        TAPE_LIMITS.deviation,
        problems,
      )
    : null;
  const lengths = readLengths(fields.get('length'), at(path, 'length'), what, limits, problems);
  if (lengths === null || by === null || (fields.has('deviation') && deviation === null)) return null;
  const reading = toReading(lengths, by, deviation, survey, path);
  return repeatsAgree(lengths, reading, what, problems) ? reading : null;
}

function readLengths(
  value: unknown,
  path: string,
  what: string,
  limits: readonly [number, number],
  problems: ProblemList,
): readonly number[] | null {
  if (value === undefined) return problems.add(path, 'missing', `The ${what} is missing.`);
  if (!Array.isArray(value)) {
    const length = readPlausible(value, path, what, limits, problems);
    return length === null ? null : [length];
  }
  const list = readList(value, path, 'readings', TAPE_LIMITS.count.repeats, problems);
  if (list === null) return null;
  if (list.length === 0) return problems.add(path, 'missing', `There is no reading of the ${what}.`);
  const read = list.map((item, i) => readPlausible(item, at(path, i), what, limits, problems));
  const good = read.filter((length) => length !== null);
  return good.length === read.length ? good : null;
}

function toReading(
  lengths: readonly number[],
  by: ReadingMeans,
  deviation: number | null,
  { tapeClass }: SurveyMeans,
  path: string,
): CheckedReading {
  const count = lengths.length;
  const length = lengths.reduce((sum, mm) => sum + mm, 0) / count;
  const usual = usualDeviation(by, tapeClass, length);
  const parts = deviation === null ? usual : givenDeviation(deviation, usual);
  return { length, count, by, parts, deviation: deviationOfMean(parts, count), path };
}

/** A slip in one of several readings must not be averaged away. */
function repeatsAgree(
  lengths: readonly number[],
  { parts, path }: CheckedReading,
  what: string,
  problems: ProblemList,
): boolean {
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
  const one = deviationOfMean(parts, 1);
  if (most - least <= WIDEST_RANGE * one) return true;
  problems.add(
    at(path, 'length'),
    'readings-disagree',
    `The readings of the ${what} run from ${writeMm(least)} to ${writeMm(most)}, which is ${writeMm(most - least)} apart; one reading is good to about ${writeMm(one)}. Read it again and leave out the wrong one.`,
  );
  return false;
}
