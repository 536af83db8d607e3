import { type Bound, lowerBound, type Piece } from './corner-spare-bound.js';
import {
  type CornerNode,
  type CornerSetting,
  nodeAt,
  type Side,
  type Stretch,
  stretchAt,
} from './corner-spare-node.js';

export interface ArcLow {
  /** The least spare(alpha) of the stretch lies between the two. */
  readonly atLeast: number;
  readonly atMost: number;
  /** Where `atMost` is taken. */
  readonly heading: number;
}

const MOST_NODES = 400;
const LEAST_STEP = 1e-9;

/**
 * The least spare(alpha) over [from, to], in which no side of K is parallel to an outer wall except at the ends. Stops as soon as it is
 * surely at most `floor` (then `atLeast` is -Infinity) and does not look closer where it is surely at least `ceiling`.
 */
export function arcLow(
  setting: CornerSetting,
  from: number,
  to: number,
  floor: number,
  ceiling: number,
): ArcLow {
  const stretch = stretchAt(setting, (from + to) / 2);
  const stack = cutPieces(setting, stretch, from, to);
  const bound: Bound = { low: 0, split: 0 };
  let atMost = Number.POSITIVE_INFINITY;
  let heading = from;
  const take = (node: CornerNode): void => {
    if (node.f < atMost) {
      atMost = node.f;
      heading = node.x;
    }
  };
  for (const { left, right } of stack) {
    take(left);
    take(right);
  }
  let atLeast = Number.POSITIVE_INFINITY;
  let nodes = 0;
  for (let piece = stack.pop(); piece !== undefined; piece = stack.pop()) {
    if (atMost <= floor) return { atLeast: Number.NEGATIVE_INFINITY, atMost, heading };
    const { left, right } = piece;
    lowerBound(setting, piece, bound);
    const closed = bound.low >= ceiling || bound.low >= atMost - setting.tolerance;
    if (closed || right.x - left.x < LEAST_STEP || nodes >= MOST_NODES) {
      atLeast = Math.min(atLeast, bound.low);
      continue;
    }
    nodes++;
    const middle = nodeAt(setting, stretch, left.x + bound.split * (right.x - left.x));
    take(middle);
    stack.push({ left, right: middle }, { left: middle, right });
  }
  return { atLeast: Math.min(atLeast, atMost), atMost, heading };
}

/** [from, to] cut where a side's d changes from convex to concave in u. */
function cutPieces(setting: CornerSetting, stretch: Stretch, from: number, to: number): Piece[] {
  const { sideA, sideB } = stretch;
  const left = nodeAt(setting, stretch, from);
  const right = nodeAt(setting, stretch, to);
  const cuts: number[] = [];
  if (sideA !== null) bendsInto(setting, sideA, left.uA, right.uA, from, cuts);
  if (sideB !== null) bendsInto(setting, sideB, left.uB, right.uB, from, cuts);
  cuts.sort((x, y) => x - y);
  const pieces: Piece[] = [];
  let before = left;
  for (let i = 0; i <= cuts.length; i++) {
    const cut = cuts[i];
    const node = cut === undefined ? right : nodeAt(setting, stretch, cut);
    pieces.push({ left: before, right: node });
    before = node;
  }
  return pieces;
}

/** The roots of c0 + c1 u + c2 u^2, which has the sign of d''. */
function bendsInto(
  { r, s, sg }: CornerSetting,
  { hm, hp, stands }: Side,
  uFrom: number,
  uTo: number,
  from: number,
  cuts: number[],
): void {
  const k = (2 * hp) / sg;
  const weight = r + hm * (stands === 0 ? 2 : 1);
  const c0 = k * (1 + s * s) - weight;
  const c1 = (6 * hm * stands) / sg;
  const c2 = k * (s * s - 2) - weight;
  const root = c1 * c1 - 4 * c0 * c2;
  if (root <= 0) return;
  for (const sign of [-1, 1]) {
    const u = (-c1 + sign * Math.sqrt(root)) / (2 * c2);
    if (u > uFrom && u < uTo) cuts.push(from + Math.atan(u) - Math.atan(uFrom));
  }
}
