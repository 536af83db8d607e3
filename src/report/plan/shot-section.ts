import { rayInGrownConvex } from '../../geometry/ray-convex.js';
import type { Point } from '../../geometry/types.js';
import type { SceneObstacle } from '../../room/scene.js';
import { growthInPlan } from '../../stroke/prepare-strokes.js';
import { railDistances } from '../../stroke/rail-elevation.js';
import { standingFrom, standingTo } from '../../stroke/standing.js';
import type { StrokeCue, StrokeScene } from '../../stroke/stroke-scene.js';

/** The upright plane of one shot: t along the plan from the ball's centre to the butt, z above the floor, mm. */
export interface ShotSection {
  /** Where the ray leaves nose, crest and rim: ahead (towards the butt), and behind the ball. */
  readonly ahead: RailAt;
  readonly behind: RailAt;
  /** The first wall ahead, on its inside face; null where none is met within the reach. */
  readonly wall: { readonly at: number; readonly name: string } | null;
  /** Things that the plane cuts before that wall. */
  readonly cut: readonly CutThing[];
  /** The same grown by the margin, as far as the axis has to keep off; also of things that only the margin reaches. */
  readonly margins: readonly CutThing[];
  /** The lowest of the ceiling's faces over [0, end], as corners of a line; empty without a ceiling. */
  readonly ceiling: readonly Point[];
  /** Where the standing disc's centre may be. */
  readonly standing: readonly [number, number];
}

export interface RailAt {
  readonly nose: number;
  readonly crest: number;
  readonly rim: number;
}

export interface CutThing {
  readonly name: string;
  readonly from: number;
  /** `Infinity`: up to the ceiling. */
  readonly to: number;
  readonly t0: number;
  readonly t1: number;
}

/** Cuts the scene from the ball (x, y) in direction phi (table's frame, radians), over [start, end]. */
export function shotSection(
  scene: StrokeScene,
  obstacles: readonly SceneObstacle[],
  cue: StrokeCue,
  [x, y]: Point,
  phi: number,
  [start, end]: readonly [number, number],
): ShotSection {
  const ux = Math.cos(phi);
  const uy = Math.sin(phi);
  const wall = firstWall(scene, x, y, ux, uy);
  const limit = Math.min(end, wall?.at ?? end);
  const things = (margin: number): readonly CutThing[] => {
    const { parts } = scene;
    const ray = Float64Array.of(x, y, ux, uy);
    const span = new Float64Array(2);
    const found: CutThing[] = [];
    for (let k = 0; k < parts.count; k++) {
      if (!rayInGrownConvex(parts.edges, parts.start[k], parts.start[k + 1], margin, ray, span)) continue;
      if (span[0] >= limit) continue;
      const { name, from, to } = obstacles[parts.obstacle[k]];
      found.push({ name, from: from - margin, to: to + margin, t0: span[0], t1: Math.min(span[1], limit) });
    }
    return joined(found);
  };
  const ahead = railDistances(scene, x, y, ux, uy);
  return {
    ahead,
    behind: railDistances(scene, x, y, -ux, -uy),
    wall: wall !== null && wall.at <= end ? wall : null,
    cut: things(0),
    margins: things(growthInPlan(scene)),
    ceiling: ceilingOver(scene, x, y, ux, uy, [start, end]),
    standing: [standingFrom(cue.length), standingTo(cue.length, ahead.rim)],
  };
}

/** Pieces of one thing that touch are one. */
function joined(things: readonly CutThing[]): readonly CutThing[] {
  const found: CutThing[] = [];
  for (const thing of [...things].sort((a, b) => a.t0 - b.t0)) {
    const i = found.findIndex(
      (f) => f.name === thing.name && f.from === thing.from && f.to === thing.to && f.t1 >= thing.t0 - TOUCH,
    );
    if (i < 0) found.push(thing);
    else found[i] = { ...found[i], t1: Math.max(found[i].t1, thing.t1) };
  }
  return found;
}

/** mm; pieces cut from one footprint meet to rounding. */
const TOUCH = 1e-6;

function firstWall(
  scene: StrokeScene,
  x: number,
  y: number,
  ux: number,
  uy: number,
): { at: number; name: string } | null {
  const { walls } = scene;
  let best: { at: number; name: string } | null = null;
  for (let i = 0; i < walls.count; i++) {
    const ax = walls.ax[i] - x;
    const ay = walls.ay[i] - y;
    const bx = walls.bx[i] - x;
    const by = walls.by[i] - y;
    const sideA = ay * ux - ax * uy;
    const sideB = by * ux - bx * uy;
    if (sideA < 0 === sideB < 0) continue;
    const share = sideA / (sideA - sideB);
    const at = (ax + share * (bx - ax)) * ux + (ay + share * (by - ay)) * uy;
    if (at >= 0 && (best === null || at < best.at)) best = { at, name: scene.wallNames[i] };
  }
  return best;
}

/** The lower envelope of straight lines: its corners lie at the ends and where two lines cross. */
function ceilingOver(
  { ceiling }: StrokeScene,
  x: number,
  y: number,
  ux: number,
  uy: number,
  [start, end]: readonly [number, number],
): readonly Point[] {
  const lines = ceiling.map(({ height, slopeX, slopeY }) => ({
    height: height + slopeX * x + slopeY * y,
    slope: slopeX * ux + slopeY * uy,
  }));
  if (lines.length === 0) return [];
  const places = [start, end];
  lines.forEach((a, i) => {
    for (const b of lines.slice(i + 1)) {
      const t = (b.height - a.height) / (a.slope - b.slope);
      if (t > start && t < end) places.push(t);
    }
  });
  return places
    .sort((a, b) => a - b)
    .map((t): Point => [t, Math.min(...lines.map(({ height, slope }) => height + slope * t))]);
}
