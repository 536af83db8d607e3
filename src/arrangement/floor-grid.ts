import { DEFAULTS } from '../equipment/defaults.js';
import { type EdgeArrays, edgeArrays } from '../geometry/edge-arrays.js';
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

/** Marks the cells whose centres are less than `radius` from one of the convex rings. */
export function markNear(grid: FloorGrid, rings: readonly Ring[], radius: number, bits: Bits): void {
  for (const ring of rings) {
    const edges = edgeArrays([ring]);
    forCellsNear(grid, ring, radius, (i, x, y) => {
      if (distanceWithin(edges, x, y, radius)) setBit(bits, i);
    });
  }
}

function distanceWithin(edges: EdgeArrays, x: number, y: number, radius: number): boolean {
  return distanceToConvex(edges, 0, edges.count, x, y) < radius;
}

function forCellsNear(
  { cell, left, bottom, columns, rows }: FloorGrid,
  ring: Ring,
  radius: number,
  visit: (i: number, x: number, y: number) => void,
): void {
  const box = boundingBox(ring);
  const c0 = Math.max(0, Math.floor((box.minX - radius - left) / cell));
  const c1 = Math.min(columns - 1, Math.floor((box.maxX + radius - left) / cell));
  const r0 = Math.max(0, Math.floor((box.minY - radius - bottom) / cell));
  const r1 = Math.min(rows - 1, Math.floor((box.maxY + radius - bottom) / cell));
  for (let r = r0; r <= r1; r++) {
    for (let c = c0; c <= c1; c++) visit(r * columns + c, left + (c + 0.5) * cell, bottom + (r + 0.5) * cell);
  }
}
