import type { Length } from '../length/length.js';

/** Length (along the table) and width, mm. */
export interface FieldSize {
  readonly length: number;
  readonly width: number;
}

/** A table by its measurements. Only the two sizes are needed; the rest defaults to what is usual and the report says so. */
export interface TableInput {
  readonly name?: string;
  readonly game?: string;
  /** Play field, nose to nose. */
  readonly field: { readonly length: Length; readonly width: Length };
  /** Outside of the rails. */
  readonly outer: { readonly length: Length; readonly width: Length };
  /** Floor to cloth. */
  readonly bedHeight?: Length;
  /** Cushion nose above the cloth. */
  readonly noseHeight?: Length;
  /** Top of the rail above the cloth. */
  readonly railHeight?: Length;
  readonly ballDiameter?: Length;
  /** Kilograms. */
  readonly mass?: number;
}

/** Where a figure comes from: a published source, `common practice, no source`, or `... (from memory)`. */
export type Source = string;

/** A checked table, all lengths in mm. */
export interface TableSpec {
  /** Catalogue id, or null for a table given by measurements. */
  readonly id: string | null;
  /** A label. The nominal size in it is the trade's and is never used in a computation. */
  readonly name: string;
  readonly game: string;
  readonly field: FieldSize;
  readonly outer: FieldSize;
  readonly bedHeight: number;
  readonly noseHeight: number;
  readonly railHeight: number;
  readonly ballDiameter: number;
  /** Length of the cue that is usual for the game. */
  readonly usualCue: number;
  /** Kilograms; null where not known. */
  readonly mass: number | null;
  /** Number of legs or feet that the mass is shared out over; null where not known. */
  readonly legs: number | null;
  readonly source: Source;
}

/** A cue by its length alone or with its diameters. */
export interface CueInput {
  readonly length: Length;
  readonly tipDiameter?: Length;
  readonly buttDiameter?: Length;
}

/** A checked cue, mm. r(t) runs straight from tipRadius to buttRadius. */
export interface CueSpec {
  readonly name: string;
  readonly length: number;
  readonly tipRadius: number;
  readonly buttRadius: number;
}
