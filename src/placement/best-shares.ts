import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import { boundingBox } from '../geometry/ring.js';
import type { Placement } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import { type ClearanceProbe, clearanceProbe } from './clearance-at.js';
import { compassSearch } from './compass-search.js';
import { findPlacement } from './find-placement.js';
import type { OpenReach } from './open-reach.js';
import { cueingProblem, playerProblem, playSize, tableProblem } from './problem-for.js';
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
  /** The place with most clearance: always among the starts. */
  readonly best: Placement;
}

/** Places a side of the grid of starts. */
const GRID = 8;
/** Starts taken from each ordering of the grid. */
const FROM_EACH = 4;
/** Starts that are improved, by score. */
const IMPROVED = 3;
/** Compass: first and last step, mm, and most evaluations a start. */
const COMPASS = { step: 240, stop: 30, most: 24 } as const;
/** Poses closer than this (mm) count as one. */
const SAME_PLACE = 15;

/**
 * Poses worth a judge's look where no place is known to be clear, the most promising first; the table stands free at each.
 * Starts from the places with most clearance to everything, to the walls alone and with most floor for the players, and from
 * the best of a grid by each of these; improves the best few by a quick score of shares. All turns are square to a wall, but
 * for that of the place with most clearance. Proposes only: nothing is proved about what it leaves out.
 */
export function promisingPoses(question: SharesQuestion): readonly Placement[] {
  const { scene, table, stroke, reach, best } = question;
  const frameRoom = tableProblem(scene, table);
  const stander = clearanceProbe(frameRoom);
  const problems = [
    cueingProblem(scene, table, stroke.margin, reach),
    frameRoom,
    playerProblem(scene, table),
  ];
  const probes = problems.map((p) => clearanceProbe(p));
  const quick = shareScorer(reachRings(question), playSize(table));
  const score = (pose: Placement): number => (stander.stands(pose) ? quick(pose) : Number.NEGATIVE_INFINITY);

  const starts: Placement[] = [best];
  for (const problem of problems.slice(1)) {
    const { pose } = findPlacement(problem, { gap: 20, maxBoxes: 2000, turns: 'square' });
    if (pose !== null) addNew(starts, pose);
  }
  const grid = gridPoses(scene, stander);
  for (const probe of probes) {
    const ranked = grid.map((pose) => ({ pose, room: probe.clearance(pose) }));
    ranked.sort((a, b) => b.room - a.room);
    for (const { pose } of ranked.slice(0, FROM_EACH)) addNew(starts, pose);
  }
  const scored = starts
    .map((pose) => ({ pose, score: score(pose) }))
    .filter((s) => s.score > Number.NEGATIVE_INFINITY);
  scored.sort((a, b) => b.score - a.score);
  const improved = scored.slice(0, IMPROVED).map((s) => compassSearch(s.pose, score, COMPASS));
  improved.sort((a, b) => b.score - a.score);
  const found: Placement[] = [];
  for (const { pose } of improved) addNew(found, pose);
  addNew(found, best);
  return found;
}

/** Standing poses of a grid over the room, square to its walls. */
function gridPoses(scene: Scene, stands: ClearanceProbe): readonly Placement[] {
  const box = boundingBox(scene.outline);
  const poses: Placement[] = [];
  for (const angle of squareTurns(scene.outline).slice(0, 4)) {
    for (let i = 0; i < GRID; i++) {
      for (let j = 0; j < GRID; j++) {
        const pose = {
          x: box.minX + ((i + 0.5) / GRID) * (box.maxX - box.minX),
          y: box.minY + ((j + 0.5) / GRID) * (box.maxY - box.minY),
          angle,
        };
        if (stands.stands(pose)) poses.push(pose);
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
