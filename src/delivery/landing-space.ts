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
 * ceiling is that over its lowest step.
 */
export function turnSpace(turn: StairTurn): SlopeSpace {
  const { kind, width, breadth, well, pitch, headroom, climb } = turn;
  const tan = Math.tan(pitch);
  const far = Number.POSITIVE_INFINITY;
  const all = { x0: -far, x1: far, y0: -far, y1: far, base: 0, gx: 0, gy: 0 };
  let below: SlopeCell = { ...all, y1: 0, gy: tan };
  let level: SlopeCell = { ...all, y0: 0 };
  let above: SlopeCell;
  if (kind === 'half-landing') {
    // Between the walls nothing below y = 0 reaches from one flight into the other.
    const middle = width + well / 2;
    below = { ...below, x1: middle };
    above = { ...all, x0: middle, y1: 0, gy: -tan };
  } else {
    above = { ...all, x0: breadth, base: climb - breadth * tan, gx: tan };
    level = { ...level, x1: breadth };
  }
  const over = (cell: SlopeCell): SlopeCell => ({ ...cell, base: cell.base + headroom });
  return {
    floors: [below, { ...level, base: climb }, above],
    ceilings: [over(below), over(level), over(above)],
  };
}
