import type { Point } from '../geometry/types.js';
import type { Face } from './plan-space.js';

/** A solid or a zone as the judge reads it: faces and corners in flat arrays, directions shared up to their sign. */
export interface FlatSolid {
  /** Of each face: which direction, and its sign and offset. */
  readonly direction: Int32Array;
  readonly sign: Float64Array;
  readonly offset: Float64Array;
  readonly cornerX: Float64Array;
  readonly cornerY: Float64Array;
}

/** Adds the faces' directions to `directions` where they are new. */
export function flatten(
  faces: readonly Face[],
  corners: readonly Point[],
  directions: Pick<Face, 'nx' | 'ny'>[],
): FlatSolid {
  const direction = new Int32Array(faces.length);
  const sign = new Float64Array(faces.length);
  faces.forEach((f, i) => {
    const found = directions.findIndex((d) => d.nx * f.ny === d.ny * f.nx);
    const k = found < 0 ? directions.push(f) - 1 : found;
    direction[i] = k;
    sign[i] = directions[k].nx * f.nx + directions[k].ny * f.ny < 0 ? -1 : 1;
  });
  return {
    direction,
    sign,
    offset: Float64Array.from(faces, (f) => f.offset),
    cornerX: Float64Array.from(corners, (c) => c[0]),
    cornerY: Float64Array.from(corners, (c) => c[1]),
  };
}

/** Cosines and sines of `steps` headings that share out `turn` evenly, and of the last one, `turn` itself. */
export interface HeadingTable {
  readonly steps: number;
  readonly turn: number;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

export function headingTable(steps: number, turn: number): HeadingTable {
  const cos = new Float64Array(steps + 1);
  const sin = new Float64Array(steps + 1);
  for (let i = 0; i <= steps; i++) {
    cos[i] = Math.cos((i * turn) / steps);
    sin[i] = Math.sin((i * turn) / steps);
  }
  return { steps, turn, cos, sin };
}
