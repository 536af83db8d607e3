import type { Landing, Winder } from './passages.js';
import type { SlopeCell, SlopeSpace } from './slope-floor.js';

/** A turn of a stair in plan and in height, landing or winder: everything the motions and the bounds need of it. */
export interface StairTurn {
  readonly kind: Landing['kind'] | 'winder';
  /** Of the flight below and of the flight above. */
  readonly width: number;
  readonly widthAfter: number;
  readonly depth: number;
  /** Across the flight below: to the first step above (quarter), to the wall opposite (half). */
  readonly breadth: number;
  readonly well: number;
  readonly pitch: number;
  readonly rise: number;
  readonly headroom: number;
  /** Height gained in the turn itself: 0 on a landing. */
  readonly climb: number;
}

export function turnOfLanding(landing: Landing): StairTurn {
  const { kind, width, widthAfter, depth, well, pitch, rise, headroom } = landing;
  const breadth = kind === 'quarter-landing' ? landing.breadth : width + well + widthAfter;
  return { kind, width, widthAfter, depth, breadth, well, pitch, rise, headroom, climb: 0 };
}

export function turnOfWinder({ width, pitch, rise, headroom, climb }: Winder): StairTurn {
  const square = { width, widthAfter: width, depth: width, breadth: width };
  return { kind: 'winder', ...square, well: 0, pitch, rise, headroom, climb };
}

/** The turn with every clear reading smaller by delta (as narrowPassage does to the passage). */
export function narrowTurn(turn: StairTurn, delta: number): StairTurn {
  return {
    ...turn,
    width: turn.width - delta,
    widthAfter: turn.widthAfter - delta,
    depth: turn.depth - delta,
    breadth: turn.breadth - (turn.kind === 'half-landing' ? 2 * delta : delta),
    headroom: turn.headroom - delta,
  };
}

/**
 * The floors and ceilings of a turn for a box that moves between its walls. The corner of a winder is filled up to `climb` and its
 * ceiling is that over its lowest step. With `off` > 0 every floor counts as high as the highest one within `off` mm in plan, every ceiling as
 * low as the lowest one there: what has height left among them has it wherever its points lie within `off` of where they are.
 */
export function turnSpace(turn: StairTurn, off = 0): SlopeSpace {
  const { kind, width, breadth, well, pitch, headroom, climb } = turn;
  const tan = Math.tan(pitch);
  const far = Number.POSITIVE_INFINITY;
  // Between the walls nothing below y = 0 reaches from one flight of a half landing into the other.
  const half = kind === 'half-landing';
  const middle = width + well / 2;
  const cells = (by: number, levelBase: number, base: number): SlopeCell[] => {
    const all = { x0: -far, x1: far, y0: -far, y1: far, base: base + tan * by, gx: 0, gy: 0 };
    const below = { ...all, x1: half ? middle : far, y1: -by, gy: tan };
    const level = { ...all, x1: half ? far : breadth - by, y0: -by, base: base + levelBase };
    const above = half
      ? { ...all, x0: middle, y1: -by, gy: -tan }
      : { ...all, x0: breadth - by, base: base + climb + tan * (by - breadth), gx: tan };
    return [below, level, above];
  };
  return { floors: cells(off, climb, 0), ceilings: cells(-off, 0, headroom) };
}
