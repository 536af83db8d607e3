import type { Point, Ring } from '../geometry/types.js';
import { ProblemList } from '../length/read-input.js';
import { readOutline } from './read-outline.js';
import { readTapeSurvey } from './room-from-tape.js';
import type { TapedRoom } from './tape-report.js';
import { readSurveyInput } from './tape-survey.js';
import { greatestOfMerged } from './wall-tolerances.js';

/** The walls of a room, however they were given. */
export interface RoomPlan {
  readonly outline: Ring;
  readonly wallNames: readonly string[];
  readonly wallTolerances: readonly number[] | null;
  readonly survey: TapedRoom | null;
  /** See `RoomShell`. */
  readonly wallLines: ReadonlyMap<string, readonly [Point, Point]> | null;
}

/** The walls that the readings make, each with its band as its tolerance, or null with problems. */
export function readTapedPlan(
  value: unknown,
  path: string,
  problems: ProblemList,
  assumptions: string[],
): RoomPlan | null {
  const survey = readTapeSurvey(value, path, problems, assumptions);
  if (survey === null) return null;
  const corners = survey.corners.map(({ x, y }): Point => [x, y]);
  const found = new ProblemList();
  const shape = readOutline(corners, path, found);
  for (const { code, message } of found.problems) problems.add(path, code, message);
  if (shape === null) return null;
  const bands = survey.walls.map(({ band }) => band);
  return {
    outline: shape.ring,
    wallNames: shape.starts.map((start) => survey.walls[start].name),
    wallTolerances: greatestOfMerged(bands, shape.starts),
    survey,
    wallLines: wallLines(value, survey, corners),
  };
}

/**
 * Each wall's ends, by the corner that it starts from: of a wall that an alcove or a breast breaks those of the whole, by its own
 * corner, and those of each part.
 */
function wallLines(
  value: unknown,
  { corners }: TapedRoom,
  points: readonly Point[],
): ReadonlyMap<string, readonly [Point, Point]> {
  const lines = new Map<string, readonly [Point, Point]>();
  const n = corners.length;
  corners.forEach(({ name }, i) => {
    lines.set(name, [points[i], points[(i + 1) % n]]);
  });
  // The survey is good, or there would be no corners.
  const surveyed = readSurveyInput(value, '', new ProblemList())?.walls ?? [];
  const whole = surveyed.map(({ from }) => corners.findIndex(({ name }) => name === from));
  whole.forEach((i, k) => {
    lines.set(corners[i].name, [points[i], points[whole[(k + 1) % whole.length]]]);
  });
  return lines;
}
