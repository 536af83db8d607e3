import type { ArrangeQuestion, Layout } from '../src/arrangement/arrange-question.js';
import type { CheckedPiece } from '../src/arrangement/checked-arrangement.js';
import { layoutJudge } from '../src/arrangement/layout-value.js';
import type { Placement, Point } from '../src/geometry/types.js';
import { findPlace } from '../src/placement/find-place.js';

/** What annealing found, and by how many layouts. */
export interface Annealed {
  readonly value: number;
  readonly layouts: number;
}

/** Share of moves by kind; the rest are small shifts. */
const JUMP = 0.45;
const SWAP = 0.1;
const DROP = 0.05;
const TURN = 0.1;
/** Moves from whose gains the first temperature is taken, and the last one as a share of the first. */
const WARM_UP = 20;
const COLD = 1e-3;
/** Greatest small shift, mm, while it is hot. */
const SHIFT = 900;

/**
 * Simulated annealing, plainly: the peer of the joint search. One layout is changed at random, by a shift, a turn, a jump to a wall, a swap of two
 * pieces or by taking one out; a worse one is kept with probability exp(gain / temperature), and the temperature falls evenly over the time that is
 * given. It weighs layouts with the very judge of the search, starts with the table where it has most play, and knows that pieces stand flush with
 * walls. The best layout seen counts.
 */
export function anneal(question: ArrangeQuestion, milliseconds: number, seed: number): Annealed {
  const random = mulberry32(seed);
  const end = performance.now() + milliseconds;
  const start = performance.now();
  const judge = layoutJudge(question);
  const { arrangement, scene } = question;
  const walls = wallsOf(scene.outline);
  let layouts = 0;
  const weigh = (layout: Layout): number => {
    layouts++;
    return judge(withLamps(layout, arrangement.pieces)).value;
  };
  const movable = arrangement.pieces.flatMap(({ pose, stand }, i) =>
    pose === null && stand !== 'over-table' ? [i] : [],
  );
  const tableAt = (): Placement | null => {
    const { table, stroke, cue, search, pose } = question;
    if (table === null || pose !== null) return pose;
    return findPlace({ scene, table, stroke, cues: [cue], search }).pose;
  };
  let now: Layout = { tablePose: tableAt(), poses: arrangement.pieces.map(({ pose }) => pose) };
  let value = weigh(now);
  // A greedy start: each piece at the best of a dozen places at walls.
  for (const i of movable) {
    for (let k = 0; k < 12 && performance.now() < end; k++) {
      const next = withPose(now, i, jump(arrangement.pieces[i], walls, random));
      const found = weigh(next);
      if (found > value) [now, value] = [next, found];
    }
  }
  let best = value;
  let spread = 0;
  let temperature = 0;
  for (let step = 0; performance.now() < end; step++) {
    const share = (performance.now() - start) / milliseconds;
    if (step === WARM_UP) temperature = spread / WARM_UP;
    const heat = step < WARM_UP ? 0 : temperature * COLD ** share;
    const next = move(question, now, movable, walls, random, 1 - share);
    const found = weigh(next);
    const gain = found - value;
    if (step < WARM_UP) spread += Math.abs(gain);
    if (gain >= 0 || (heat > 0 && random() < Math.exp(gain / heat))) [now, value] = [next, found];
    best = Math.max(best, value);
  }
  return { value: best, layouts };
}

function move(
  question: ArrangeQuestion,
  layout: Layout,
  movable: readonly number[],
  walls: readonly Wall[],
  random: () => number,
  hot: number,
): Layout {
  const { pieces } = question.arrangement;
  const dice = random();
  const i = movable[Math.floor(random() * movable.length)];
  const tableMoves = question.pose === null && layout.tablePose !== null;
  if (i === undefined || (tableMoves && random() < 0.15)) {
    const { tablePose } = layout;
    if (tablePose === null) return layout;
    const quarter = random() < 0.1 ? Math.PI / 2 : 0;
    return {
      ...layout,
      tablePose: shifted({ ...tablePose, angle: (tablePose.angle + quarter) % Math.PI }, random, hot),
    };
  }
  const pose = layout.poses[i] ?? null;
  if (pose === null || dice < JUMP) return withPose(layout, i, jump(pieces[i], walls, random));
  if (dice < JUMP + SWAP) {
    const j = movable[Math.floor(random() * movable.length)];
    const other = layout.poses[j] ?? null;
    return withPose(withPose(layout, i, other), j, pose);
  }
  if (dice < JUMP + SWAP + DROP) return withPose(layout, i, null);
  if (dice < JUMP + SWAP + DROP + TURN) {
    return withPose(layout, i, { ...pose, angle: (pose.angle + Math.PI / 2) % (2 * Math.PI) });
  }
  // What stands at a wall slides along it; what is free goes any way.
  const along = (2 * random() - 1) * SHIFT * Math.max(0.05, hot);
  if (pieces[i].stand === 'free') return withPose(layout, i, shifted(pose, random, hot));
  return withPose(layout, i, {
    ...pose,
    x: pose.x + along * Math.cos(pose.angle),
    y: pose.y + along * Math.sin(pose.angle),
  });
}

interface Wall {
  readonly from: Point;
  readonly length: number;
  /** Direction along the wall, with the room to its left. */
  readonly angle: number;
}

function wallsOf(outline: readonly Point[]): readonly Wall[] {
  return outline.map((from, i) => {
    const to = outline[(i + 1) % outline.length];
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    return { from, length: Math.hypot(dx, dy), angle: Math.atan2(dy, dx) };
  });
}

/** A random place flush with a wall, one time in three in its corner. */
function jump({ length, width }: CheckedPiece, walls: readonly Wall[], random: () => number): Placement {
  const wall = walls[Math.floor(random() * walls.length)];
  const room = Math.max(0, wall.length - length);
  const dice = random();
  const along = length / 2 + (dice < 1 / 6 ? 0 : dice < 1 / 3 ? room : random() * room);
  const [cos, sin] = [Math.cos(wall.angle), Math.sin(wall.angle)];
  const [x, y] = wall.from;
  return {
    x: x + cos * along - (sin * width) / 2,
    y: y + sin * along + (cos * width) / 2,
    angle: wall.angle,
  };
}

function shifted(pose: Placement, random: () => number, hot: number): Placement {
  const most = SHIFT * Math.max(0.05, hot);
  return { ...pose, x: pose.x + (2 * random() - 1) * most, y: pose.y + (2 * random() - 1) * most };
}

function withPose({ tablePose, poses }: Layout, i: number, pose: Placement | null): Layout {
  return { tablePose, poses: poses.map((p, k) => (k === i ? pose : p)) };
}

function withLamps({ tablePose, poses }: Layout, pieces: readonly CheckedPiece[]): Layout {
  return { tablePose, poses: poses.map((p, i) => (pieces[i].stand === 'over-table' ? tablePose : p)) };
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
