import type { EdgeArrays } from '../geometry/edge-arrays.js';
import type { StrokeSettings } from './stroke-settings.js';

/**
 * Room, table and pose made ready for strokes: everything in the table's frame (origin at the centre of the play field,
 * +x along the table), in flat arrays, so that one shot is a ball (u, v) with |u| <= qx, |v| <= qy and a direction phi from
 * +x. Independent of the cue. Symbols are those of the model.
 *
 * `grow` moves every boundary of the room by e: footprints and walls count as grown by a + e in plan, tops as higher and
 * undersides and ceilings as lower by e, the standing disc as wider by e. A negative e is the kindest room within the
 * tolerance. The table itself does not change.
 */
export interface StrokeScene {
  /** Half sides of Q. */
  readonly qx: number;
  readonly qy: number;
  /** Half sides of the play field (nose lines), */
  readonly noseX: number;
  readonly noseY: number;
  /** of the field grown by the cushion's depth (never beyond the outer rectangle), */
  readonly crestX: number;
  readonly crestY: number;
  /** and of the outer rectangle. */
  readonly rimX: number;
  readonly rimY: number;
  /** R */
  readonly ballRadius: number;
  /** bedHeight + R: height of a ball's centre above the floor. */
  readonly ballHeight: number;
  /** noseHeight - R and railHeight - R: heights over the ball's centre. */
  readonly noseRise: number;
  readonly railRise: number;
  readonly stroke: StrokeSettings;
  /** a + e: what footprints and walls are grown by in plan. */
  readonly planMargin: number;
  readonly grow: number;
  /** Walls: inside faces, anticlockwise outline. `wallNames[i]` belongs to edge i. */
  readonly walls: EdgeArrays;
  readonly wallNames: readonly string[];
  readonly parts: PartArrays;
  readonly ceiling: readonly {
    readonly name: string;
    readonly height: number;
    readonly slopeX: number;
    readonly slopeY: number;
  }[];
  readonly stance: StanceArrays;
}

/** Convex anticlockwise pieces of the obstacles' footprints (not grown), with their heights (moved by e already). */
export interface PartArrays {
  readonly count: number;
  /** Edges of piece k: `edges` from `start[k]` up to, not including, `start[k + 1]`. */
  readonly start: Uint32Array;
  readonly edges: EdgeArrays;
  /** Index of the obstacle that piece k belongs to. */
  readonly obstacle: Uint32Array;
  readonly from: Float64Array;
  readonly to: Float64Array;
  /** A disc around piece k. */
  readonly centerX: Float64Array;
  readonly centerY: Float64Array;
  readonly radius: Float64Array;
  readonly obstacleNames: readonly string[];
}

/** What a standing disc has to keep off. */
export interface StanceArrays {
  /** Radius of the disc, mm (with e). */
  readonly radius: number;
  /** Pieces of {@link PartArrays} that leave no room to stand (underside below head height). */
  readonly parts: readonly number[];
  /** Half planes that are too low to stand in: x * nx + y * ny > d. `never` is true where a flat ceiling is too low everywhere. */
  readonly low: readonly { readonly nx: number; readonly ny: number; readonly d: number }[];
  readonly never: boolean;
}

/** A cue in the stroke's own terms: length L, and r(t) from tip to butt, mm. */
export interface StrokeCue {
  readonly length: number;
  readonly tipRadius: number;
  readonly buttRadius: number;
}

/** Classes of a shot: 0 `open`, 1 `cramped`, 2 `blocked`. */
export type ShotCode = 0 | 1 | 2;
