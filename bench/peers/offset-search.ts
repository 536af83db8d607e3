import type { PlacementProblem } from '../../src/placement/placement-problem.js';
import { buffer, covers, difference, type JtsGeometry, polygon } from '../../tests/helpers/jsts.js';
import { cornersOf } from './grid-search.js';
import { type GridResult, refineGrid } from './refine-grid.js';

/** Finest step of the offset, mm. */
const STEP = 0.25;
/** Segments to a quarter circle: at 2 m of offset a chord is 0.15 mm off its arc. */
const QUADRANT_SEGMENTS = 64;

/**
 * Peer: shrink the room by d with the offsets of JTS, ask whether the turned Q lies in what is left, bisect d; over a refined
 * grid of poses. Offsets are kept from one question to the next.
 */
export function offsetSearch(problem: PlacementProblem, wanted: number): GridResult {
  let room = polygon(problem.outline);
  for (const ring of problem.tall) room = difference(room, polygon(ring));
  const shrunk = new Map<number, JtsGeometry>();
  const holds = (steps: number, table: JtsGeometry): boolean => {
    let rest = shrunk.get(steps);
    if (rest === undefined) {
      rest = buffer(room, -steps * STEP, QUADRANT_SEGMENTS);
      shrunk.set(steps, rest);
    }
    return covers(rest, table);
  };
  return refineGrid(
    problem.outline,
    (pose, beat) => {
      const table = polygon(cornersOf(problem.play, pose));
      let low = Math.floor(beat / STEP) + 1;
      if (!holds(low, table)) return null;
      let high = low + 4;
      while (holds(high, table)) high += 2 * (high - low);
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if (holds(middle, table)) low = middle;
        else high = middle;
      }
      return low * STEP;
    },
    wanted,
  );
}
