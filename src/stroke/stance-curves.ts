import { type Curves, TOUCH } from '../geometry/curve-crossings.js';
import type { EdgeArrays } from '../geometry/edge-arrays.js';
import { reflexStarts } from '../geometry/shape-distance.js';
import type { StrokeScene } from './stroke-scene.js';

/** Longer than any room: half the length of the piece that stands for an endless line, mm. */
const FAR = 1e6;

/** The curves that the boundary of the standing floor S is made of, and whose they are. */
export interface StanceCurves {
  readonly all: Curves;
  /** The curve beside wall i is curve i; the circle around its start is `wallCircle[i]`, -1 where that corner does not jut into the room. */
  readonly wallCircle: Int32Array;
  readonly reflex: Uint8Array;
  /** Curves around stance part k: from `partStart[k]` up to, not including, `partStart[k + 1]`. */
  readonly partStart: Int32Array;
  /** From here to the end: curves of the outer rectangle and of low ceilings. */
  readonly common: number;
  readonly count: number;
}

/**
 * Every point of S on the boundary of S lies on one of these: it has distance `radius` to the nearest point of a wall, a part or
 * the outer rectangle, which is inside an edge (then it lies on the edge moved by `radius` to its free side) or a corner (then on
 * the circle around it; of the outline's corners only those that jut into the room can be nearest to a point of the room), or
 * it lies on the line that bounds a low ceiling, moved by `radius`.
 */
export function stanceCurves(scene: StrokeScene): StanceCurves {
  const { walls, parts, stance, rimX, rimY } = scene;
  const { radius } = stance;
  const rows: number[][] = [];
  const straight = (x: number, y: number, tx: number, ty: number, length: number): number =>
    rows.push([x, y, tx, ty, length]);
  const circle = (x: number, y: number): number => rows.push([x, y, 0, 0, -1]) - 1;
  const beside = (edges: EdgeArrays, i: number, by: number): number =>
    straight(
      edges.ax[i] + by * edges.nx[i],
      edges.ay[i] + by * edges.ny[i],
      edges.tx[i],
      edges.ty[i],
      edges.length[i],
    );

  const reflex = reflexStarts(walls);
  for (let i = 0; i < walls.count; i++) beside(walls, i, radius);
  const wallCircle = new Int32Array(walls.count).fill(-1);
  for (let i = 0; i < walls.count; i++) if (reflex[i] === 1) wallCircle[i] = circle(walls.ax[i], walls.ay[i]);

  const partStart = new Int32Array(stance.parts.length + 1);
  stance.parts.forEach((part, k) => {
    partStart[k] = rows.length;
    for (let i = parts.start[part]; i < parts.start[part + 1]; i++) {
      beside(parts.edges, i, -radius);
      circle(parts.edges.ax[i], parts.edges.ay[i]);
    }
  });
  const common = rows.length;
  partStart[stance.parts.length] = common;

  straight(-rimX, -rimY - radius, 1, 0, 2 * rimX);
  straight(rimX + radius, -rimY, 0, 1, 2 * rimY);
  straight(-rimX, rimY + radius, 1, 0, 2 * rimX);
  straight(-rimX - radius, -rimY, 0, 1, 2 * rimY);
  for (const x of [-rimX, rimX]) for (const y of [-rimY, rimY]) circle(x, y);
  for (const { nx, ny, d } of stance.low) {
    const at = d - radius;
    if (Math.abs(at) < FAR) straight(nx * at + ny * FAR, ny * at - nx * FAR, -ny, nx, 2 * FAR);
  }
  return {
    all: curveArrays(rows),
    wallCircle,
    reflex,
    partStart,
    common,
    count: rows.length,
  };
}

/** Distance from (x, y) to curve i, never more than the true one; used to leave curves out that are surely too far. */
export function distanceToCurve(curves: Curves, i: number, radius: number, x: number, y: number): number {
  const dx = x - curves.x[i];
  const dy = y - curves.y[i];
  if (curves.length[i] < 0) return Math.abs(Math.sqrt(dx * dx + dy * dy) - radius) - TOUCH;
  const along = dx * curves.tx[i] + dy * curves.ty[i];
  const over = along < 0 ? -along : along > curves.length[i] ? along - curves.length[i] : 0;
  const aside = dy * curves.tx[i] - dx * curves.ty[i];
  return Math.sqrt(aside * aside + over * over) - TOUCH;
}

function curveArrays(rows: readonly (readonly number[])[]): Curves {
  const column = (k: number): Float64Array => Float64Array.from(rows, (row) => row[k]);
  return { x: column(0), y: column(1), tx: column(2), ty: column(3), length: column(4) };
}
