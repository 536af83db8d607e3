import {
  type AnsweredShot,
  answerShot,
  railDistances,
  STANDING_ASIDE,
  type StrokeScene,
  standingFrom,
  standingTo,
} from 'elbowroom/stroke';
import { alongCue, type LineFindings } from './cue-line.js';
import { fieldToRoom, type Point, toRadians } from './plan-geometry.js';
import { cueFor, type ProbeModel, type Settings } from './probe-model.js';
import type { Shot } from './shot.js';
import { type StandingWindow, standingSpot } from './standing-spot.js';

/** One shot with its answer and all that the drawing of it needs. Angles in degrees, lengths in mm, points in the room. */
export interface JudgedShot {
  readonly shot: Shot;
  readonly class: AnsweredShot['class'];
  readonly elevation: number | null;
  readonly railElevation: number | null;
  readonly canStand: boolean;
  readonly meets: readonly string[];
  readonly ball: Point;
  /** Unit vector from the ball to the butt. */
  readonly direction: Point;
  /** Along the cue's line in plan, from the ball: tip, butt, and butt when drawn back. */
  readonly tip: number;
  readonly butt: number;
  readonly drawnBack: number;
  readonly window: { readonly from: number; readonly to: number; readonly half: number };
  /** Middle of the player's disc; null where there is no room or no place was found to draw. */
  readonly player: Point | null;
  readonly playerRadius: number;
  readonly line: LineFindings;
}

/** Where a player is drawn by choice: so much of the cue's length behind the ball, and so far behind the rail. */
const BY_CHOICE = { share: 0.7, behindRail: 300 } as const;

/** The same answer as `classifyShot` gives, on the room that was made ready once. */
export function judgeShot(
  model: ProbeModel,
  strokes: StrokeScene,
  settings: Settings,
  shot: Shot,
): JudgedShot {
  const cue = cueFor(model, settings);
  const phi = toRadians(shot.direction);
  const answer = answerShot(strokes, model.standing, cue, shot.x, shot.y, phi);
  const ball = fieldToRoom(model.pose, [shot.x, shot.y]);
  const inRoom = phi + toRadians(model.pose.turn);
  const direction: Point = [Math.cos(inRoom), Math.sin(inRoom)];

  const { stroke, ballRadius } = strokes;
  // The short swing is drawn where the full one is what does not go.
  const short = answer.elevation !== null && answer.meets.length > (answer.canStand ? 0 : 1);
  const swing = short ? stroke.shortBackswing : stroke.backswing;
  const elevation = answer.elevation ?? Math.min(answer.railElevation ?? 0, stroke.maxElevation);
  const inPlan = Math.cos(elevation);
  const { rim } = railDistances(strokes, shot.x, shot.y, Math.cos(phi), Math.sin(phi));
  const window: StandingWindow = {
    x: shot.x,
    y: shot.y,
    ux: Math.cos(phi),
    uy: Math.sin(phi),
    from: standingFrom(cue.length),
    to: standingTo(cue.length, rim),
    half: STANDING_ASIDE,
  };
  const byChoice = Math.max(BY_CHOICE.share * cue.length, rim + BY_CHOICE.behindRail);
  const spot = answer.canStand ? standingSpot(window, byChoice, (x, y) => model.standing.slack(x, y)) : null;
  return {
    shot,
    class: answer.class,
    elevation: inDegrees(answer.elevation),
    railElevation: inDegrees(answer.railElevation),
    canStand: answer.canStand,
    meets: answer.meets,
    ball,
    direction,
    tip: ballRadius * inPlan,
    butt: (ballRadius + cue.length) * inPlan,
    drawnBack: (ballRadius + swing + cue.length) * inPlan,
    window,
    player: spot === null ? null : fieldToRoom(model.pose, [spot.x, spot.y]),
    playerRadius: strokes.stance.radius,
    line: alongCue(
      {
        ball,
        direction,
        elevation,
        reach: ballRadius + swing + cue.length,
        fullReach: ballRadius + stroke.backswing + cue.length,
        height: strokes.ballHeight + stroke.tipOffset / inPlan,
      },
      model.scene.outline,
      model.scene.wallNames,
      model.scene.obstacles,
      answer.meets,
    ),
  };
}

function inDegrees(radians: number | null): number | null {
  return radians === null ? null : (radians * 180) / Math.PI;
}
