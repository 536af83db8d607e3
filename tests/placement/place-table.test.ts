import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/types.js';
import { clearanceAt } from '../../src/placement/clearance-at.js';
import { cushionGaps } from '../../src/placement/cushion-gaps.js';
import { findPlacement } from '../../src/placement/find-placement.js';
import { placeTable, type TableOptions, type TablePlace } from '../../src/placement/place-table.js';
import type { PlacementProblem } from '../../src/placement/placement-problem.js';
import { settle } from '../../src/placement/settle.js';
import { squareTurns } from '../../src/placement/square-turns.js';
import { crossRoom } from './cross-check.js';
import { benchRooms, framed, irregular, problem, randomNumbers, rectangle, turned } from './rooms.js';

const options: TableOptions = { gap: 1, maxBoxes: 200_000, turns: 'any', enough: [] };
const play = { length: 2000, width: 1000 };

function placed(
  room: PlacementProblem,
  more: Partial<TableOptions> = {},
): TablePlace & { pose: NonNullable<TablePlace['pose']> } {
  const place = placeTable(room, { ...options, ...more });
  if (place.pose === null) throw new Error('no pose');
  return { ...place, pose: place.pose };
}

describe('squaring', () => {
  // A slender Q in a square room: 45 degrees gain sqrt(2) / 4 (l + w) - ... over the square turn.
  const slender = { length: 2000, width: 600 };
  const room = problem(rectangle(0, 0, 5000, 5000), slender);
  const onDiagonal = (2 * 5000 - 2600 * Math.SQRT2) / 4;

  it('turns the table off square where that gains more than 50 mm', () => {
    const place = placed(room);
    expect(place.square).toBe(false);
    expect(place.pose.angle).toBeCloseTo(Math.PI / 4, 3);
    expect(place.value).toBeCloseTo(onDiagonal, 0);
    expect(placed(room, { offSquareGain: 100 }).square).toBe(true);
  });

  it('stands square where another turn gains less, and says what that turn could have', () => {
    const stout = { length: 2000, width: 750 };
    const gain = (2 * 5000 - 2750 * Math.SQRT2) / 4 - 1500;
    expect(gain).toBeGreaterThan(20);
    expect(gain).toBeLessThan(50);
    const p = problem(rectangle(0, 0, 5000, 5000), stout);
    const place = placed(p);
    expect(place.square).toBe(true);
    expect(place.pose.angle).toBe(0);
    expect(place.value).toBeCloseTo(1500, 6);
    expect(place.upperBound).toBeGreaterThanOrEqual(1500 + gain - 1e-6);
    // Unless that changes the verdict.
    const decisive = placed(p, { enough: [1400, 1515] });
    expect(decisive.square).toBe(false);
    expect(decisive.value).toBeGreaterThanOrEqual(1515);
    expect(placed(p, { enough: [1400, 1500] }).square).toBe(true);
    expect(placed(p, { enough: [1600] }).square).toBe(true);
    expect(placed(p, { enough: [1515], turns: 'square' })).toMatchObject({ square: true });
    expect(placed(p, { turns: 'square' }).upperBound).toBeLessThan(1501.1);
  });

  it('keeps what is enough while it settles, and pursues what is nearly enough', () => {
    for (const { problem: p } of benchRooms().slice(0, 9)) {
      const { upperBound } = findPlacement(p, { gap: 0.001, maxBoxes: 200_000, turns: 'any' });
      const just = upperBound - 0.05;
      expect(placed(p, { enough: [just] }).value).toBeGreaterThanOrEqual(just - 2e-6);
      const over = upperBound + 0.05;
      expect(placed(p, { enough: [over] }).upperBound).toBeLessThan(over);
    }
  });

  it('reaches exactly the clearance that a rectangular room was measured for', () => {
    for (const [angle, needed] of [
      [0, 1634.1],
      [0.4, 1634.1],
      [1.1, 1421.7],
    ]) {
      const outline = turned(rectangle(0, 0, play.length + 2 * needed, play.width + 2 * needed), angle);
      const place = placed(problem(outline, play), { enough: [needed] });
      expect(place.square).toBe(true);
      expect(place.value).toBeCloseTo(needed, 6);
    }
  });
});

