import { DEFAULTS } from '../equipment/defaults.js';
import {
  at,
  describeValue,
  type ProblemList,
  readName,
  readNumber,
  readObject,
  readWord,
} from '../length/read-input.js';
import { listNames } from './names.js';
import { readList } from './read-corners.js';
import { ROOM_LIMITS } from './room-limits.js';
import { angleBySides } from './tape-deviation.js';
import { TAPE_LIMITS } from './tape-limits.js';
import { type CheckedReading, MEANS, readReading, type SurveyMeans } from './tape-readings.js';

/** A corner between two walls, by the floor between them. */
export interface CheckedCorner {
  /** Radians, as given or as the kind of corner says. */
  readonly angle: number;
  readonly deviation: number;
  /** `square`: only called internal or external, or not even that. `given`: in degrees, or with its own deviation. */
  readonly source: 'square' | 'given';
}

export interface CheckedWall {
  readonly from: string;
  readonly reading: CheckedReading;
  /** At its far end. */
  readonly corner: CheckedCorner;
  readonly path: string;
}

export interface CheckedDistance {
  readonly from: string;
  readonly to: string;
  readonly reading: CheckedReading;
}

/** A corner by three distances; `angle` is the one under 180 degrees that the triangle has, radians. */
export interface CheckedAngle {
  readonly corner: string;
  readonly before: CheckedReading;
  readonly after: CheckedReading;
  readonly across: CheckedReading;
  readonly angle: number;
  readonly deviation: number;
  readonly path: string;
}

export interface CheckedOffset {
  readonly kind: 'alcove' | 'breast' | 'bay';
  readonly name: string | null;
  readonly wall: string;
  readonly start: CheckedReading;
  readonly width: CheckedReading;
  readonly depth: CheckedReading;
  readonly front: CheckedReading | null;
  readonly rest: CheckedReading | null;
  readonly path: string;
}

/** The readings as numbers, each by itself in order; how they fit together is asked later. */
export interface CheckedSurvey {
  readonly walls: readonly CheckedWall[];
  readonly clockwise: boolean;
  readonly distances: readonly CheckedDistance[];
  readonly angles: readonly CheckedAngle[];
  readonly offsets: readonly CheckedOffset[];
  readonly heights: readonly CheckedReading[];
  readonly means: SurveyMeans;
}

const KEYS = [
  'walls',
  'walk',
  'diagonals',
  'angles',
  'offsets',
  'heights',
  'by',
  'tapeClass',
] as const satisfies readonly string[];

/** The readings of a survey, or null with every problem that one reading has by itself. */
export function readSurveyInput(value: unknown, path: string, problems: ProblemList): CheckedSurvey | null {
  const before = problems.problems.length;
  const fields = readObject(value, path, KEYS, problems);
  if (fields === null) return null;
  const word = <T extends string>(key: string, words: readonly T[], usual: T): T => {
    const given = fields.get(key);
    return given === undefined ? usual : (readWord(given, at(path, key), words, problems) ?? usual);
  };
  const walk = word('walk', ['clockwise', 'anticlockwise'], 'clockwise');
  const means: SurveyMeans = {
    by: word('by', MEANS, 'tape'),
    tapeClass: word('tapeClass', ['I', 'II', 'III'], DEFAULTS.survey.tapeClass),
  };
  const list = <T>(key: string, most: number, read: (item: unknown, path: string) => T | null): T[] => {
    const given = fields.get(key);
    if (given === undefined) return [];
    const items = readList(given, at(path, key), key, most, problems) ?? [];
    return items.flatMap((item, i) => read(item, at(at(path, key), i)) ?? []);
  };
  const { count } = TAPE_LIMITS;
  if (!fields.has('walls')) {
    problems.add(at(path, 'walls'), 'missing', 'The walls are missing: give their lengths in order.');
  }
  let wall = 0;
  const walls = list('walls', count.walls, (item, at) => readWall(item, at, wall++, means, problems));
  if (fields.has('walls') && problems.problems.length === before && walls.length < 3) {
    problems.add(
      at(path, 'walls'),
      'too-few-walls',
      `A room has at least 3 walls; there ${walls.length === 1 ? 'is 1' : `are ${walls.length}`}.`,
    );
  }
  const survey: CheckedSurvey = {
    walls,
    clockwise: walk === 'clockwise',
    distances: list('diagonals', count.distances, (item, at) => readDistance(item, at, means, problems)),
    angles: list('angles', count.angles, (item, at) => readAngle(item, at, means, problems)),
    offsets: list('offsets', count.offsets, (item, at) => readOffset(item, at, means, problems)),
    heights: list('heights', count.heights, (item, at) =>
      readReading(item, at, 'height of the ceiling', ROOM_LIMITS.ceiling, means, problems),
    ),
    means,
  };
  return problems.problems.length > before ? null : survey;
}

