import { readPlausible, unitHint, writeMm } from '../equipment/read-plausible.js';
import { distanceToSegment } from '../geometry/ring.js';
import type { Point, Ring } from '../geometry/types.js';
import { at, type ProblemList, readName, readObject, readWord } from '../length/read-input.js';
import { doorSwing, SWING_EXCESS } from './door-swing.js';
import { capital, listNames, type NameBook } from './names.js';
import { readList, readPoint } from './read-corners.js';
import { ROOM_LIMITS } from './room-limits.js';
import type { RoomShell } from './room-shell.js';
import type { SceneDoor } from './scene.js';

const KEYS = ['name', 'hinge', 'latch', 'opens'] as const;
const WALL_KEYS = ['name', 'wall', 'start', 'width', 'hinge', 'opens'] as const;

/** The doors, or null with problems. A door without a name is called `door N` by its place in the list. */
export function readDoors(
  value: unknown,
  path: string,
  shell: RoomShell,
  tolerance: number,
  names: NameBook,
  problems: ProblemList,
  assumptions: string[],
): SceneDoor[] | null {
  const list = readList(value, path, 'doors', ROOM_LIMITS.count.doors, problems);
  if (list === null) return null;
  const read = list.map((door, i) => readDoor(door, at(path, i), i, shell, tolerance, names, problems));
  const good = read.filter((door) => door !== null);
  if (good.some((door) => door.swing !== null)) {
    assumptions.push(
      `The swing of a door counts as at most ${writeMm(SWING_EXCESS)} larger than the leaf's quarter circle.`,
    );
  }
  return good.length === read.length ? good : null;
}

function readDoor(
  value: unknown,
  path: string,
  index: number,
  shell: RoomShell,
  tolerance: number,
  names: NameBook,
  problems: ProblemList,
): SceneDoor | null {
  const byWall = shell.wallLines !== null && isByWall(value);
  const fields = readObject(value, path, byWall ? WALL_KEYS : KEYS, problems);
  if (fields === null) return null;
  const before = problems.problems.length;
  const name = fields.has('name')
    ? readName(fields.get('name'), at(path, 'name'), "door's name", problems)
    : `door ${index + 1}`;
  if (name !== null) names.claim(name, `door ${index + 1}`, at(path, 'name'), problems);
  const owner = name === null ? `door ${index + 1}` : `"${name}"`;
  const point = (key: 'hinge' | 'latch'): Point | null =>
    fields.has(key)
      ? readPoint(fields.get(key), at(path, key), `the ${key} of ${owner}`, problems)
      : problems.add(at(path, key), 'missing', `The ${key} of ${owner} is missing.`);
  const ends = byWall ? endsOnWall(fields, path, owner, shell, problems) : null;
  const hinge = byWall ? (ends?.hinge ?? null) : point('hinge');
  const latch = byWall ? (ends?.latch ?? null) : point('latch');
  const opens = fields.has('opens')
    ? readWord(fields.get('opens'), at(path, 'opens'), ['in', 'out', 'slides'], problems)
    : problems.add(at(path, 'opens'), 'missing', `Say how ${owner} opens: "in", "out" or "slides".`);
  if (hinge === null || latch === null) return null;

  if (!checkWidth(hinge, latch, owner, path, problems) || shell.outline === null) return null;
  const wall = bestWall(hinge, latch, shell.outline);
  const most = Math.max(tolerance, shell.wallTolerances?.[wall.index] ?? 0, ROOM_LIMITS.doorOffWall);
  if (wall.hingeOff > most || wall.latchOff > most) {
    problems.add(
      path,
      'door-not-on-wall',
      `The ends of ${owner} are not on one wall: the nearest is ${shell.wallNames[wall.index]}, ${writeMm(wall.hingeOff)} from the hinge and ${writeMm(wall.latchOff)} from the latch. Both must lie within ${writeMm(most)} of it.`,
    );
  }
  if (problems.problems.length > before || name === null || opens === null) return null;
  const swing = opens === 'in' ? doorSwing(hinge, latch, wall.along) : null;
  return { name, hinge, latch, opens, swing };
}

function isByWall(value: unknown): boolean {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, 'wall');
}