describe('settling', () => {
  it('centres the table in a long room, whatever the turn of the room', () => {
    for (const angle of [0, 0.4, 1.9]) {
      const p = problem(turned(rectangle(0, 0, 12000, 4200), angle), play);
      const { pose } = placed(p);
      const { endA, endB, sideA, sideB } = cushionGaps(p, pose);
      expect(endA.distance).toBeCloseTo(5000, 3);
      expect(endB.distance).toBeCloseTo(5000, 3);
      expect(sideA.distance).toBeCloseTo(1600, 3);
      expect(sideB.distance).toBeCloseTo(1600, 3);
    }
  });

  it('slides as far as low furniture lets it', () => {
    const sideboard = rectangle(4000, 0, 8000, 1500);
    const p = problem(rectangle(0, 0, 12000, 4200), play, [], [sideboard], framed(play, 150));
    // In the middle the sideboard pushes Q 150 mm off centre across: less clearance than beside it.
    const { pose, value } = placed(p);
    expect(value).toBeGreaterThan(1599);
    const { stands } = clearanceAt(p, pose);
    expect(stands).toBe(true);
    const beside = Math.abs(pose.x - 6000);
    expect(beside).toBeGreaterThan(2000 + 1150 - 1e-6);
  });

  it('takes the smaller of two turns that are as good', () => {
    expect(placed(problem(rectangle(0, 0, 5000, 5000), play)).pose.angle).toBe(0);
    const turnedBy = 0.3;
    const { pose } = placed(problem(turned(rectangle(0, 0, 5000, 5000), turnedBy), play));
    expect(pose.angle).toBeCloseTo(turnedBy, 9);
  });

  it('never costs more than what may be lost, nor the place to stand (seed 51)', () => {
    const random = randomNumbers(51);
    let checked = 0;
    for (let k = 0; k < 40; k++) {
      const p = crossRoom(random, k);
      const found = findPlacement(p, { gap: 1, maxBoxes: 50_000, turns: 'any' });
      if (found.pose === null) continue;
      checked++;
      const keep = found.value - 1;
      const settled = settle(p, found.pose, keep);
      const there = clearanceAt(p, settled);
      expect(there.clearance).toBeGreaterThanOrEqual(keep);
      expect(there.stands).toBe(true);
      const place = placeTable(p, options);
      expect(place.value).toBeLessThanOrEqual(found.upperBound + 1e-6);
      expect(place.upperBound).toBeGreaterThanOrEqual(found.value - 1e-6);
      expect(place.upperBound - place.value).toBeLessThanOrEqual(50 + 2 + 1e-6);
    }
    expect(checked).toBeGreaterThan(20);
  });
});

describe('progress', () => {
  it('goes one way through all the searches, and a stop ends them all', () => {
    for (const { problem: p } of [benchRooms()[2], benchRooms()[8], benchRooms()[12]]) {
      const whole = placed(p);
      const seen: { value: number; upperBound: number; boxes: number }[] = [];
      const watched = placed(p, {
        onProgress: (progress) => {
          seen.push(progress);
          return undefined;
        },
      });
      expect(watched).toEqual(whole);
      expect(seen.length).toBeGreaterThan(1);
      for (const [i, progress] of seen.entries()) {
        if (i === 0) continue;
        expect(progress.value).toBeGreaterThanOrEqual(seen[i - 1].value);
        expect(progress.upperBound).toBeLessThanOrEqual(seen[i - 1].upperBound);
        expect(progress.boxes).toBeGreaterThanOrEqual(seen[i - 1].boxes);
      }
      for (const stopAt of [1, 2, 3]) {
        if (stopAt >= seen.length) continue;
        let calls = 0;
        const part = placeTable(p, { ...options, onProgress: () => ++calls < stopAt });
        expect(part.stopped).toBe(true);
        expect(part.upperBound).toBeGreaterThanOrEqual(whole.value - 1);
        expect(part.boxes).toBeLessThanOrEqual(whole.boxes);
        // The last word of the search that was stopped, and no more.
        expect(calls).toBeLessThanOrEqual(stopAt + 1);
      }
    }
  });
});

