import { at, type ProblemList } from '../length/read-input.js';
import { checkClosing, checkCorner, checkDistance, checkMarks, checkNames } from './tape-check.js';
import { bestCorner, type CornerReading, cornerReadings } from './tape-corners.js';
import { diagonalName, ReadingNames, wallName } from './tape-names.js';
import type { Observation } from './tape-observations.js';
import {
  offsetCornerNames,
  offsetObservations,
  offsetStart,
  type PlacedOffset,
  placeOffsets,
} from './tape-offsets.js';
import type { CheckedSurvey } from './tape-survey.js';
import { closedStart, walkWalls } from './tape-walk.js';

/** The corners of a room, and all that is known of them. */
export interface Network {
  /** Corners in the order of the walk, those of offsets among them. */
  readonly names: readonly string[];
  /** Corners where the walls of the survey start, as indices of `names`. */
  readonly main: readonly number[];
  /** Coordinates from which the adjustment starts: x, y, x, y, ... */
  readonly start: Float64Array;
  /** The coordinates that make the datum, by their index: they stay as they are in `start`. */
  readonly held: readonly [number, number, number];
  readonly observations: readonly Observation[];
  readonly closure: {
    readonly x: number;
    readonly y: number;
    readonly length: number;
    readonly perimeter: number;
  };
}

/** The net of a survey, or null with every problem of how its readings fit together. */
export function buildNetwork(survey: CheckedSurvey, path: string, problems: ProblemList): Network | null {
  const before = problems.problems.length;
  const { walls, clockwise } = survey;
  checkNames(survey, at(path, 'walls'), problems);
  if (problems.problems.length > before) return null;
  const corners = cornerReadings(survey);
  checkClosing(survey, corners, path, problems);
  const offsets = placeOffsets(survey, problems);
  const { names, main } = allCorners(survey, offsets, problems);
  checkLinks(survey, names, path, problems);
  if (problems.problems.length > before) return null;

  const n = walls.length;
  const lengths = walls.map(({ reading }) => reading.length);
  const far = walls.map((_, i) => bestCorner(corners[(i + 1) % n]));
  const angles = far.map(({ angle }) => angle);
  const deviations = far.map(({ deviation }) => deviation);
  const { gapX, gapY } = walkWalls(lengths, angles, clockwise);
  const mainStart = closedStart(lengths, angles, deviations, clockwise);
  return {
    names,
    main,
    start: withOffsets(mainStart, offsets, main, clockwise, names.length),
    held: [0, 1, 2 * main[1] + (clockwise ? 0 : 1)],
    observations: allObservations(survey, corners, offsets, names, main),
    closure: {
      x: gapX,
      y: gapY,
      length: Math.hypot(gapX, gapY),
      perimeter: lengths.reduce((sum, length) => sum + length, 0),
    },
  };
}

function allCorners(
  { walls }: CheckedSurvey,
  offsets: readonly (readonly PlacedOffset[])[],
  problems: ProblemList,
): { names: string[]; main: number[] } {
  const names: string[] = [];
  const main: number[] = [];
  const own = walls.map(({ from }) => from.toLowerCase());
  walls.forEach(({ from }, i) => {
    main.push(names.length);
    names.push(from);
    for (const placed of offsets[i]) {
      const taken = offsetCornerNames(placed).filter((name) => own.includes(name.toLowerCase()));
      if (taken.length > 0) {
        problems.add(
          placed.offset.path,
          'name-taken',
          `The corners of what breaks the wall from ${from} are called ${offsetCornerNames(placed).join(', ')}, but another corner is called "${taken[0]}" already; give that one another name.`,
        );
      }
      names.push(...offsetCornerNames(placed));
    }
  });
  return { names, main };
}

