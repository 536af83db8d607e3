import { StrokeClassifier } from './classify-traced.js';
import type { StandingRoom } from './standing-room.js';
import type { StrokeCue, StrokeScene } from './stroke-scene.js';
import { ShotTrace } from './trace-shot.js';

/** What answers call the two things that have no name of their own. */
export const STANDING_ROOM = 'standing room';
export const THE_RAIL = 'the rail';

export type ShotClass = 'open' | 'cramped' | 'blocked';

/** What becomes of one shot, angles in radians. */
export interface AnsweredShot {
  readonly class: ShotClass;
  /**
   * Least elevation at which nothing is in the cue's way, whether or not there is room to stand: theta_rail where that is free with
   * the full backswing, otherwise the least one that is free with the short backswing; null where none is up to theta_max.
   */
  readonly elevation: number | null;
  /** theta_rail; null where the rail leaves no elevation at all. */
  readonly railElevation: number | null;
  readonly canStand: boolean;
  /**
   * Names of what forbids the open stroke: the first wall ahead, obstacles, ceiling faces, `'standing room'`, `'the rail'` (theta_rail
   * is steeper than theta_max). Empty for an open shot.
   */
  readonly meets: readonly string[];
}

/**
 * One shot for one cue: ball (x, y) in Q, mm in the table's frame, direction `phi` from the ball to the butt. All angles in radians.
 * The same rules as `shotShares`, with reasons.
 */
export function answerShot(
  scene: StrokeScene,
  room: StandingRoom,
  cue: StrokeCue,
  x: number,
  y: number,
  phi: number,
): AnsweredShot {
  const classifier = new StrokeClassifier(scene, cue);
  const trace = new ShotTrace(scene, classifier.ell);
  trace.follow(x, y, Math.cos(phi), Math.sin(phi));
  const tan = classifier.railTangent(trace);
  const open = classifier.openAtRail(trace);
  const canStand = classifier.stands(trace, room);
  const railElevation = tan === Infinity ? null : Math.atan(tan);
  const least = open ? Math.atan(tan) : classifier.leastElevation(trace, 'short');
  const meets: string[] = [];
  if (!open) meets.push(...forbidding(classifier, trace));
  if (!canStand) meets.push(STANDING_ROOM);
  return {
    class: !canStand || least < 0 ? 'blocked' : open ? 'open' : 'cramped',
    elevation: least < 0 ? null : least,
    railElevation,
    canStand,
    meets,
  };
}

/** Names of what keeps the cue from theta_rail with the full backswing, each once. */
function forbidding(classifier: StrokeClassifier, trace: ShotTrace): Set<string> {
  const { scene } = trace;
  const tan = classifier.tanRail;
  if (classifier.railTooSteep) return new Set([THE_RAIL]);
  const names = new Set<string>();
  if (classifier.wallForbids(tan, trace)) names.add(scene.wallNames[trace.wallEdge]);
  for (let k = 0; k < trace.partCount; k++) {
    if (classifier.partForbids(tan, trace, k))
      names.add(scene.parts.obstacleNames[scene.parts.obstacle[trace.part[k]]]);
  }
  scene.ceiling.forEach((face, i) => {
    if (classifier.ceilingForbids(tan, trace, i)) names.add(face.name);
  });
  return names;
}
