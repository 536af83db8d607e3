import type { ArrangeQuestion, Layout } from '../src/arrangement/arrange-question.js';
import { fitsBeside, fitsRoom, fitsTable, roomRules } from '../src/arrangement/layout-rules.js';
import { layoutJudge } from '../src/arrangement/layout-value.js';
import { type PlacedPiece, placePiece } from '../src/arrangement/piece-place.js';
import type { FurnishingSpec } from '../src/equipment/furnishing-types.js';
import type { Placement, Point } from '../src/geometry/types.js';
import { clearanceProbe } from '../src/placement/clearance-at.js';
import { findPlace } from '../src/placement/find-place.js';
import { tableProblem } from '../src/placement/problem-for.js';

/** What annealing found, and by how many layouts. */
export interface Annealed extends Layout {
  readonly value: number;
  readonly layouts: number;
}

/** Shares of the moves of a piece; the rest jump to another place. */
const SHIFT = 0.35;
const SWAP = 0.15;
const DROP = 0.05;
/** Share of the moves that are the table's. */
const TABLE = 0.2;
/** Places that are drawn, until one keeps the plain rules, before a move is given up. */
const DRAWS = 40;
/** Places of a piece that the greedy start weighs. */
const GREEDY = 6;
/** Moves from whose mean loss the first temperature is taken, and the last temperature as a share of it. */
const WARM_UP = 20;
const COLD = 1e-3;
/** Greatest shift, mm: at first, and in the end. */
const STEP = { hot: 900, cold: 20 } as const;

/**
 * Simulated annealing, plainly: the peer of the joint search. A layout is changed at random: a piece or the table is shifted or turned, a piece
 * jumps to another place, two swap places, one is taken out and what is out comes back. A worse layout is kept with probability
 * exp(gain / temperature), and the temperature falls geometrically with the time. The time is cut into `runs` of the same length, each from a
 * greedy start; the best layout of all counts.
 *
 * It is given what it can use: the very judge of the search, prepared once; the place where the bare room leaves the table most play; and the
 * rules, so that it weighs no layout in which something plainly stands wrong. Pieces jump flush to walls and into their ends.
 */
export function anneal(
  question: ArrangeQuestion,
  milliseconds: number,
  seed: number,
  runs: number,
): Annealed {
  const start = performance.now();
  const random = mulberry32(seed);
  const judge = layoutJudge(question);
  const moves = new Moves(question, random);
  let layouts = 0;
  const weigh = (layout: Layout): number => {
    layouts++;
    return judge(layout).value;
  };
  const bare = moves.bare();
  let best: Layout = bare;
  let most = weigh(bare);
  const found = performance.now();
  for (let run = 0; run < runs; run++) {
    const begin = performance.now();
    const end = found + ((start + milliseconds - found) * (run + 1)) / runs;
    let [now, value] = moves.greedy(bare, weigh, end);
    if (value > most) [best, most] = [now, value];
    let [losses, lost, temperature] = [0, 0, 0];
    while (performance.now() < end) {
      const share = (performance.now() - begin) / (end - begin);
      const next = moves.any(now, share);
      if (next === null) continue;
      const other = weigh(next);
      const gain = other - value;
      if (losses < WARM_UP && gain < 0) {
        losses++;
        lost -= gain;
        temperature = lost / losses;
      }
      if (gain >= 0 || random() < Math.exp(gain / (temperature * COLD ** share)))
        [now, value] = [next, other];
      if (value > most) [best, most] = [now, value];
    }
  }
  return { ...best, value: most, layouts };
}

interface Wall {
  readonly from: Point;
  readonly length: number;
  /** Direction along the wall, with the room to its left. */
  readonly angle: number;
}

/** Changes of a layout that break no plain rule. */
class Moves {
  readonly #pieces: readonly FurnishingSpec[];
  /** Numbers of the pieces that are to be placed, the largest first, and of those that hang over the table. */
  readonly #movable: readonly number[];
  readonly #lamps: readonly number[];
  readonly #walls: readonly Wall[];
  readonly #fitsRoom: (placed: PlacedPiece) => boolean;
  readonly #tableStands: (pose: Placement) => boolean;

