import { inSteps, SAME_LENGTH } from '../geometry/steady.js';
import type { Ring } from '../geometry/types.js';

/** Directions closer than this (radians) are one. */
const SAME = 1e-9;
/** Most directions that are looked at; the ones with the most wall are. */
const MOST = 200;

/**
 * The turns at which a table stands square to a wall, radians in [0, pi): parallel and perpendicular to each direction of a
 * wall, the direction with the most wall first. Of more than 200 directions (mod 90 degrees) only the first 200 are taken.
 */
export function squareTurns(outline: Ring): number[] {
  const quarter = Math.PI / 2;
  const walls = outline.map(([x, y], i) => {
    const [nextX, nextY] = outline[i + 1 === outline.length ? 0 : i + 1];
    const angle = Math.atan2(nextY - y, nextX - x);
    const turn = angle - Math.floor(angle / quarter) * quarter;
    // Just short of a quarter turn is no turn, and so is next to none.
    return {
      turn: turn < SAME || quarter - turn < SAME ? 0 : turn,
      length: Math.hypot(nextX - x, nextY - y),
    };
  });
  walls.sort((a, b) => a.turn - b.turn || b.length - a.length);
  const directions: { turn: number; length: number }[] = [];
  for (const wall of walls) {
    const last = directions.at(-1);
    if (last !== undefined && wall.turn - last.turn < SAME) last.length += wall.length;
    else directions.push({ ...wall });
  }
  const size = ({ length }: { length: number }): number => inSteps(length, SAME_LENGTH);
  directions.sort((a, b) => size(b) - size(a) || a.turn - b.turn);
  return directions.slice(0, MOST).flatMap(({ turn }) => [turn, turn + quarter]);
}
