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
import type { Scene } from './scene.js';
import { greatestOfMerged, readWallTolerances } from './wall-tolerances.js';

const KEYS = ['outline', 'ceiling', 'obstacles', 'doors', 'tolerance', 'wallTolerances'] as const;

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
  const before = problems.problems.length;
  const fields = readObject(value, path, KEYS, problems);
  if (fields === null) return null;

  const tolerance = fields.has('tolerance')
    ? readPlausible(
        fields.get('tolerance'),
        at(path, 'tolerance'),
        'tolerance of the measurements',
        ROOM_LIMITS.tolerance,
        problems,
      )
    : DEFAULTS.room.tolerance;
  if (!fields.has('tolerance')) {
    const which = fields.has('wallTolerances') ? 'Measurements other than walls' : 'Measurements';
    assumptions.push(`${which} are taken to be within ${writeMm(DEFAULTS.room.tolerance)} (default).`);
  }

  const shape = readOutline(fields.get('outline'), at(path, 'outline'), problems);
  const ofWalls = fields.has('wallTolerances')
    ? readWallTolerances(
        fields.get('wallTolerances'),
        at(path, 'wallTolerances'),
        fields.get('outline'),
        problems,
      )
    : null;
  const ceiling = fields.has('ceiling')
    ? readCeiling(fields.get('ceiling'), at(path, 'ceiling'), problems)
    : [];
  if (!fields.has('ceiling')) assumptions.push('No ceiling was given: none is considered.');
  if (shape !== null && ceiling !== null) {
    checkCeilingHeights(ceiling, shape.ring, tolerance ?? 0, at(path, 'ceiling'), problems);
  }

  const outline = shape?.ring ?? null;
  const wallNames = (shape?.starts ?? []).map((start) => `wall ${start + 1}`);
  const wallTolerances = shape === null || ofWalls === null ? null : greatestOfMerged(ofWalls, shape.starts);
  const shell: RoomShell = { outline, wallNames, wallTolerances, ceiling };
  const names = new NameBook();
  const obstacles = fields.has('obstacles')
    ? readObstacles(fields.get('obstacles'), at(path, 'obstacles'), shell, names, problems, assumptions)
    : [];
  if (!fields.has('obstacles')) assumptions.push('No obstacles were given: the room is taken to be empty.');
  const doors = fields.has('doors')
    ? readDoors(fields.get('doors'), at(path, 'doors'), shell, tolerance ?? 0, names, problems, assumptions)
    : [];
  if (!fields.has('doors')) assumptions.push('No doors were given: no floor is kept free for one to open.');

  if (problems.problems.length > before) return null;
  if (outline === null || ceiling === null || obstacles === null || doors === null || tolerance === null)
    return null;
  return { outline, wallNames, obstacles, ceiling, doors, tolerance, wallTolerances };
}