  constructor(
    readonly question: ArrangeQuestion,
    readonly random: () => number,
  ) {
    const { scene, table, arrangement } = question;
    const { pieces } = arrangement;
    this.#pieces = pieces;
    const open = [...pieces.keys()].filter((i) => pieces[i].pose === null);
    this.#lamps = open.filter((i) => pieces[i].stand === 'over-table');
    const area = (i: number): number => pieces[i].length * pieces[i].width;
    this.#movable = open.filter((i) => pieces[i].stand !== 'over-table').sort((a, b) => area(b) - area(a));
    this.#walls = wallsOf(scene.outline);
    const rules = roomRules(scene, arrangement.way);
    this.#fitsRoom = (placed) => fitsRoom(rules, placed);
    const probe = table === null ? null : clearanceProbe(tableProblem(scene, table));
    this.#tableStands = (pose) => probe?.stands(pose) ?? false;
  }

  /** The table at its best place, and only those pieces whose poses are given. */
  bare(): Layout {
    const { scene, table, stroke, cue, search, pose, arrangement } = this.question;
    const tablePose =
      table === null || pose !== null ? pose : findPlace({ scene, table, stroke, cues: [cue], search }).pose;
    return this.#withTable({ tablePose, poses: arrangement.pieces.map((piece) => piece.pose) }, tablePose);
  }

  /** One piece after the other at the best of a few places. */
  greedy(from: Layout, weigh: (layout: Layout) => number, end: number): [Layout, number] {
    let now = from;
    let value = weigh(now);
    for (const i of this.#movable) {
      const before = now;
      for (let k = 0; k < GREEDY && performance.now() < end; k++) {
        const pose = this.#place(before, i, () => this.#jump(this.#pieces[i]));
        if (pose === null) continue;
        const next = withPose(before, i, pose);
        const found = weigh(next);
        if (found > value) [now, value] = [next, found];
      }
    }
    return [now, value];
  }

  /** `share` of the time is over. Null: the move that was drawn breaks a rule wherever it was tried. */
  any(layout: Layout, share: number): Layout | null {
    const { random } = this;
    const most = STEP.hot * (STEP.cold / STEP.hot) ** share;
    const [i, j] = [this.#anyOf(this.#movable), this.#anyOf(this.#movable)];
    if (i === undefined || j === undefined || random() < TABLE) return this.#moveTable(layout, most);
    const pose = layout.poses[i];
    const dice = random();
    if (pose === null) return this.#moved(layout, i, () => this.#jump(this.#pieces[i]));
    if (dice < SHIFT) return this.#moved(layout, i, () => this.#shifted(this.#pieces[i], pose, most));
    if (dice < SHIFT + SWAP) return this.#swapped(layout, i, j);
    const out = withPose(layout, i, null);
    if (dice < SHIFT + SWAP + DROP) return out;
    return this.#moved(out, i, () => this.#jump(this.#pieces[i]));
  }

  #moved(layout: Layout, i: number, draw: () => Placement): Layout | null {
    const pose = this.#place(layout, i, draw);
    return pose === null ? null : this.#refilled(withPose(layout, i, pose));
  }

