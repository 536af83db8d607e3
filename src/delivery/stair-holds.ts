import type { Carried } from './carried.js';
import { holdFamilies, type Interval } from './holds.js';

/** Tilts from `from` to `to`, radians; front up is positive. A tilt and the same tilt half a turn on are one. */
export interface TiltRange {
  readonly from: number;
  readonly to: number;
}

/**
 * One edge of the box, `across`, is level and square to the heading; the other two are tilted in their upright plane: `along` is level at
 * tilt 0, `up` at a quarter turn. `ranges` are the tilts at which it may be held, within [-pi/2, pi]; a full circle
 * is the one range [-pi/4, 3 pi/4].
 */
export interface StairFamily {
  readonly along: number;
  readonly across: number;
  readonly up: number;
  readonly ranges: readonly TiltRange[];
}

const UPRIGHT = Math.PI / 2;
const EIGHTH = Math.PI / 4;

/** The three families of ways in which a box may be held, front up or down, those with no tilt allowed left out. */
export function stairFamilies(box: Carried): StairFamily[] {
  return holdFamilies(box)
    .map(({ along, across, up, tilts }) => ({ along, across, up, ranges: bothWays(tilts) }))
    .filter(({ ranges }) => ranges.length > 0);
}

/** Tilts in [0, pi / 2] and their opposites, those joined that meet at level or upright. */
function bothWays(tilts: readonly Interval[]): TiltRange[] {
  return tilts.flatMap(([from, to]): TiltRange[] => {
    if (from === 0 && to === UPRIGHT) return [{ from: -EIGHTH, to: 3 * EIGHTH }];
    if (from === 0) return [{ from: -to, to }];
    if (to === UPRIGHT) return [{ from, to: Math.PI - from }];
    return [
      { from: -to, to: -from },
      { from, to },
    ];
  });
}

/** Whether the tilt lies in one of the ranges, at any number of half turns. */
export function tiltAllowed(ranges: readonly TiltRange[], tilt: number): boolean {
  return ranges.some(({ from, to }) => {
    const turns = Math.ceil((from - 1e-12 - tilt) / Math.PI);
    return tilt + turns * Math.PI <= to + 1e-12;
  });
}

/** The allowed tilt nearest to the wanted one, by the shorter way round. */
export function nearestTilt(ranges: readonly TiltRange[], tilt: number): number {
  if (tiltAllowed(ranges, tilt)) return tilt;
  let best = Number.NaN;
  let least = Number.POSITIVE_INFINITY;
  for (const { from, to } of ranges) {
    for (const end of [from, to]) {
      const off = end - tilt;
      const near = tilt + off - Math.PI * Math.round(off / Math.PI);
      if (Math.abs(near - tilt) < least) {
        least = Math.abs(near - tilt);
        best = near;
      }
    }
  }
  return best;
}
