import { unitHint, writeMm } from '../equipment/read-plausible.js';
import { at, type ProblemList } from '../length/read-input.js';
import { bestCorner, type CornerReading } from './tape-corners.js';
import { TAPE_LIMITS } from './tape-limits.js';
import { wallName } from './tape-names.js';
import type { CheckedReading } from './tape-readings.js';
import { type CheckedAngle, type CheckedSurvey, knownCorners } from './tape-survey.js';
import { gapDeviation, walkWalls } from './tape-walk.js';

/** Beyond so many standard deviations a misfit is a slip, not an error of measuring. */
const SLIP = 6;
/** Corners may always add up to this much more or less than they should, radians. */
const LEAST_TURN_SLIP = Math.PI / 180;
/** A gap above this share of the perimeter is no misfit to be shared out, unless the corners are so unsure. */
const GAP_SHARE = 0.1;
/** What is left of the gap, by the perimeter, when the one wall that is wrong is put right. */
const MENDED_SHARE = 0.02;

/** Names that two corners share. */
export function checkNames({ walls }: CheckedSurvey, path: string, problems: ProblemList): void {
  const owner = new Map<string, number>();
  walls.forEach(({ from, path: wallPath }, i) => {
    const other = owner.get(from.toLowerCase());
    if (other === undefined) {
      owner.set(from.toLowerCase(), i);
    } else {
      problems.add(
        at(wallPath, 'from'),
        'name-taken',
        `Wall ${i + 1} and wall ${other + 1} both start from a corner "${from}"; give each corner a name of its own.`,
      );
    }
  });
  if (walls.length < 3) problems.add(path, 'too-few-walls', 'A room has at least 3 walls.');
}

/** A corner that nobody named. Returns whether it is known. */
export function checkCorner(
  name: string,
  names: readonly string[],
  path: string,
  problems: ProblemList,
): boolean {
  if (names.includes(name)) return true;
  problems.add(path, 'unknown-corner', `There is no corner "${name}". ${knownCorners(names)}`);
  return false;
}

/** Walls and corners that cannot make a closed room, whatever the errors of measuring. */
export function checkClosing(
  { walls, clockwise }: CheckedSurvey,
  corners: readonly (readonly CornerReading[])[],
  path: string,
  problems: ProblemList,
): void {
  const before = problems.problems.length;
  const total = walls.reduce((sum, { reading }) => sum + reading.length, 0);
  walls.forEach(({ from, reading }, i) => {
    const rest = total - reading.length;
    if (reading.length <= rest + SLIP * deviationOf(walls.map((wall) => wall.reading))) return;
    problems.add(
      reading.path,
      'wall-too-long',
      `Wall ${from}-${walls[(i + 1) % walls.length].from} is ${writeMm(reading.length)} long, and all other walls together only ${writeMm(rest)}: they cannot close. ${CHECK_UNITS}`,
    );
  });
  checkTurns(walls.length, corners, at(path, 'walls'), problems);
  if (problems.problems.length === before) checkGap(walls, clockwise, corners, at(path, 'walls'), problems);
}

const CHECK_UNITS =
  'Check the number and its unit; a number is in millimetres, text carries its unit, such as "183 cm".';

function deviationOf(readings: readonly CheckedReading[]): number {
  return Math.sqrt(readings.reduce((sum, { deviation }) => sum + deviation ** 2, 0));
}

function checkTurns(
  n: number,
  corners: readonly (readonly CornerReading[])[],
  path: string,
  problems: ProblemList,
): void {
  const best = corners.map(bestCorner);
  const sum = best.reduce((all, { angle }) => all + angle, 0);
  const deviation = Math.sqrt(best.reduce((all, corner) => all + corner.deviation ** 2, 0));
  const wanted = (n - 2) * Math.PI;
  const misfit = sum - wanted;
  if (Math.abs(misfit) <= Math.max(LEAST_TURN_SLIP, SLIP * deviation)) return;
  const halfTurns = Math.round(Math.abs(misfit) / Math.PI);
  const plural = halfTurns === 1 ? 'corner' : 'corners';
  const hint =
    halfTurns > 0 && Math.abs(Math.abs(misfit) - halfTurns * Math.PI) <= Math.PI / 6
      ? misfit < 0
        ? `Perhaps ${halfTurns} more ${plural} should be "external" (juts into the room).`
        : `Perhaps ${halfTurns} ${plural} that ${halfTurns === 1 ? 'is' : 'are'} "external" should be "internal".`
      : 'Give the degrees of floor of the corners that are not square; a guess takes a "cornerDeviation" of some degrees.';
  problems.add(
    path,
    'corners-cannot-close',
    `The corners add up to ${degrees(sum)} degrees; those of a room with ${n} walls add up to ${degrees(wanted)}. ${hint}`,
  );
}

function degrees(radians: number): string {
  return String(Math.round((radians * 1800) / Math.PI) / 10);
}

