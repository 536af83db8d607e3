/** A point of the plan in millimetres, x to the right and y up. */
export type Point = readonly [x: number, y: number];

/** Corners of a simple polygon in order, anticlockwise unless said otherwise; the first is not repeated at the end. */
export type Ring = readonly Point[];

/** Where a table stands: the centre of its play field (mm) and the anticlockwise angle of its long axis from +x (radians, in [0, pi)). */
export interface Placement {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
}

/** Length (along the table) and width of a rectangle, mm; length >= width is not required. */
export interface Size {
  readonly length: number;
  readonly width: number;
}
