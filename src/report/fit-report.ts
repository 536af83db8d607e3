import type { ArrangementReport } from '../arrangement/arrangement-report.js';
import type { DeliveryReport } from '../delivery/delivery-report.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import type { NextReading, SuspectReading, TapedReading, TapedWall } from '../room/tape-report.js';

/**
 * What the table, where it stands, allows with one cue:
 * `clear`: every shot is open; `tight`: every shot is open or cramped, at least one cramped; `partial`: at least one
 * shot is blocked; `none`: the table cannot stand in the room at all.
 */
export type Verdict = 'clear' | 'tight' | 'partial' | 'none';

/** Where the table stands: mm, and degrees in [0, 180). */
export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

/** Shares of all shots (each ball position and each direction counts alike), 0..1; they add up to 1. */
export interface Shares {
  readonly open: number;
  readonly cramped: number;
  readonly blocked: number;
}

/** What one cue can do at the pose. */
export interface CueResult {
  readonly name: string;
  /** mm */
  readonly length: number;
  readonly verdict: Verdict;
  /** False: within the measurement tolerance, or below the resolution of the proof. */
  readonly certain: boolean;
  /**
   * How the verdict was reached: `distance`: clear, by the plain 2D proof; `raised`: tight, by distances for short strokes that are all
   * raised to the steepest; `boxes`: bounds over boxes of shots; `shot`: a counterexample shot; `resolution`: the question lies below
   * the resolution and the cautious answer is given; `standing`: the table cannot stand.
   */
  readonly proof: 'distance' | 'raised' | 'boxes' | 'shot' | 'resolution' | 'standing';
  readonly shares: Shares;
  /** Each share is within this of the true one (an estimate that is tested to hold); 0 where proved. */
  readonly shareError: number;
  /** Steepest elevation that a playable shot was found to need, degrees; null when no shot can be played. */
  readonly steepestElevation: number | null;
}

/** The four cushions in the table's own frame: `endA` lies towards the table's +x, `sideA` towards its +y, `endB` and `sideB` opposite. */
export type Cushion = 'endA' | 'sideA' | 'endB' | 'sideB';

export interface CushionProfile {
  readonly cushion: Cushion;
  /** Spots along the cushion in the order of the field's coordinate (x for ends' sides, y for ends), mm from the cushion's middle, and the longest cue there with the full and the short backswing; 0 where none will do. */
  readonly spots: readonly { readonly at: number; readonly open: number; readonly cramped: number }[];
}

/** Tape-measure arithmetic along one axis of the table, mm. `needed` = field + 2 (cue + backswing + margin); `available` is the field with the two gaps; `spare` may be negative. */
export interface Span {
  readonly needed: number;
  readonly available: number;
  readonly spare: number;
}

/** Room behind one cushion, square off it. */
export interface Gap {
  readonly cushion: Cushion;
  /** From the nose to the first thing a level cue meets, mm. */
  readonly distance: number;
  /** What that is. */
  readonly to: string;
}

/** One thing that holds the verdict back (or is within the tolerance of doing so). */
export interface Limit {
  readonly name: string;
  /** `reserved`: floor of another piece's use zone. */
  readonly kind: 'wall' | 'obstacle' | 'ceiling' | 'standing' | 'door' | 'reserved' | 'rail' | 'room';
  /** Least plan distance from where a ball's centre can lie to it, mm; null where a distance says nothing (ceiling, standing room). */
  readonly distance: number | null;
  /** Distance at which it no longer matters to the wanted cue, mm; null as above. */
  readonly needed: number | null;
  /** distance - needed; negative: so much is missing. */
  readonly spare: number | null;
  /** Share of the sampled shots that it keeps from being open. */
  readonly share: number;
  /** The two ends of the shortest line between the ball positions and it: [on the ball rectangle, on the obstacle]. */
  readonly witness: readonly [readonly [number, number], readonly [number, number]] | null;
  /** True: the verdict hangs on this measurement; measure it again. */
  readonly measureAgain: boolean;
  /** Of a wall of a room by tape readings: which readings to repeat, the one that narrows the wall's band most first, with the half width that each would leave, mm. */
  readonly repeat?: TapedWall['repeat'];
}

