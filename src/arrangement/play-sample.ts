import type { CueSpec } from '../equipment/equipment-types.js';
import { PLAYABLE } from '../placement/share-score.js';
import { StrokeClassifier } from '../stroke/classify-traced.js';
import type { StandingRoom } from '../stroke/standing-room.js';
import type { StrokeScene } from '../stroke/stroke-scene.js';
import { ShotTrace } from '../stroke/trace-shot.js';

/** Shots by which layouts are told apart. */
export const SAMPLE_SHOTS = 256;

/** The fixed shots, in the table's frame: balls as shares of the half sides of Q, and unit vectors from the ball to the butt. */
export interface SampleShots {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly ux: Float64Array;
  readonly uy: Float64Array;
}

/** Steps of the sequence that fills balls and directions evenly, as in `shotShares`: powers of 1 / g, g^4 = g + 1. */
const G = 1.2207440846057596;
const STEP_X = 1 / G;
const STEP_Y = 1 / (G * G);
const STEP_TURN = 1 / (G * G * G);

/**
 * Shots that fill Q x [0, 2 pi) evenly, each with its three mirror images about the table's axes: the mirror image of a room, and a table turned
 * by a half turn, then get the same share to rounding.
 */
export function sampleShots(): SampleShots {
  const x = new Float64Array(SAMPLE_SHOTS);
  const y = new Float64Array(SAMPLE_SHOTS);
  const ux = new Float64Array(SAMPLE_SHOTS);
  const uy = new Float64Array(SAMPLE_SHOTS);
  for (let k = 0; 4 * k < SAMPLE_SHOTS; k++) {
    const a = 2 * fraction((k + 0.5) * STEP_X) - 1;
    const b = 2 * fraction((k + 0.5) * STEP_Y) - 1;
    const phi = 2 * Math.PI * fraction((k + 0.5) * STEP_TURN);
    const cos = Math.cos(phi);
    const sin = Math.sin(phi);
    for (let image = 0; image < 4; image++) {
      const sx = image & 1 ? -1 : 1;
      const sy = image & 2 ? -1 : 1;
      x[4 * k + image] = sx * a;
      y[4 * k + image] = sy * b;
      ux[4 * k + image] = sx * cos;
      uy[4 * k + image] = sy * sin;
    }
  }
  return { x, y, ux, uy };
}

function fraction(value: number): number {
  return value - Math.floor(value);
}

/** open + 0.9 cramped over the fixed shots. */
export function samplePlay(
  strokes: StrokeScene,
  standing: StandingRoom,
  cue: CueSpec,
  { x, y, ux, uy }: SampleShots,
): number {
  const classifier = new StrokeClassifier(strokes, cue);
  const trace = new ShotTrace(strokes, classifier.ell);
  let open = 0;
  let cramped = 0;
  for (let k = 0; k < SAMPLE_SHOTS; k++) {
    trace.follow(strokes.qx * x[k], strokes.qy * y[k], ux[k], uy[k]);
    const code = classifier.classify(trace, standing);
    if (code === 0) open++;
    else if (code === 1) cramped++;
  }
  return (open + PLAYABLE * cramped) / SAMPLE_SHOTS;
}
