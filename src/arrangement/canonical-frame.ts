import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import { lowestCorner, reversed } from '../geometry/ring.js';
import type { Placement, Point, Ring } from '../geometry/types.js';
import { faceAt } from '../room/ceiling.js';
import type { Scene, SceneCeilingFace } from '../room/scene.js';
import type { ArrangeQuestion, Layout } from './arrange-question.js';

/**
 * Coordinates that a room and its mirror image, moved and turned anyhow, have in common, so that the search goes the same way in all of
 * them and finds layouts of the same worth. `mirror`: y changes its sign first. Then (x, y) becomes the origin, and (cos, sin) points along +x.
 */
export interface Frame {
  readonly mirror: boolean;
  readonly x: number;
  readonly y: number;
  readonly cos: number;
  readonly sin: number;
}

/** Coordinates closer than this are equal when two frames are compared, mm. */
const EQUAL = 1e-3;
/**
 * Steps to which coordinates are rounded, per mm, and numbers without a unit: no rule can tell, and what the way of turning a room left of
 * rounding in them is gone, so that the search does not part where two things are equal.
 */
const ROUND = 1e5;
const FINE = 1e12;

/** The frame that starts from a corner of the outline along its wall, on either side, and makes the room come first in the order of numbers. */
export function frameOf(question: ArrangeQuestion): Frame {
  let best: { readonly frame: Frame; readonly marks: readonly number[] } | null = null;
  for (const mirror of [false, true]) {
    const outline = mirror ? reversed(question.scene.outline.map(flipped)) : question.scene.outline;
    for (let start = 0; start < outline.length; start++) {
      const [x, y] = outline[start];
      const [nextX, nextY] = outline[start + 1 === outline.length ? 0 : start + 1];
      const length = Math.hypot(nextX - x, nextY - y);
      const frame = { mirror, x, y, cos: (nextX - x) / length, sin: (nextY - y) / length };
      const marks = marksOf(question, frame, outline, start);
      if (best === null || before(marks, best.marks)) best = { frame, marks };
    }
  }
  return best?.frame ?? { mirror: false, x: 0, y: 0, cos: 1, sin: 0 };
}

/** What tells frames apart: the corners from the start on, then whatever else stands still. */
function marksOf(
  { scene, pose, arrangement }: ArrangeQuestion,
  frame: Frame,
  outline: Ring,
  start: number,
): readonly number[] {
  const marks: number[] = [];
  const add = (p: Point): void => {
    marks.push(...intoFrame(frame, p));
  };
  outline.forEach((_, i) => {
    const corner = outline[(start + i) % outline.length];
    add(frame.mirror ? flipped(corner) : corner);
  });
  for (const { hinge, latch } of scene.doors) {
    add(hinge);
    add(latch);
  }
  for (const { ring } of scene.obstacles) add(middle(ring));
  for (const face of scene.ceiling) marks.push(...slopes(frame, face));
  if (pose !== null) add([pose.x, pose.y]);
  for (const piece of arrangement.pieces) if (piece.pose !== null) add([piece.pose.x, piece.pose.y]);
  return marks;
}

function before(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (Math.abs(a[i] - b[i]) > EQUAL) return a[i] < b[i];
  return false;
}

export function questionInFrame(question: ArrangeQuestion, frame: Frame): ArrangeQuestion {
  const { scene, pose, arrangement, start } = question;
  const pieces = arrangement.pieces.map((piece) => ({
    ...pieceInFrame(piece, frame),
    pose: piece.pose === null ? null : posedInFrame(frame, piece.pose),
  }));
  return {
    ...question,
    scene: sceneInFrame(scene, frame),
    pose: pose === null ? null : tableInFrame(frame, pose),
    arrangement: { ...arrangement, pieces },
    ...(start === undefined
      ? {}
      : {
          start: {
            tablePose: start.tablePose === null ? null : tableInFrame(frame, start.tablePose),
            poses: start.poses.map((p) => (p === null ? null : posedInFrame(frame, p))),
          },
        }),
  };
}

/** The layout in the coordinates of the question; what is given there stays to the last bit. */
export function layoutFromFrame(
  { pose, arrangement }: ArrangeQuestion,
  frame: Frame,
  layout: Layout,
): Layout {
  return {
    tablePose: pose ?? (layout.tablePose === null ? null : tableFromFrame(frame, layout.tablePose)),
    poses: layout.poses.map(
      (p, i) => arrangement.pieces[i].pose ?? (p === null ? null : posedFromFrame(frame, p)),
    ),
  };
}

