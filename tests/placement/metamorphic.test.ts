import { describe, expect, it } from 'vitest';
import type { Point, Ring, Size } from '../../src/geometry/types.js';
import { findPlacement } from '../../src/placement/find-placement.js';
import type { PlacementProblem, PlacementResult } from '../../src/placement/placement-problem.js';
import { framed, irregular, PLAY, problem, randomNumbers, rectangle, turned } from './rooms.js';

/** Relations between the answers for two rooms. Two searches bracket their optima, so relations hold between brackets. */

const GAP = 0.05;
const solve = (room: PlacementProblem): PlacementResult =>
  findPlacement(room, { gap: GAP, maxBoxes: 200_000, turns: 'any' });

function mapRoom(room: PlacementProblem, map: (ring: Ring) => Ring): PlacementProblem {
  return { ...room, outline: map(room.outline), tall: room.tall.map(map), low: room.low.map(map) };
}

const resized = (size: Size, k: number): Size => ({ length: size.length * k, width: size.width * k });
const swapped = (size: Size): Size => ({ length: size.width, width: size.length });

function expectEqual(a: PlacementResult, b: PlacementResult, k = 1): void {
  expect(a.stopped || b.stopped).toBe(false);
  expect(a.value).toBeLessThanOrEqual(k * b.upperBound + 1e-6);
  expect(k * b.value).toBeLessThanOrEqual(a.upperBound + 1e-6);
}

const seed = 21;
const random = randomNumbers(seed);
const rooms = Array.from({ length: 12 }, (_, i): PlacementProblem => {
  const play = [PLAY.sevenFoot, PLAY.eightFoot, { length: 1500, width: 500 }][i % 3];
  const outline = irregular(4 + Math.floor(12 * random()), 2600, 4800, 7 * i + 3);
  const tall = i % 2 === 0 ? [] : [turned(rectangle(600, 500, 1000, 800), 3 * random(), 800, 650)];
  const low = i % 4 < 2 ? [] : [turned(rectangle(-1200, -1000, -200, -400), 3 * random(), -700, -700)];
  return problem(outline, play, tall, low);
});

describe(`relations between searches (seed ${seed})`, () => {
  it.each(rooms.map((room, i) => [i, room] as const))('room %i', (i, room) => {
    const found = solve(room);
    expect(found.upperBound - found.value).toBeLessThanOrEqual(GAP + 1e-9);
    expect(found.pose).not.toBeNull();

    const angle = 2 * i + 1;
    const moved = (ring: Ring): Ring => turned(ring, angle).map(([x, y]): Point => [x + 31234.5, y - 9876.5]);
    expectEqual(solve(mapRoom(room, moved)), found);

    // A mirrored ring runs the other way round.
    const mirrored = (ring: Ring): Ring => ring.map(([x, y]): Point => [-x, y]).reverse();
    expectEqual(solve(mapRoom(room, mirrored)), found);

    const k = 1.37;
    const scaled = mapRoom(room, (ring) => ring.map(([x, y]): Point => [k * x, k * y]));
    expectEqual(solve({ ...scaled, play: resized(room.play, k), frame: resized(room.frame, k) }), found, k);

    expectEqual(solve({ ...room, play: swapped(room.play), frame: swapped(room.frame) }), found);

    // Another first corner, and a corner on every wall where there is none.
    expectEqual(solve(mapRoom(room, (ring) => [...ring.slice(2), ...ring.slice(0, 2)])), found);
    const inLine = (ring: Ring): Ring =>
      ring.flatMap(([x, y], j): Point[] => {
        const [nextX, nextY] = ring[(j + 1) % ring.length];
        return [
          [x, y],
          [0.3 * x + 0.7 * nextX, 0.3 * y + 0.7 * nextY],
        ];
      });
    expectEqual(solve(mapRoom(room, inLine)), found);

    // More things, tall or low, never help; low is no worse than tall.
    const chest = turned(rectangle(-900, -700, -600, -500), 1);
    const withTall = solve({ ...room, tall: [...room.tall, chest] });
    const withLow = solve({ ...room, low: [...room.low, chest] });
    expect(withTall.value).toBeLessThanOrEqual(withLow.upperBound + 1e-6);
    expect(withLow.value).toBeLessThanOrEqual(found.upperBound + 1e-6);

    // A larger room never hurts (these outlines see their whole inside from the origin).
    const grown = solve({
      ...room,
      outline: room.outline.map(([x, y]): Point => {
        const far = Math.hypot(x, y);
        return [x * (1 + 60 / far), y * (1 + 60 / far)];
      }),
    });
    expect(grown.upperBound).toBeGreaterThanOrEqual(found.value - 1e-6);

    // A smaller Q never hurts; smaller by d on every side gains between d and d sqrt 2 where only Q counts.
    const smaller = { length: room.play.length - 40, width: room.play.width - 20 };
    expect(solve({ ...room, play: smaller }).upperBound).toBeGreaterThanOrEqual(found.value - 1e-6);
    const d = 50;
    const inset = { length: room.play.length - 2 * d, width: room.play.width - 2 * d };
    const bare = solve({ ...room, low: [], frame: room.play });
    const shrunk = solve({ ...room, low: [], frame: inset, play: inset });
    expect(shrunk.upperBound).toBeGreaterThanOrEqual(bare.value + d - 1e-6);
    expect(shrunk.value).toBeLessThanOrEqual(bare.upperBound + d * Math.SQRT2 + 1e-6);

    // Every turn is at least as good as the square ones; a larger frame never helps.
    const square = findPlacement(room, { gap: GAP, maxBoxes: 200_000, turns: 'square' });
    expect(square.value).toBeLessThanOrEqual(found.upperBound + 1e-6);
    const wide = solve({ ...room, frame: framed(room.play, 400) });
    expect(wide.value).toBeLessThanOrEqual(found.upperBound + 1e-6);
  });
});
