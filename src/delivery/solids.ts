import type { Corner, Gate, Landing, Lift, Passage, Space, Stair, Winder } from './passages.js';
import { type ConvexSolid, convexSolid, type HalfSpace } from './solids-convex.js';
import { column, coverAround, type PlanRect } from './solids-plan.js';

/** A name and the half-spaces. */
type Draft = readonly [name: string, ...halfSpaces: HalfSpace[]];

/**
 * Everything that is not air in a passage, in its own frame (passages.ts), as convex solids. Together they are exactly the walls, floors and
 * ceilings told there: a flight is solid up to the line of the nosings, the corner of a winder up to `climb` (and its ceiling is that over
 * its lowest step), both of which leave no more air than there is. Where a corner's two ceilings overlap the lower one counts, and so it
 * does where a stair's meet. The outside of an opening has no floor. Measures below 0 give solids that overlap: nothing passes.
 */
export function passageSolids(passage: Passage): readonly ConvexSolid[] {
  return drafts(passage).flatMap(([name, ...halfSpaces]) => convexSolid(name, halfSpaces) ?? []);
}

function drafts(passage: Passage): Draft[] {
  switch (passage.kind) {
    case 'doorway':
    case 'opening':
      return gate(passage);
    case 'corridor':
      return [FLOOR, over(passage.height), ['wall', [0, 1, 0, 0]], ['wall', [0, -1, 0, -passage.width]]];
    case 'corner':
      return corner(passage);
    case 'stair':
      return stair(passage);
    case 'quarter-landing':
    case 'half-landing':
      return landing(passage);
    case 'winder':
      return winder(passage);
    case 'lift':
      return lift(passage);
  }
}

const FLOOR: Draft = ['floor', [0, 0, 1, 0]];

function over(height: number, ...where: HalfSpace[]): Draft {
  return ['ceiling', [0, 0, -1, -height], ...where];
}

function gate({ kind, width, height, depth, sill, before, after }: Gate): Draft[] {
  const outside: HalfSpace[] = kind === 'opening' ? [[0, -1, 0, 0]] : [];
  const solids: Draft[] = [
    ['floor', [0, 0, 1, 0], ...outside],
    ...hole(width, sill + height, depth),
    ...space(before, width, [0, 1, 0, 0]),
    ...space(after, width, [0, -1, 0, -depth]),
  ];
  if (sill > 0) solids.push(['sill', [0, 0, 1, sill], ...within(depth)]);
  return solids;
}

/** The wall 0 <= y <= depth round a hole that starts at the floor. */
function hole(width: number, top: number, depth: number): Draft[] {
  return [
    ['left jamb', [1, 0, 0, -width / 2], ...within(depth)],
    ['right jamb', [-1, 0, 0, -width / 2], ...within(depth)],
    ['lintel', [0, 0, -1, -top], ...within(depth)],
  ];
}

function within(depth: number): HalfSpace[] {
  return [
    [0, -1, 0, 0],
    [0, 1, 0, depth],
  ];
}

/** The walls and the ceiling of the space on one side of a wall, which lies in the half-space `side`. */
function space({ depth, left, right, height }: Space, width: number, side: HalfSpace): Draft[] {
  const [, away, , face] = side;
  return [
    ['end wall', [0, away, 0, face - depth]],
    ['left wall', [1, 0, 0, -(width / 2 + left)], side],
    ['right wall', [-1, 0, 0, -(width / 2 + right)], side],
    over(height, side),
  ];
}

function corner({ width, height, widthAfter, heightAfter, angle }: Corner): Draft[] {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  // The second corridor is 0 <= x sin g - y cos g <= widthAfter.
  return [
    FLOOR,
    ['outer wall', [0, 1, 0, 0]],
    ['outer wall', [sin, -cos, 0, 0]],
    ['inner corner', [0, -1, 0, -width], [-sin, cos, 0, -widthAfter]],
    ...(height === heightAfter
      ? [over(height)]
      : [over(height, [0, 1, 0, width]), over(heightAfter, [sin, -cos, 0, widthAfter])]),
  ];
}