  /** Each of the two stands flush where the other stood, as near to its middle as the rules let it. */
  #swapped(layout: Layout, i: number, j: number): Layout | null {
    const [a, b] = [layout.poses[i], layout.poses[j]];
    if (i === j || a === null || b === null) return null;
    let next = withPose(withPose(layout, i, null), j, null);
    for (const [piece, at] of [
      [i, b],
      [j, a],
    ] as const) {
      const behind = this.#pieces[piece === i ? j : i];
      const own = this.#pieces[piece];
      const flush = moved(at, 0, (own.width - behind.width) / 2);
      const pose = this.#place(next, piece, (k) => moved(flush, this.#both(20 * k), 0));
      if (pose === null) return null;
      next = withPose(next, piece, pose);
    }
    return this.#refilled(next);
  }

  /** The table is shifted, now and then turned; what is in its way is taken out and comes back elsewhere, if it can. */
  #moveTable(layout: Layout, most: number): Layout | null {
    const { pose, table } = this.question;
    const { tablePose } = layout;
    if (table === null || pose !== null || tablePose === null) return null;
    const quarter = this.random() < 0.1 ? Math.PI / 2 : 0;
    const turned = { ...tablePose, angle: (tablePose.angle + quarter) % Math.PI };
    for (let k = 0; k < DRAWS; k++) {
      const next = moved(turned, this.#both(most), this.#both(most));
      if (!this.#tableStands(next)) continue;
      let found = this.#withTable(layout, next);
      for (const i of this.#movable) {
        const at = found.poses[i];
        if (at !== null && !fitsTable(placePiece(this.#pieces[i], at), table, next))
          found = withPose(found, i, null);
      }
      return this.#refilled(found);
    }
    return null;
  }

  /** What is out comes back one time in two, where it can. */
  #refilled(layout: Layout): Layout {
    let next = layout;
    for (const i of this.#movable) {
      if (next.poses[i] !== null || this.random() < 0.5) continue;
      const pose = this.#place(next, i, () => this.#jump(this.#pieces[i]));
      if (pose !== null) next = withPose(next, i, pose);
    }
    return next;
  }

  /** The first place of those drawn that keeps the rules; null: none does. */
  #place({ tablePose, poses }: Layout, i: number, draw: (k: number) => Placement): Placement | null {
    const { table } = this.question;
    const others = poses.flatMap((pose, k) =>
      k === i || pose === null ? [] : [placePiece(this.#pieces[k], pose)],
    );
    for (let k = 0; k < DRAWS; k++) {
      const placed = placePiece(this.#pieces[i], draw(k));
      if (!this.#fitsRoom(placed)) continue;
      if (table !== null && tablePose !== null && !fitsTable(placed, table, tablePose)) continue;
      if (others.every((other) => fitsBeside(placed, other))) return placed.pose;
    }
    return null;
  }

  /** A random place at a wall, one time in three at an end of it. What may stand free has its zones in front of the wall, or stands anywhere. */
  #jump(piece: FurnishingSpec): Placement {
    const { random } = this;
    const wall = this.#anyOf(this.#walls);
    if (wall === undefined) throw new Error('A room has walls.');
    const free = piece.stand === 'free';
    const angle = wall.angle + (free ? (Math.PI / 2) * Math.floor(4 * random()) : 0);
    const { ring, zones } = placePiece(piece, { x: 0, y: 0, angle: angle - wall.angle });
    const whole = free ? [...ring, ...zones.flatMap((zone) => zone.ring)] : ring;
    const xs = whole.map(([x]) => x);
    const left = -Math.min(...xs);
    const room = Math.max(0, wall.length - left - Math.max(...xs));
    const dice = random();
    const along = left + (dice < 1 / 6 ? 0 : dice < 1 / 3 ? room : random() * room);
    const off = -Math.min(...whole.map(([, y]) => y));
    const far = free && random() < 0.3 ? STEP.hot * 2 * random() : 0;
    const at = moved({ x: wall.from[0], y: wall.from[1], angle: wall.angle }, along, off + far);
    return { ...at, angle };
  }

  /** What stands at a wall goes along it; what stands free goes any way, and one time in five turns. */
  #shifted(piece: FurnishingSpec, pose: Placement, most: number): Placement {
    if (piece.stand !== 'free') return moved(pose, this.#both(most), 0);
    const quarters = this.random() < 0.2 ? Math.floor(4 * this.random()) : 0;
    const next = moved(pose, this.#both(most), this.#both(most));
    return { ...next, angle: next.angle + (quarters * Math.PI) / 2 };
  }

  #withTable({ poses }: Layout, tablePose: Placement | null): Layout {
    return { tablePose, poses: poses.map((pose, i) => (this.#lamps.includes(i) ? tablePose : pose)) };
  }

  #anyOf<T>(list: readonly T[]): T | undefined {
    return list[Math.floor(this.random() * list.length)];
  }

  #both(most: number): number {
    return most * (2 * this.random() - 1);
  }
}

function wallsOf(outline: readonly Point[]): readonly Wall[] {
  return outline.map((from, i) => {
    const to = outline[(i + 1) % outline.length];
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    return { from, length: Math.hypot(dx, dy), angle: Math.atan2(dy, dx) };
  });
}

/** Moved so far along its own length and to the left of it, mm. */
function moved({ x, y, angle }: Placement, along: number, left: number): Placement {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: x + along * cos - left * sin, y: y + along * sin + left * cos, angle };
}

function withPose({ tablePose, poses }: Layout, i: number, pose: Placement | null): Layout {
  return { tablePose, poses: poses.map((p, k) => (k === i ? pose : p)) };
}

/** A small generator with a seed (mulberry32, public domain). */
function mulberry32(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
