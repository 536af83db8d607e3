/**
 * Passages as the checks leave them: mm and radians, nothing optional; `Infinity` where nothing limits. Each kind has a frame
 * of its own, told here, in which its solids are built and its motions are written. z is up, the floor at z = 0.
 */

interface Common {
  readonly name: string;
  /** How far off any of its measurements may be. */
  readonly tolerance: number;
}

/** One side of a gate. `left` is towards -x. */
export interface Space {
  readonly depth: number;
  readonly left: number;
  readonly right: number;
  readonly height: number;
}

/**
 * A doorway, or an opening with a sill: a hole |x| <= width / 2, sill <= z <= sill + height through a wall 0 <= y <= depth, walked towards
 * +y. `before` is the floor -before.depth <= y <= 0, -(width / 2 + left) <= x <= width / 2 + right; `after` likewise for y >= depth.
 */
export interface Gate extends Common {
  readonly kind: 'doorway' | 'opening';
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly sill: number;
  /** What taking the leaf off adds to the width. */
  readonly leaf: number;
  readonly before: Space;
  readonly after: Space;
}

/** 0 <= y <= width, 0 <= z <= height, walked towards +x; endless. */
export interface Corridor extends Common {
  readonly kind: 'corridor';
  readonly width: number;
  readonly height: number;
}

/**
 * The outer walls run from the origin O along e1 = (1, 0) and e2 = (cos g, sin g), g = pi - turn. The first corridor is the strip of
 * `width` to the left of e1, walked towards O; the second is the strip of `widthAfter` to the right of e2, walked away from O. Both endless.
 * The inner corner is I = ((widthAfter + width cos g) / sin g, width); beyond it lies the wedge I + cone(e1, e2).
 */
export interface Corner extends Common {
  readonly kind: 'corner';
  readonly width: number;
  readonly height: number;
  readonly widthAfter: number;
  readonly heightAfter: number;
  /** g, angle between the outer walls, in (0, pi). */
  readonly angle: number;
}

export interface Level {
  readonly depth: number;
  readonly height: number;
}

/**
 * Walked towards +x, between the walls y = 0 and y = width. Floor: z = 0 for x <= 0, z = x tan(pitch) for 0 <= x <= run (the line of the nosings;
 * the steps themselves lie up to `rise` below it), then level. Ceiling: `bottom.height` over the lower floor, `headroom` upright over the
 * line of the nosings, `top.height` over the upper floor; where two of them meet, the lower one counts. Walls at x = -bottom.depth and
 * x = run + top.depth.
 */
export interface Stair extends Common {
  readonly kind: 'stair';
  readonly width: number;
  readonly pitch: number;
  /** Of one step: how far the floor may truly lie below the line of the nosings. */
  readonly rise: number;
  readonly headroom: number;
  readonly run: number;
  readonly bottom: Level;
  readonly top: Level;
}

/**
 * The landing is the floor 0 <= x <= X, 0 <= y <= depth at z = 0. The flight below: 0 <= x <= width, y <= 0, falling to z = y tan(pitch).
 * Quarter: X = breadth; the flight above: x >= breadth, depth - widthAfter <= y <= depth, rising z = (x - breadth) tan(pitch).
 * Half: X = width + well + widthAfter; the flight above: width + well <= x <= X, y <= 0, rising z = -y tan(pitch); the well counts as wall.
 * Overhead there is `headroom`, upright, over every point of that floor. Flights are endless.
 */
export interface Landing extends Common {
  readonly kind: 'quarter-landing' | 'half-landing';
  readonly width: number;
  readonly widthAfter: number;
  readonly pitch: number;
  readonly rise: number;
  readonly headroom: number;
  readonly depth: number;
  readonly breadth: number;
  readonly well: number;
}

/**
 * A quarter turn whose steps climb in the corner itself: plan as a quarter landing with every width = `width`. In the corner
 * 0 <= x, y <= width the floor lies anywhere between 0 and `climb`; the flight above starts at `climb`.
 */
export interface Winder extends Common {
  readonly kind: 'winder';
  readonly width: number;
  readonly pitch: number;
  readonly rise: number;
  readonly headroom: number;
  readonly climb: number;
}

/** A car |x| <= width / 2, door.depth <= y <= door.depth + depth, behind a door in the wall 0 <= y <= door.depth, |x| <= door.width / 2; the landing as `before`. */
export interface Lift extends Common {
  readonly kind: 'lift';
  readonly width: number;
  readonly depth: number;
  readonly height: number;
  readonly door: { readonly width: number; readonly height: number; readonly depth: number };
  readonly before: Space;
}

export type Passage = Gate | Corridor | Corner | Stair | Landing | Winder | Lift;

/** Kinds with steps: flights, and the turns between them. */
export const STAIR_KINDS: readonly Passage['kind'][] = ['stair', 'quarter-landing', 'half-landing', 'winder'];
