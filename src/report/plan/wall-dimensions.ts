import type { Ring } from '../../geometry/types.js';
import { type Area, lengthInside, type Segment } from './boxes.js';
import { type Dimension, drawDimension } from './dimension.js';
import type { Draft } from './draft.js';
import { WALL_BAND } from './plan-walls.js';
import type { PaperPoint } from './svg.js';
import type { ChainLink, Side, WallChains } from './wall-chains.js';
import { WORDS } from './words.js';

/** From what is drawn to the first line of dimensions, and between lines, mm on paper. */
const FIRST = 5;
const NEXT = 7;
/** What a number takes above its line. */
const NUMBER = 5;
/** From a wall to a dimension of its own, on the outside or in the room. */
const OWN = { outside: WALL_BAND + 6, inside: 5 } as const;

/** What the dimensions take around the plan, mm on paper. */
export function dimensionsAround(chains: WallChains): {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
} {
  const { sides, whole, others } = chains;
  const reach = (side: Side, numbersOutside: boolean): number => {
    const row = whole.some((w) => w.side === side) ? wholeRow(chains, side) : sides[side].length > 0 ? 0 : -1;
    const chain = row < 0 ? 0 : WALL_BAND + FIRST + row * NEXT + (numbersOutside ? NUMBER : 2);
    return Math.max(chain, others.length > 0 ? OWN.outside + NUMBER : WALL_BAND + 2);
  };
  return {
    left: reach('left', true),
    right: reach('right', false),
    top: reach('top', true),
    bottom: reach('bottom', false),
  };
}

/** Chains of dimensions along the sides of the plan, whose box on paper is `extents`, then the walls that no chain holds. */
export function drawWallDimensions(
  draft: Draft,
  outline: Ring,
  names: readonly string[],
  chains: WallChains,
  extents: Area,
): void {
  const note = (wall: number, length: number): string =>
    WORDS.wall(wall < 0 ? WORDS.wholeRoom : names[wall], draft.lengths.bare(length));
  const chain = (side: Side, link: ChainLink, row: number): void => {
    const length = link.wall < 0 ? link.high - link.low : lengthOf(outline, link.wall);
    const from = draft.view.at(link.from);
    const to = draft.view.at(link.to);
    const edge = extents[side] + OUTWARDS[side] * (WALL_BAND + FIRST + row * NEXT);
    const moved = ([x, y]: PaperPoint): PaperPoint =>
      side === 'bottom' || side === 'top' ? [x, edge] : [edge, y];
    const line: Dimension['line'] = [moved(from), moved(to)];
    const clear = WALL_BAND + 0.8;
    drawDimension(draft, {
      from,
      to,
      line,
      clear,
      length,
      note: note(link.wall, length),
      part: 'wall-dimension',
    });
  };
  for (const side of ['bottom', 'left', 'top', 'right'] as const)
    for (const link of chains.sides[side]) chain(side, link, 0);
  for (const { side, link } of chains.whole) chain(side, link, wholeRow(chains, side));
  if (chains.left > 0) draft.legend.note(WORDS.wallsLeft(chains.left), null);
  for (const wall of chains.others) drawOwn(draft, outline, wall, note(wall, lengthOf(outline, wall)));
}

/** The extents stand outside of everything else on their side. */
function wholeRow({ sides, others }: WallChains, side: Side): 0 | 1 {
  return sides[side].length > 0 || others.length > 0 ? 1 : 0;
}

const OUTWARDS: Readonly<Record<Side, 1 | -1>> = { bottom: 1, top: -1, left: -1, right: 1 };

/** A dimension beside its wall: outside it where the line runs free of the room, else inside. */
function drawOwn(draft: Draft, outline: Ring, wall: number, note: string): void {
  const { view } = draft;
  const from = view.at(outline[wall]);
  const to = view.at(outline[(wall + 1) % outline.length]);
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (long === 0) return;
  // The room lies to the left in its plan, which on paper (y down) is the left still.
  const out: PaperPoint = [-(to[1] - from[1]) / long, (to[0] - from[0]) / long];
  const shifted = (by: number): Segment => [
    [from[0] + out[0] * by, from[1] + out[1] * by],
    [to[0] + out[0] * by, to[1] + out[1] * by],
  ];
  const walls = outline.map((a, i): Segment => [view.at(a), view.at(outline[(i + 1) % outline.length])]);
  const line = shifted(OWN.outside);
  // All the way from the wall to beyond the line, less its ends, where neighbours meet it.
  const deep = OWN.outside + 1;
  const middle = shifted(deep / 2 + 0.5);
  const box = {
    x: (middle[0][0] + middle[1][0]) / 2,
    y: (middle[0][1] + middle[1][1]) / 2,
    width: Math.max(0.1, long - 1),
    height: deep,
    angle: Math.atan2(to[1] - from[1], to[0] - from[0]),
  };
  const free = walls.every((segment) => lengthInside(box, segment) === 0);
  drawDimension(draft, {
    from,
    to,
    line: free ? line : shifted(-OWN.inside),
    clear: free ? WALL_BAND + 0.8 : 0.8,
    length: lengthOf(outline, wall),
    note,
    part: 'wall-dimension',
  });
}

function lengthOf(outline: Ring, wall: number): number {
  const [ax, ay] = outline[wall];
  const [bx, by] = outline[(wall + 1) % outline.length];
  return Math.hypot(bx - ax, by - ay);
}