function readWall(
  value: unknown,
  path: string,
  index: number,
  means: SurveyMeans,
  problems: ProblemList,
): CheckedWall | null {
  const fields = readObject(value, path, ['from', 'length', 'corner', 'cornerDeviation'], problems);
  if (fields === null) return null;
  const fromValue = fields.get('from');
  const from =
    fromValue === undefined
      ? usualName(index)
      : readName(fromValue, at(path, 'from'), 'name of the corner', problems);
  const what = `length of wall ${index + 1}`;
  const reading = readReading(
    fields.get('length'),
    at(path, 'length'),
    what,
    TAPE_LIMITS.length,
    means,
    problems,
  );
  const angle = readCorner(fields.get('corner'), at(path, 'corner'), index, problems);
  const deviationValue = fields.get('cornerDeviation');
  const [min, max] = TAPE_LIMITS.cornerDeviation;
  const deviation =
    deviationValue === undefined
      ? DEFAULTS.survey.squareDeviation
      : readNumber(
          deviationValue,
          at(path, 'cornerDeviation'),
          { what: 'standard deviation of the corner', min, max },
          ' degrees',
          problems,
        );
  if (from === null || reading === null || angle === null || deviation === null) return null;
  const given = typeof fields.get('corner') === 'number' || deviationValue !== undefined;
  return {
    from,
    reading,
    corner: {
      angle: toRadians(angle),
      deviation: toRadians(deviation),
      source: given ? 'given' : 'square',
    },
    path,
  };
}

/** `A` to `Z`, `AA`, `AB`, ... */
function usualName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : usualName(Math.floor(index / 26) - 1) + letter;
}

/** Degrees of floor in the corner at the far end of a wall. */
function readCorner(value: unknown, path: string, index: number, problems: ProblemList): number | null {
  if (value === undefined || value === 'internal') return 90;
  if (value === 'external') return 270;
  const [min, max] = TAPE_LIMITS.corner;
  if (typeof value === 'number') {
    const what = `corner at the far end of wall ${index + 1}`;
    return readNumber(value, path, { what, min, max }, ' degrees', problems);
  }
  return problems.add(
    path,
    'unknown-word',
    `Expected "internal", "external" or the corner's degrees of floor, got ${describeValue(value)}.`,
  );
}

function readDistance(
  value: unknown,
  path: string,
  means: SurveyMeans,
  problems: ProblemList,
): CheckedDistance | null {
  const fields = readObject(value, path, ['from', 'to', 'length'], problems);
  if (fields === null) return null;
  const from = readName(fields.get('from'), at(path, 'from'), 'corner it starts from', problems);
  const to = readName(fields.get('to'), at(path, 'to'), 'corner it leads to', problems);
  const what = from === null || to === null ? 'distance' : `distance ${from}-${to}`;
  const reading = readReading(
    fields.get('length'),
    at(path, 'length'),
    what,
    TAPE_LIMITS.length,
    means,
    problems,
  );
  return from === null || to === null || reading === null ? null : { from, to, reading };
}

