import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import { boundingBox } from '../geometry/ring.js';
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

/** Places a side of the grid of starts, and most turns of it: those along the longest walls. */
const GRID = 7;
const GRID_TURNS = 2;
/** Starts that are improved: so many by score, and so many by floor for the players. */
const BY_SCORE = 2;
const BY_FLOOR = 1;
/** Compass: first and last step, mm, and most evaluations a start. */
const COMPASS = { step: 240, stop: 30, most: 18 } as const;
/** Most poses that are proposed. */
const PROPOSED = 3;
/** Poses closer than this (mm) count as one. */
const SAME_PLACE = 15;

/**
 * Poses worth a judge's look where no place is known to be clear, the most promising first; the table stands free at each.
 * Starts from the place with most clearance and from a grid over the room, square to the walls: the best by a quick score of
 * shares (walls, and things by their heights), and the one with most floor for the players (low furniture too). Improves them by
 * that score. Proposes only: nothing is proved about what it leaves out.
 */
export function promisingPoses(question: SharesQuestion): readonly Placement[] {
  const { scene, table, best } = question;
  const stander = clearanceProbe(tableProblem(scene, table));
  const floor = clearanceProbe(playerProblem(scene, table));
  const quick = shareScorer(reachRings(question), playSize(table));
  const score = (pose: Placement): number => (stander.stands(pose) ? quick(pose) : Number.NEGATIVE_INFINITY);

  const grid = gridPoses(scene).filter((pose) => stander.stands(pose));
  const scored = grid.map((pose) => ({ pose, score: quick(pose) })).sort((a, b) => b.score - a.score);
  const roomy = grid.map((pose) => ({ pose, room: floor.clearance(pose) })).sort((a, b) => b.room - a.room);
  const starts: Placement[] = [best];
  for (const { pose } of scored.slice(0, BY_SCORE)) addNew(starts, pose);
  for (const { pose } of roomy.slice(0, BY_FLOOR)) addNew(starts, pose);
  const improved = starts
    .map((pose) => compassSearch(pose, score, COMPASS))
    .sort((a, b) => b.score - a.score);
  const found: Placement[] = [];
  for (const { pose } of improved.slice(0, PROPOSED - BY_FLOOR)) addNew(found, pose);
  for (const { pose } of roomy.slice(0, BY_FLOOR)) addNew(found, pose);
  return found;
}

/** A grid over the room, square to its longest walls. */
function gridPoses(scene: Scene): readonly Placement[] {
  const box = boundingBox(scene.outline);
  const poses: Placement[] = [];
  for (const angle of squareTurns(scene.outline).slice(0, GRID_TURNS)) {
    for (let i = 0; i < GRID; i++) {
      for (let j = 0; j < GRID; j++) {
        const x = box.minX + ((i + 0.5) / GRID) * (box.maxX - box.minX);
        const y = box.minY + ((j + 0.5) / GRID) * (box.maxY - box.minY);
        poses.push({ x, y, angle });
      }
    }
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

function addNew(poses: Placement[], pose: Placement): void {
  const known = poses.some(
    (p) =>
      p.angle === pose.angle && Math.abs(p.x - pose.x) < SAME_PLACE && Math.abs(p.y - pose.y) < SAME_PLACE,
  );
  if (!known) poses.push(pose);
}
