import type { TableSpec } from '../../equipment/equipment-types.js';
import type { Point } from '../../geometry/types.js';
import type { Cushion, Pose } from '../fit-report.js';

/** From the table's frame (origin in the middle of the field, +x along the table) to the room, mm. */
export class TableFrame {
  readonly #pose: Pose;
  readonly #cos: number;
  readonly #sin: number;

  constructor(pose: Pose) {
    const { turn } = pose;
    this.#pose = pose;
    // Exactly square where the table is.
    this.#cos = turn === 90 ? 0 : Math.cos((turn * Math.PI) / 180);
    this.#sin = turn === 0 ? 0 : Math.sin((turn * Math.PI) / 180);
  }

  at(u: number, v: number): Point {
    return [this.#pose.x + this.#cos * u - this.#sin * v, this.#pose.y + this.#sin * u + this.#cos * v];
  }

  /** The other way: a point of the room in the table's frame. */
  back([x, y]: Point): Point {
    const dx = x - this.#pose.x;
    const dy = y - this.#pose.y;
    return [this.#cos * dx + this.#sin * dy, this.#cos * dy - this.#sin * dx];
  }

  /** A rectangle around the middle, anticlockwise. */
  rectangle(length: number, width: number): readonly Point[] {
    const u = length / 2;
    const v = width / 2;
    return [this.at(-u, -v), this.at(u, -v), this.at(u, v), this.at(-u, v)];
  }

  /** The point `out` beyond a cushion's nose and `along` it from its middle, in the direction of {@link CushionProfile.spots}. */
  behind(cushion: Cushion, { field }: TableSpec, out: number, along: number): Point {
    const u = field.length / 2 + out;
    const v = field.width / 2 + out;
    switch (cushion) {
      case 'endA':
        return this.at(u, along);
      case 'endB':
        return this.at(-u, along);
      case 'sideA':
        return this.at(along, v);
      case 'sideB':
        return this.at(along, -v);
    }
  }
}

/** A point of the table's frame by cushion: beyond its nose, and along it. */
export function offCushion(
  cushion: Cushion,
  { field }: TableSpec,
  [u, v]: Point,
): { out: number; along: number } {
  switch (cushion) {
    case 'endA':
      return { out: u - field.length / 2, along: v };
    case 'endB':
      return { out: -u - field.length / 2, along: v };
    case 'sideA':
      return { out: v - field.width / 2, along: u };
    case 'sideB':
      return { out: -v - field.width / 2, along: u };
  }
}

/** Half the length of a cushion, nose to nose. */
export function halfCushion(cushion: Cushion, { field }: TableSpec): number {
  return (cushion === 'endA' || cushion === 'endB' ? field.width : field.length) / 2;
}
