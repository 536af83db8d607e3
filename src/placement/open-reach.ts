import { DEFAULTS } from '../equipment/defaults.js';
import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import { prepareStrokes } from '../stroke/prepare-strokes.js';
import { steepestRail } from '../stroke/rail-elevation.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import { railTop } from './problem-for.js';

/** What the open strokes of one cue ask of a room, whatever the shot: lengths in mm, angle in radians. */
export interface OpenReach {
  /** rho = R + s + L + a: where walls and tall things keep this distance from Q, no level cue meets anything. */
  readonly rho: number;
  /** No shot of the table has a steeper theta_rail than this. */
  readonly steepest: number;
  /** A full-height thing nearer to Q than this blocks some open shot: ell cos(steepest) + a. */
  readonly least: number;
  /** Heights that sort things into those under every cue, those over every open stroke, and the tall ones between. */
  readonly low: number;
  readonly high: number;
  /** A thing no higher than this at its underside cannot be passed under. */
  readonly under: number;
  /** Width of free floor round the frame that proves room to stand for every shot. */
  readonly strip: number;
  /** The same sorting, and the distance from Q, for short strokes that are all raised to theta_max. */
  readonly raised: {
    readonly low: number;
    readonly high: number;
    readonly needed: number;
    /** Distance from Q at which such a stroke passes over a thing with its top at this height; Infinity for one without. */
    readonly passedFrom: (top: number) => number;
  };
}

/**
 * Derivation. `high`: the axis rises to ballHeight + b / cos(theta) + ell sin(theta) at the butt, kept a / cos(theta) off;
 * both grow with theta, so theta = steepest bounds them. `low`: beyond the rim an axis that clears the rail's top by its radius
 * r has lost at most a' (tan + 1/cos - 1) of that height against a footprint grown by a' = a + e, so a top that is a (and that
 * loss less r) under the rail's top is passed by every stroke.
 *
 * `raised`: with the short backswing at theta_max >= theta_rail the axis reaches ell' cos(theta_max) in plan and at most the
 * height `raised.high`, and stands higher over every low thing than at theta_rail. Walls and things that are tall between
 * `raised.low` and `raised.high` and keep `raised.needed` from Q are not met: every shot is playable, if there is room to stand. A
 * thing whose top lies H over the ball's centre is passed over from t0 sin(theta_max) - H cos(theta_max) >= a - b on, where t0
 * is at least its distance less a; as for single shots, passing over counts only from (a - b) / cos(theta_max) on.
 *
 * `strip`: let everything that leaves no room to stand keep a distance W from the frame, and m be the least plan distance from
 * Q to the rim. Take the centre c on the cue's line at t = max(0.45 L, t_o): it lies within max(0, 0.45 L - m) of the frame.
 * Where that is less than the disc's radius d, move c inside the stance window towards its far outer corner, (t_o + 460, 350
 * to the side): seen from the side that the line leaves by, at angle psi, this corner is 460 sin(psi) + 350 cos(psi) >= 350 > d
 * away, so on the way c comes to lie exactly d from the frame. Hence W >= max(2 d, 0.45 L - m + d) is enough.
 */
export function openReach(table: TableSpec, stroke: StrokeSettings, cue: CueSpec, grow = 0): OpenReach {
  const alone = prepareStrokes(
    {
      outline: [],
      wallNames: [],
      obstacles: [],
      ceiling: [],
      doors: [],
      reserved: [],
      tolerance: 0,
      wallTolerances: null,
    },
    table,
    { x: 0, y: 0, angle: 0 },
    stroke,
  );
  const steepest = steepestRail(alone, cue);
  const ell = alone.ballRadius + stroke.backswing + cue.length;
  const short = alone.ballRadius + stroke.shortBackswing + cue.length;
  const cos = Math.cos(steepest);
  const around = stroke.margin + stroke.tipOffset;
  const lowAt = (theta: number): number => {
    const loss =
      (stroke.margin + Math.max(0, grow)) * (Math.tan(theta) + 1 / Math.cos(theta) - 1) - cue.tipRadius;
    return railTop(table) - Math.max(0, loss);
  };
  const highAt = (theta: number, reach: number): number =>
    alone.ballHeight + around / Math.cos(theta) + reach * Math.sin(theta);
  const toRim = Math.min(alone.rimX - alone.qx, alone.rimY - alone.qy);
  const disc = DEFAULTS.standing.radius + grow;
  return {
    rho: ell + stroke.margin,
    steepest,
    least: ell * cos + stroke.margin,
    low: lowAt(steepest),
    high: highAt(steepest, ell),
    under: alone.ballHeight + around,
    strip: Math.max(2 * disc, DEFAULTS.standing.nearShare * cue.length - toRim + disc),
    raised: {
      low: lowAt(stroke.maxElevation),
      high: highAt(stroke.maxElevation, short),
      needed: short * Math.cos(stroke.maxElevation) + stroke.margin,
      passedFrom: (top) => {
        const cosMost = Math.cos(stroke.maxElevation);
        const over = stroke.margin - stroke.tipOffset;
        const t0 = ((top - alone.ballHeight) * cosMost + over) / Math.sin(stroke.maxElevation);
        return Math.max(t0, over / cosMost, 0) + stroke.margin;
      },
    },
  };
}
