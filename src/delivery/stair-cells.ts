import { nosingDip, slopeAgainst } from './stair-dip.js';
import type { StairFamily } from './stair-holds.js';
import {
  ceilingAt,
  type FreeHeight,
  floorAt,
  lowerSide,
  profileSpare,
  type Slab,
  type StairProfile,
  upperSide,
} from './stair-profile.js';
import type { TiltCell, WidestWay } from './stair-search.js';

/** The stair as the search sees it: with `rise` 0 the nosings' line is solid, else the floor may lie up to a step below it. */
export interface StairPlane {
  readonly profile: StairProfile;
  readonly pitch: number;
  readonly rise: number;
  readonly endless: boolean;
}

/**
 * The plane of tilts and places of one family on one stair, for `widestWay`. Its value is the spare of the pose (see profileSpare). The start
 * is the level at the foot: the whole slab, where it is endless, else its centre; the end likewise, or on an endless flight the flight.
 */
export function stairWays(plane: StairPlane, family: StairFamily): WidestWay {
  const slab: Slab = { halfAlong: family.along / 2, halfUp: family.up / 2 };
  const reach = Math.hypot(slab.halfAlong, slab.halfUp);
  const { profile } = plane;
  const clear = reach + 1;
  const first = -Math.min(clear, Math.max(profile.bottomDepth, 1));
  const last = plane.endless ? clear : profile.run + Math.min(clear, Math.max(profile.topDepth, 1));
  const scratch: FreeHeight = { lo: 0, hi: 0, walls: 0 };
  return {
    roots: rootCells(family, plane, first, last, reach),
    reach,
    upper: (cell) => upperSpare(plane, family, slab, reach, cell, scratch),
    lower: (cell) => lowerSpare(profile, slab, reach, cell, scratch),
    isStart: ({ x, halfX }) =>
      profile.bottomDepth === Number.POSITIVE_INFINITY ? x - halfX < first + 1e-6 : x < 0,
    isEnd: ({ x, halfX }) =>
      plane.endless || profile.topDepth === Number.POSITIVE_INFINITY
        ? x + halfX > last - 1e-6
        : x > profile.run,
  };
}

/** Cells over the allowed tilts and all places that matter, with sides at the first and the last step. */
function rootCells(
  family: StairFamily,
  { profile, endless }: StairPlane,
  first: number,
  last: number,
  reach: number,
): TiltCell[] {
  const breaks = endless ? [first, 0, last] : [first, 0, profile.run, last];
  const places = breaks.slice(1).flatMap((to, i) => evenParts(breaks[i], to, reach / 3));
  return family.ranges.flatMap(({ from, to }) =>
    evenParts(from, to, Math.PI / 12).flatMap(([tilt, halfTilt]) =>
      places.map(([x, halfX]) => ({ tilt, x, halfTilt, halfX })),
    ),
  );
}

/** Middle and half size of even parts, none longer than about `size`; one part for no length at all. */
function evenParts(from: number, to: number, size: number): [number, number][] {
  const count = Math.max(1, Math.ceil((to - from) / size - 1e-9));
  const half = (to - from) / count / 2;
  return Array.from({ length: count }, (_, i): [number, number] => [from + (2 * i + 1) * half, half]);
}

/** The slab grown by all that a pose of the cell can be off its middle: where it has height left, every pose of the cell has, at the same z. */
export function lowerSpare(
  profile: StairProfile,
  slab: Slab,
  reach: number,
  cell: TiltCell,
  scratch: FreeHeight,
): number {
  const off = cell.halfX + reach * cell.halfTilt;
  const grown = { halfAlong: slab.halfAlong + off, halfUp: slab.halfUp + off };
  return profileSpare(profile, grown, 0, cell.x, cell.tilt, scratch);
}

/**
 * No pose of the cell has more height than this: points of the slab are taken at the middle of the cell; anywhere in it they lie within `off` in x
 * and `turned` in z of there, so that the highest ceiling and the lowest floor within `off` count. Next to a jump of the ceiling a
 * point is taken just inside the lower part.
 */
function upperSpare(
  { profile, pitch, rise }: StairPlane,
  { along, up }: StairFamily,
  { halfAlong, halfUp }: Slab,
  reach: number,
  { tilt, x, halfTilt, halfX }: TiltCell,
  scratch: FreeHeight,
): number {
  const turned = reach * halfTilt;
  const off = halfX + turned;
  const { from, to } = slopeAgainst(tilt, pitch, halfTilt);
  const drop = rise > 0 ? nosingDip(along, up, pitch, rise, from, to) : 0;
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  let lo = Number.NEGATIVE_INFINITY;
  let hi = Number.POSITIVE_INFINITY;
  for (let k = 0; k < 4; k++) {
    const a = k & 1 ? halfAlong : -halfAlong;
    const b = k & 2 ? halfUp : -halfUp;
    const q = x + a * c - b * s;
    const vz = a * s + b * c;
    lo = Math.max(lo, floorAt(profile, q - off, drop) - vz);
    hi = Math.min(hi, highestCeiling(profile, q - off, q + off) - vz);
  }
  const half = halfAlong * Math.abs(c) + halfUp * Math.abs(s);
  for (let k = 0; k < 6; k++) {
    const q = (k < 3 ? 0 : profile.run) + ((k % 3) - 1) * (off + 1e-9);
    const t = q - x;
    if (Math.abs(t) > half) continue;
    lo = Math.max(lo, floorAt(profile, q - off, drop) - lowerSide(halfAlong, halfUp, c, s, t));
    hi = Math.min(hi, highestCeiling(profile, q - off, q + off) - upperSide(halfAlong, halfUp, c, s, t));
  }
  scratch.lo = lo;
  scratch.hi = hi;
  const room = Math.min(
    x + halfX - half + profile.bottomDepth,
    profile.run + profile.topDepth - x + halfX - half,
  );
  return Math.min(hi - lo + 2 * turned, room + turned);
}

function highestCeiling(profile: StairProfile, from: number, to: number): number {
  const { run } = profile;
  let most = Math.max(ceilingAt(profile, from), ceilingAt(profile, to));
  // The ceiling rises along the flight, so that besides the ends only the two sides of its jumps count.
  if (from <= 0 && to >= 0) most = Math.max(most, profile.bottomHeight, profile.headroom);
  if (from <= run && to >= run) {
    most = Math.max(most, profile.headroom + run * profile.tan, run * profile.tan + profile.topHeight);
  }
  return most;
}
