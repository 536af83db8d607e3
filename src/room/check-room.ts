import { DEFAULTS } from '../equipment/defaults.js';
import { readPlausible, writeMm } from '../equipment/read-plausible.js';
import { at, type ProblemList, readObject } from '../length/read-input.js';
import { NameBook } from './names.js';
import { checkCeilingHeights, readCeiling } from './read-ceiling.js';
import { readDoors } from './read-doors.js';
import { readObstacles } from './read-obstacles.js';
import { readOutline } from './read-outline.js';
import { ROOM_LIMITS } from './room-limits.js';
import type { RoomShell } from './room-shell.js';
import type { Scene, SceneCeilingFace } from './scene.js';
import type { TapedRoom } from './tape-report.js';
import { type RoomPlan, readTapedPlan } from './taped-plan.js';
import { greatestOfMerged, readWallTolerances } from './wall-tolerances.js';

const SHARED_KEYS = ['ceiling', 'obstacles', 'doors', 'tolerance'] as const;
const KEYS = ['outline', ...SHARED_KEYS, 'wallTolerances'] as const;
const TAPED_KEYS = ['tape', ...SHARED_KEYS] as const;

/**
 * The checked room, or null with every problem that was found. Each default that was used adds a sentence to the assumptions.
 *
 * The outline comes out anticlockwise from its leftmost corner (the lowest of those), whichever way it was written. Walls keep
 * the caller's numbers: `wall 3` starts at the third corner of the caller's list and runs on in the caller's order, also where
 * that is clockwise. Where several corners of the list lie on one straight wall, the wall has the number of the first of them;
 * where corners are repeated, of the last (the corner that closes a list counts for nothing).
 *
 * What touches counts so: an outline may not touch itself; an obstacle may touch or overlap walls and other obstacles, but one
 * that only touches the room from outside lies outside. Sides that come nearer than 0.001 mm touch.
 */
export function readRoom(
  value: unknown,
  path: string,
  problems: ProblemList,
  assumptions: string[],
): Scene | null {
  return readSurveyedRoom(value, path, problems, assumptions)?.scene ?? null;
}

/** A checked room, with the survey it was made from if it was. */
export interface SurveyedRoom {
  readonly scene: Scene;
  readonly survey: TapedRoom | null;
}

/** As {@link readRoom}; of a room by tape readings the adjusted survey as well. Its walls are named by their corners. */
export function readSurveyedRoom(
  value: unknown,
  path: string,
  problems: ProblemList,
  assumptions: string[],
): SurveyedRoom | null {
  const before = problems.problems.length;
  const taped = isTaped(value);
  const fields = readObject(value, path, taped ? TAPED_KEYS : KEYS, problems);
  if (fields === null) return null;

  const plan = taped
    ? readTapedPlan(fields.get('tape'), at(path, 'tape'), problems, assumptions)
    : readPlan(fields, path, problems);
  const tolerance = readTolerance(fields, path, plan, problems, assumptions);
  const ceiling = fields.has('ceiling')
    ? readCeiling(fields.get('ceiling'), at(path, 'ceiling'), problems)
    : ceilingAsRead(plan?.survey ?? null);
  if (!fields.has('ceiling') && (plan?.survey?.ceiling ?? null) === null) {
    assumptions.push('No ceiling was given: none is considered.');
  }
  if (plan !== null && ceiling !== null) {
    checkCeilingHeights(ceiling, plan.outline, tolerance ?? 0, at(path, 'ceiling'), problems);
  }

  const shell: RoomShell = {
    outline: plan?.outline ?? null,
    wallNames: plan?.wallNames ?? [],
    wallTolerances: plan?.wallTolerances ?? null,
    ceiling,
    wallLines: taped ? (plan?.wallLines ?? new Map()) : null,
  };
  const names = new NameBook();
  if (taped) for (const name of shell.wallNames) names.reserve(name, 'a wall');
  const obstacles = fields.has('obstacles')
    ? readObstacles(fields.get('obstacles'), at(path, 'obstacles'), shell, names, problems, assumptions)
    : [];
  if (!fields.has('obstacles')) assumptions.push('No obstacles were given: the room is taken to be empty.');
  const doors = fields.has('doors')
    ? readDoors(fields.get('doors'), at(path, 'doors'), shell, tolerance ?? 0, names, problems, assumptions)
    : [];
  if (!fields.has('doors')) assumptions.push('No doors were given: no floor is kept free for one to open.');

  if (problems.problems.length > before) return null;
  if (plan === null || ceiling === null || obstacles === null || doors === null || tolerance === null)
    return null;
  const { outline, wallNames, wallTolerances, survey } = plan;
  return {
    scene: { outline, wallNames, obstacles, ceiling, doors, reserved: [], tolerance, wallTolerances },
    survey,
  };
}

function isTaped(value: unknown): boolean {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, 'tape');
}

/** Walls by their corners. */
function readPlan(
  fields: ReadonlyMap<string, unknown>,
  path: string,
  problems: ProblemList,
): RoomPlan | null {
  const shape = readOutline(fields.get('outline'), at(path, 'outline'), problems);
  const ofWalls = fields.has('wallTolerances')
    ? readWallTolerances(
        fields.get('wallTolerances'),
        at(path, 'wallTolerances'),
        fields.get('outline'),
        problems,
      )
    : null;
  if (shape === null) return null;
  return {
    outline: shape.ring,
    wallNames: shape.starts.map((start) => `wall ${start + 1}`),
    wallTolerances: ofWalls === null ? null : greatestOfMerged(ofWalls, shape.starts),
    survey: null,
    wallLines: null,
  };
}

/** e, mm. A ceiling that was read less surely than it is taken to be makes it greater. */
function readTolerance(
  fields: ReadonlyMap<string, unknown>,
  path: string,
  plan: RoomPlan | null,
  problems: ProblemList,
  assumptions: string[],
): number | null {
  const usual = DEFAULTS.room.tolerance;
  const given = fields.has('tolerance')
    ? readPlausible(
        fields.get('tolerance'),
        at(path, 'tolerance'),
        'tolerance of the measurements',
        ROOM_LIMITS.tolerance,
        problems,
      )
    : usual;
  if (!fields.has('tolerance')) {
    const apart = fields.has('wallTolerances') || fields.has('tape');
    const which = apart ? 'Measurements other than walls' : 'Measurements';
    assumptions.push(`${which} are taken to be within ${writeMm(usual)} (default).`);
  }
  const height = fields.has('ceiling') ? null : (plan?.survey?.ceiling ?? null);
  if (given === null || height === null || IN_95_OF_100 * height.deviation <= given) return given;
  const needed = IN_95_OF_100 * height.deviation;
  assumptions.push(
    `The ceiling was read to within ${writeMm(Math.ceil(needed))} only: so are heights and furniture taken to be.`,
  );
  return needed;
}

/** A normal error stays within so many standard deviations in 95 of 100 readings. */
const IN_95_OF_100 = 1.959964;

/** Flat, at the height that was read; no faces where none was. */
function ceilingAsRead(survey: TapedRoom | null): readonly SceneCeilingFace[] {
  const height = survey?.ceiling?.height;
  return height === undefined ? [] : [{ name: 'ceiling', height, slopeX: 0, slopeY: 0 }];
}
