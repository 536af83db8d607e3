import { DEFAULTS } from '../equipment/defaults.js';
import { type BoxFrame, greatestDot, LENGTH_SLACK, leastDot, type Range } from './box-bounds.js';
import { canStand, standingFrom, standingTo } from './standing.js';
import type { StandingRoom } from './standing-room.js';
import type { StrokeScene } from './stroke-scene.js';

/**
 * Room to stand, for all shots of a box at once. A point at x along and l to the left of the centre shot comes, for another shot of
 * the box, to x' in [x cos(d) - |l| sin(d) - along, x + |l| sin(d) + along] and |l'| <= |l| + |x| sin(d) + across, with d the half
 * angle (<= pi / 2) and along, across the extents of the ball rectangle.
 */

/** Half the width of the standing window, and how far behind the rim it may end, mm. */
const SIDEWAYS = DEFAULTS.standing.sideways;
const BEHIND = DEFAULTS.standing.behindRail;

/** Places beside a rail are not tried at less than this from one another, mm: the search would take too long. */
const LEAST_STEP = 10;

/** How far from touching the rim a player stands who stands right beside it, mm. */
const BESIDE = 1e-3;

/** How far behind the rim places are tried, as shares of the way between the least and the greatest there; */
const SHARES_BEHIND = [0.5, 0.2, 0.8, 0.02] as const;
/** how far to the left of the ray, as shares of SIDEWAYS; */
const SHARES_ASIDE = [0, 0.5, -0.5, 0.85, -0.85] as const;
/** and in which steps along the rail, as shares of how far a place may be from where the shot would like it. */
const STEPS = [1, 0.5, 0, -0.5, -1] as const;

/** Windows of a narrow box move to either side by less than this, mm. */
const NARROW = SIDEWAYS / 2;

/** How often the way between two places is halved to find where they meet. */
const TWO_PLACE_STEPS = 5;

/** canStand counts touching (1e-6 mm) as room; a window wider by this much misses none of its answers. */
const TOUCHING = 1e-5;

/** True only if every shot of the box has room to stand. */
export function standsThroughout(
  frame: BoxFrame,
  scene: StrokeScene,
  room: StandingRoom,
  cueLength: number,
  rim: Range,
): boolean {
  if (frame.cosHalf <= 0 || scene.stance.never) return false;
  const near = standingFrom(cueLength);
  const far = standingTo(cueLength, rim.lo);
  // Wide boxes need places that move with the shot; where those of a narrow one cannot share a place, there is little floor anyway.
  const wide = far * frame.sinHalf + frame.extentAcross > NARROW;
  if (wide && standsAlongRail(frame, scene, room, cueLength, rim)) return true;
  return standsInPlace(frame, scene, room, near, far);
}

/**
 * One place, anywhere in the part that the windows of all shots share; or two, of which one serves shots whose windows lie more to
 * the left and the other the rest.
 *
 * Let all windows share the lateral range |l| <= w - m (w = SIDEWAYS) and let y1 lie in [-(w - m), w + k - e], y2 in [-w + k, w - m], e the
 * most by which their lateral distance changes over the box. A shot whose window y1 has left, l'(y1) > w, has
 * l'(y2) >= l'(y1) - (l(y1) - l(y2)) - e > w - (2 w - e) - e = -w, and l'(y2) <= w as for all.
 */
function standsInPlace(
  frame: BoxFrame,
  scene: StrokeScene,
  room: StandingRoom,
  near: number,
  far: number,
): boolean {
  const { u, v, sinHalf, cosHalf, cos, sin } = frame;
  const along = frame.extentAlong + LENGTH_SLACK;
  const across = frame.extentAcross + LENGTH_SLACK;
  const end = far - 2 * SIDEWAYS * sinHalf - along;
  const start = (near + 2 * SIDEWAYS * sinHalf + along) / cosHalf;
  const within = (to: number, right: number, left: number): boolean => {
    const off = (right + left) / 2;
    return canStand(scene, room, u - off * sin, v + off * cos, cos, sin, start, to, (left - right) / 2);
  };
  for (const to of [end, (start + end) / 2]) {
    const moves = to * sinHalf + across;
    const half = SIDEWAYS - moves;
    if (half < 0 || start > to) continue;
    if (within(to, -half, half)) return true;
    // y1 is there from some k on, y2 up to some k.
    const turned = (to - start) * sinHalf;
    let lo = -moves;
    let hi = moves + turned;
    for (let step = 0; step < TWO_PLACE_STEPS; step++) {
      const k = (lo + hi) / 2;
      const first = within(to, -half, SIDEWAYS + k - turned);
      const second = within(to, k - SIDEWAYS, half);
      if (first && second) return true;
      if (!first && !second) break;
      if (first) hi = k;
      else lo = k;
    }
  }
  return false;
}

/**
 * Places that move with the shot, at t_o + tau along the ray and l to its left. Those of rays that leave over one side of the rim lie
 * in a strip beside that side; places in the strip with room around them, close enough to one another, serve them all. True if
 * that works for every side over which some ray leaves.
 */
function standsAlongRail(
  frame: BoxFrame,
  scene: StrokeScene,
  room: StandingRoom,
  cueLength: number,
  rim: Range,
): boolean {
  const { u, v, halfU, halfV } = frame;
  const { rimX, rimY } = scene;
  return (
    standsBeside(frame, scene, room, cueLength, rim, 1, 0, rimX, rimY, u, v, halfU, halfV) &&
    standsBeside(frame, scene, room, cueLength, rim, -1, 0, rimX, rimY, -u, -v, halfU, halfV) &&
    standsBeside(frame, scene, room, cueLength, rim, 0, 1, rimY, rimX, v, -u, halfV, halfU) &&
    standsBeside(frame, scene, room, cueLength, rim, 0, -1, rimY, rimX, -v, u, halfV, halfU)
  );
}

