import { type Point, type TablePose, toRadians } from './plan-geometry.js';

/** A shot to try: the ball in the table's frame, mm, and the direction from it to the butt, degrees from +x in [0, 360). */
export interface Shot {
  readonly x: number;
  readonly y: number;
  readonly direction: number;
}

/** Half sides of the rectangle where a ball's centre can lie. */
export interface BallArea {
  readonly halfX: number;
  readonly halfY: number;
}

/** Nearer than this to the ball (mm) a pointer gives no direction. */
const TOO_NEAR = 5;

const STEP = { small: 10, large: 100, turn: 1, bigTurn: 15 } as const;

export function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

/** A shot as it may be: the ball on the table, the direction within one turn. */
export function allowed({ x, y, direction }: Shot, { halfX, halfY }: BallArea): Shot {
  const rest = direction % 360;
  return {
    x: clamp(x, -halfX, halfX),
    y: clamp(y, -halfY, halfY),
    direction: rest < 0 ? (rest + 360) % 360 : rest,
  };
}

/** The ball laid where somebody points, to the millimetre. */
export function withBallAt(shot: Shot, [x, y]: Point, area: BallArea): Shot {
  return allowed({ ...shot, x: Math.round(x), y: Math.round(y) }, area);
}

/** The butt turned to where somebody points, to a tenth of a degree; the same shot if that is at the ball. */
export function withButtTowards(shot: Shot, [x, y]: Point): Shot {
  const dx = x - shot.x;
  const dy = y - shot.y;
  if (Math.hypot(dx, dy) < TOO_NEAR) return shot;
  const tenths = Math.round((10 * 180 * Math.atan2(dy, dx)) / Math.PI);
  return { ...shot, direction: ((tenths + 3600) % 3600) / 10 };
}

export interface Keystroke {
  readonly key: string;
  readonly shiftKey: boolean;
}

/**
 * The shot after a key, null for keys that mean nothing here. Arrows move the ball along the axis of the table that is nearest to
 * the arrow as the plan shows it; plus and minus turn the cue, anticlockwise and clockwise.
 */
export function afterKey(shot: Shot, keystroke: Keystroke, pose: TablePose, area: BallArea): Shot | null {
  const { key, shiftKey } = keystroke;
  const arrow = ARROWS.get(key);
  if (arrow !== undefined) {
    const [dx, dy] = alongTable(arrow, pose.turn);
    const step = shiftKey ? STEP.large : STEP.small;
    return allowed({ ...shot, x: shot.x + step * dx, y: shot.y + step * dy }, area);
  }
  if (key === 'Home') return { ...shot, x: 0, y: 0 };
  const turn = TURNS.get(key);
  return turn === undefined
    ? null
    : allowed({ ...shot, direction: Math.round(10 * (shot.direction + turn)) / 10 }, area);
}

const ARROWS: ReadonlyMap<string, Point> = new Map([
  ['ArrowRight', [1, 0]],
  ['ArrowLeft', [-1, 0]],
  ['ArrowUp', [0, 1]],
  ['ArrowDown', [0, -1]],
]);

/** Plus and minus with and without Shift, as keyboards have them in different places. */
const TURNS: ReadonlyMap<string, number> = new Map([
  ['+', STEP.turn],
  ['=', STEP.turn],
  ['-', -STEP.turn],
  ['_', -STEP.turn],
  ['PageUp', STEP.bigTurn],
  ['PageDown', -STEP.bigTurn],
]);

/** The axis of the table nearest to a direction of the plan. */
function alongTable([x, y]: Point, turn: number): Point {
  const cos = Math.cos(toRadians(turn));
  const sin = Math.sin(toRadians(turn));
  const along = cos * x + sin * y;
  const across = cos * y - sin * x;
  // Where two are equally near, the same one for all four arrows, so that they do not fall together.
  return Math.abs(along) > Math.abs(across) - 1e-9 * Math.abs(x) + 1e-9 * Math.abs(y)
    ? [Math.sign(along), 0]
    : [0, Math.sign(across)];
}
