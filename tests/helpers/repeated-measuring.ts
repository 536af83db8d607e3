/**
 * Known rooms measured again and again with errors of the size that the survey says, and what each measuring makes of a table in
 * them. A measuring is wrong when it calls a verdict certain that is not the one in the true room.
 */
import { DEFAULTS } from '../../src/equipment/defaults.js';
import { TABLES } from '../../src/equipment/tables.js';
import type { Point } from '../../src/geometry/types.js';
import { ProblemList } from '../../src/length/read-input.js';
import { type CueJudgement, judgePose } from '../../src/placement/judge-pose.js';
import { openReach } from '../../src/placement/open-reach.js';
import { readRoom, readSurveyedRoom } from '../../src/room/check-room.js';
import { roomFromTape } from '../../src/room/room-from-tape.js';
import type { TapeSurvey } from '../../src/room/tape-input.js';

const table = TABLES['pool-7ft-bar'];
const R = table.ballDiameter / 2;
const { backswing, shortBackswing, margin, tipOffsetShare, maxElevation } = DEFAULTS.stroke;
const stroke = {
  backswing,
  shortBackswing,
  margin,
  tipOffset: tipOffsetShare * R,
  maxElevation: (maxElevation * Math.PI) / 180,
};

/** Uniform numbers in [0, 1) by mulberry32 (public domain), and normal ones by Box and Muller. */
export function randomSource(seed: number) {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

/** A kind of room: its walls clockwise, its corners by the floor in them, and which diagonals are read. */
export interface RoomKind {
  readonly name: string;
  readonly lengths: readonly number[];
  readonly corners: readonly (90 | 270)[];
  readonly diagonals: readonly (readonly [number, number])[];
  /** Where the table stands, from the first corner along the first wall and square off it, and how it is turned there, degrees. */
  readonly at: readonly [number, number, number];
  /** Standard deviation of each reading, mm; null: the usual one of a tape. */
  readonly deviation: number | null;
  /** Distances from the plain threshold at which such a survey should mostly be certain, mm. */
  readonly far: readonly number[];
}

export const ROOM_KINDS: readonly RoomKind[] = [
  {
    name: 'four walls, both diagonals',
    lengths: [5600, 4700, 5600, 4700],
    corners: [90, 90, 90, 90],
    diagonals: [
      [0, 2],
      [1, 3],
    ],
    at: [2800, 2350, 0],
    deviation: null,
    far: [-90, -50, 40],
  },
  {
    name: 'four walls, one diagonal',
    lengths: [5400, 5000, 5400, 5000],
    corners: [90, 90, 90, 90],
    diagonals: [[0, 2]],
    at: [2700, 2500, 0],
    deviation: null,
    far: [-90, -50, 40],
  },
  {
    name: 'six walls, one corner jutting in',
    lengths: [6400, 4600, 2400, 1500, 4000, 6100],
    corners: [90, 90, 270, 90, 90, 90],
    diagonals: [
      [0, 2],
      [1, 4],
      [0, 3],
      [1, 5],
    ],
    at: [2900, 2350, 0],
    deviation: null,
    far: [-90, -50, 40],
  },
  {
    name: 'four walls, read carelessly',
    lengths: [5600, 4800, 5600, 4800],
    corners: [90, 90, 90, 90],
    diagonals: [
      [0, 2],
      [1, 3],
    ],
    at: [2600, 2350, 0],
    deviation: 15,
    far: [-300, -110, 90],
  },
];

/** A true room: nearly square corners, off by as much as the survey takes them to be. `corners[i]` is at the far end of wall i. */
export function trueRoom(kind: RoomKind, normal: () => number): Point[] {
  const n = kind.lengths.length;
  const errors = kind.corners.map(() => DEFAULTS.survey.squareDeviation * normal());
  // The corners of any room add up, so their errors do.
  const mean = errors.reduce((sum, e) => sum + e, 0) / n;
  const corners: Point[] = [[0, 0]];
  let heading = 90;
  const headings: number[] = [];
  for (let i = 0; i < n; i++) {
    headings.push((heading * Math.PI) / 180);
    heading -= 180 - (kind.corners[i] + errors[i] - mean);
  }
  for (let i = 0; i < n - 2; i++) {
    const [x, y] = corners[i];
    corners.push([x + kind.lengths[i] * Math.cos(headings[i]), y + kind.lengths[i] * Math.sin(headings[i])]);
  }
  // The last two walls meet where their directions do.
  const [x, y] = corners[n - 2];
  const [c, s] = [Math.cos(headings[n - 2]), Math.sin(headings[n - 2])];
  const [u, v] = [Math.cos(headings[n - 1]), Math.sin(headings[n - 1])];
  const t = (y * u - x * v) / (c * v - s * u);
  corners.push([x + t * c, y + t * s]);
  return corners;
}

const nameOf = (i: number): string => String.fromCharCode(65 + i);
const between = ([ax, ay]: Point, [bx, by]: Point): number => Math.hypot(bx - ax, by - ay);

/** The readings of a true room, each with an error of its own: `errors` gives them in the order in which they are asked for. */
function survey(kind: RoomKind, room: readonly Point[], error: (name: string) => number): TapeSurvey {
  const n = room.length;
  const reading = (length: number) =>
    kind.deviation === null ? length : { length, deviation: kind.deviation };
  return {
    walls: room.map((corner, i) => {
      const next = (i + 1) % n;
      const name = `wall ${nameOf(i)}-${nameOf(next)}`;
      return {
        length: reading(between(corner, room[next]) + error(name)),
        corner: kind.corners[i] === 90 ? 'internal' : 'external',
      };
    }),
    diagonals: kind.diagonals.map(([a, b]) => {
      const [from, to] = [nameOf(a), nameOf(b)];
      return { from, to, length: reading(between(room[a], room[b]) + error(`diagonal ${from}-${to}`)) };
    }),
  };
}

/** The true room laid over the measured one with the least sum of squares over the corners, turned and moved only. */
function laidOver(room: readonly Point[], onto: readonly Point[]): Point[] {
  const n = room.length;
  const middle = (points: readonly Point[]): Point => [
    points.reduce((sum, [x]) => sum + x, 0) / n,
    points.reduce((sum, [, y]) => sum + y, 0) / n,
  ];
  const [a, b] = [middle(room), middle(onto)];
  let dot = 0;
  let cross = 0;
  room.forEach(([x, y], i) => {
    const [px, py] = [x - a[0], y - a[1]];
    const [qx, qy] = [onto[i][0] - b[0], onto[i][1] - b[1]];
    dot += px * qx + py * qy;
    cross += px * qy - py * qx;
  });
  const [c, s] = [dot / Math.hypot(dot, cross), cross / Math.hypot(dot, cross)];
  return room.map(
    ([x, y]): Point => [b[0] + c * (x - a[0]) - s * (y - a[1]), b[1] + s * (x - a[0]) + c * (y - a[1])],
  );
}

/** What became of many measurings. */
export interface Tally {
  readonly measurings: number;
  readonly certain: number;
  /** Verdicts called certain that the true room does not bear out. */
  readonly wrong: number;
  /** Measurings in which some wall of the true room left its band. */
  readonly outOfBand: number;
}

/**
 * Measures one true room many times. `off`: by how much the table's clearance in the true room exceeds what the cue needs for all
 * shots to be open with level cues, mm (negative: falls short); the cue is chosen so. `believed`: the share
 * of the walls' bands that the judge is told of.
 */
export function measureAgainAndAgain(
  kind: RoomKind,
  off: number,
  measurings: number,
  seed: number,
  believed = 1,
): Tally {
  const { normal } = randomSource(seed);
  const room = trueRoom(kind, normal);
  const [along, across, degrees] = kind.at;
  // The first wall runs along +y and the room lies to its right.
  const pose = { x: across, y: along, angle: ((degrees + 90) * Math.PI) / 180 };
  const exact = roomFromTape(survey(kind, room, () => 0));
  const deviations = new Map(exact.readings.map(({ name, deviation }) => [name, deviation]));
  const clearance = 1500;
  const cue = cueFor(room, pose, off, clearance);
  let certain = 0;
  let wrong = 0;
  let outOfBand = 0;
  for (let k = 0; k < measurings; k++) {
    const tape = survey(kind, room, (name) => (deviations.get(name) ?? Number.NaN) * normal());
    const measured = readSurveyedRoom({ tape, tolerance: 0.001 }, 'room', new ProblemList(), []);
    if (measured === null || measured.survey === null) throw new Error('a room that cannot be measured');
    const corners = measured.survey.corners.map(({ x, y }): Point => [x, y]);
    const truly = laidOver(room, corners);
    if (
      leavesBands(
        truly,
        corners,
        measured.survey.walls.map(({ band }) => band),
      )
    )
      outOfBand++;
    const wallTolerances = measured.scene.wallTolerances?.map((band) => believed * band) ?? null;
    const found = judgedWith({ ...measured.scene, wallTolerances }, cue, pose);
    if (!found.certain) continue;
    certain++;
    const scene = readRoom({ outline: truly, tolerance: 0 }, 'room', new ProblemList(), []);
    if (scene === null) throw new Error('a true room that is none');
    if (judgedWith(scene, cue, pose).verdict !== found.verdict) wrong++;
  }
  return { measurings, certain, wrong, outOfBand };
}

type Scene = NonNullable<ReturnType<typeof readRoom>>;
type Pose = { readonly x: number; readonly y: number; readonly angle: number };

function judgedWith(
  scene: Scene,
  cue: {
    readonly name: string;
    readonly length: number;
    readonly tipRadius: number;
    readonly buttRadius: number;
  },
  pose: Pose,
): CueJudgement {
  const question = { scene, table, stroke, cues: [cue], pose, shots: 64, withTolerance: true };
  return judgePose(question).cues[0];
}

/** The cue whose threshold of open shots lies `off` under the clearance of the pose in the true room. */
function cueFor(room: readonly Point[], pose: Pose, off: number, start: number) {
  const scene = readRoom({ outline: room, tolerance: 0 }, 'room', new ProblemList(), []);
  if (scene === null) throw new Error('a true room that is none');
  const cueOf = (length: number) => ({ name: 'cue', length, ...DEFAULTS.cue });
  const question = { scene, table, stroke, cues: [cueOf(start)], pose, shots: 64, withTolerance: false };
  const { clearance } = judgePose(question);
  // rho - L is what a level stroke takes besides the cue.
  const besides = openReach(table, stroke, cueOf(start)).rho - start;
  return cueOf(clearance - besides - off);
}

/** Does an end of some wall lie farther from its line than the band says, square to the wall? */
function leavesBands(room: readonly Point[], corners: readonly Point[], bands: readonly number[]): boolean {
  const n = corners.length;
  return corners.some(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % n];
    const length = between([ax, ay], [bx, by]);
    return [room[i], room[(i + 1) % n]].some(([x, y]) => {
      const off = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length;
      return Math.abs(off) > bands[i];
    });
  });
}

/** The most successes of `n` trials with chance `p` each that are not yet surprising: P(X > most) < `surprise`. */
export function binomialMost(n: number, p: number, surprise: number): number {
  let term = (1 - p) ** n;
  let sum = term;
  for (let k = 0; k < n; k++) {
    if (1 - sum < surprise) return k;
    term *= ((n - k) / (k + 1)) * (p / (1 - p));
    sum += term;
  }
  return n;
}
