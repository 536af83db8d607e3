import { LIMITS } from '../equipment/limits.js';
import { SAME_LENGTH } from '../geometry/steady.js';
import { StrokeClassifier } from './classify-traced.js';
import { growthInPlan } from './prepare-strokes.js';
import type { StandingRoom } from './standing-room.js';
import type { StrokeCue, StrokeScene } from './stroke-scene.js';
import { ShotTrace } from './trace-shot.js';

/** The four cushions in the table's own frame: `endA` lies towards +x, `sideA` towards +y, `endB` and `sideB` opposite. */
export type CushionName = 'endA' | 'sideA' | 'endB' | 'sideB';

/** The longest cue at spots along one cushion. */
export interface CushionLengths {
  readonly cushion: CushionName;
  /**
   * `at`: mm from the cushion's middle along +y (ends) or +x (sides), in rising order; `open` and `cramped`: the longest cue with which
   * the shot is open, and with which it can be played at all; 0 where none will do.
   */
  readonly spots: readonly { readonly at: number; readonly open: number; readonly cramped: number }[];
}

/** No cue that is longer than this is looked for (mm), unless the one that was asked for is: none of the trade comes near it. */
const LONGEST = 2000;
/** Lengths are tried in these steps from the longest down, mm, and the first step that holds one is halved down to */
const STEP = 50;
/** this, mm. */
const PRECISION = 1;
/** Spots are put on both sides of a corner's edge, this far from it, mm. */
const BESIDE = 0.5;
/** With more corners than this ahead of a cushion, only the evenly spaced spots are looked at. */
const MOST_CORNERS = 12;

const CUSHIONS = [
  { cushion: 'endA', ux: 1, uy: 0 },
  { cushion: 'sideA', ux: 0, uy: 1 },
  { cushion: 'endB', ux: -1, uy: 0 },
  { cushion: 'sideB', ux: 0, uy: -1 },
] as const;

/**
 * For a ball frozen on each cushion and played square off it, the butt out over that cushion: the longest cue, with the diameters of
 * `cue`, at `spots` (>= 2) evenly spaced places from one end of the ball's way to the other, and on both sides of every corner of
 * a wall or thing ahead, where the answer jumps.
 *
 * The longest cue is at most 2,000 mm, or as long as `cue` if that is longer. The shot can be played with exactly the length given,
 * and a millimetre more will not do. Longer ones may: taper and standing window change with the length, so it need not be playable
 * with every shorter cue nor with none longer; lengths are tried every 50 mm, and what is playable between two of those alone goes
 * unseen.
 */
export function cushionProfiles(
  scene: StrokeScene,
  room: StandingRoom,
  cue: StrokeCue,
  spots: number,
): CushionLengths[] {
  const longest = Math.max(LONGEST, cue.length);
  const trace = new ShotTrace(scene, scene.ballRadius + scene.stroke.backswing + longest);
  return CUSHIONS.map(({ cushion, ux, uy }) => {
    const half = ux === 0 ? scene.qx : scene.qy;
    const places = spotsAlong(scene, ux, uy, half, spots, trace.reach);
    return {
      cushion,
      spots: places.map((at) => {
        const x = ux === 0 ? at : ux * scene.qx;
        const y = uy === 0 ? at : uy * scene.qy;
        trace.follow(x, y, ux, uy);
        return { at, ...longestCues(scene, room, cue, trace, longest) };
      }),
    };
  });
}

function longestCues(
  scene: StrokeScene,
  room: StandingRoom,
  cue: StrokeCue,
  trace: ShotTrace,
  longest: number,
): { open: number; cramped: number } {
  const classWith = (length: number): number =>
    new StrokeClassifier(scene, { ...cue, length }).classify(trace, room);
  // Up to theta_max the short stroke must stop short of the wall: no longer cue needs to be tried.
  const { shortBackswing, maxElevation } = scene.stroke;
  // Shorter than that by more than rounding: just stopping short is no question of last bits.
  const byWall = trace.wall / Math.cos(maxElevation) - scene.ballRadius - shortBackswing - SAME_LENGTH;
  const top = trace.wallEdge < 0 ? longest : Math.min(longest, byWall);
  const shortest = LIMITS.cue.length[0];
  const best = [0, 0];
  let above = Infinity;
  for (let length = top; length >= shortest && best[0] === 0; length -= STEP) {
    const code = classWith(length);
    for (const rank of [0, 1]) {
      if (best[rank] === 0 && code <= rank)
        best[rank] = above === Infinity ? length : refined(length, above, (l) => classWith(l) <= rank);
    }
    above = length;
  }
  return { open: best[0], cramped: best[1] };
}

/** Between a length that will do and a longer one that will not: one that will do, next to one that will not. */
function refined(good: number, bad: number, willDo: (length: number) => boolean): number {
  let low = good;
  let high = bad;
  while (high - low > PRECISION) {
    const length = (low + high) / 2;
    if (willDo(length)) low = length;
    else high = length;
  }
  return low;
}

/** Evenly spaced places in [-half, half] and those beside the edges of grown corners ahead of the cushion, in rising order. */
function spotsAlong(
  scene: StrokeScene,
  ux: number,
  uy: number,
  half: number,
  count: number,
  reach: number,
): number[] {
  const even = Array.from({ length: count }, (_, i) => half * ((2 * i) / (count - 1) - 1));
  const margin = growthInPlan(scene);
  const from = ux === 0 ? scene.qy : scene.qx;
  const beside: number[] = [];
  const corner = (x: number, y: number): void => {
    const ahead = x * ux + y * uy - from;
    const at = ux === 0 ? x : y;
    if (ahead > -margin && ahead < reach + margin && Math.abs(at) < half + margin)
      for (const edge of [at - margin, at + margin]) beside.push(edge - BESIDE, edge + BESIDE);
  };
  const { walls, parts } = scene;
  for (let i = 0; i < walls.count; i++) corner(walls.ax[i], walls.ay[i]);
  for (let i = 0; i < parts.edges.count; i++) corner(parts.edges.ax[i], parts.edges.ay[i]);
  const more = beside.length > 4 * MOST_CORNERS ? [] : beside.filter((at) => Math.abs(at) < half);
  return [...new Set([...even, ...more])].sort((a, b) => a - b);
}
