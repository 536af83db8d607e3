import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import { boundingBox } from '../geometry/ring.js';
import type { Placement, Ring } from '../geometry/types.js';
import { squareTurns } from '../placement/square-turns.js';
import { symmetry } from './piece-kinds.js';
import { toRoom } from './piece-place.js';

/** About how many places of a grid over the room are tried for one piece, with all its turns. */
const PLACES = 320;
/** Nearest that two places of the grid lie, mm. */
const LEAST_STEP = 150;
/** Directions of walls that are looked at. */
const DIRECTIONS = 2;
/** Degrees between turns of a piece that may be turned as one likes, over a grid. */
const ANY_STEP = 45;
/** Most places along one side that sums of sizes give. */
const MOST_SUMS = 14;

/** Turns at which a free piece is tried, radians in [0, 2 pi) and none twice for its symmetry. */
export function freeTurns(spec: FurnishingSpec, outline: Ring, step: number = ANY_STEP): readonly number[] {
  const { turns } = spec;
  const full = 2 * Math.PI;
  const square = squareTurns(outline)
    .slice(0, 2 * DIRECTIONS)
    .flatMap((turn) => [turn, turn + Math.PI]);
  const [along] = square;
  const list =
    turns === 'any'
      ? [
          ...square,
          ...Array.from({ length: Math.round(360 / step) }, (_, k) => along + (k * step * Math.PI) / 180),
        ]
      : turns === 'square' || turns === 'back'
        ? square
        : turns.map((turn) => (turn * Math.PI) / 180);
  const period = full / symmetry(spec);
  const kept: number[] = [];
  for (const turn of list) {
    const a = turn - Math.floor(turn / full) * full;
    if (kept.every((k) => Math.abs(Math.sin(((a - k) * Math.PI) / period)) > 1e-6)) kept.push(a);
  }
  return kept;
}

/** A grid of places over the room, square to its longest walls and symmetric in its box, for every turn. */
export function gridPoses(spec: FurnishingSpec, outline: Ring): readonly Placement[] {
  const turns = freeTurns(spec, outline);
  const { at, width, height } = alignedBox(outline);
  const step = Math.max(LEAST_STEP, Math.sqrt((width * height * turns.length) / PLACES));
  const columns = Math.max(1, Math.round(width / step));
  const rows = Math.max(1, Math.round(height / step));
  const poses: Placement[] = [];
  for (const angle of turns) {
    for (let i = 0; i < columns; i++) {
      for (let j = 0; j < rows; j++) {
        poses.push({ ...at(((i + 0.5) * width) / columns, ((j + 0.5) * height) / rows), angle });
      }
    }
    poses.push({ ...at(width / 2, height / 2), angle });
  }
  return poses;
}

/**
 * Places at which pieces stand close to one another from either wall: their sides at sums of sizes of pieces, from both ends of the room's box
 * (normal patterns, as in cutting and packing); turned ones with their middles half way between two such sides. Empty where there are too many sums.
 */
export function sumPoses(
  spec: FurnishingSpec,
  pieces: readonly FurnishingSpec[],
  outline: Ring,
): readonly Placement[] {
  const sizes = new Set<number>();
  for (const { stand, length, width } of pieces) if (stand === 'free') sizes.add(length).add(width);
  const { at, width, height, angle: along } = alignedBox(outline);
  const xs = sums([...sizes], width);
  const ys = sums([...sizes], height);
  if (xs === null || ys === null) return [];
  const poses: Placement[] = [];
  for (const angle of freeTurns(spec, outline)) {
    const relative = angle - along;
    const quarter = relative / (Math.PI / 2);
    const square = Math.abs(quarter - Math.round(quarter)) < 1e-9;
    const upright = Math.round(quarter) % 2 !== 0;
    const halfX = (upright ? spec.width : spec.length) / 2;
    const halfY = (upright ? spec.length : spec.width) / 2;
    const us = square ? xs.map((x) => x + halfX).filter((u) => u <= width) : middles(xs);
    const vs = square ? ys.map((y) => y + halfY).filter((v) => v <= height) : middles(ys);
    for (const u of us) for (const v of vs) poses.push({ ...at(u, v), angle });
  }
  return poses;
}

/** All sums of sizes up to `most`, and what is left of `most` beside each, ascending; null for too many. */
function sums(sizes: readonly number[], most: number): readonly number[] | null {
  const found = new Set<number>([0]);
  for (const sum of found) {
    for (const size of sizes) if (sum + size <= most) found.add(sum + size);
    if (2 * found.size > MOST_SUMS) return null;
  }
  const both = [...found, ...[...found].map((sum) => most - sum)].sort((a, b) => a - b);
  return both.filter((s, i) => i === 0 || s - both[i - 1] > 1);
}

function middles(values: readonly number[]): readonly number[] {
  const found: number[] = [];
  for (let i = 0; i < values.length; i++) {
    for (let j = i + 1; j < values.length; j++) found.push((values[i] + values[j]) / 2);
  }
  found.sort((a, b) => a - b);
  return found.filter((s, i) => i === 0 || s - found[i - 1] > 1);
}

/** The room's box along its longest direction of walls. */
function alignedBox(outline: Ring): {
  readonly angle: number;
  readonly width: number;
  readonly height: number;
  /** From the box's corner. */
  readonly at: (u: number, v: number) => { readonly x: number; readonly y: number };
} {
  const [angle] = squareTurns(outline);
  const box = boundingBox(outline.map((p) => toRoom({ x: 0, y: 0, angle: -angle }, p)));
  return {
    angle,
    width: box.maxX - box.minX,
    height: box.maxY - box.minY,
    at: (u, v) => {
      const [x, y] = toRoom({ x: 0, y: 0, angle }, [box.minX + u, box.minY + v]);
      return { x, y };
    },
  };
}
