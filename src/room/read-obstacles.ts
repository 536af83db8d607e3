import { readPlausible, writeMm } from '../equipment/read-plausible.js';
import { convexParts } from '../geometry/convex-parts.js';
import { FLAT_TOLERANCE } from '../geometry/named-ring.js';
import { centroid } from '../geometry/ring.js';
import type { Ring } from '../geometry/types.js';
import {
  at,
  describeValue,
  type ProblemList,
  readLength,
  readName,
  readObject,
} from '../length/read-input.js';
import { partUnder } from './ceiling.js';
import { capital, listNames, type NameBook } from './names.js';
import { nearestWall, overlapsRoom } from './obstacle-in-room.js';
import { readList } from './read-corners.js';
import { readFootprint } from './read-footprint.js';
import { ROOM_LIMITS } from './room-limits.js';
import type { RoomShell } from './room-shell.js';
import type { SceneObstacle } from './scene.js';

const KEYS = ['name', 'footprint', 'from', 'to', 'movable'] as const;

/** Names of the obstacles that a default was used for. */
interface Defaults {
  readonly from: string[];
  readonly to: string[];
  readonly movable: string[];
  readonly turn: string[];
  readonly round: string[];
  excess: number;
}

/** The obstacles, or null with problems. They may overlap one another and the walls, but not lie outside the room. */
export function readObstacles(
  value: unknown,
  path: string,
  shell: RoomShell,
  names: NameBook,
  problems: ProblemList,
  assumptions: string[],
): SceneObstacle[] | null {
  const list = readList(value, path, 'obstacles', ROOM_LIMITS.count.obstacles, problems);
  if (list === null || tooManyCorners(list, path, problems)) return null;
  const defaults: Defaults = { from: [], to: [], movable: [], turn: [], round: [], excess: 0 };
  const read = list.map((obstacle, i) =>
    readObstacle(obstacle, at(path, i), i, shell, names, defaults, problems),
  );
  noteDefaults(defaults, assumptions);
  const good = read.filter((obstacle) => obstacle !== null);
  return good.length === read.length ? good : null;
}

function readObstacle(
  value: unknown,
  path: string,
  index: number,
  shell: RoomShell,
  names: NameBook,
  defaults: Defaults,
  problems: ProblemList,
): SceneObstacle | null {
  const fields = readObject(value, path, KEYS, problems);
  if (fields === null) return null;
  const before = problems.problems.length;
  const name = fields.has('name')
    ? readName(fields.get('name'), at(path, 'name'), "obstacle's name", problems)
    : problems.add(
        at(path, 'name'),
        'missing',
        `Obstacle ${index + 1} has no name; the report needs something to call it.`,
      );
  if (name !== null) names.claim(name, `obstacle ${index + 1}`, at(path, 'name'), problems);
  const owner = name === null ? `obstacle ${index + 1}` : `"${name}"`;

  const footprint = readFootprint(fields.get('footprint'), at(path, 'footprint'), owner, problems);
  const from = fields.has('from') ? readUnderside(fields.get('from'), at(path, 'from'), owner, problems) : 0;
  const to = fields.has('to')
    ? readPlausible(fields.get('to'), at(path, 'to'), `top of ${owner}`, ROOM_LIMITS.height, problems)
    : Number.POSITIVE_INFINITY;
  const movable = fields.has('movable') ? fields.get('movable') : false;
  if (typeof movable !== 'boolean') {
    problems.add(
      at(path, 'movable'),
      'not-yes-or-no',
      `Expected true or false for whether ${owner} may be moved, got ${describeValue(movable)}.`,
    );
  }
  if (from !== null && to !== null && from >= to) {
    problems.add(
      at(path, 'from'),
      'heights-reversed',
      `The underside of ${owner} (${writeMm(from)}) is not below its top (${writeMm(to)}); "from" is the underside and "to" the top, both above the floor.`,
    );
  }
  const parts = footprint === null ? [] : convexParts(footprint.ring);
  if (footprint !== null) checkPlace(footprint.ring, parts, from, owner, path, shell, problems);
  if (
    problems.problems.length > before ||
    name === null ||
    footprint === null ||
    from === null ||
    to === null
  )
    return null;

  if (!fields.has('from')) defaults.from.push(name);
  if (!fields.has('to')) defaults.to.push(name);
  if (!fields.has('movable')) defaults.movable.push(name);
  if (footprint.unturned) defaults.turn.push(name);
  if (footprint.excess !== null) {
    defaults.round.push(name);
    defaults.excess = Math.max(defaults.excess, footprint.excess);
  }
  return { name, ring: footprint.ring, parts, from, to, movable: movable === true };
}

