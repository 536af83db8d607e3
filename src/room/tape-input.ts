import type { Length } from '../length/length.js';

/** With what a reading was taken; each has its own standard deviation. */
export type ReadingMeans = 'tape' | 'laser' | 'estimate';

/** A distance that was read, once or several times. */
export type Reading =
  | Length
  | {
      readonly length: Length | readonly Length[];
      /** Default: that of the survey. */
      readonly by?: ReadingMeans;
      /** Standard deviation of one reading, instead of the usual one of its means. */
      readonly deviation?: Length;
    };

/** A corner between two walls as the room sees it: `internal` (90 degrees, the ordinary one), `external` (270, it juts into the room), or degrees of floor. */
export type CornerKind = 'internal' | 'external' | number;

/** One wall, from its own corner to the next. */
export interface TapeWall {
  /** Name of the corner it starts from; default `A`, `B`, ... in order. */
  readonly from?: string;
  readonly length: Reading;
  /** The corner at its far end; default `internal`. */
  readonly corner?: CornerKind;
  /** How sure the corner is that angle: standard deviation in degrees; default: `DEFAULTS.survey.squareDeviation`. A mere guess: give more. */
  readonly cornerDeviation?: number;
}

/** A distance between two named corners: a diagonal, or any other check. */
export interface TapeDistance {
  readonly from: string;
  readonly to: string;
  readonly length: Reading;
}

/** A corner measured by three distances: so far along the one wall, so far along the other, and across between the two marks. */
export interface TapeAngle {
  readonly corner: string;
  /** Mark on the wall that ends in the corner, from the corner. */
  readonly before: Reading;
  /** Mark on the wall that starts from the corner. */
  readonly after: Reading;
  readonly across: Reading;
}

/**
 * What breaks a wall that was measured as one: an alcove (back from the wall), a chimney breast (into the room), a bay (back, with splayed
 * sides when `front` is less than `width`).
 */
export interface TapeOffset {
  readonly kind: 'alcove' | 'breast' | 'bay';
  readonly name?: string;
  /** Corner from which the wall starts. */
  readonly wall: string;
  /** From the wall's start to where it begins. */
  readonly start: Reading;
  readonly width: Reading;
  readonly depth: Reading;
  /** Length of a bay's front; default: as wide as the bay. */
  readonly front?: Reading;
  /** From where it ends to the wall's end: a check. */
  readonly rest?: Reading;
}

/** A room as one measures it: walls in order, and whatever else was read. */
export interface TapeSurvey {
  readonly walls: readonly TapeWall[];
  /** `clockwise` (default): facing a wall from inside, the next one is to the right. */
  readonly walk?: 'clockwise' | 'anticlockwise';
  readonly diagonals?: readonly TapeDistance[];
  readonly angles?: readonly TapeAngle[];
  readonly offsets?: readonly TapeOffset[];
  /** Heights of the ceiling that were read; the least counts for a flat ceiling. */
  readonly heights?: readonly Reading[];
  /** Means of every reading that says nothing else; default `tape`. */
  readonly by?: ReadingMeans;
  /** Accuracy class of the tape by Directive 2014/32/EU, Annex X; default II. */
  readonly tapeClass?: 'I' | 'II' | 'III';
}
