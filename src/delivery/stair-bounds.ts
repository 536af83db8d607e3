import type { Carried } from './carried.js';
import type { Stair } from './passages.js';
import { nosingDip, slopeAgainst } from './stair-dip.js';
import type { StairFamily } from './stair-holds.js';

/** Tilts are looked at in steps of about this, radians. */
const STEP = Math.PI / 90;

/** Upright extent over a slope of a rectangle tilted by `tilt`: what it needs between the floor and the ceiling of an endless flight. */
export function slopeHeight(along: number, up: number, pitch: number, tilt: number): number {
  const off = tilt - pitch;
  return (along * Math.abs(Math.sin(off)) + up * Math.abs(Math.cos(off))) / Math.cos(pitch);
}

/**
 * No way of one family has more spare than this: its level edge between the walls, its least height on the levels, and, where a flight
 * is long enough to hold all of it, its least height on the flight, corners dipping in between the nosings. On each
 * stretch between quarter turns from the slope the heights are concave in the tilt, so that the ends of a stretch count.
 */
export function stairFamilyBound(stair: Stair, family: StairFamily): number {
  const { pitch, rise, headroom } = stair;
  const { along, across, up } = family;
  let level = Number.POSITIVE_INFINITY;
  let flight = Number.NEGATIVE_INFINITY;
  for (const { from, to } of family.ranges) {
    for (const [a, b] of stretches(from, to, [0, pitch])) {
      level = Math.min(level, slopeHeight(along, up, 0, a), slopeHeight(along, up, 0, b));
      const slope = slopeAgainst((a + b) / 2, pitch, (b - a) / 2);
      const dip = nosingDip(along, up, pitch, rise, slope.from, slope.to);
      const least = Math.min(slopeHeight(along, up, pitch, a), slopeHeight(along, up, pitch, b));
      flight = Math.max(flight, headroom + dip - least);
    }
  }
  let bound = stair.width - across;
  if (stair.bottom.depth === Number.POSITIVE_INFINITY) bound = Math.min(bound, stair.bottom.height - level);
  if (stair.run !== Number.POSITIVE_INFINITY && stair.top.depth === Number.POSITIVE_INFINITY) {
    bound = Math.min(bound, stair.top.height - level);
  }
  return stair.run >= Math.hypot(along, up) ? Math.min(bound, flight) : bound;
}

/** Short stretches from `from` to `to`, cut at every quarter turn from each of `marks`. */
function stretches(from: number, to: number, marks: readonly number[]): [number, number][] {
  const cuts = [from, to];
  for (const mark of marks) {
    for (let k = -3; k <= 3; k++) {
      const cut = mark + (k * Math.PI) / 2;
      if (cut > from && cut < to) cuts.push(cut);
    }
  }
  cuts.sort((a, b) => a - b);
  if (from === to) return [[from, to]];
  return cuts.slice(1).flatMap((end, i) => {
    const count = Math.max(1, Math.ceil((end - cuts[i]) / STEP));
    const size = (end - cuts[i]) / count;
    return Array.from({ length: count }, (_, k): [number, number] => [
      cuts[i] + k * size,
      cuts[i] + (k + 1) * size,
    ]);
  });
}

/**
 * No motion whatever has more spare than this. A ball as thick as the box goes where the box goes. When the box's centre is half-way up the flight, the
 * plane through it square to the flight cuts the box in a section that holds a chord of w through the centre and an area of w h; the floor may lie
 * `rise` below the line of the nosings.
 */
export function stairBound(stair: Stair, { w, h }: Carried): number {
  const { pitch, width, run, bottom, top } = stair;
  const cos = Math.cos(pitch);
  const reach = stair.headroom + stair.rise;
  let bound = Math.min(width - h, bottom.height - h);
  if (run !== Number.POSITIVE_INFINITY) bound = Math.min(bound, top.height - h);
  bound = Math.min(bound, reach - (run >= h * Math.sin(pitch) ? h / cos : h));
  const section = sectionBound(width, reach, pitch, w, h);
  // It stands only if all of the section lies over the flight, however much headroom that asks for.
  return run >= 2 * (reach - section) * cos * Math.sin(pitch) ? Math.min(bound, section) : bound;
}

/**
 * The plane through a box's centre square to a flight cuts the box in a section that holds a chord of w through the centre and an area of w h, in
 * the flight in a rectangle of `width` by headroom cos pitch: the most by which both readings can shrink so that this is possible.
 */
export function sectionBound(width: number, headroom: number, pitch: number, w: number, h: number): number {
  const fits = (delta: number): boolean => {
    const across = width - delta;
    const high = (headroom - delta) * Math.cos(pitch);
    return across >= 0 && high >= 0 && Math.hypot(across, high) >= w && across * high >= w * h;
  };
  // With readings of 2 w both conditions hold; at the lesser reading itself nothing is left.
  let no = Math.min(width, headroom);
  let yes = no - (2 * w) / Math.cos(pitch);
  for (let i = 0; i < 60 && no - yes > 1e-6; i++) {
    const mid = (no + yes) / 2;
    if (fits(mid)) yes = mid;
    else no = mid;
  }
  return no;
}