/** For rays that leave over the side towards (mx, my); the other coordinates are along that vector and to its left. */
function standsBeside(
  frame: BoxFrame,
  scene: StrokeScene,
  room: StandingRoom,
  cueLength: number,
  rim: Range,
  mx: number,
  my: number,
  rimAhead: number,
  rimAside: number,
  ahead: number,
  aside: number,
  halfAhead: number,
  halfAside: number,
): boolean {
  const c = mx * frame.cos + my * frame.sin;
  const s = mx * frame.sin - my * frame.cos;
  const cHi = greatestDot(frame, c, s);
  if (cHi <= 0) return true;
  const cLo = Math.max(0, leastDot(frame, c, s));
  const sHi = greatestDot(frame, s, c);
  const sLo = leastDot(frame, s, c);

  // Where rays cross the side's line: t, and how far to the left.
  const near = rimAhead - ahead - halfAhead;
  const far = rimAhead - ahead + halfAhead;
  const tLo = Math.max(rim.lo, near / cHi - LENGTH_SLACK);
  const tHi = Math.min(rim.hi, far / cLo + LENGTH_SLACK, 2 * Math.hypot(rimAhead, rimAside));
  if (tLo > tHi) return true;
  const exitLo = Math.max(-rimAside, aside - halfAside + Math.min(tLo * sLo, tHi * sLo) - LENGTH_SLACK);
  const exitHi = Math.min(rimAside, aside + halfAside + Math.max(tLo * sHi, tHi * sHi) + LENGTH_SLACK);
  if (exitLo > exitHi) return true;

  const from = standingFrom(cueLength);
  const leastBehind = Math.max(0, from - tLo);
  const mostBehind = Math.max(BEHIND, cueLength - tHi);
  for (const shareAside of SHARES_ASIDE) {
    const l = shareAside * SIDEWAYS;
    for (const shareBehind of SHARES_BEHIND) {
      const tau = leastBehind + shareBehind * (mostBehind - leastBehind);
      // A disc of this radius around the shot's place lies in its window.
      const roomy = Math.min(
        SIDEWAYS - Math.abs(l),
        tLo + tau - from,
        Math.max(BEHIND - tau, cueLength - tHi - tau),
      );
      if (roomy < 0) continue;
      const offLo = tau * cLo - (l > 0 ? l * sHi : l * sLo);
      const offHi = tau * cHi - (l > 0 ? l * sLo : l * sHi);
      const spread = (offHi - offLo) / 2 + LENGTH_SLACK;
      const off = (offHi + offLo) / 2;
      if (off + roomy < scene.stance.radius) continue;
      const lo = exitLo + tau * sLo + l * (l > 0 ? cLo : cHi);
      const hi = exitHi + tau * sHi + l * (l > 0 ? cHi : cLo);
      if (isCovered(room, mx, my, rimAhead + off, 0, lo, hi, roomy - spread)) return true;
      // Where the floor is narrow the only places may be right beside the rim.
      const beside = scene.stance.radius + BESIDE - off;
      if (isCovered(room, mx, my, rimAhead + off, beside, lo, hi, roomy - spread)) return true;
    }
  }
  return false;
}

/**
 * Is there, for every point of the line from (x, lo) to (x, hi), a place nearer than `roomy` plus the room that the place has to
 * spare? Places are tried on the line from (x + dx, lo) to (x + dx, hi). Coordinates are along the unit vector (mx, my) and to its
 * left.
 */
function isCovered(
  room: StandingRoom,
  mx: number,
  my: number,
  x: number,
  dx: number,
  lo: number,
  hi: number,
  roomy: number,
): boolean {
  const row = x + dx;
  const stride = Math.sqrt(Math.max(0, roomy * roomy - dx * dx));
  let y = lo;
  while (y <= hi) {
    let reached = -Infinity;
    for (const step of STEPS) {
      const at = y + step * stride;
      const spare = room.slack(row * mx - at * my, row * my + at * mx);
      const reach = roomy + spare - LENGTH_SLACK;
      if (spare < 0 || reach <= Math.abs(dx)) continue;
      const within = Math.sqrt(reach * reach - dx * dx);
      if (at - within > y) continue;
      reached = at + within;
      break;
    }
    if (reached < y + LEAST_STEP && reached < hi) return false;
    y = Math.max(reached, y + LEAST_STEP);
  }
  return true;
}

/** True only if no shot of the box has room to stand: the window that holds all their windows holds no place. */
export function standsNowhere(
  frame: BoxFrame,
  scene: StrokeScene,
  room: StandingRoom,
  cueLength: number,
  rim: Range,
): boolean {
  if (scene.stance.never) return true;
  if (frame.cosHalf <= 0 || rim.hi === Infinity) return false;
  const { sinHalf, cosHalf } = frame;
  const along = frame.extentAlong + TOUCHING;
  const across = frame.extentAcross + TOUCHING;
  const far = standingTo(cueLength, rim.hi);
  const from = standingFrom(cueLength) * cosHalf - SIDEWAYS * sinHalf - along;
  const to = far + SIDEWAYS * sinHalf + along;
  const half = SIDEWAYS + far * sinHalf + across;
  return !canStand(scene, room, frame.u, frame.v, frame.cos, frame.sin, from, to, half);
}