/** Every corner and wall that readings name, and distances that the walls make impossible. */
function checkLinks(
  survey: CheckedSurvey,
  names: readonly string[],
  path: string,
  problems: ProblemList,
): void {
  const own = survey.walls.map(({ from }) => from);
  survey.distances.forEach(({ from, to, reading }, i) => {
    const here = at(at(path, 'diagonals'), i);
    const fromKnown = checkCorner(from, names, at(here, 'from'), problems);
    const toKnown = checkCorner(to, names, at(here, 'to'), problems);
    if (!fromKnown || !toKnown) return;
    if (from === to) {
      problems.add(
        at(here, 'to'),
        'same-corner',
        `The distance leads from corner ${from} to itself; name two corners.`,
      );
    } else if (own.includes(from) && own.includes(to)) {
      checkDistance(survey, own.indexOf(from), own.indexOf(to), reading, problems);
    }
  });
  for (const angle of survey.angles) {
    if (checkCorner(angle.corner, own, at(angle.path, 'corner'), problems)) {
      checkMarks(survey, own.indexOf(angle.corner), angle, problems);
    }
  }
  for (const { wall, path: here } of survey.offsets) checkCorner(wall, own, at(here, 'wall'), problems);
}

/** The start with the corners of offsets put in along their walls. */
function withOffsets(
  mainStart: Float64Array,
  offsets: readonly (readonly PlacedOffset[])[],
  main: readonly number[],
  clockwise: boolean,
  count: number,
): Float64Array {
  const xy = new Float64Array(2 * count);
  const n = main.length;
  for (let i = 0; i < n; i++) {
    const next = (i + 1) % n;
    const [x, y] = [mainStart[2 * i], mainStart[2 * i + 1]];
    const [dx, dy] = [mainStart[2 * next] - x, mainStart[2 * next + 1] - y];
    const length = Math.hypot(dx, dy);
    xy[2 * main[i]] = x;
    xy[2 * main[i] + 1] = y;
    offsets[i].forEach(({ offset }, place) => {
      xy.set(
        offsetStart(offset, clockwise, [x, y], [dx / length, dy / length]),
        2 * (main[i] + 1 + 4 * place),
      );
    });
  }
  return xy;
}

function allObservations(
  { walls, clockwise, distances }: CheckedSurvey,
  corners: readonly (readonly CornerReading[])[],
  offsets: readonly (readonly PlacedOffset[])[],
  names: readonly string[],
  main: readonly number[],
): Observation[] {
  const n = walls.length;
  const out: Observation[] = [];
  const book = new ReadingNames();
  const wallNames = new Map<string, string>();
  walls.forEach(({ from, reading }, i) => {
    const next = (i + 1) % n;
    const name = book.take(wallName(from, walls[next].from));
    wallNames.set(pairKey(main[i], main[next]), name);
    out.push({
      name,
      kind: 'wall',
      by: reading.by,
      form: 'distance',
      points: [main[i], main[next]],
      read: reading.length,
      deviation: reading.deviation,
      source: reading,
    });
  });
  for (const { from, to, reading } of distances) {
    const points = [names.indexOf(from), names.indexOf(to)];
    const wall = wallNames.get(pairKey(points[0], points[1]));
    out.push({
      name: book.take(wall ?? orderedName(from, to, points)),
      kind: 'distance',
      by: reading.by,
      form: 'distance',
      points,
      read: reading.length,
      deviation: reading.deviation,
      source: reading,
    });
  }
  corners.forEach((readings, c) => {
    const here = main[c];
    const [before, after] = [main[(c + n - 1) % n], main[(c + 1) % n]];
    for (const { name, by, angle, deviation } of readings) {
      out.push({
        name: book.take(name),
        kind: 'corner',
        by,
        form: 'angle',
        points: clockwise ? [here, before, here, after] : [here, after, here, before],
        read: angle,
        deviation,
        source: null,
      });
    }
  });
  offsets.forEach((own, i) => {
    const [a, b] = [main[i], main[(i + 1) % n]];
    own.forEach((placed, place) => {
      const p = a + 1 + 4 * place;
      for (const o of offsetObservations(placed, clockwise, [a, b, p, p + 1, p + 2, p + 3])) {
        out.push({ ...o, name: book.take(o.name) });
      }
    });
  });
  return out;
}

/** The same diagonal has the same name from either end. */
function orderedName(from: string, to: string, [p, q]: readonly number[]): string {
  return p < q ? diagonalName(from, to) : diagonalName(to, from);
}

function pairKey(p: number, q: number): string {
  return p < q ? `${p} ${q}` : `${q} ${p}`;
}
