import { DEFAULTS } from '../equipment/defaults.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import type { Ring, Size } from '../geometry/types.js';
import { lowCeilingRings } from '../room/ceiling.js';
import type { Scene, SceneObstacle } from '../room/scene.js';
import type { PlacementProblem } from './placement-problem.js';

/** Whose footprint it is in a placement problem: an obstacle, a face of the ceiling, a door or reserved floor, by its index in the scene. */
export interface FootprintOwner {
  readonly kind: 'obstacle' | 'ceiling' | 'door' | 'reserved';
  readonly index: number;
  readonly name: string;
}

/** A placement problem that knows whose its footprints are: `tallOwners[i]` owns `tall[i]`, likewise `low`. */
export interface NamedProblem extends PlacementProblem {
  readonly tallOwners: readonly FootprintOwner[];
  readonly lowOwners: readonly FootprintOwner[];
}

/** Heights above the floor, mm, that sort the room's things for a table and a cue. */
export interface SortingHeights {
  /** A thing whose top plus the margin stays at or below this lies under every cue. */
  readonly low: number;
  /** A thing whose underside is at or above this lies over every open stroke. */
  readonly high: number;
}

/** Q: the rectangle of ball centres, mm. */
export function playSize(table: TableSpec): Size {
  return { length: table.field.length - table.ballDiameter, width: table.field.width - table.ballDiameter };
}

/** Top of the rail above the floor, mm. */
export function railTop(table: TableSpec): number {
  return table.bedHeight + table.railHeight;
}

/**
 * Room to cue. Tall: obstacles that reach between the two heights, and the floor under a ceiling lower than `high` (a
 * conservative reading: a level cue may still pass there). Low: whatever else is in the frame's way. `grow` (e) makes every
 * height less kind by so much; the plan itself is not grown.
 */
export function cueingProblem(
  scene: Scene,
  table: TableSpec,
  margin: number,
  heights: SortingHeights,
  grow = 0,
): NamedProblem {
  return sortFootprints(scene, table, grow, {
    isTall: (o) => o.to + margin + grow > heights.low && o.from - grow < heights.high,
    tallCeiling: heights.high,
  });
}

/**
 * Room to stand for the table alone: nothing is tall but the walls, and only what is in the frame's way counts. It decides
 * whether the table can stand at all, and gives the places where the walls alone leave most room.
 */
export function tableProblem(scene: Scene, table: TableSpec, grow = 0): NamedProblem {
  return sortFootprints(scene, table, grow, { isTall: () => false, tallCeiling: null });
}

/**
 * Room to stand for players: the frame plays Q, and everything that leaves no room to stand is tall, so that the clearance
 * is the width of free floor all round the frame. A player may stand in a door's swing, a table may not.
 */
export function playerProblem(scene: Scene, table: TableSpec, grow = 0): NamedProblem {
  const { headHeight, ceiling } = DEFAULTS.standing;
  const sorted = sortFootprints(scene, table, grow, {
    isTall: (o) => o.from - grow < headHeight,
    tallCeiling: ceiling,
  });
  return { ...sorted, play: sorted.frame };
}

/**
 * What surely blocks: besides the walls only obstacles that an open stroke can pass neither over nor under. Where even
 * these leave too little clearance, no place is clear.
 */
export function surelyBlockingProblem(
  scene: Scene,
  table: TableSpec,
  heights: { readonly under: number; readonly over: number },
): NamedProblem {
  return sortFootprints(scene, table, 0, {
    isTall: (o) => o.from <= heights.under && o.to >= heights.over,
    tallCeiling: null,
  });
}

function sortFootprints(
  scene: Scene,
  table: TableSpec,
  grow: number,
  rule: { readonly isTall: (obstacle: SceneObstacle) => boolean; readonly tallCeiling: number | null },
): NamedProblem {
  const tall: Ring[] = [];
  const tallOwners: FootprintOwner[] = [];
  const low: Ring[] = [];
  const lowOwners: FootprintOwner[] = [];
  const top = railTop(table);
  scene.obstacles.forEach((obstacle, index) => {
    const owner: FootprintOwner = { kind: 'obstacle', index, name: obstacle.name };
    if (rule.isTall(obstacle)) {
      tall.push(obstacle.ring);
      tallOwners.push(owner);
    } else if (obstacle.from - grow < top) {
      low.push(obstacle.ring);
      lowOwners.push(owner);
    }
  });
  scene.ceiling.forEach((face, index) => {
    const owner: FootprintOwner = { kind: 'ceiling', index, name: face.name };
    const underFace = (height: number): readonly Ring[] =>
      lowCeilingRings({ ...scene, ceiling: [face] }, height + grow);
    if (rule.tallCeiling === null) {
      for (const ring of underFace(top)) {
        low.push(ring);
        lowOwners.push(owner);
      }
    } else {
      for (const ring of underFace(rule.tallCeiling)) {
        tall.push(ring);
        tallOwners.push(owner);
      }
    }
  });
  scene.doors.forEach((door, index) => {
    if (door.swing === null) return;
    low.push(door.swing);
    lowOwners.push({ kind: 'door', index, name: door.name });
  });
  scene.reserved.forEach(({ name, ring }, index) => {
    low.push(ring);
    lowOwners.push({ kind: 'reserved', index, name });
  });
  const frame: Size = { length: table.outer.length, width: table.outer.width };
  return { play: playSize(table), frame, outline: scene.outline, tall, tallOwners, low, lowOwners };
}
