import type { TableSpec } from '../../../src/equipment/equipment-types.js';
import { type Corners, depthIn } from './plane.js';
import { clearance, frameRoom, type SlowPose, type SlowRoom } from './scene.js';

/** The best place that a plain grid and a few hundred small steps find, and how many places were tried. */
export interface SlowPlace {
  readonly pose: SlowPose;
  readonly value: number;
}

export interface SlowSearch {
  /** Between places of the grid, mm. */
  readonly step: number;
  /** Turns between 0 and 180 degrees, besides those square to a wall. */
  readonly turns: number;
  /** How many of the grid's best places are improved. */
  readonly improved: number;
}

/** A frame that overlaps by less than this (mm) counts as touching. */
const TOUCH = 0.01;
const MOST_STEPS = 60;
const LONG_WALLS = 5;

/**
 * The most clearance that a plain search finds at places where the table can stand; null: it finds no place. Proves nothing about
 * what it does not find.
 */
export function slowSearch(
  scene: SlowRoom,
  table: TableSpec,
  tall: readonly Corners[],
  how: SlowSearch,
): SlowPlace | null {
  const score = (pose: SlowPose): number => {
    const frame = frameRoom(scene, table, pose, TOUCH);
    return frame > 0 ? clearance(table, scene.outline, tall, pose) : frame - 1;
  };
  const half = Math.min(table.outer.length, table.outer.width) / 2;
  const starts: SlowPlace[] = [];
  for (const angle of turnsOf(scene.outline, how.turns)) {
    for (const [x, y] of grid(scene.outline, how.step, half)) {
      const pose = { x, y, angle };
      starts.push({ pose, value: score(pose) });
    }
  }
  starts.sort((a, b) => b.value - a.value);
  let best: SlowPlace | null = null;
  for (const start of spread(starts, how)) {
    const end = climb(start, how.step, score, table);
    if (end.value > 0 && (best === null || end.value > best.value)) best = end;
  }
  return best;
}

/** Spots of a grid over the room that are at least half the table's width off the walls. */
function grid(outline: Corners, step: number, half: number): [number, number][] {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const spots: [number, number][] = [];
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const columns = Math.ceil((maxX - minX) / step);
  const rows = Math.ceil((maxY - minY) / step);
  for (let i = 1; i < columns; i++) {
    for (let j = 1; j < rows; j++) {
      const x = minX + ((maxX - minX) * i) / columns;
      const y = minY + ((maxY - minY) * j) / rows;
      if (depthIn(outline, [x, y]) >= half - step / 2) spots.push([x, y]);
    }
  }
  return spots;
}

/** Turns square to the longest walls, and `count` others. */
function turnsOf(outline: Corners, count: number): number[] {
  const turns: number[] = [];
  const add = (angle: number): void => {
    const folded = ((angle % Math.PI) + Math.PI) % Math.PI;
    if (turns.every((known) => Math.abs(Math.sin(known - folded)) > 1e-6)) turns.push(folded);
  };
  const walls = outline.map(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length];
    return { length: Math.hypot(bx - ax, by - ay), angle: Math.atan2(by - ay, bx - ax) };
  });
  walls.sort((a, b) => b.length - a.length);
  for (const { angle } of walls.slice(0, LONG_WALLS)) {
    add(angle);
    add(angle + Math.PI / 2);
  }
  for (let k = 0; k < count; k++) add((k * Math.PI) / count);
  return turns;
}

/** The best places, no two near one another. */
function spread(sorted: readonly SlowPlace[], how: SlowSearch): readonly SlowPlace[] {
  const chosen: SlowPlace[] = [];
  for (const place of sorted) {
    const near = chosen.some(
      ({ pose }) =>
        Math.hypot(pose.x - place.pose.x, pose.y - place.pose.y) < 1.5 * how.step &&
        Math.abs(Math.sin(pose.angle - place.pose.angle)) < 0.2,
    );
    if (!near) chosen.push(place);
    if (chosen.length >= how.improved) break;
  }
  return chosen;
}

/** Steps in every direction and turn, longer after a good one and halved when none helps. */
function climb(
  start: SlowPlace,
  first: number,
  score: (pose: SlowPose) => number,
  table: TableSpec,
): SlowPlace {
  const arm = Math.hypot(table.field.length, table.field.width) / 2;
  let best = start;
  let step = first / 2;
  for (let tries = 0; step > 0.5 && tries < MOST_STEPS; tries++) {
    let better = best;
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (let turn = -1; turn <= 1; turn++) {
          const pose = {
            x: best.pose.x + dx * step,
            y: best.pose.y + dy * step,
            angle: best.pose.angle + (turn * step) / arm,
          };
          const value = score(pose);
          if (value > better.value + 1e-6) better = { pose, value };
        }
      }
    }
    step *= better === best ? 0.5 : 1.5;
    best = better;
  }
  return best;
}
