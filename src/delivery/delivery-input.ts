import type { Length } from '../length/length.js';

/** Ways of holding a flat piece level: the thickness upright (`flat`), the width upright (`on-edge`), the length upright (`on-end`). */
export type HoldName = 'flat' | 'on-edge' | 'on-end';

/** One thing that is carried, by its three measures. They may come in any order: the longest counts as the length. */
export interface PieceInput {
  readonly name: string;
  readonly length: Length;
  readonly width: Length;
  readonly thickness: Length;
  /** How many alike; default 1. */
  readonly count?: number;
  /** Kilograms, each. */
  readonly mass?: number;
  /** How many people carry one; default: from the mass. */
  readonly carriers?: number;
  /** How it may be held; default: every way. */
  readonly held?: readonly HoldName[];
  /** How far it may be tilted out of any of those ways, degrees, 0 to 90; default 45. */
  readonly tilt?: number;
}

/** What lies on one side of a doorway. Left out where there is room enough to line up straight in front of it. */
export interface SpaceInput {
  /** Free floor square off the wall: from the wall's face to whatever stands opposite. */
  readonly depth: Length;
  /** Free floor along the wall, from the opening's edge, to the left of somebody who walks through; left out: it goes on (a corridor). */
  readonly left?: Length;
  readonly right?: Length;
  /** Floor to ceiling; default: as high as is needed. */
  readonly height?: Length;
}

interface PassageCommon {
  readonly name?: string;
  /** How far off any measurement of this passage may be; default: that of the way. */
  readonly tolerance?: Length;
}

/** A doorway: the clear opening with the door open, from the stop on the latch side to the nearest thing on the hinge side. */
export interface DoorwayInput extends PassageCommon {
  readonly kind: 'doorway';
  readonly width: Length;
  readonly height: Length;
  /** How deep the opening is: wall and lining. Default 150 mm. */
  readonly depth?: Length;
  /** Thickness of the open leaf where it takes from the clear width: so much is gained when it is taken off. */
  readonly leaf?: Length;
  readonly before?: SpaceInput;
  readonly after?: SpaceInput;
}

/** A straight corridor. */
export interface CorridorInput extends PassageCommon {
  readonly kind: 'corridor';
  readonly width: Length;
  readonly height: Length;
}

/** Two corridors that meet at an angle. */
export interface CornerInput extends PassageCommon {
  readonly kind: 'corner';
  readonly width: Length;
  readonly height: Length;
  /** Of the corridor that follows; default: as wide and as high as the first. */
  readonly widthAfter?: Length;
  readonly heightAfter?: Length;
  /** By how many degrees one turns in walking round it, 5 to 175; default 90. */
  readonly turn?: number;
}

/** How steep a stair is: its pitch in degrees, or the rise and going of one step. */
export interface SlopeInput {
  readonly pitch?: number;
  readonly rise?: Length;
  readonly going?: Length;
}

/** A level floor at the foot or the head of a flight. Left out: room enough. */
export interface LevelInput {
  /** Along the way one walks, from the first (last) step to whatever stands opposite. */
  readonly depth: Length;
  readonly height?: Length;
}

/** A straight flight. Carried up or down it is the same. */
export interface StairInput extends PassageCommon, SlopeInput {
  readonly kind: 'stair';
  /** Clear width, between walls or handrails. */
  readonly width: Length;
  /** Upright, from the line of the nosings to whatever is overhead. */
  readonly headroom: Length;
  /** Length of the flight in plan; default: as long as it likes. */
  readonly run?: Length;
  readonly bottom?: LevelInput;
  readonly top?: LevelInput;
}

/** A landing on which a stair turns by a quarter (90 degrees) or by half (180 degrees), between two flights. */
export interface LandingInput extends PassageCommon, SlopeInput {
  readonly kind: 'quarter-landing' | 'half-landing';
  /** Clear width of the flight below; `widthAfter` of the flight above, default the same. */
  readonly width: Length;
  readonly widthAfter?: Length;
  readonly headroom: Length;
  /** From the last step of the flight below to the wall opposite; default: the width of the flight above (quarter) or below (half). */
  readonly depth?: Length;
  /** Across the flight below, from its outer wall to the first step of the flight above; default: the width of the flight below. For a quarter landing. */
  readonly breadth?: Length;
  /** Between the two flights of a half landing; default 0. */
  readonly well?: Length;
}

/** Steps that wind round a corner, by the narrowest section that has to be passed. */
export interface WinderInput extends PassageCommon, SlopeInput {
  readonly kind: 'winder';
  /** Narrowest clear width, from the newel to the wall. */
  readonly width: Length;
  readonly headroom: Length;
  /** Height gained by the steps of the turn; default three steps. */
  readonly climb?: Length;
}

/** A lift car with its door in the middle of one side; the piece must stand wholly inside. */
export interface LiftInput extends PassageCommon {
  readonly kind: 'lift';
  readonly width: Length;
  readonly depth: Length;
  readonly height: Length;
  readonly door: { readonly width: Length; readonly height: Length; readonly depth?: Length };
  readonly before?: SpaceInput;
}

/** A window or a balcony door through which pieces are passed in from outside, where nothing is in the way. */
export interface OpeningInput extends PassageCommon {
  readonly kind: 'opening';
  readonly width: Length;
  readonly height: Length;
  /** Above the floor inside; default 0. */
  readonly sill?: Length;
  readonly depth?: Length;
  readonly after?: SpaceInput;
}

export type PassageInput =
  | DoorwayInput
  | CorridorInput
  | CornerInput
  | StairInput
  | LandingInput
  | WinderInput
  | LiftInput
  | OpeningInput;

/** The way in, passage by passage in the order walked. */
export interface DeliveryInput {
  readonly route: readonly PassageInput[];
  /** What is carried: the name of one of the table's usual sets of pieces, or pieces of one's own; default: the table's first set. */
  readonly pieces?: string | readonly PieceInput[];
  /** Room for hands and packing on every side of every piece; default 25 mm. */
  readonly handRoom?: Length;
  /** How far off any measurement of the way may be; default 10 mm. */
  readonly tolerance?: Length;
  /** `'motions'` adds the motion that proves each `passes`; default `'answer'`. */
  readonly detail?: 'answer' | 'motions';
  /** Most boxes of poses to look at for one piece in one passage where no closed form decides; default 60,000. */
  readonly maxBoxes?: number;
}
