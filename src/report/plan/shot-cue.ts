import type { Point } from '../../geometry/types.js';
import type { AnsweredShot } from '../../stroke/answer-shot.js';
import { cueRadius } from '../../stroke/rail-elevation.js';
import type { StrokeCue, StrokeScene } from '../../stroke/stroke-scene.js';
import type { Draft } from './draft.js';
import { label } from './draft.js';
import type { Candidate } from './label-placer.js';
import { num, type PaperPoint } from './svg.js';
import { LINE, type Paint } from './theme.js';
import { edgesOf } from './view.js';
import { WORDS } from './words.js';

/** A cue at its elevation, in the plane of the shot, mm. */
export interface DrawnCue {
  readonly theta: number;
  readonly swing: 'full' | 'short';
  /** How far the backswing draws the cue, along it. */
  readonly back: number;
  /** Height of the axis over the ball's centre: z(0) = bedHeight + R + b / cos(theta). */
  readonly axisAt: (t: number) => number;
  /** Outline as the tip meets the ball, and at the end of the backswing. */
  readonly struck: readonly Point[];
  readonly drawnBack: readonly Point[];
  /** Where the butt ends in plan when drawn back, and the highest point. */
  readonly end: number;
  readonly high: number;
}

/**
 * The cue as the model has it: its axis z(t) = bedHeight + R + b / cos(theta) + t tan(theta), its sides r(t) / cos(theta) above and
 * below, with the radius taken at plan distance t - R behind the tip; the tip starts R along the axis.
 */
export function drawnCue(
  scene: StrokeScene,
  cue: StrokeCue,
  theta: number,
  swing: 'full' | 'short',
): DrawnCue {
  const { ballRadius, ballHeight, stroke } = scene;
  const cos = Math.cos(theta);
  const tan = Math.tan(theta);
  const back = swing === 'full' ? stroke.backswing : stroke.shortBackswing;
  const axisAt = (t: number): number => ballHeight + stroke.tipOffset / cos + t * tan;
  const outline = (moved: number): readonly Point[] => {
    const tip = (ballRadius + moved) * cos;
    const butt = (ballRadius + moved + cue.length) * cos;
    // Straight taper: its corners are where r(t) begins and ends to grow, moved with the cue.
    const knee = ballRadius + moved * cos;
    const places = [tip, Math.min(Math.max(tip, knee), butt), butt];
    const side =
      (sign: 1 | -1) =>
      (t: number): Point => [t, axisAt(t) + (sign * cueRadius(cue, ballRadius, t - moved * cos)) / cos];
    return [...places.map(side(-1)), ...[...places].reverse().map(side(1))];
  };
  const end = (ballRadius + back + cue.length) * cos;
  return {
    theta,
    swing,
    back,
    axisAt,
    struck: outline(0),
    drawnBack: outline(back),
    end,
    high: axisAt(end) + cue.buttRadius / cos,
  };
}

/** Ball, cue, backswing, axis and the angle between axis and level. */
export function drawCue(draft: Draft, scene: StrokeScene, cue: DrawnCue, answer: AnsweredShot): void {
  const { pen, view, placer, legend, lengths } = draft;
  const colour = answer.class === 'blocked' ? 'limit' : 'ink';
  const axis: Paint = { stroke: 'fine', dashes: 'chain' };
  const now: Paint = { fill: 'paper', stroke: colour, width: 0.35 };
  const drawnBack: Paint = { stroke: colour, dashes: 'dashed' };
  const center = view.at([0, scene.ballHeight]);
  const struck = view.ring(cue.struck);
  const back = view.ring(cue.drawnBack);
  const from = view.at([0, cue.axisAt(0)]);
  const to = view.at([cue.end, cue.axisAt(cue.end)]);
  pen.group('cue', () => {
    pen.polygon(back, drawnBack, ' data-part="backswing"');
    pen.polygon(struck, now, ' data-part="struck"');
    pen.polyline([from, to], axis, ' data-part="axis"');
  });
  pen.group('ball', () =>
    pen.circle(center, scene.ballRadius / view.scale, { fill: 'paper', stroke: 'ink', width: 0.35 }),
  );
  placer.avoid([...edgesOf(struck), ...edgesOf(back)], 2);
  legend.explain(WORDS.cueNow, 'area', now);
  const swing = cue.swing === 'full' ? WORDS.fullBack : WORDS.shortBack;
  legend.explain(swing(lengths.full(cue.back)), 'line', drawnBack);
  legend.explain(WORDS.axis, 'line', axis);
  drawAngle(draft, cue, from, sayAngle(cue.theta));
}

/** Share of the cue's length at which the arc of the angle stands. */
const ARC = 0.62;

function drawAngle(draft: Draft, cue: DrawnCue, from: PaperPoint, text: string): void {
  const { pen, view } = draft;
  const radius = (ARC * cue.end) / (view.scale * Math.cos(cue.theta));
  const level: PaperPoint = [from[0] + radius, from[1]];
  const end: PaperPoint = [from[0] + radius * Math.cos(cue.theta), from[1] - radius * Math.sin(cue.theta)];
  pen.group('angle', () => {
    pen.polyline([from, [level[0] + 3, level[1]]], { stroke: 'ink' });
    if (cue.theta > 0)
      pen.path(
        `M${num(level[0])} ${num(level[1])}A${num(radius)} ${num(radius)} 0 0 0 ${num(end[0])} ${num(end[1])}`,
        { stroke: 'ink', width: LINE.thin },
      );
  });
  draft.placer.avoid([[from, level]], 1);
  label(
    draft,
    'angle-text',
    [text],
    (width, height) => {
      const found: Candidate[] = [];
      for (const [dx, dy] of [
        [4, -1.5],
        [4, 2],
        [-1, 2],
        [9, 2],
        [-1, -9],
        [4, 8],
      ]) {
        const box = {
          x: level[0] + dx + width / 2,
          y: level[1] + dy + (dy > 0 ? height / 2 : -height / 2),
          width,
          height,
          angle: 0,
        };
        found.push({ box, cost: Math.abs(dx) + Math.abs(dy) });
      }
      return found;
    },
    text,
  );
}

/** The elevation in degrees to a tenth. */
export function sayAngle(radians: number): string {
  return WORDS.degrees(String(Number(((radians * 180) / Math.PI).toFixed(1))));
}