/** Hinge and latch of a door that is given along a wall of a survey, or null with problems. */
function endsOnWall(
  fields: ReadonlyMap<string, unknown>,
  path: string,
  owner: string,
  { wallLines }: RoomShell,
  problems: ProblemList,
): { readonly hinge: Point; readonly latch: Point } | null {
  const wall = fields.has('wall')
    ? readName(
        fields.get('wall'),
        at(path, 'wall'),
        `corner from which the wall of ${owner} starts`,
        problems,
      )
    : problems.add(at(path, 'wall'), 'missing', `The wall of ${owner} is missing.`);
  const length = (key: 'start' | 'width', what: string, least: number): number | null =>
    fields.has(key)
      ? readPlausible(fields.get(key), at(path, key), what, [least, ROOM_LIMITS.extent[1]], problems)
      : problems.add(at(path, key), 'missing', `The ${what} is missing.`);
  const start = length('start', `distance from the wall's first corner to ${owner}`, 0);
  const width = length('width', `width of ${owner}`, 1);
  const hinge = fields.has('hinge')
    ? readWord(fields.get('hinge'), at(path, 'hinge'), ['start', 'end'], problems)
    : problems.add(at(path, 'hinge'), 'missing', `Say at which end ${owner} is hung: "start" or "end".`);
  if (wall === null || start === null || width === null || hinge === null) return null;
  // Without lines the survey is bad, and has been told of.
  if (wallLines === null || wallLines.size === 0) return null;
  const line = wallLines.get(wall);
  if (line === undefined) {
    return problems.add(
      at(path, 'wall'),
      'unknown-corner',
      `No wall starts from a corner "${wall}"; the corners are ${listNames([...wallLines.keys()])}.`,
    );
  }
  const [[ax, ay], [bx, by]] = line;
  const whole = Math.hypot(bx - ax, by - ay);
  if (start + width > whole + ROOM_LIMITS.doorOffWall) {
    return problems.add(
      path,
      'door-beyond-wall',
      `${capital(owner)} ends ${writeMm(start + width)} from corner ${wall}, but the wall is only ${writeMm(Math.round(whole))} long.`,
    );
  }
  const place = (along: number): Point => [
    ax + ((bx - ax) * along) / whole,
    ay + ((by - ay) * along) / whole,
  ];
  const [first, last] = [place(start), place(start + width)];
  return hinge === 'start' ? { hinge: first, latch: last } : { hinge: last, latch: first };
}

function checkWidth(hinge: Point, latch: Point, owner: string, path: string, problems: ProblemList): boolean {
  const width = Math.hypot(latch[0] - hinge[0], latch[1] - hinge[1]);
  const limits = ROOM_LIMITS.doorWidth;
  // Hinge and latch are often rounded, so a door as wide as a limit passes.
  const shown = Math.round(width * 100) / 100;
  if (shown >= limits[0] && shown <= limits[1]) return true;
  problems.add(
    path,
    'door-width',
    `${capital(owner)} is ${writeMm(shown)} wide from hinge to latch; expected ${writeMm(limits[0])} to ${writeMm(limits[1])}. ${unitHint(shown, limits)}`,
  );
  return false;
}

interface WallOfDoor {
  readonly index: number;
  readonly hingeOff: number;
  readonly latchOff: number;
  /** From hinge to latch runs as the wall does, so the room is to the left. */
  readonly along: boolean;
}

/** The wall from which the farther of the two ends is least far. */
function bestWall(hinge: Point, latch: Point, outline: Ring): WallOfDoor {
  let best: WallOfDoor = {
    index: 0,
    hingeOff: Number.POSITIVE_INFINITY,
    latchOff: Number.POSITIVE_INFINITY,
    along: true,
  };
  for (let index = 0; index < outline.length; index++) {
    const a = outline[index];
    const b = outline[index + 1 === outline.length ? 0 : index + 1];
    const hingeOff = distanceToSegment(hinge, a, b);
    const latchOff = distanceToSegment(latch, a, b);
    if (Math.max(hingeOff, latchOff) >= Math.max(best.hingeOff, best.latchOff)) continue;
    const along = (latch[0] - hinge[0]) * (b[0] - a[0]) + (latch[1] - hinge[1]) * (b[1] - a[1]) > 0;
    best = { index, hingeOff, latchOff, along };
  }
  return best;
}
