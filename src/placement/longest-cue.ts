import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import type { Placement } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import { clearanceAt } from './clearance-at.js';
import { openReach } from './open-reach.js';
import { cueingProblem } from './problem-for.js';

/** What {@link longestLevelCue} is asked. */
export interface LongestCueQuestion {
  readonly scene: Scene;
  readonly table: TableSpec;
  readonly stroke: StrokeSettings;
  /** The cue that the clearance was measured for. */
  readonly cue: CueSpec;
  readonly pose: Placement;
  /** Distance from Q to what is tall for that cue, mm. */
  readonly clearance: number;
}

/**
 * The longest cue with which no level stroke meets anything at the pose, mm: clearance - R - s - a. A longer cue also reaches
 * higher, so where the answer is longer than the cue that the clearance was measured for, it is measured once more with what
 * is tall for the longer one. What is tall for the answer was then counted, and more; it errs on the short side.
 */
export function longestLevelCue(question: LongestCueQuestion): number {
  const { scene, table, stroke, cue, pose, clearance } = question;
  const { rho } = openReach(table, stroke, cue);
  const besides = rho - cue.length;
  const length = Math.max(0, clearance - besides);
  if (length <= cue.length) return length;
  const reach = openReach(table, stroke, { ...cue, length });
  const higher = clearanceAt(cueingProblem(scene, table, stroke.margin, reach), pose).clearance;
  return Math.max(cue.length, higher - besides);
}
