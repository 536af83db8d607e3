import { readCue } from '../equipment/check-cue.js';
import { readTable } from '../equipment/check-table.js';
import { DEFAULTS } from '../equipment/defaults.js';
import type { CueInput, TableInput, TableSpec } from '../equipment/equipment-types.js';
import type { Point } from '../geometry/types.js';
import { InputError } from '../input-error.js';
import type { Length } from '../length/length.js';
import { at, ProblemList, readGuarded, readNumber, readObject } from '../length/read-input.js';
import { readRoom } from '../room/check-room.js';
import type { RoomInput } from '../room/room-input.js';
import type { TapedRoomInput } from '../room/tape-room.js';
import { answerShot, type ShotClass } from './answer-shot.js';
import { prepareStrokes } from './prepare-strokes.js';
import { readCenter, readPose } from './read-pose.js';
import { readStroke } from './read-stroke.js';
import { standingRoom } from './standing.js';
import type { StrokeCue, StrokeScene } from './stroke-scene.js';
import type { StrokeInput } from './stroke-settings.js';

/** One shot to be judged. */
export interface ClassifyInput {
  readonly room: RoomInput | TapedRoomInput;
  /** An id from `TABLES`, or measurements. */
  readonly table: string | TableInput;
  /** Centre of the play field and anticlockwise angle of its long axis from +x in degrees (default 0). */
  readonly pose: { readonly x: Length; readonly y: Length; readonly turn?: number };
  /** Default: the usual cue of the game. */
  readonly cue?: Length | CueInput | undefined;
  readonly stroke?: Partial<StrokeInput> | undefined;
  /** Where the ball's centre lies: from the middle of the field, x along the table. */
  readonly ball: { readonly x: Length; readonly y: Length };
  /** From the ball to the cue's butt, degrees anticlockwise from the table's long axis. */
  readonly direction: number;
}

/** What becomes of one shot. */
export interface ShotAnswer {
  readonly class: ShotClass;
  /**
   * Least elevation in degrees at which nothing is in the cue's way, whether or not there is room to stand: what the rail asks for
   * where that is free with the full backswing, otherwise the least that is free with the short one. Null where none is.
   */
  readonly elevation: number | null;
  /** What the table's rail alone asks for, degrees; null where it leaves no elevation at all. */
  readonly railElevation: number | null;
  readonly canStand: boolean;
  /**
   * Names of what forbids the open stroke: the first wall ahead, obstacles, faces of the ceiling, `'standing room'`, or `'the rail'` where
   * it asks for more than the steepest ordinary stroke. Empty for an open shot.
   */
  readonly meets: readonly string[];
}

const KEYS = ['room', 'table', 'pose', 'cue', 'stroke', 'ball', 'direction'] as const;

/**
 * Judges one shot with one cue, exactly up to rounding: touching is allowed everywhere. The ball lies anywhere its centre can,
 * so at least its radius from the noses.
 *
 * @throws InputError for bad input, with every problem that was found.
 */
export function classifyShot(input: ClassifyInput): ShotAnswer {
  const problems = new ProblemList();
  const shot = readGuarded([input], problems, () => readShot(input, problems));
  if (shot === null) throw new InputError(problems.problems);
  const { scene, cue, ball, phi } = shot;
  const answer = answerShot(scene, standingRoom(scene), cue, ball[0], ball[1], phi);
  return {
    ...answer,
    elevation: inDegrees(answer.elevation),
    railElevation: inDegrees(answer.railElevation),
  };
}

/** A checked {@link ClassifyInput}. */
interface CheckedShot {
  readonly scene: StrokeScene;
  readonly cue: StrokeCue;
  readonly ball: Point;
  readonly phi: number;
}

function readShot(input: unknown, problems: ProblemList): CheckedShot | null {
  const fields = readObject(input, '', KEYS, problems);
  if (fields === null) return null;
  const required = <T>(key: string, what: string, read: (value: unknown) => T | null): T | null => {
    const value = fields.get(key);
    return value === undefined ? problems.add(key, 'missing', `The ${what} is missing.`) : read(value);
  };
  // What was assumed goes unsaid here: the answer is about one shot only.
  const assumptions: string[] = [];
  const room = required('room', 'room', (value) => readRoom(value, 'room', problems, assumptions));
  const table = required('table', 'table', (value) => readTable(value, 'table', problems, assumptions));
  const ballDiameter = table?.ballDiameter ?? DEFAULTS.table.ballDiameter;
  const pose = required('pose', 'pose of the table', (value) => readPose(value, 'pose', problems));
  const cue = readWantedCue(fields.get('cue'), table, ballDiameter, problems);
  const stroke = readStroke(fields.get('stroke'), 'stroke', ballDiameter / 2, problems, assumptions);
  const ball = required('ball', 'ball', (value) => readBall(value, problems));
  const direction = required('direction', 'direction of the shot', (value) =>
    readNumber(value, 'direction', { what: 'direction of the shot' }, ' degrees', problems),
  );
  if (table !== null && ball !== null) checkBall(table, ball, 'ball', problems);
  if (problems.problems.length > 0) return null;
  if (room === null || table === null || pose === null || cue === null) return null;
  if (stroke === null || ball === null || direction === null) return null;
  const scene = prepareStrokes(room, table, pose, stroke);
  return { scene, cue, ball, phi: inRadians(direction % 360) };
}

function readWantedCue(
  value: unknown,
  table: TableSpec | null,
  ballDiameter: number,
  problems: ProblemList,
): StrokeCue | null {
  if (value !== undefined) return readCue(value, 'cue', problems, ballDiameter);
  return table === null ? null : { length: table.usualCue, ...DEFAULTS.cue };
}

function readBall(value: unknown, problems: ProblemList): Point | null {
  const fields = readObject(value, 'ball', ['x', 'y'], problems);
  return fields === null ? null : readCenter(fields, 'ball', "ball's centre", problems);
}

/** The ball lies on the table if its centre is in Q; to rounding, so that a ball can be put against a nose. */
export function checkBall(table: TableSpec, [x, y]: Point, path: string, problems: ProblemList): void {
  const check = (key: 'x' | 'y', value: number, size: number): void => {
    const most = (size - table.ballDiameter) / 2;
    if (Math.abs(value) <= most + BALL_ROUNDING) return;
    problems.add(
      at(path, key),
      'ball-off-table',
      `The ball's centre lies ${Math.abs(value)} mm from the middle of the field; it can lie at most ${most} mm away, half a ball from the cushion.`,
    );
  };
  check('x', x, table.field.length);
  check('y', y, table.field.width);
}

/** mm; lengths told in other units are a little off when they come back. */
const BALL_ROUNDING = 1e-6;

function inRadians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

function inDegrees(radians: number | null): number | null {
  return radians === null ? null : (radians * 180) / Math.PI;
}
