import { createTurnedRectangle, type TurnedRectangle } from '../geometry/rectangle-distance.js';
import type { HalfSides } from './search-scene.js';

/**
 * A box of poses: middle (x, y, angle), half widths (dx, dy, turn). A pose of it is written s in [-1, 1]^3, standing for
 * (x + s0 dx, y + s1 dy, angle + s2 turn). Inner loops reuse one object; `setPoseBox` fills in what follows from the six.
 */
export interface PoseBox {
  x: number;
  y: number;
  angle: number;
  dx: number;
  dy: number;
  /** delta, at most 90 degrees. */
  turn: number;
  cos: number;
  sin: number;
  /** Direction of the long axis at angle - turn and angle + turn. */
  fromCos: number;
  fromSin: number;
  toCos: number;
  toSin: number;
  /** sin(delta), 1 - cos(delta) and delta - sin(delta): largest values of |sin|, 1 - cos and |t - sin t| for any turn in the box. */
  sinTurn: number;
  versTurn: number;
  lagTurn: number;
  /** How far the box shifts things along the normal and along the tangent of the edge in view. */
  shiftN: number;
  shiftT: number;
  /** The two rectangles at the middle of the box. */
  readonly play: BoxRectangle;
  readonly frame: BoxRectangle;
}

/** A rectangle at the middle of a box and how far the box moves it. */
export interface BoxRectangle extends HalfSides {
  readonly at: TurnedRectangle;
  /** 2 D sin(delta / 2): furthest that turning moves any of its points. */
  swing: number;
  /** Furthest that the box moves any of its points: its distance to anything changes by no more. */
  reach: number;
}

export function createPoseBox(play: HalfSides, frame: HalfSides): PoseBox {
  return {
    x: 0.5,
    y: 0.5,
    angle: 0.5,
    dx: 0.5,
    dy: 0.5,
    turn: 0.5,
    cos: 0.5,
    sin: 0.5,
    fromCos: 0.5,
    fromSin: 0.5,
    toCos: 0.5,
    toSin: 0.5,
    sinTurn: 0.5,
    versTurn: 0.5,
    lagTurn: 0.5,
    shiftN: 0.5,
    shiftT: 0.5,
    play: boxRectangle(play),
    frame: boxRectangle(frame),
  };
}

export function setPoseBox(
  box: PoseBox,
  x: number,
  y: number,
  angle: number,
  dx: number,
  dy: number,
  turn: number,
): void {
  box.x = x;
  box.y = y;
  box.angle = angle;
  box.dx = dx;
  box.dy = dy;
  box.turn = turn;
  box.cos = Math.cos(angle);
  box.sin = Math.sin(angle);
  box.fromCos = Math.cos(angle - turn);
  box.fromSin = Math.sin(angle - turn);
  box.toCos = Math.cos(angle + turn);
  box.toSin = Math.sin(angle + turn);
  box.sinTurn = Math.sin(turn);
  box.versTurn = 1 - Math.cos(turn);
  box.lagTurn = Math.max(turn - box.sinTurn, 0);
  moveRectangle(box.play, box);
  moveRectangle(box.frame, box);
}

function moveRectangle(rectangle: BoxRectangle, box: PoseBox): void {
  const { at } = rectangle;
  at.x = box.x;
  at.y = box.y;
  at.cos = box.cos;
  at.sin = box.sin;
  rectangle.swing = 2 * rectangle.radius * Math.sin(box.turn / 2);
  rectangle.reach = Math.hypot(box.dx, box.dy) + rectangle.swing;
}

function boxRectangle(half: HalfSides): BoxRectangle {
  const { halfLength, halfWidth, radius, inner } = half;
  const at = createTurnedRectangle(halfLength, halfWidth);
  return { halfLength, halfWidth, radius, inner, at, swing: 0.5, reach: 0.5 };
}
