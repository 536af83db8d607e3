import type { HoldName, PassageInput } from './delivery-input.js';
import type { Motion } from './motion.js';

/**
 * `passes`: a motion is known that takes the piece with its hand room through; `blocked`: a bound rules out every way in which it may be held
 * (see `anyMotion`); `undecided`: neither could be shown.
 */
export type DeliveryOutcome = 'passes' | 'blocked' | 'undecided';

/** How a piece is held. Lengths in mm with the hand room, angles in degrees. */
export interface HoldReport {
  /** `leaned`: between flat and on edge, its length level; `tilted`: its front end up. */
  readonly way: HoldName | 'leaned' | 'tilted';
  /** Out of `base`, degrees. */
  readonly tilt: number;
  /** The level way from which it is tilted or leaned. */
  readonly base: HoldName;
  /** What it covers in plan, and upright. */
  readonly planLength: number;
  readonly planWidth: number;
  readonly height: number;
}

/** A moment of a motion, in the passage's frame: mm and degrees. */
export interface MomentReport {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly heading: number;
  readonly tilt: number;
  readonly roll: number;
}

/** One piece in one passage. */
export interface PassageAnswer {
  readonly passage: string;
  readonly kind: PassageInput['kind'];
  readonly outcome: DeliveryOutcome;
  /** False: readings that are off by no more than their tolerance could change the outcome. */
  readonly certain: boolean;
  /** For `blocked`: true when the bound holds for any motion whatever, false when only for the ways in which the piece may be held. */
  readonly anyMotion: boolean;
  readonly hold: HoldReport | null;
  /**
   * By how much every clear measure of the passage could be smaller (negative: would have to be larger), mm, with the hand room kept: held
   * as `hold` says where it passes, else in any way it may be held. The true figure lies between the two; null: not known on that side.
   */
  readonly spare: { readonly atLeast: number | null; readonly atMost: number | null };
  /** True: the piece itself would pass, but not with the hand room asked for. */
  readonly withoutHandRoom: boolean;
  readonly narrowest: MomentReport | null;
  readonly method: 'closed-form' | 'subdivision' | 'none';
  /** Replayed: no point of the box comes nearer than this to anything, mm; null where there is no motion. */
  readonly replayed: number | null;
  readonly motion?: MotionReport;
}

/** A motion with its angles in degrees. */
export interface MotionReport extends Omit<Motion, 'poses'> {
  readonly poses: readonly MomentReport[];
}

/** Between two passages the piece has to be held differently. */
export interface HoldChange {
  /** Indices into the route: after this passage, before the next. */
  readonly after: number;
  readonly from: HoldReport;
  readonly to: HoldReport;
  /** Free height and free circle in plan (diameter) in which any such turn can be made, mm. */
  readonly needsHeight: number;
  readonly needsFloor: number;
}

export interface PieceAnswer {
  readonly name: string;
  readonly count: number;
  /** Without hand room, mm; longest first. */
  readonly size: { readonly length: number; readonly width: number; readonly thickness: number };
  /** Kilograms each; null where not known. */
  readonly mass: number | null;
  readonly carriers: number | null;
  readonly massPerCarrier: number | null;
  readonly outcome: DeliveryOutcome;
  readonly certain: boolean;
  readonly passages: readonly PassageAnswer[];
  readonly holdChanges: readonly HoldChange[];
}

/** Something that was computed to change an outcome. */
export interface DeliveryAdvice {
  readonly kind:
    | 'take-door-off'
    | 'other-pieces'
    | 'allow-hold'
    | 'less-hand-room'
    | 'widen'
    | 'other-way'
    | 'measure-again';
  /** Index into the route, where it is about one passage. */
  readonly passage?: number;
  readonly piece?: string;
  /** The set of pieces to ask for. */
  readonly pieces?: string;
  readonly hold?: HoldName;
  /** For `allow-hold` without a hold: how far the piece would have to be allowed to tilt, degrees. */
  readonly tilt?: number;
  /** mm: what is gained (door), allowed (hand room) or needed (widen). */
  readonly amount?: number;
  /** The outcome it brings: for the piece in the passage, or for the whole way with `other-pieces`. */
  readonly outcome: DeliveryOutcome;
}

/** The way in: every piece in every passage. Plain JSON: mm, degrees, kilograms. */
export interface DeliveryReport {
  readonly outcome: DeliveryOutcome;
  readonly certain: boolean;
  /** Name of the set of pieces, or null for pieces of one's own. */
  readonly pieceSet: string | null;
  /** mm on every side of every piece. */
  readonly handRoom: number;
  readonly pieces: readonly PieceAnswer[];
  readonly advice: readonly DeliveryAdvice[];
  /** Mass against published handling figures, stairs, lifts and the rest; none of it says that anything is safe. */
  readonly cautions: readonly DeliveryCaution[];
  readonly assumptions: readonly string[];
}

export interface DeliveryCaution {
  readonly code: 'handling' | 'stairs' | 'lift' | 'hoist' | 'floor-protection' | 'escape-route' | 'fitters';
  readonly message: string;
  readonly source: string;
}
