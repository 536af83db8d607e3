import type { Point, Ring } from '../geometry/types.js';

/** Where the other pieces stand, what they share, and the ways between them. Lengths in mm. */
export interface ArrangementReport {
  /** True: every piece has a place with nothing wrong at it, and every clear way was found. */
  readonly complete: boolean;
  /** In the order of the input. */
  readonly pieces: readonly PieceReport[];
  /** From each door to the table and to each piece that has a place; without doors, from the table to each piece. */
  readonly ways: readonly ClearWay[];
  /** Zones that are used by turns. */
  readonly sharing: readonly SharedZone[];
  readonly value: ArrangementValue;
  readonly bounds: ArrangementBounds;
  /** What would help the wanted cue's verdict or the other pieces, the most useful first. */
  readonly advice: readonly ArrangementAdvice[];
  /** Layouts of the whole room that were weighed. */
  readonly layouts: number;
  /** True: `onProgress` ended the search. */
  readonly stopped: boolean;
}

export interface PieceReport {
  readonly name: string;
  /** Id in `FURNISHINGS`, or null. */
  readonly kind: string | null;
  /** Middle of the bounding rectangle, and the turn of its length from +x in [0, 360); null: no place was found. */
  readonly pose: { readonly x: number; readonly y: number; readonly turn: number } | null;
  /** The pose was given. */
  readonly given: boolean;
  /** It has a place and nothing is wrong there. */
  readonly fits: boolean;
  /** What is wrong at its given place, or what held back every place that was tried, most often first. */
  readonly problems: readonly PieceProblem[];
  /** Footprint where it stands; empty without a place. */
  readonly ring: Ring;
  readonly from: number;
  readonly to: number;
  /** Square off each side of its bounding rectangle, at its own heights, to the first thing there; empty without a place. */
  readonly gaps: readonly PieceGap[];
  readonly zones: readonly {
    readonly name: string;
    readonly ring: Ring;
    readonly from: number;
    readonly to: number;
  }[];
}

export interface PieceProblem {
  /**
   * `outside`: not within the walls; `overlap`: on another thing or piece; `table`: on the table; `door`: in a door's swing or across a
   * doorway; `ceiling`: too high for the ceiling there; `no-wall`: not at a wall, or a corner, where it has to be;
   * `turn`: turned as its rule does not allow; `zone-outside`, `zone-overlap`, `zone-table`, `zone-door`, `zone-ceiling`: the same of one of its use
   * zones; `zone-shared`: its zone lies on another that may not be shared; `no-way`: no clear way from a door leads to it;
   * `no-place`: it went nowhere that was tried beside the pieces that have a place.
   */
  readonly code:
    | 'outside'
    | 'overlap'
    | 'table'
    | 'door'
    | 'ceiling'
    | 'no-wall'
    | 'turn'
    | 'zone-outside'
    | 'zone-overlap'
    | 'zone-table'
    | 'zone-door'
    | 'zone-ceiling'
    | 'zone-shared'
    | 'no-way'
    | 'no-place';
  /** What it is in the way of, or what is in its way; null where nothing else is concerned. */
  readonly with: string | null;
  /** The zone that is concerned; null for the piece itself. */
  readonly zone: string | null;
  /** Depth of the overlap, the missing height or the distance from the wall; null where none can be told. */
  readonly amount: number | null;
}

export interface PieceGap {
  readonly side: 'front' | 'back' | 'left' | 'right';
  readonly distance: number;
  readonly to: string;
}

/** A strip of connected free floor of a stated width. */
export interface ClearWay {
  /** A door's name, or `'the table'`. */
  readonly from: string;
  /** A piece's name, `'the table'`, or another door's name. */
  readonly to: string;
  /** Wanted width. */
  readonly width: number;
  /** It is there, proved by `path`: every point of it keeps half the width from everything. */
  readonly found: boolean;
  /** False: neither a way nor that there is none was proved at the resolution; `found` is false then. */
  readonly certain: boolean;
  /** Its middle line, corner by corner; empty where none was found. */
  readonly path: readonly Point[];
  /** Width of the widest way there is, as far as it was found: the width of a way that surely is there; null where none of any useful width is. */
  readonly widest: number | null;
  /** Names of the two things between which the widest way is narrowest; empty where nothing holds it. */
  readonly between: readonly string[];
}

/** A use zone that shares floor. */
export interface SharedZone {
  readonly piece: string;
  readonly zone: string;
  /** `'cueing'`: cues and players of the table; else the name of the other piece. */
  readonly with: string;
  /** Share of the zone's area that is shared, 0..1. */
  readonly share: number;
}

/** What the search makes as large as it can: `value` = sum of the weighted terms. The weights stand in `DEFAULTS.arrangement`. */
export interface ArrangementValue {
  readonly value: number;
  /** No layout has more. */
  readonly upperBound: number;
  /** Share of the pieces that have a place with a clear way, 0..1; weight 1000. */
  readonly placed: number;
  /** open + 0.9 cramped over a fixed sample of shots of the wanted cue at the table's place, 0..1: 1 only where distances prove it, 0 where the table cannot stand; times the share of the doors that lead to it and to one another; weight 100. */
  readonly play: number;
  /** 1 - mean share of the zones that is shared with cues or other zones, 0..1; weight 5. */
  readonly apart: number;
}

/** Cheap necessary conditions: where `needed` exceeds `available` it is proved that not everything goes in. */
export interface ArrangementBounds {
  /** Floor, m2: of the table and all pieces that stand on the floor, and of the room less what stands there. */
  readonly floor: { readonly needed: number; readonly available: number };
  /** Wall, mm: least length that the pieces at walls take, and the walls' length clear of doorways. */
  readonly wall: { readonly needed: number; readonly available: number };
}

export interface ArrangementAdvice {
  /** `leave-out`: without this piece; `shift`: with this piece moved from its given pose to `pose`. */
  readonly kind: 'leave-out' | 'shift';
  readonly piece: string;
  readonly pose?: { readonly x: number; readonly y: number; readonly turn: number };
  /** How far it is shifted, mm. */
  readonly amount?: number;
  /** Verdict of the wanted cue then. */
  readonly verdict: 'clear' | 'tight' | 'partial' | 'none';
  /** Gain in the share of open shots, 0..1. */
  readonly gain: number;
  /** Pieces that find a place then and have none now. */
  readonly places: readonly string[];
}
