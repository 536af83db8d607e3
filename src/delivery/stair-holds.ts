import type { Carried } from './carried.js';
import type { HoldName } from './delivery-input.js';

/** Tilts from `from` to `to`, radians; front up is positive. A tilt and the same tilt half a turn on are one. */
export interface TiltRange {
  readonly from: number;
  readonly to: number;
}

/**
 * One edge of the box, `across`, is level and square to the heading; the other two are tilted in their upright plane: `along` is level at
 * tilt 0, `up` at a quarter turn. `ranges` are the tilts at which it may be held, within (-pi/4, 3 pi/4] apart from a full circle, which
 * is the one range [-pi/4, 3 pi/4].
 */
export interface StairFamily {
  readonly along: number;
  readonly across: number;
  readonly up: number;
  readonly ranges: readonly TiltRange[];
}

const EIGHTH = Math.PI / 4;

/** The three families of ways in which a box may be held, those with no tilt allowed left out. */
export function stairFamilies({ l, w, h, held, tilt }: Carried): StairFamily[] {
  const family = (along: number, across: number, up: number, level: HoldName, upright: HoldName) => ({
    along,
    across,
    up,
    ranges: tiltRanges(held.includes(level), held.includes(upright), tilt),
  });
  return [
    family(l, h, w, 'on-edge', 'on-end'),
    family(l, w, h, 'flat', 'on-end'),
    family(w, l, h, 'flat', 'on-edge'),
  ].filter(({ ranges }) => ranges.length > 0);
}

/** Within `tilt` of the level way (0), of the upright one (a quarter turn), or of both. */
function tiltRanges(level: boolean, upright: boolean, tilt: number): TiltRange[] {
  const quarter = Math.PI / 2;
  // Half a turn is as much as there is; what a quarter turn each way from one level way covers is everything.
  const reach = Math.min(tilt, quarter);
  const whole = [{ from: -EIGHTH, to: 3 * EIGHTH }];
  if (level && upright) {
    if (reach >= EIGHTH) return whole;
    return [
      { from: -reach, to: reach },
      { from: quarter - reach, to: quarter + reach },
    ];
  }
  if (level) return reach >= quarter ? whole : [{ from: -reach, to: reach }];
  if (upright) return reach >= quarter ? whole : [{ from: quarter - reach, to: quarter + reach }];
  return [];
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
