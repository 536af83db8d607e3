import { DEFAULTS } from '../equipment/defaults.js';
import { edgeArrays } from '../geometry/edge-arrays.js';
import { pointInRing } from '../geometry/predicates.js';
import { boundingBox } from '../geometry/ring.js';
import { distanceToConvex, distanceToEdge } from '../geometry/shape-distance.js';
import type { Ring } from '../geometry/types.js';
import { ceilingAt } from '../room/ceiling.js';
import type { Scene } from '../room/scene.js';
import { type Bits, emptyBits, setBit } from './bits.js';

/** About how many cells a room is cut into, and the least side of one, mm. */
const CELLS = 4096;
const LEAST_CELL = 50;

/** The floor in square cells, to steer a search by, never to judge by. Cell `row * columns + column`. */
export interface FloorGrid {
  readonly cell: number;
  readonly left: number;
  readonly bottom: number;
  readonly columns: number;
  readonly rows: number;
  /** From the centre of each cell to the nearest wall or thing of the room that leaves no room to stand, mm; negative where no one can. */
  readonly depth: Float64Array;
}

export function floorGrid(scene: Scene): FloorGrid {
  const box = boundingBox(scene.outline);
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const cell = Math.max(LEAST_CELL, Math.sqrt((width * height) / CELLS));
  const columns = Math.ceil(width / cell);
  const rows = Math.ceil(height / cell);
  // Evenly on both sides, so that the mirror image of a room has the mirror image of its cells.
  const left = (box.minX + box.maxX - columns * cell) / 2;
  const bottom = (box.minY + box.maxY - rows * cell) / 2;
  const depth = new Float64Array(columns * rows);
  const grid = { cell, left, bottom, columns, rows, depth };
  const walls = edgeArrays([scene.outline]);
  const { headHeight, ceiling } = DEFAULTS.standing;
  const parts = scene.obstacles.filter((o) => o.from < headHeight).flatMap((o) => o.parts);
  const edges = edgeArrays(parts);
  for (let i = 0; i < depth.length; i++) {
    const x = cellX(grid, i);
    const y = cellY(grid, i);
    if (pointInRing(scene.outline, x, y) < 0 || isLow(scene, x, y, ceiling)) {
      depth[i] = -1;
      continue;
    }
    let least = Infinity;
    for (let e = 0; e < walls.count; e++) least = Math.min(least, distanceToEdge(walls, e, x, y));
    let first = 0;
    for (const part of parts) {
      least = Math.min(least, distanceToConvex(edges, first, first + part.length, x, y));
      first += part.length;
    }
    depth[i] = least;
  }
  return grid;
}

function isLow(scene: Scene, x: number, y: number, height: number): boolean {
  return ceilingAt(scene, x, y) < height;
}

export function cellX(grid: FloorGrid, i: number): number {
  return grid.left + ((i % grid.columns) + 0.5) * grid.cell;
}

export function cellY(grid: FloorGrid, i: number): number {
  return grid.bottom + (Math.floor(i / grid.columns) + 0.5) * grid.cell;
}

/** Cells whose centres keep at least `distance` from walls and things of the room. */
export function freeCells(grid: FloorGrid, distance: number): Bits {
  const bits = emptyBits(grid.depth.length);
  for (let i = 0; i < grid.depth.length; i++) if (grid.depth[i] >= distance) setBit(bits, i);
  return bits;
}

/** Marks the cells whose centres are less than `radius` (above 0) from one of the convex anticlockwise rings; a segment is a ring of two points. */
export function markNear(grid: FloorGrid, rings: readonly Ring[], radius: number, bits: Bits): void {
  for (const ring of rings) markRing(grid, ring, radius, bits);
}

/** Row by row: a convex ring grown by a disc meets a row in one stretch, which ends on a moved edge or on a corner's circle. */
function markRing(
  { cell, left, bottom, columns, rows }: FloorGrid,
  ring: Ring,
  radius: number,
  bits: Bits,
): void {
  let low = Infinity;
  let high = -Infinity;
  for (const [, y] of ring) {
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  const first = Math.max(0, Math.ceil((low - radius - bottom) / cell - 0.5));
  const last = Math.min(rows - 1, Math.floor((high + radius - bottom) / cell - 0.5));
  for (let row = first; row <= last; row++) {
    const y = bottom + (row + 0.5) * cell;
    let from = Infinity;
    let to = -Infinity;
    for (let i = 0; i < ring.length; i++) {
      const [ax, ay] = ring[i];
      const [bx, by] = ring[i + 1 === ring.length ? 0 : i + 1];
      const square = radius * radius - (y - ay) * (y - ay);
      if (square > 0) {
        const half = Math.sqrt(square);
        from = Math.min(from, ax - half);
        to = Math.max(to, ax + half);
      }
      const dx = bx - ax;
      const dy = by - ay;
      const perLength = radius / Math.sqrt(dx * dx + dy * dy);
      // The edge moved out by the radius, its outer normal being (dy, -dx).
      const t = (y - ay + dx * perLength) / dy;
      if (t >= 0 && t <= 1) {
        const x = ax + dy * perLength + t * dx;
        from = Math.min(from, x);
        to = Math.max(to, x);
      }
    }
    const c0 = Math.max(0, Math.ceil((from - left) / cell - 0.5));
    const c1 = Math.min(columns - 1, Math.floor((to - left) / cell - 0.5));
    for (let i = row * columns + c0; i <= row * columns + c1; i++) bits[i >> 5] |= 1 << (i & 31);
  }
}
