import type { HoldName } from './delivery-input.js';

/** A checked piece: mm, length >= width >= thickness > 0, as it is measured (without hand room). */
export interface Piece {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly count: number;
  /** Kilograms; null where not known. */
  readonly mass: number | null;
  readonly carriers: number | null;
  readonly held: readonly HoldName[];
  /** Radians in [0, pi/2]: how far it may be tilted out of the ways in `held`. */
  readonly tilt: number;
}

/** The box that must pass: a piece with its hand room on every side. l >= w >= h > 0, mm. */
export interface Carried {
  readonly l: number;
  readonly w: number;
  readonly h: number;
  readonly held: readonly HoldName[];
  readonly tilt: number;
}

/**
 * How a box is held: its edges along the heading, across it and up, mm, before it is tilted by `tilt` (radians, front end up, about
 * the level line across). Held so it covers in plan the rectangle (along cos tilt + up sin tilt) x across and in height
 * along sin tilt + up cos tilt.
 */
export interface Hold {
  readonly along: number;
  readonly across: number;
  readonly up: number;
  readonly tilt: number;
}

/** The piece with `handRoom` on every side. */
export function carriedWith(piece: Piece, handRoom: number): Carried {
  const grown = 2 * handRoom;
  return {
    l: piece.length + grown,
    w: piece.width + grown,
    h: piece.thickness + grown,
    held: piece.held,
    tilt: piece.tilt,
  };
}