/** What the readings of a room say of themselves; `roomFromTape` says more. */
export interface SurveyNote {
  /** About 1 where the readings agree as well as their deviations let expect; null where nothing checks them. */
  readonly unitDeviation: number | null;
  /** True: the readings contradict each other; one of them is probably wrong. */
  readonly contradictory: boolean;
  /** `corner`: an angle, in degrees; else mm. */
  readonly suspect: (SuspectReading & { readonly kind: TapedReading['kind'] }) | null;
  /** What to measure next, the most useful first. */
  readonly next: readonly NextReading[];
}

/** Something that would help, with the gain it was computed to bring. */
export interface Advice {
  readonly kind: 'shorter-cue' | 'shorter-cue-at' | 'move-obstacle' | 'smaller-table' | 'longer-room';
  /** Stable data of the advice; see `kind`. */
  readonly cushion?: Cushion;
  readonly obstacle?: string;
  readonly table?: string;
  /** Cue length or distance to shift, mm. A thing that cannot be shifted far enough is to be taken out: no amount. */
  readonly amount?: number;
  /** Extra room along and across the table, mm, for `longer-room`; an axis that lacks nothing is left out. */
  readonly along?: number;
  readonly across?: number;
  readonly verdict: Verdict;
  /** Gain in the share of open shots, 0..1. */
  readonly gain: number;
}

export interface Caution {
  readonly code: 'floor-load' | 'lifting' | 'lamp' | 'escape-route' | 'electrics' | 'delivery' | 'door';
  readonly message: string;
  readonly source: string;
}

/** Shares over the field: cell (i, j) has its centre at ((i + 0.5) / columns - 0.5) * Q.length along, likewise across. */
export interface ShotMap {
  readonly columns: number;
  readonly rows: number;
  /** Ball-centre rectangle Q, mm. */
  readonly length: number;
  readonly width: number;
  /** Row by row from the field's -y side: share of open shots per cell for the wanted cue. */
  readonly open: readonly number[];
  readonly cramped: readonly number[];
  readonly blocked: readonly number[];
  readonly shots: number;
}

/** Everything computed for one input. Plain JSON: millimetres, degrees, shares in 0..1. */
export interface FitReport {
  readonly schema: 'elbowroom/fit-report@1';
  /** For the wanted cue. */
  readonly verdict: Verdict;
  /** False: inside the measurement tolerance, or below the resolution. */
  readonly certain: boolean;
  /**
   * Of a room by tape readings: in at least this share of all surveys like this one (0.95) no wrong verdict is called certain, as far
   * as the deviations of the readings are right and all else is within its tolerance. Absent: the tolerances are taken as they are.
   */
  readonly confidence?: number;
  /** Of a room by tape readings. */
  readonly survey?: SurveyNote;
  readonly table: TableSpec;
  readonly pose: Pose | null;
  readonly clearance: Clearance;
  readonly cues: readonly CueResult[];
  readonly spans: { readonly along: Span; readonly across: Span };
  readonly gaps: readonly Gap[];
  /** For a ball frozen on each cushion and played square off it: the longest cue at spots along it. */
  readonly cushions: readonly CushionProfile[];
  readonly limits: readonly Limit[];
  readonly shots?: ShotMap;
  readonly advice: readonly Advice[];
  /** Whether the table can be carried in; where the way in was given. */
  readonly delivery?: DeliveryReport;
  /** Where the other pieces stand; where `furnishings` were given. All else in the report is for the room with those that have a place. */
  readonly arrangement?: ArrangementReport;
  readonly cautions: readonly Caution[];
  /** Every default that was used, as a sentence. */
  readonly assumptions: readonly string[];
}

export interface Clearance {
  /** Distance from the ball positions to walls and tall things at the pose, mm. */
  readonly value: number;
  /** No pose has more (equal to `value` when the pose was given). */
  readonly upperBound: number;
  /** Longest cue with which no level stroke meets anything at the pose. */
  readonly longestCue: number;
  readonly longestCueUpperBound: number;
  /** True: it is proved that no place in the room is clear for the wanted cue. False says nothing. */
  readonly clearNowhere: boolean;
}
