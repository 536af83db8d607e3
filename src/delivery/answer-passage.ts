import { carriedWith, type Hold, type Piece } from './carried.js';
import { crossAsCarried } from './choose-hold.js';
import type { DeliveryOutcome, MomentReport, MotionReport, PassageAnswer } from './delivery-report.js';
import { reportHold } from './hold-report.js';
import type { Motion, MotionPose } from './motion.js';
import type { Passage } from './passages.js';
import type { Cross, ProvedCrossing } from './prove-crossing.js';

export interface AnswerOptions {
  readonly handRoom: number;
  readonly motions: boolean;
}

export interface AnsweredPassage {
  readonly answer: PassageAnswer;
  readonly crossing: ProvedCrossing;
}

/**
 * The answer for one piece in one passage. `passes` is said only of a motion that was replayed from its first pose to its last without
 * touching anything; where the replay of a motion fails, the piece is `undecided`.
 */
export function answerPassage(
  passage: Passage,
  piece: Piece,
  before: Hold | null,
  cross: Cross,
  options: AnswerOptions,
): AnsweredPassage {
  const box = carriedWith(piece, options.handRoom);
  const crossing = crossAsCarried(passage, box, before, cross);
  const { hold, narrowest, motion } = crossing;
  const outcome = outcomeOf(crossing);
  const answer: PassageAnswer = {
    passage: passage.name,
    kind: passage.kind,
    outcome,
    certain: isCertain(outcome, crossing, passage.tolerance),
    anyMotion: outcome === 'blocked' && crossing.atMostAnyMotion < 0,
    hold: hold === null ? null : reportHold(box, hold),
    spare: { atLeast: finite(crossing.atLeast), atMost: finite(crossing.atMost) },
    withoutHandRoom:
      outcome !== 'passes' && options.handRoom > 0 && cross(passage, carriedWith(piece, 0)).atLeast >= 0,
    narrowest: narrowest === null ? null : momentOf(narrowest),
    method: crossing.method,
    replayed: crossing.replayed,
  };
  const full = options.motions && motion !== null ? { ...answer, motion: motionOf(motion) } : answer;
  return { answer: full, crossing };
}

function outcomeOf(crossing: ProvedCrossing): DeliveryOutcome {
  if (crossing.atLeast >= 0) return 'passes';
  return crossing.atMost < 0 ? 'blocked' : 'undecided';
}

/** The same outcome for every passage whose measures are off by no more than the tolerance. */
function isCertain(outcome: DeliveryOutcome, crossing: ProvedCrossing, tolerance: number): boolean {
  if (outcome === 'passes') return crossing.atLeast >= tolerance;
  return outcome === 'blocked' && crossing.atMost < -tolerance;
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function momentOf(pose: MotionPose): MomentReport {
  const degrees = (radians: number): number => (radians * 180) / Math.PI;
  const { x, y, z, heading, tilt, roll } = pose;
  return { x, y, z, heading: degrees(heading), tilt: degrees(tilt), roll: degrees(roll) };
}

function motionOf({ along, across, up, poses }: Motion): MotionReport {
  return { along, across, up, poses: poses.map(momentOf) };
}
