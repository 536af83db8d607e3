import type { ShotBox } from './box-bounds.js';
import {
  BoxJudge,
  EVERY_FACT,
  NO_OPEN_ELEVATION,
  NO_PLAYABLE_ELEVATION,
  NO_ROOM_TO_STAND,
  OPEN_ELEVATION,
  PLAYABLE_ELEVATION,
  ROOM_TO_STAND,
} from './box-judge.js';
import type { StandingRoom } from './standing-room.js';
import type { StrokeCue, StrokeScene } from './stroke-scene.js';

/** What {@link boxStatus} may prove of a box of shots; bits of one number. */
export const ALL_OPEN = 1;
export const ALL_PLAYABLE = 2;
export const NONE_OPEN = 4;
export const NONE_PLAYABLE = 8;

/**
 * What holds for every shot of a box, for one cue: the sum of {@link ALL_OPEN}, {@link ALL_PLAYABLE} (open or cramped),
 * {@link NONE_OPEN} and {@link NONE_PLAYABLE} (all blocked), as far as bounds over the box prove it. A missing bit says nothing.
 *
 * Certified up to rounding. All balls of the box must lie in Q. For many boxes of one scene make one {@link BoxJudge}.
 */
export function boxStatus(scene: StrokeScene, room: StandingRoom, cue: StrokeCue, box: ShotBox): number {
  const judge = new BoxJudge(scene, room, cue, 2);
  judge.judge(box, EVERY_FACT, judge.listAll(), 1);
  return statusOf(judge.facts);
}

/** The {@link boxStatus} that follows from the facts of a {@link BoxJudge}. */
export function statusOf(facts: number): number {
  let status = 0;
  if ((facts & ROOM_TO_STAND) !== 0) {
    if ((facts & OPEN_ELEVATION) !== 0) status |= ALL_OPEN | ALL_PLAYABLE;
    if ((facts & PLAYABLE_ELEVATION) !== 0) status |= ALL_PLAYABLE;
  }
  if ((facts & NO_OPEN_ELEVATION) !== 0) status |= NONE_OPEN;
  if ((facts & (NO_PLAYABLE_ELEVATION | NO_ROOM_TO_STAND)) !== 0) status |= NONE_OPEN | NONE_PLAYABLE;
  return status;
}
