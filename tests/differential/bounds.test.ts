import { describe, expect, it } from 'vitest';
import { assessFit, type RoomInput, type TableInput } from '../../src/index.js';
import { findPlacement } from '../../src/placement/find-placement.js';
import { placeTable } from '../../src/placement/place-table.js';
import type { PlacementProblem } from '../../src/placement/placement-problem.js';
import { squareTurns } from '../../src/placement/square-turns.js';
import { openRoomInput, openRooms } from '../helpers/open-rooms.js';
import { crossRoom } from '../placement/cross-check.js';
import { plainClearance, plainFrameDistance } from '../placement/plain-distance.js';
import { randomNumbers } from '../placement/rooms.js';
import { climb } from './simplex.js';

/** Bounds are proved up to this, mm. */
const ROUNDING = 1e-6;

/** The plain clearance where the frame stands; elsewhere less than 0, the farther from the middle the less. */
function worth(problem: PlacementProblem, x: number, y: number, angle: number): number {
  const pose = { x, y, angle };
  if (plainFrameDistance(problem, pose) < 0) return -1 - Math.hypot(x, y) * 1e-3;
  return plainClearance(problem, pose);
}

/** The best of many climbs from random poses: over turns, or at the given ones. */
function bestFound(
  problem: PlacementProblem,
  random: () => number,
  starts: number,
  turns?: readonly number[],
): number {
  const xs = problem.outline.map(([x]) => x);
  const ys = problem.outline.map(([, y]) => y);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  let best = 0;
  for (let k = 0; k < starts; k++) {
    const x = minX + random() * (maxX - minX);
    const y = minY + random() * (maxY - minY);
    const turn = turns?.[k % turns.length];
    const found =
      turn === undefined
        ? climb(([u, v, a]) => worth(problem, u, v, a), [x, y, random() * Math.PI], [300, 300, 0.3], 110)
        : climb(([u, v]) => worth(problem, u, v, turn), [x, y], [300, 300], 70);
    best = Math.max(best, found.value);
  }
  return best;
}

describe('upper bounds against another optimiser', () => {
  it('are beaten by no pose of many climbs, nor is the pose by more than the gap', () => {
    const random = randomNumbers(20_251_205);
    let near = 0;
    for (let k = 0; k < 60; k++) {
      const room = crossRoom(random, k);
      const ours = findPlacement(room, { gap: 1, maxBoxes: 200_000, turns: 'any' });
      const early = findPlacement(room, { gap: 1, maxBoxes: 15, turns: 'any' });
      const placed = placeTable(room, { gap: 1, maxBoxes: 200_000, turns: 'any', enough: [] });
      const found = bestFound(room, random, 10);
      const where = JSON.stringify({ k, ours, early, placed, found });
      for (const bound of [ours.upperBound, early.upperBound, placed.upperBound])
        expect(found, where).toBeLessThanOrEqual(bound + ROUNDING);
      expect(found, where).toBeLessThanOrEqual(ours.value + 1 + ROUNDING);
      if (found > 0 && found > ours.value - 20) near++;
    }
    // The climbs come near the best place often, so that this says something.
    expect(near).toBeGreaterThan(15);
  });

  it('are beaten by no pose at a square turn, where only those are asked for', () => {
    const random = randomNumbers(77);
    for (let k = 0; k < 40; k++) {
      const room = crossRoom(random, k);
      const ours = findPlacement(room, { gap: 1, maxBoxes: 200_000, turns: 'square' });
      const found = bestFound(room, random, 10, squareTurns(room.outline));
      expect(found, JSON.stringify({ k, ours, found })).toBeLessThanOrEqual(ours.upperBound + ROUNDING);
    }
  });

  it('of whole reports are beaten by no pose in real empty rooms, so that no cue is longer than its bound either', () => {
    const random = randomNumbers(9);
    const table: TableInput = {
      field: { length: 1800, width: 900 },
      outer: { length: 2080, width: 1180 },
      ballDiameter: 57,
    };
    const rooms = openRooms.filter(
      (room, i) => i % 37 === 3 && room.obst === undefined && room.holes === undefined,
    );
    expect(rooms.length).toBeGreaterThan(10);
    for (const open of rooms) {
      const room: RoomInput = { outline: openRoomInput(open).outline };
      const { clearance } = assessFit({ room, table, cues: [1200] });
      const problem: PlacementProblem = {
        outline: open.pts,
        play: { length: 1743, width: 843 },
        frame: { length: 2080, width: 1180 },
        tall: [],
        low: [],
      };
      const found = bestFound(problem, random, 8);
      expect(found, open.id).toBeLessThanOrEqual(clearance.upperBound + ROUNDING);
      // R + s + a besides the cue: 28.5 + 150 + 20 mm.
      expect(found - 198.5, open.id).toBeLessThanOrEqual(clearance.longestCueUpperBound + ROUNDING);
    }
  });
});