describe('the same answer', () => {
  const reorder = (room: PlacementProblem): PlacementProblem => {
    const ring = (r: Ring): Ring => [...r.slice(1), ...r.slice(0, 1)];
    return {
      ...room,
      outline: ring(room.outline),
      tall: room.tall.map(ring).reverse(),
      low: room.low.map(ring).reverse(),
    };
  };

  it('comes again, and in any order of the things and of their corners (seed 61)', () => {
    const random = randomNumbers(61);
    for (let k = 0; k < 25; k++) {
      const p = crossRoom(random, k);
      const first = placeTable(p, options);
      expect(placeTable(p, options)).toEqual(first);
      const again = placeTable(reorder(p), options);
      expect(again.boxes).toBe(first.boxes);
      expect(again.upperBound).toBe(first.upperBound);
      expect(again.pose?.angle).toBe(first.pose?.angle);
      if (first.pose !== null && again.pose !== null) {
        // Equal to the last digits: sums over things run in another order.
        expect(again.pose.x).toBeCloseTo(first.pose.x, 6);
        expect(again.pose.y).toBeCloseTo(first.pose.y, 6);
      }
    }
  });

  it('does not touch its input', () => {
    const p = crossRoom(randomNumbers(62), 4);
    const before = JSON.stringify(p);
    placeTable(p, options);
    expect(JSON.stringify(p)).toBe(before);
  });
});

describe('turns square to a wall', () => {
  it('are parallel and perpendicular to every wall, the longest walls first', () => {
    const outline: Ring = [
      [0, 0],
      [6000, 0],
      [6000, 4000],
      [1000, 4000],
      [0, 3000],
    ];
    const [a, b, c, d] = squareTurns(outline);
    expect([a, b]).toEqual([0, Math.PI / 2]);
    expect([c, d]).toEqual([Math.PI / 4, (3 * Math.PI) / 4].map((turn) => expect.closeTo(turn, 12)));
  });

  it('merge walls that are parallel up to rounding', () => {
    for (let k = 0; k < 50; k++) {
      expect(squareTurns(turned(rectangle(0, 0, 5000, 3000), 0.13 * k))).toHaveLength(2);
    }
  });

  it('bound the search as the best of each turn alone would', () => {
    const random = randomNumbers(71);
    for (const corners of [5, 9, 40]) {
      const p = problem(irregular(corners, 2600, 4200, Math.floor(1000 * random())), play);
      const all = findPlacement(p, { gap: 0.5, maxBoxes: 200_000, turns: 'square' });
      expect(all.upperBound - all.value).toBeLessThanOrEqual(0.5 + 1e-9);
      const turn = all.pose?.angle ?? -1;
      const nearest = Math.min(...squareTurns(p.outline).map((t) => Math.abs(t - turn)));
      expect(nearest).toBeLessThan(1e-9);
      const { upperBound } = findPlacement(p, { gap: 0.5, maxBoxes: 200_000, turns: 'any' });
      expect(all.value).toBeLessThanOrEqual(upperBound + 1e-6);
      // A fine grid of positions at every square turn.
      for (const angle of squareTurns(p.outline)) {
        for (let x = -1000; x <= 1000; x += 100) {
          for (let y = -1000; y <= 1000; y += 100) {
            const { clearance, stands } = clearanceAt(p, { x, y, angle });
            if (stands) expect(clearance).toBeLessThanOrEqual(all.upperBound);
          }
        }
      }
    }
  });
});