/** Height of an underside: 0 or at least what is plausible in millimetres. */
function readUnderside(value: unknown, path: string, owner: string, problems: ProblemList): number | null {
  if (value === 0) return 0;
  const what = `underside of ${owner}`;
  const mm = readLength(value, path, { what }, problems);
  if (mm === null || mm === 0) return mm;
  if (mm > 0) return readPlausible(value, path, what, ROOM_LIMITS.height, problems);
  return problems.add(
    path,
    'underside-under-floor',
    `The ${what} is ${writeMm(mm)}, under the floor; it is 0 for what stands on the floor.`,
  );
}

function checkPlace(
  ring: Ring,
  parts: readonly Ring[],
  from: number | null,
  owner: string,
  path: string,
  { outline, wallNames, ceiling }: RoomShell,
  problems: ProblemList,
): void {
  if (outline !== null && !overlapsRoom(parts, outline)) {
    const nearest = nearestWall(centroid(ring), outline);
    problems.add(
      at(path, 'footprint'),
      'obstacle-outside',
      `${capital(owner)} lies entirely outside the room: its middle is ${writeMm(nearest.distance)} from ${wallNames[nearest.wall]}, the nearest. Check where it stands.`,
    );
    return;
  }
  if (ceiling === null || ceiling.length === 0 || from === null) return;
  if (parts.every((part) => partUnder(part, ceiling, from + FLAT_TOLERANCE).length === 0)) {
    problems.add(
      at(path, 'from'),
      'obstacle-above-ceiling',
      `The underside of ${owner} (${writeMm(from)}) is at the ceiling or above it. Check its heights, or leave it out.`,
    );
  }
}

/** Footprints by corners, all of them together, are limited as the outline is: the work grows faster than they do. */
function tooManyCorners(list: readonly unknown[], path: string, problems: ProblemList): boolean {
  let corners = 0;
  for (const item of list) {
    if (typeof item !== 'object' || item === null) continue;
    const footprint: unknown = Object.getOwnPropertyDescriptor(item, 'footprint')?.value;
    if (Array.isArray(footprint)) corners += footprint.length;
  }
  const most = ROOM_LIMITS.count.corners;
  if (corners <= most) return false;
  problems.add(
    path,
    'too-many',
    `The footprints have ${corners} corners together; at most ${most} can be answered for.`,
  );
  return true;
}

function noteDefaults({ from, to, movable, turn, round, excess }: Defaults, assumptions: string[]): void {
  const note = (names: readonly string[], one: string, several: string): void => {
    if (names.length > 0) assumptions.push(`${listNames(names)} ${names.length === 1 ? one : several}`);
  };
  note(from, 'stands on the floor (default).', 'stand on the floor (default).');
  note(to, 'reaches the ceiling (default).', 'reach the ceiling (default).');
  note(
    movable,
    'stays in place: no advice moves it (default).',
    'stay in place: no advice moves them (default).',
  );
  note(
    turn,
    'lies square to the plan, its length along x (default).',
    'lie square to the plan, their lengths along x (default).',
  );
  const larger = `drawn around the circle, at most ${writeMm(excess)} larger.`;
  note(round, `counts as a polygon ${larger}`, `count as polygons ${larger}`);
}
