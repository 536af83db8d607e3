import { boundingBox } from '../geometry/ring.js';
import type { Placement } from '../geometry/types.js';
import { clearanceProbe } from '../placement/clearance-at.js';
import { findPlace } from '../placement/find-place.js';
import type { OpenReach } from '../placement/open-reach.js';
import { playSize, tableProblem } from '../placement/problem-for.js';
import { type ReachRing, shareScorer } from '../placement/share-score.js';
import { squareTurns } from '../placement/square-turns.js';
import type { Scene } from '../room/scene.js';
import type { ArrangeQuestion } from './arrange-question.js';
import { furnishedScene } from './furnished-scene.js';
import { hangLamps, type SearchRoom } from './search-room.js';

/** Places a side of the grid of starts, for each of the turns along so many directions of walls. */
const GRID = 7;
const DIRECTIONS = 2;
/** Starts of one turn that are pushed towards the walls, and least distance between two of them, mm. */
const PUSHED = 2;
const APART = 400;
/** Starts closer than this are one, mm. */
const SAME = 100;
/** First and last step of a push, mm. */
const PUSH = { first: 1600, last: 12 } as const;
/** A push may cost so much of the share. */
const LOSS = [1e-6, 0.02] as const;

/** How promising a place of the table is by a quick score of shares, 0..1; -Infinity where it cannot stand. */
export type TableScore = (pose: Placement) => number;

/** The score in the room with the given pieces; for searches. */
export function tableScore({ question, given, reach }: SearchRoom): TableScore {
  const { scene, table } = question;
  if (table === null || reach === null) return () => 0;
  const room = furnishedScene(
    scene,
    given.map(({ placed }) => placed),
    table,
  );
  const stander = clearanceProbe(tableProblem(room, table));
  const quick = shareScorer(reachRings(room, question, reach), playSize(table));
  return (pose) => (stander.stands(pose) ? quick(pose) : Number.NEGATIVE_INFINITY);
}

/**
 * Places of the table to look for layouts from, the most promising first: the given one alone, or the best without movable pieces, places of a
 * grid, and all of them pushed towards walls and corners as far as that costs nothing, or little, so that floor on the other side is left for
 * pieces. Null alone: there is no table, or no place for it.
 */
export function tableStarts(room: SearchRoom, most: number): readonly (Placement | null)[] {
  const { question, given } = room;
  const { scene, table, stroke, cue, pose, search } = question;
  if (pose !== null || table === null) return [pose];
  const furnished = furnishedScene(
    scene,
    given.map(({ placed }) => placed),
    table,
  );
  const best = findPlace({ scene: furnished, table, stroke, cues: [cue], search }).pose;
  if (best === null) return [null];
  const score = tableScore(room);
  const found: { readonly pose: Placement; readonly score: number }[] = [{ pose: best, score: score(best) }];
  const turns = squareTurns(scene.outline).slice(0, 2 * DIRECTIONS);
  if (turns.every((turn) => Math.abs(Math.sin(turn - best.angle)) > 1e-9)) turns.push(best.angle);
  for (const angle of turns) {
    const grid = gridOver(scene, angle)
      .map((p) => ({ pose: p, score: score(p) }))
      .filter((p) => p.score > Number.NEGATIVE_INFINITY)
      .sort((a, b) => b.score - a.score);
    const starts = Math.abs(Math.sin(angle - best.angle)) < 1e-9 ? [found[0]] : [];
    for (const p of grid) {
      if (starts.length > PUSHED) break;
      if (starts.every((s) => distance(s.pose, p.pose) > APART)) starts.push(p);
    }
    found.push(...grid, ...starts);
    for (const start of starts) {
      for (const loss of LOSS)
        for (const p of pushes(start.pose, score, start.score - loss))
          found.push({ pose: p, score: score(p) });
    }
  }
  const kept: { readonly pose: Placement; readonly score: number }[] = [];
  const [first, ...others] = found;
  others.sort((a, b) => b.score - a.score);
  for (const p of [first, ...others]) {
    if (kept.length >= most) break;
    const known = kept.some((k) => k.pose.angle === p.pose.angle && distance(k.pose, p.pose) < SAME);
    if (!known) kept.push(p);
  }
  return kept.map((p) => p.pose).filter((p) => hangLamps(room, p).length === room.lamps.length);
}

/** A pose pushed along and across the table, and then the other way as well, as far as the score stays at `least`. */
export function pushes(pose: Placement, score: TableScore, least: number): readonly Placement[] {
  const found: Placement[] = [];
  for (let side = 0; side < 4; side++) {
    const once = push(pose, side, score, least);
    found.push(once, push(once, (side + 1) % 4, score, least), push(once, (side + 3) % 4, score, least));
  }
  return found;
}

function push(pose: Placement, side: number, score: TableScore, least: number): Placement {
  const direction = pose.angle + (side * Math.PI) / 2;
  const cos = Math.cos(direction);
  const sin = Math.sin(direction);
  let at = pose;
  for (let step: number = PUSH.first; step >= PUSH.last; step /= 2) {
    const next = { ...at, x: at.x + step * cos, y: at.y + step * sin };
    if (score(next) >= least) at = next;
  }
  return at;
}

function gridOver(scene: Scene, angle: number): readonly Placement[] {
  const box = boundingBox(scene.outline);
  const poses: Placement[] = [];
  for (let i = 0; i < GRID; i++) {
    for (let j = 0; j < GRID; j++) {
      const x = box.minX + ((i + 0.5) / GRID) * (box.maxX - box.minX);
      const y = box.minY + ((j + 0.5) / GRID) * (box.maxY - box.minY);
      poses.push({ x, y, angle });
    }
  }
  return poses;
}

/** Walls, and things that are tall for level strokes, with the reach of a full level stroke and of a short raised one. */
function reachRings(
  room: Scene,
  { table, stroke, cue }: ArrangeQuestion,
  reach: OpenReach,
): readonly ReachRing[] {
  if (table === null) return [];
  const short = table.ballDiameter / 2 + cue.length + stroke.shortBackswing;
  const playable = short * Math.cos(stroke.maxElevation) + stroke.margin;
  const rings: ReachRing[] = [{ ring: room.outline, inside: true, open: reach.rho, playable }];
  for (const { ring, from, to } of room.obstacles) {
    if (to + stroke.margin <= reach.low || from >= reach.high) continue;
    const over = Math.min(playable, reach.raised.passedFrom(to));
    rings.push({ ring, inside: false, open: reach.rho, playable: over });
  }
  return rings;
}

function distance(a: Placement, b: Placement): number {
  return Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y));
}