function stair({ width, pitch, headroom, run, bottom, top }: Stair): Draft[] {
  const tan = Math.tan(pitch);
  const climb = run === Infinity ? Infinity : run * tan;
  return [
    FLOOR,
    ['flight', [-tan, 0, 1, 0], [0, 0, 1, climb]],
    ['wall', [0, 1, 0, 0]],
    ['wall', [0, -1, 0, -width]],
    ['end wall', [1, 0, 0, -bottom.depth]],
    ['end wall', [-1, 0, 0, -(run + top.depth)]],
    over(bottom.height, [1, 0, 0, 0]),
    ['ceiling', [tan, 0, -1, -headroom], [-1, 0, 0, 0], [1, 0, 0, run]],
    over(climb + top.height, [-1, 0, 0, -run]),
  ];
}

function landing(passage: Landing): Draft[] {
  const { width, widthAfter, headroom, depth, well } = passage;
  const tan = Math.tan(passage.pitch);
  const below: PlanRect = { x0: 0, x1: width, y0: -Infinity, y1: 0 };
  const stairs: Draft[] = [
    ['floor', [0, 0, 1, 0], [0, -tan, 1, 0]],
    ['ceiling', [0, tan, -1, -headroom], ...column(below)],
  ];
  if (passage.kind === 'quarter-landing') {
    const { breadth } = passage;
    const level: PlanRect = { x0: 0, x1: breadth, y0: 0, y1: depth };
    const above: PlanRect = { x0: breadth, x1: Infinity, y0: depth - widthAfter, y1: depth };
    const rise = breadth * tan;
    return [
      ...stairs,
      over(headroom, ...column(level)),
      ['flight', [-tan, 0, 1, -rise], ...column(above)],
      ['ceiling', [tan, 0, -1, rise - headroom], ...column(above)],
      ...walls([below, level, above]),
    ];
  }
  const inner = width + well;
  const outer = inner + widthAfter;
  const level: PlanRect = { x0: 0, x1: outer, y0: 0, y1: depth };
  const above: PlanRect = { x0: inner, x1: outer, y0: -Infinity, y1: 0 };
  return [
    ...stairs,
    over(headroom, ...column(level)),
    ['flight', [0, tan, 1, 0], ...column(above)],
    ['ceiling', [0, -tan, -1, -headroom], ...column(above)],
    // Also where it has no thickness.
    ['well', ...column({ x0: width, x1: inner, y0: -Infinity, y1: 0 })],
    ...walls([below, level, above]),
  ];
}

function winder({ width, pitch, headroom, climb }: Winder): Draft[] {
  const tan = Math.tan(pitch);
  const below: PlanRect = { x0: 0, x1: width, y0: -Infinity, y1: 0 };
  const turn: PlanRect = { x0: 0, x1: width, y0: 0, y1: width };
  const above: PlanRect = { x0: width, x1: Infinity, y0: 0, y1: width };
  const start = climb - width * tan;
  return [
    ['flight', [0, -tan, 1, 0], ...column(below)],
    ['ceiling', [0, tan, -1, -headroom], ...column(below)],
    ['winding steps', [0, 0, 1, climb], ...column(turn)],
    over(headroom, ...column(turn)),
    ['flight', [-tan, 0, 1, start], ...column(above)],
    ['ceiling', [tan, 0, -1, -(start + headroom)], ...column(above)],
    ...walls([below, turn, above]),
  ];
}

function walls(open: readonly PlanRect[]): Draft[] {
  return coverAround(open).map((rect): Draft => ['wall', ...column(rect)]);
}

function lift({ width, depth, height, door, before }: Lift): Draft[] {
  const inside: HalfSpace = [0, -1, 0, -door.depth];
  return [
    FLOOR,
    ...hole(door.width, door.height, door.depth),
    ...space(before, door.width, [0, 1, 0, 0]),
    ['car wall', [1, 0, 0, -width / 2], inside],
    ['car wall', [-1, 0, 0, -width / 2], inside],
    ['car wall', [0, -1, 0, -(door.depth + depth)]],
    over(height, inside),
  ];
}
