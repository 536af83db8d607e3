import type { Point, Ring } from '../../geometry/types.js';

/** A side of the plan: below, to the left, above, to the right. */
export type Side = 'bottom' | 'left' | 'top' | 'right';

/** A stretch of a side's chain of dimensions: from the lower to the higher coordinate along the side. */
export interface ChainLink {
  readonly low: number;
  readonly high: number;
  /** Ends of the wall, in the same order. */
  readonly from: Point;
  readonly to: Point;
  /** Index of the wall in the outline; -1 for the room's whole extent. */
  readonly wall: number;
}

/** The dimensions of a room's walls, set out as on a building drawing. */
export interface WallChains {
  /** Walls seen square from a side, whose dimensions stand in one line outside; where opposite sides say the same, one is left out. */
  readonly sides: Readonly<Record<Side, readonly ChainLink[]>>;
  /** The extents of the room, where no chain of one wall says them: along the bottom and along the left. */
  readonly whole: readonly { readonly side: 'bottom' | 'left'; readonly link: ChainLink }[];
  /** The other walls, which are dimensioned where they are. */
  readonly others: readonly number[];
  /** How many of the shortest walls are left out. */
  readonly left: number;
}

/** More dimensions than these and nobody finds any. */
const MOST_WALLS = 60;

/** A wall counts as level or upright where its length and its projection differ by less than this, mm. */
const SAME = 1e-3;

export function wallChains(outline: Ring): WallChains {
  const found: Record<Side, ChainLink[]> = { bottom: [], left: [], top: [], right: [] };
  const others: number[] = [];
  const walls = longestWalls(outline);
  for (const wall of walls) {
    const seen = seenFrom(outline, wall);
    if (seen === null) others.push(wall);
    else found[seen.side].push(seen.link);
  }
  for (const side of SIDES) found[side].sort((a, b) => a.low - b.low);
  const { bottom, left } = found;
  const top = sameLinks(found.top, bottom) ? [] : found.top;
  const right = sameLinks(found.right, left) ? [] : found.right;
  const whole = (['bottom', 'left'] as const).flatMap((side) => {
    const link = extent(outline, side);
    const said = [...found[side], ...(side === 'bottom' ? found.top : found.right)];
    return said.some((one) => near(one.low, link.low) && near(one.high, link.high)) ? [] : [{ side, link }];
  });
  return { sides: { bottom, left, top, right }, whole, others, left: outline.length - walls.length };
}

/** The longest walls, in the order of the outline. */
function longestWalls(outline: Ring): readonly number[] {
  const walls = outline.map(([ax, ay], wall) => {
    const [bx, by] = outline[(wall + 1) % outline.length];
    return { wall, length: Math.hypot(bx - ax, by - ay) };
  });
  return walls
    .sort((a, b) => b.length - a.length || a.wall - b.wall)
    .slice(0, MOST_WALLS)
    .map(({ wall }) => wall)
    .sort((a, b) => a - b);
}

const SIDES = ['bottom', 'left', 'top', 'right'] as const;

/** The side that a level or upright wall faces, if nothing else of the outline stands between. */
function seenFrom(outline: Ring, wall: number): { side: Side; link: ChainLink } | null {
  const a = outline[wall];
  const b = outline[(wall + 1) % outline.length];
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length = Math.hypot(dx, dy);
  const level = length - Math.abs(dx) < SAME && Math.abs(dx) > Math.abs(dy);
  const upright = length - Math.abs(dy) < SAME && !level;
  if (!level && !upright) return null;
  // The room lies to the left of every edge, so a wall that runs to the right faces down.
  const side: Side = level ? (dx > 0 ? 'bottom' : 'top') : dy > 0 ? 'right' : 'left';
  const along = level ? 0 : 1;
  const across = level ? 1 : 0;
  const outwards = side === 'bottom' || side === 'left' ? -1 : 1;
  const [from, to] = a[along] <= b[along] ? [a, b] : [b, a];
  const own = Math.max(outwards * a[across], outwards * b[across]);
  const hidden = outline.some((c, i) => {
    const d = outline[(i + 1) % outline.length];
    if (i === wall) return false;
    const low = Math.max(from[along], Math.min(c[along], d[along]));
    const high = Math.min(to[along], Math.max(c[along], d[along]));
    if (high - low <= SAME) return false;
    const at = (place: number): number =>
      c[across] + ((d[across] - c[across]) * (place - c[along])) / (d[along] - c[along]);
    return Math.max(outwards * at(low), outwards * at(high)) > own + SAME;
  });
  return hidden ? null : { side, link: { low: from[along], high: to[along], from, to, wall } };
}

function extent(outline: Ring, side: 'bottom' | 'left'): ChainLink {
  const along = side === 'bottom' ? 0 : 1;
  const across = 1 - along;
  const values = outline.map((point) => point[along]);
  const low = Math.min(...values);
  const high = Math.max(...values);
  const endAt = (value: number): Point =>
    outline
      .filter((point) => point[along] === value)
      .reduce((best, point) => (point[across] < best[across] ? point : best));
  return { low, high, from: endAt(low), to: endAt(high), wall: -1 };
}

function sameLinks(a: readonly ChainLink[], b: readonly ChainLink[]): boolean {
  return (
    a.length === b.length && a.every((link, i) => near(link.low, b[i].low) && near(link.high, b[i].high))
  );
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) < SAME;
}
