import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import { boundingBox } from '../geometry/ring.js';
import { inSteps, SAME_LENGTH, SAME_SHARE } from '../geometry/steady.js';
import type { Placement } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import { clearanceProbe } from './clearance-at.js';
import { compassSearch } from './compass-search.js';
import type { OpenReach } from './open-reach.js';
import { playerProblem, playSize, tableProblem } from './problem-for.js';
import { type ReachRing, shareScorer } from './share-score.js';
import { squareTurns } from './square-turns.js';

/** What {@link promisingPoses} is asked. */
export interface SharesQuestion {
  readonly scene: Scene;
  readonly table: TableSpec;
  readonly stroke: StrokeSettings;
  /** The wanted cue. */
  readonly cue: CueSpec;
  readonly reach: OpenReach;
  /** The place with most clearance: one of the starts. */
  readonly best: Placement;
}

/** How widely to look. */
export interface SearchWidth {
  /** Least number of places a side of the grid of starts, greatest distance between two of them (mm), */
  readonly grid: number;
  readonly step: number;
  /** and most turns of it: those along the longest walls. */
  readonly turns: number;
  /** Starts that are improved: so many by score, and so many by floor for the players. */
  readonly byScore: number;
  readonly byFloor: number;
  /** Starts of one turn that are closer than this are one, mm. */
  readonly apart: number;
  /** Most poses that are proposed. */
  readonly proposed: number;
}

/** Most places a side of the grid, in however large a room. */
const MOST_A_SIDE = 60;

/** Enough for most rooms, */
export const A_LOOK: SearchWidth = {
  grid: 7,
  step: 3000,
  turns: 2,
  byScore: 2,
  byFloor: 1,
  apart: 15,
  proposed: 3,
};
/** and for a crowded one, where the quick score tells less. */
export const A_LONG_LOOK: SearchWidth = {
  grid: 12,
  step: 600,
  turns: 10,
  byScore: 14,
  byFloor: 8,
  apart: 200,
  proposed: 24,
};

/** Compass: first and last step, mm, and most evaluations a start. */
const COMPASS = { step: 240, stop: 30, most: 18 } as const;
/** Turns closer than this (radians) are one. */
const SAME_TURN = 1e-9;
/** Poses closer than this (mm) count as one. */
const SAME_PLACE = 15;

/**
 * Poses worth a judge's look where no place is known to be clear, the most promising first; the table stands free at each.
 * Starts from the place with most clearance and from a grid over the room, square to the walls: the best by a quick score of
 * shares (walls, and things by their heights), and the one with most floor for the players (low furniture too). Improves them by
 * that score. Proposes only: nothing is proved about what it leaves out.
 */
export function promisingPoses(question: SharesQuestion, width: SearchWidth): readonly Placement[] {
  const { byScore, byFloor, apart } = width;
  const { scene, table, best } = question;
  const stander = clearanceProbe(tableProblem(scene, table));
  const floor = clearanceProbe(playerProblem(scene, table));
  const quick = shareScorer(reachRings(question), playSize(table));
  const score = (pose: Placement): number => (stander.stands(pose) ? quick(pose) : Number.NEGATIVE_INFINITY);

  const grid = gridPoses(scene, width).filter((pose) => stander.stands(pose));
  // Equals keep their order, whatever the last bits say.
  const scored = grid.map((pose) => ({ pose, rank: inSteps(quick(pose), SAME_SHARE) }));
  scored.sort((a, b) => b.rank - a.rank);
  const roomy = grid.map((pose) => ({ pose, rank: inSteps(floor.clearance(pose), SAME_LENGTH) }));
  roomy.sort((a, b) => b.rank - a.rank);
  const starts: Placement[] = [best];
  addFirst(starts, scored, byScore, apart);
  const floors: Placement[] = [];
  addFirst(floors, roomy, byFloor, apart);
  const improved = [...starts, ...floors].map((pose) => compassSearch(pose, score, COMPASS));
  improved.sort((a, b) => inSteps(b.score, SAME_SHARE) - inSteps(a.score, SAME_SHARE));
  const found: Placement[] = [];
  addFirst(found, improved, width.proposed - floors.length, SAME_PLACE);
  // The quick score does not see the players' floor, so what was chosen for that is proposed as it is.
  for (const pose of floors) addNew(found, pose, SAME_PLACE);
  return found;
}

/** A grid over the room, square to its longest walls. */
function gridPoses(scene: Scene, { grid, step, turns }: SearchWidth): readonly Placement[] {
  const box = boundingBox(scene.outline);
  const places = (from: number, to: number): readonly number[] => {
    const count = Math.min(MOST_A_SIDE, Math.max(grid, Math.ceil((to - from) / step)));
    return Array.from({ length: count }, (_, i) => from + ((i + 0.5) / count) * (to - from));
  };
  const xs = places(box.minX, box.maxX);
  const ys = places(box.minY, box.maxY);
  const poses: Placement[] = [];
  for (const angle of squareTurns(scene.outline).slice(0, turns)) {
    for (const x of xs) for (const y of ys) poses.push({ x, y, angle });
  }
  return poses;
}

/** What a level full stroke and a raised short one meet, with the reach at which they do. */
function reachRings({ scene, table, stroke, cue, reach }: SharesQuestion): readonly ReachRing[] {
  const { backswing, shortBackswing, margin, tipOffset, maxElevation } = stroke;
  const axis = table.bedHeight + table.ballDiameter / 2 + tipOffset;
  const ell = table.ballDiameter / 2 + cue.length + backswing;
  const short = table.ballDiameter / 2 + cue.length + shortBackswing;
  const raised = short * Math.cos(maxElevation);
  const rings: ReachRing[] = [
    { ring: scene.outline, inside: true, open: ell + margin, playable: raised + margin },
  ];
  for (const { ring, from, to } of scene.obstacles) {
    if (to + margin <= reach.low || from >= reach.high) continue;
    const over = (elevation: number): number => Math.max(0, (to + margin - axis) / Math.tan(elevation));
    const open = Math.min(ell, over(Math.max(reach.steepest / 2, 0.01)));
    const playable = Math.min(raised, over(maxElevation), open);
    rings.push({ ring, inside: false, open: open + margin, playable: playable + margin });
  }
  return rings;
}

/** Adds up to `most` of the ranked poses, the first ones that are not close to one that is there. */
function addFirst(
  poses: Placement[],
  ranked: readonly { readonly pose: Placement }[],
  most: number,
  apart: number,
): void {
  const end = poses.length + most;
  for (const { pose } of ranked) {
    if (poses.length >= end) return;
    addNew(poses, pose, apart);
  }
}

function addNew(poses: Placement[], pose: Placement, apart: number): void {
  const known = poses.some(
    (p) =>
      Math.abs(p.angle - pose.angle) < SAME_TURN &&
      Math.abs(p.x - pose.x) < apart &&
      Math.abs(p.y - pose.y) < apart,
  );
  if (!known) poses.push(pose);
}