function checkGap(
  walls: CheckedSurvey['walls'],
  clockwise: boolean,
  corners: readonly (readonly CornerReading[])[],
  path: string,
  problems: ProblemList,
): void {
  const n = walls.length;
  const lengths = walls.map(({ reading }) => reading.length);
  const farCorners = walls.map((_, i) => bestCorner(corners[(i + 1) % n]));
  const walk = walkWalls(
    lengths,
    farCorners.map(({ angle }) => angle),
    clockwise,
  );
  const gap = Math.hypot(walk.gapX, walk.gapY);
  const perimeter = lengths.reduce((sum, length) => sum + length, 0);
  const deviation = gapDeviation(
    walk,
    walls.map(({ reading }) => reading.deviation),
    farCorners.map((corner) => corner.deviation),
  );
  if (gap <= Math.max(GAP_SHARE * perimeter, SLIP * deviation)) return;
  const mended = walls.flatMap(({ from, reading }, i) => {
    const endX = i + 1 < n ? walk.xy[2 * i + 2] : walk.gapX;
    const endY = i + 1 < n ? walk.xy[2 * i + 3] : walk.gapY;
    const ux = (endX - walk.xy[2 * i]) / reading.length;
    const uy = (endY - walk.xy[2 * i + 1]) / reading.length;
    const along = walk.gapX * ux + walk.gapY * uy;
    const left = Math.abs(walk.gapX * uy - walk.gapY * ux);
    const length = reading.length - along;
    if (left > MENDED_SHARE * perimeter || length < TAPE_LIMITS.length[0]) return [];
    const hint = unitHint(reading.length, [0.95 * length, 1.05 * length]);
    const unit = hint.includes('write')
      ? ` (${hint.replace(/^.*write /, '').replace(/ if that.*$/, '')}?)`
      : '';
    return [`${wallName(from, walls[(i + 1) % n].from)} were about ${writeMm(Math.round(length))}${unit}`];
  });
  const hint =
    mended.length > 0
      ? `They would close if ${mended.slice(0, 3).join(', or ')}.`
      : 'Check which corners are "external" and the unit of every length.';
  problems.add(
    path,
    'survey-does-not-close',
    `Walked round with these lengths and corners, the walls miss their start by ${writeMm(Math.round(gap))}, far more than errors of measuring. ${hint}`,
  );
}

/** Marks of a corner by three distances that lie beyond the ends of its walls. */
export function checkMarks(
  { walls }: CheckedSurvey,
  corner: number,
  { before, after }: CheckedAngle,
  problems: ProblemList,
): void {
  const n = walls.length;
  for (const [mark, wall] of [
    [before, (corner + n - 1) % n],
    [after, corner],
  ] as const) {
    const { reading, from } = walls[wall];
    if (mark.length <= reading.length + SLIP * Math.hypot(mark.deviation, reading.deviation)) continue;
    problems.add(
      mark.path,
      'mark-beyond-wall',
      `The mark is ${writeMm(mark.length)} from corner ${walls[corner].from}, but ${wallName(from, walls[(wall + 1) % n].from)} is only ${writeMm(reading.length)} long. Marks are set on the two walls that meet in the corner.`,
    );
  }
}

/** A distance between two corners that the walls between them make impossible, either way round. */
export function checkDistance(
  { walls }: CheckedSurvey,
  from: number,
  to: number,
  reading: CheckedReading,
  problems: ProblemList,
): void {
  const [low, high] = from < to ? [from, to] : [to, from];
  const name = `${walls[from].from}-${walls[to].from}`;
  for (const arc of [walls.slice(low, high), [...walls.slice(high), ...walls.slice(0, low)]]) {
    const readings = arc.map((wall) => wall.reading);
    const slack = SLIP * Math.hypot(reading.deviation, deviationOf(readings));
    const way = readings.reduce((sum, { length }) => sum + length, 0);
    const longest = Math.max(...readings.map(({ length }) => length));
    if (arc.length === 1 && Math.abs(reading.length - way) > slack) {
      problems.add(
        reading.path,
        'readings-disagree',
        `The distance ${name} is ${writeMm(reading.length)}, but the same wall was read as ${writeMm(way)}. Read it again and leave out the wrong one.`,
      );
      return;
    }
    if (reading.length > way + slack) {
      problems.add(
        reading.path,
        'distance-too-long',
        `The distance ${name} is ${writeMm(reading.length)}, but along the walls it is only ${writeMm(way)}. ${CHECK_UNITS}`,
      );
      return;
    }
    if (reading.length < 2 * longest - way - slack) {
      problems.add(
        reading.path,
        'distance-too-short',
        `The distance ${name} is ${writeMm(reading.length)}, but the walls between them leave at least ${writeMm(2 * longest - way)}. ${CHECK_UNITS}`,
      );
      return;
    }
  }
}