function sceneInFrame(scene: Scene, frame: Frame): Scene {
  const { mirror } = frame;
  const moved = (r: Ring): Ring => {
    const there = r.map((p) => intoFrame(frame, p));
    return mirror ? reversed(there) : there;
  };
  const ring = (r: Ring): Ring => {
    const there = moved(r);
    return from(there, lowestCorner(there));
  };
  const corners = moved(scene.outline);
  const outline = from(corners, nearestTo([0, 0], corners));
  // Wall i starts from corner i; the mirror image starts where the wall ended.
  const old = scene.outline.map((p) => intoFrame(frame, p));
  const walls = outline.map((corner, i) =>
    nearestTo(mirror ? outline[i + 1 === outline.length ? 0 : i + 1] : corner, old),
  );
  return {
    outline,
    wallNames: walls.map((k) => scene.wallNames[k]),
    obstacles: scene.obstacles.map((o) => ({ ...o, ring: ring(o.ring), parts: o.parts.map(ring) })),
    ceiling: scene.ceiling.map((face) => faceInFrame(frame, face)),
    doors: scene.doors.map((door) => ({
      ...door,
      hinge: intoFrame(frame, door.hinge),
      latch: intoFrame(frame, door.latch),
      swing: door.swing === null ? null : ring(door.swing),
    })),
    reserved: scene.reserved.map((r) => ({ ...r, ring: ring(r.ring) })),
    tolerance: scene.tolerance,
    wallTolerances:
      scene.wallTolerances === null ? null : walls.map((k) => scene.wallTolerances?.[k] ?? scene.tolerance),
  };
}

/** The ring, begun at another of its corners. */
function from(ring: Ring, first: number): Ring {
  return [...ring.slice(first), ...ring.slice(0, first)];
}

function nearestTo([x, y]: Point, ring: Ring): number {
  let best = 0;
  let least = Infinity;
  ring.forEach(([u, v], k) => {
    const off = Math.abs(u - x) + Math.abs(v - y);
    if (off < least) {
      least = off;
      best = k;
    }
  });
  return best;
}

function pieceInFrame<T extends FurnishingSpec>(piece: T, frame: Frame): T {
  const { mirror } = frame;
  const { turns } = piece;
  const degrees = (angleOf(frame) * 180) / Math.PI;
  const turned =
    typeof turns === 'string'
      ? turns
      : turns.map((turn) => rounded((mirror ? 180 - turn : turn) - degrees, FINE));
  if (!mirror) return { ...piece, turns: turned };
  return {
    ...piece,
    turns: turned,
    ring: reversed(piece.ring.map(([u, v]): Point => [-u, v])),
    zones: piece.zones.map((zone) => ({ ...zone, left: zone.right, right: zone.left })),
  };
}

function intoFrame({ mirror, x, y, cos, sin }: Frame, [px, py]: Point): Point {
  const dx = px - x;
  const dy = (mirror ? -py : py) - y;
  return [rounded(cos * dx + sin * dy), rounded(cos * dy - sin * dx)];
}

function fromFrame({ mirror, x, y, cos, sin }: Frame, [u, v]: Point): Point {
  const px = x + cos * u - sin * v;
  const py = y + sin * u + cos * v;
  return [rounded(px), rounded(mirror ? -py : py)];
}

/** A piece's mirror image at a pose is the mirrored piece, left and right exchanged, at the mirrored pose turned by half a turn. */
function posedInFrame(frame: Frame, { x, y, angle }: Placement): Placement {
  const [u, v] = intoFrame(frame, [x, y]);
  return {
    x: u,
    y: v,
    angle: rounded(
      within(frame.mirror ? Math.PI - angle - angleOf(frame) : angle - angleOf(frame), 2 * Math.PI),
      FINE,
    ),
  };
}

function posedFromFrame(frame: Frame, { x, y, angle }: Placement): Placement {
  const [px, py] = fromFrame(frame, [x, y]);
  const turn = angle + angleOf(frame);
  return { x: px, y: py, angle: within(frame.mirror ? Math.PI - turn : turn, 2 * Math.PI) };
}

function tableInFrame(frame: Frame, { x, y, angle }: Placement): Placement {
  const [u, v] = intoFrame(frame, [x, y]);
  return {
    x: u,
    y: v,
    angle: rounded(within((frame.mirror ? -angle : angle) - angleOf(frame), Math.PI), FINE),
  };
}

function tableFromFrame(frame: Frame, { x, y, angle }: Placement): Placement {
  const [px, py] = fromFrame(frame, [x, y]);
  const turn = angle + angleOf(frame);
  return { x: px, y: py, angle: within(frame.mirror ? -turn : turn, Math.PI) };
}

function faceInFrame(frame: Frame, face: SceneCeilingFace): SceneCeilingFace {
  const [height, slopeX, slopeY] = slopes(frame, face);
  return { name: face.name, height, slopeX, slopeY };
}

function slopes(
  { mirror, x, y, cos, sin }: Frame,
  face: SceneCeilingFace,
): readonly [number, number, number] {
  const sy = mirror ? -face.slopeY : face.slopeY;
  return [
    rounded(faceAt(face, x, mirror ? -y : y)),
    rounded(cos * face.slopeX + sin * sy, FINE),
    rounded(cos * sy - sin * face.slopeX, FINE),
  ];
}

function angleOf({ cos, sin }: Frame): number {
  return Math.atan2(sin, cos);
}

/** An angle in [0, period); what is a rounding short of the period, or over none, is none. */
function within(angle: number, period: number): number {
  const turn = angle - Math.floor(angle / period) * period;
  return turn < NO_TURN || period - turn < NO_TURN ? 0 : turn;
}

const NO_TURN = 1e-11;

function flipped([x, y]: Point): Point {
  return [x, -y];
}

function middle(ring: Ring): Point {
  let x = 0;
  let y = 0;
  for (const p of ring) {
    x += p[0] / ring.length;
    y += p[1] / ring.length;
  }
  return [x, y];
}

function rounded(value: number, steps: number = ROUND): number {
  return Math.round(value * steps) / steps + 0;
}
