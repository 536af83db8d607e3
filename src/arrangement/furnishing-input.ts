import type { Stand, TurnRule } from '../equipment/furnishing-types.js';
import type { Length } from '../length/length.js';
import type { PointInput } from '../room/room-input.js';

/** Another piece that is to stand in the room. With a `kind` of the catalogue everything else may be left out. */
export interface FurnishingInput {
  /** An id from `FURNISHINGS`: what is left out below is taken from there. Leave out for a piece by its measurements. */
  readonly kind?: string;
  /** What the answer calls it; default: the kind's name, numbered where there are several. */
  readonly name?: string;
  /**
   * Seen from above, in the piece's own frame: its length along its back and its width from back to front; a diameter; or its corners,
   * with the back towards -y and the front towards +y.
   */
  readonly footprint?:
    | { readonly length: Length; readonly width: Length }
    | { readonly diameter: Length }
    | readonly PointInput[];
  /** Of the piece itself, from its underside to its top. */
  readonly height?: Length;
  /** Underside above the floor; default 0, or the usual one of the kind. A piece that hangs on a wall or over the table needs one. */
  readonly from?: Length;
  /** Kilograms. */
  readonly mass?: number;
  /** Default `free`, or what is usual for the kind. */
  readonly stands?: Stand;
  /** Default `back` for pieces at a wall, in a corner or hung, `square` for others. */
  readonly turns?: TurnRule;
  /** Replaces all zones of the kind; an empty list: nobody needs floor to use it. */
  readonly zones?: readonly UseZoneInput[];
  /** Leave out to have a place found. Given, it is judged and kept: the middle of the bounding rectangle, and the turn of the length from +x. */
  readonly pose?: { readonly x: Length; readonly y: Length; readonly turn?: number };
}

/** Floor that people need in front of or round a piece: the footprint's bounding rectangle let out by so much on each side. */
export interface UseZoneInput {
  readonly name?: string;
  readonly front?: Length;
  readonly back?: Length;
  readonly left?: Length;
  readonly right?: Length;
  /** Heights above the floor between which it is to be free; default the floor and the head height. */
  readonly from?: Length;
  readonly to?: Length;
  /** With what it may be shared, by turns: the cues and players of the table, and the zones of other pieces that may be shared too. Default `['cueing', 'zones']`. */
  readonly shares?: readonly ('cueing' | 'zones')[];
  /** True: it may not lie in the swing of a door or across a doorway. Default false. */
  readonly offDoors?: boolean;
}

/** How the pieces are arranged. */
export interface ArrangementInput {
  /** Width of the clear way that leads from each door to each piece and to the table; default 600 mm. */
  readonly way?: Length;
  /** How long to look, in layouts of the whole room that are weighed; default 200. It does not depend on the machine. */
  readonly effort?: number;
  /** Called as the search goes; returning false stops it. The best layout so far is returned. */
  readonly onProgress?: (progress: ArrangementProgress) => boolean | undefined;
}

export interface ArrangementProgress {
  /** Value of the best layout so far; see {@link ArrangementValue}. */
  readonly value: number;
  /** No layout has more. */
  readonly upperBound: number;
  /** Pieces that have a place in it. */
  readonly placed: number;
  /** Layouts weighed so far. */
  readonly layouts: number;
}
