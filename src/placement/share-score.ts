import type { Placement, Ring, Size } from '../geometry/types.js';

/** A ring whose edges block a direction when they are met nearer than a reach (mm). `inside`: the free side is the ring's inside (walls), else its outside (footprints). */
export interface ReachRing {
  readonly ring: Ring;
  readonly inside: boolean;
  /** Reach of the full stroke, level; 0: never in its way. */
  readonly open: number;
  /** Reach of the short stroke, raised as far as it may be; at most `open`. */
  readonly playable: number;
}

/**
 * A quick score of a pose in 0..1 to steer a search by, never to judge by: the share of shots that a short raised stroke can
 * play counts nine parts, that of level full strokes that meet nothing one. Exact in direction (a union of arcs),
 * Gauss-Legendre in the ball's position. Rails, standing room and ceilings are left to the judge.
 */
export function shareScorer(rings: readonly ReachRing[], play: Size): (pose: Placement) => number {
  const { ax, ay, tx, ty, length, facing, open, playable, count } = reachEdges(rings);
  const openArcs = new ArcUnion(count);
  const playableArcs = new ArcUnion(count);

  const lookFrom = (px: number, py: number): void => {
    openArcs.clear();
    playableArcs.clear();
    for (let i = 0; i < count; i++) {
      const dx = px - ax[i];
      const dy = py - ay[i];
      const away = tx[i] * dy - ty[i] * dx;
      // A back-facing edge is always hidden behind a front-facing one of its own ring.
      if (away <= 0 || away >= open[i]) continue;
      const foot = tx[i] * dx + ty[i] * dy;
      openArcs.addEdge(facing[i], away, foot, length[i], open[i]);
      if (away < playable[i]) playableArcs.addEdge(facing[i], away, foot, length[i], playable[i]);
    }
  };

  return ({ x, y, angle }) => {
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    let score = 0;
    for (const [gu, wu] of GAUSS_5) {
      for (const [gv, wv] of GAUSS_3) {
        const u = (gu * play.length) / 2;
        const v = (gv * play.width) / 2;
        const px = x + cos * u - sin * v;
        const py = y + sin * u + cos * v;
        lookFrom(px, py);
        const lost = (1 - PLAYABLE) * openArcs.share() + PLAYABLE * playableArcs.share();
        score += ((wu * wv) / 4) * (1 - lost);
      }
    }
    return score;
  };
}

const TURN = 2 * Math.PI;

/** The model wants the largest share of playable shots; among equals more open ones. */
export const PLAYABLE = 0.9;

/** Directions that are lost from one point: arcs of the circle, kept sorted by where they start. */
class ArcUnion {
  readonly #starts: Float64Array;
  readonly #ends: Float64Array;
  #count = 0;

  /** Room for the arcs of `edges` edges, each of which may be cut in two. */
  constructor(edges: number) {
    this.#starts = new Float64Array(2 * edges + 2);
    this.#ends = new Float64Array(2 * edges + 2);
  }

  clear(): void {
    this.#count = 0;
  }

  /** The directions in which an edge is met within `reach` > `away`: `foot` is where the point's normal meets its line, at distance `away`. */
  addEdge(facing: number, away: number, foot: number, length: number, reach: number): void {
    const half = Math.sqrt(reach * reach - away * away);
    const t0 = Math.max(0, foot - half);
    const t1 = Math.min(length, foot + half);
    if (t0 >= t1) return;
    let from = facing + Math.atan((t0 - foot) / away);
    let to = facing + Math.atan((t1 - foot) / away);
    if (from < 0) {
      from += TURN;
      to += TURN;
    }
    if (to > TURN) {
      this.#add(from, TURN);
      this.#add(0, to - TURN);
    } else this.#add(from, to);
  }

  /** Insertion by start: there are few arcs. */
  #add(from: number, to: number): void {
    let k = this.#count++;
    while (k > 0 && this.#starts[k - 1] > from) {
      this.#starts[k] = this.#starts[k - 1];
      this.#ends[k] = this.#ends[k - 1];
      k--;
    }
    this.#starts[k] = from;
    this.#ends[k] = to;
  }

  /** Their union as a share of the circle. */
  share(): number {
    let total = 0;
    let reached = 0;
    for (let k = 0; k < this.#count; k++) {
      const end = this.#ends[k];
      if (end <= reached) continue;
      total += end - Math.max(reached, this.#starts[k]);
      reached = end;
    }
    return total / TURN;
  }
}

/** Nodes and weights of the Gauss-Legendre rules with 3 and 5 points on [-1, 1] (Abramowitz and Stegun, table 25.4). */
const GAUSS_3 = [
  [-0.774596669241483, 0.555555555555556],
  [0, 0.888888888888889],
  [0.774596669241483, 0.555555555555556],
] as const;
const GAUSS_5 = [
  [-0.906179845938664, 0.236926885056189],
  [-0.538469310105683, 0.478628670499366],
  [0, 0.568888888888889],
  [0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
] as const;

/** Edges turned so that the free side lies left of each. */
function reachEdges(rings: readonly ReachRing[]) {
  let count = 0;
  for (const { ring } of rings) count += ring.length;
  const edges = {
    count,
    ax: new Float64Array(count),
    ay: new Float64Array(count),
    tx: new Float64Array(count),
    ty: new Float64Array(count),
    length: new Float64Array(count),
    /** Angle of the direction from the free side square onto the edge. */
    facing: new Float64Array(count),
    open: new Float64Array(count),
    playable: new Float64Array(count),
  };
  let i = 0;
  for (const { ring, inside, open, playable } of rings) {
    for (let k = 0; k < ring.length; k++) {
      const here = ring[k];
      const next = ring[(k + 1) % ring.length];
      const [a, b] = inside ? [here, next] : [next, here];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      edges.ax[i] = a[0];
      edges.ay[i] = a[1];
      edges.tx[i] = (b[0] - a[0]) / length;
      edges.ty[i] = (b[1] - a[1]) / length;
      edges.length[i] = length;
      edges.facing[i] = Math.atan2(-edges.tx[i], edges.ty[i]);
      edges.open[i] = open;
      edges.playable[i] = playable;
      i++;
    }
  }
  return edges;
}