function readAngle(
  value: unknown,
  path: string,
  means: SurveyMeans,
  problems: ProblemList,
): CheckedAngle | null {
  const fields = readObject(value, path, ['corner', 'before', 'after', 'across'], problems);
  if (fields === null) return null;
  const corner = readName(fields.get('corner'), at(path, 'corner'), 'corner', problems);
  const of = corner === null ? 'the corner' : `corner ${corner}`;
  const side = (key: string, what: string): CheckedReading | null =>
    readReading(fields.get(key), at(path, key), what, TAPE_LIMITS.length, means, problems);
  const before = side('before', `distance of the mark before ${of}`);
  const after = side('after', `distance of the mark after ${of}`);
  const across = side('across', `distance across ${of}`);
  if (corner === null || before === null || after === null || across === null) return null;
  const [a, b, c] = [before.length, after.length, across.length];
  const [least, most] = TAPE_LIMITS.threeDistances;
  const { angle, deviation } = angleBySides(before, after, across);
  if (!(c < a + b && c > Math.abs(a - b))) {
    return problems.add(
      path,
      'no-triangle',
      `The three distances at ${of} make no triangle: across must be less than the two others together and more than their difference.`,
    );
  }
  if (angle < toRadians(least) || angle > toRadians(most)) {
    return problems.add(
      path,
      'flat-triangle',
      `The three distances at ${of} make an angle of ${((angle * 180) / Math.PI).toFixed(1)} degrees; outside ${least} to ${most} degrees they tell nothing. Check them, or measure a diagonal instead.`,
    );
  }
  return { corner, before, after, across, angle, deviation, path };
}

function readOffset(
  value: unknown,
  path: string,
  means: SurveyMeans,
  problems: ProblemList,
): CheckedOffset | null {
  const known = ['kind', 'name', 'wall', 'start', 'width', 'depth', 'front', 'rest'];
  const fields = readObject(value, path, known, problems);
  if (fields === null) return null;
  const kind = readWord(fields.get('kind'), at(path, 'kind'), ['alcove', 'breast', 'bay'], problems);
  const nameValue = fields.get('name');
  const name = nameValue === undefined ? null : readName(nameValue, at(path, 'name'), 'name', problems);
  const wall = readName(fields.get('wall'), at(path, 'wall'), 'corner from which the wall starts', problems);
  const of = name ?? kind ?? 'offset';
  const side = (key: string, what: string): CheckedReading | null =>
    readReading(fields.get(key), at(path, key), what, TAPE_LIMITS.length, means, problems);
  const optional = (key: string, what: string): CheckedReading | null =>
    fields.has(key) ? side(key, what) : null;
  const start = side('start', `distance from the wall's start to the ${of}`);
  const width = side('width', `width of the ${of}`);
  const depth = side('depth', `depth of the ${of}`);
  const front = optional('front', `front of the ${of}`);
  const rest = optional('rest', `rest of the wall after the ${of}`);
  if (kind === null || wall === null || start === null || width === null || depth === null) return null;
  if (kind !== 'bay' && fields.has('front')) {
    return problems.add(
      at(path, 'front'),
      'front-without-bay',
      `Only a bay has a front of its own; the front of ${kind === 'alcove' ? 'an alcove' : 'a breast'} is as wide as it.`,
    );
  }
  if (front !== null && front.length > width.length + WIDER * (front.deviation + width.deviation)) {
    return problems.add(
      at(path, 'front'),
      'front-too-wide',
      `The front of the ${of} is ${front.length} mm and the bay only ${width.length} mm wide. Check both; of a bay that widens, give the walls one by one.`,
    );
  }
  return { kind, name, wall, start, width, depth, front, rest, path };
}

/** A front and a width that are as good as equal may differ by so many of their deviations. */
const WIDER = 3;

function toRadians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** The names of a survey's corners, for a message. */
export function knownCorners(names: readonly string[]): string {
  return `The corners are ${listNames(names)}.`;
}
