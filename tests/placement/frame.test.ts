import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/types.js';
import { clearanceAt } from '../../src/placement/clearance-at.js';
import { findPlacement } from '../../src/placement/find-placement.js';
import type { PlacementProblem, PlacementResult } from '../../src/placement/placement-problem.js';
import { benchRooms, problem, rectangle, turned } from './rooms.js';

const play = { length: 2000, width: 1000 };
const frame = { length: 2300, width: 1300 };
const room = (outline: Ring, tall: readonly Ring[] = [], low: readonly Ring[] = []): PlacementProblem =>
  problem(outline, play, tall, low, frame);
const solve = (p: PlacementProblem, turns: 'any' | 'square' = 'any'): PlacementResult =>
  findPlacement(p, { gap: 1, maxBoxes: 200_000, turns });

function expectNowhere(result: PlacementResult): void {
  expect(result).toMatchObject({ pose: null, value: 0, upperBound: 0, stopped: false });
}

describe.each([0, 0.3])('a frame that has to stand free (room turned by %f)', (angle) => {
  const at = (ring: Ring): Ring => turned(ring, angle);

  it.each([
    [0, 150],
    [0.001, 150.0005],
    [0.1, 150.05],
    [10, 155],
  ])('stands in a room larger than it by %f mm', (spare, clearance) => {
    const p = room(at(rectangle(0, 0, 2300 + spare, 1300 + spare)));
    const found = solve(p);
    expect(found.value).toBeCloseTo(clearance, 5);
    expect(found.upperBound).toBeCloseTo(clearance, 4);
    if (found.pose === null) throw new Error('no pose');
    expect(clearanceAt(p, found.pose).stands).toBe(true);
  });

  it.each([0.001, 0.1, 10, 900])(
    'is proved to stand nowhere in a room smaller than it by %f mm',
    (missing) => {
      expectNowhere(solve(room(at(rectangle(0, 0, 2300 - missing, 1300 - missing)))));
      expectNowhere(solve(room(at(rectangle(0, 0, 2300 - missing, 1300 - missing))), 'square'));
    },
  );

  it('keeps off low furniture, which does not count for the clearance', () => {
    // Beside the sofa the clearance would be 1500 across the room; the sofa leaves 1300 + 300 of its depth.
    const sofa = at(rectangle(-100, 0, 5100, 900));
    const p = room(at(rectangle(0, 0, 5000, 2500)), [], [sofa]);
    const found = solve(p);
    // The frame touches the sofa at best: centre at 900 + 650, 950 from the far wall.
    expect(found.value).toBeCloseTo(950 - 500, 0);
    expect(found.upperBound).toBeGreaterThanOrEqual(450 - 1e-6);
    if (found.pose === null) throw new Error('no pose');
    expect(clearanceAt(p, found.pose)).toMatchObject({ stands: true, hits: [] });
  });

  it.each([
    [0, true],
    [0.5, true],
    [-0.5, false],
  ])('fits into a slot beside a low chest with %f mm to spare: %s', (spare, fits) => {
    const p = room(at(rectangle(0, 0, 5000, 2200 + spare)), [], [at(rectangle(0, 0, 5000, 900))]);
    for (const turns of ['any', 'square'] as const) {
      const found = solve(p, turns);
      if (fits) expect(found.value).toBeGreaterThan(149.9);
      else expectNowhere(found);
    }
  });

  it('stands nowhere on floor that is low furniture all over', () => {
    expectNowhere(solve(room(at(rectangle(0, 0, 5000, 4000)), [], [at(rectangle(-100, -100, 5100, 4100))])));
    // The same by halves that overlap: where two footprints overlap there is no hole.
    const halves = [at(rectangle(-100, -100, 3500, 4100)), at(rectangle(1500, -100, 5100, 4100))];
    expectNowhere(solve(room(at(rectangle(0, 0, 5000, 4000)), [], halves)));
    expectNowhere(solve(room(at(rectangle(0, 0, 5000, 4000)), halves)));
  });

  it('stands nowhere among stools that it would have to stand over', () => {
    const stools = Array.from({ length: 12 }, (_, k) => {
      const x = 600 + 1000 * (k % 4);
      const y = 500 + 1200 * Math.floor(k / 4);
      return at(rectangle(x, y, x + 200, y + 200));
    });
    expectNowhere(solve(room(at(rectangle(0, 0, 4500, 3500)), [], stools)));
  });

  it('finds the better part of a room that a screen parts', () => {
    const screen = at(rectangle(4000, -100, 4100, 4100));
    const found = solve(room(at(rectangle(0, 0, 9000, 4000)), [screen]));
    // Right of it 4900 x 4000: the length binds, (4900 - 2000) / 2.
    expect(found.value).toBeCloseTo(1450, 0);
    expect(found.upperBound).toBeGreaterThanOrEqual(1450 - 1e-6);
    // The same with a low screen: Q has the whole room, the frame has to stand on one side.
    const low = solve(room(at(rectangle(0, 0, 9000, 4000)), [], [screen]));
    expect(low.value).toBeGreaterThan(1499);
  });

  it('works with a frame that is longer the other way, and with play given by its width', () => {
    const outline = at(rectangle(0, 0, 4000, 2600));
    const wide = solve({ ...room(outline), frame: { length: 2100, width: 2500 } });
    const swapped = solve({
      ...room(outline),
      play: { length: 1000, width: 2000 },
      frame: { length: 2500, width: 2100 },
    });
    // Upright the frame's 2500 fits along 2600 or 4000: across, Q lies 800 from the long walls.
    expect(wide.value).toBeCloseTo(800, 0);
    expect(Math.abs(swapped.value - wide.value)).toBeLessThanOrEqual(1);
    if (wide.pose === null || swapped.pose === null) throw new Error('no pose');
    const apart = Math.abs(wide.pose.angle - swapped.pose.angle);
    expect(Math.abs(apart - Math.PI / 2)).toBeLessThan(0.1);
  });
});

describe('budgets', () => {
  const hall = benchRooms()[12].problem;

  it('leaves valid bounds when the boxes run out', () => {
    const whole = solve(hall);
    for (const maxBoxes of [0, 1, 5, 50, 500]) {
      const part = findPlacement(hall, { gap: 1, maxBoxes, turns: 'any' });
      expect(part.stopped).toBe(true);
      expect(part.boxes).toBeLessThanOrEqual(maxBoxes);
      expect(part.upperBound).toBeGreaterThanOrEqual(whole.value);
      expect(part.value).toBeLessThanOrEqual(whole.upperBound);
    }
  });

  it('reports bounds that only narrow, and stops when told to', () => {
    const seen: { value: number; upperBound: number; boxes: number }[] = [];
    const options = { gap: 1, maxBoxes: 200_000, turns: 'any' } as const;
    const whole = findPlacement(hall, {
      ...options,
      onProgress: (progress) => {
        seen.push(progress);
        return undefined;
      },
    });
    expect(seen.length).toBeGreaterThan(5);
    for (const [i, progress] of seen.entries()) {
      expect(progress.upperBound).toBeGreaterThanOrEqual(whole.value);
      if (i === 0) continue;
      expect(progress.upperBound).toBeLessThanOrEqual(seen[i - 1].upperBound);
      expect(progress.value).toBeGreaterThanOrEqual(seen[i - 1].value);
    }
    expect(seen.at(-1)).toEqual({ value: whole.value, upperBound: whole.upperBound, boxes: whole.boxes });
    let calls = 0;
    const part = findPlacement(hall, { ...options, onProgress: () => ++calls < 3 });
    expect(part.stopped).toBe(true);
    expect(part.boxes).toBeLessThan(whole.boxes);
    expect(part.upperBound).toBeGreaterThanOrEqual(whole.value);
  });

  it('answers whether there is a place above a floor, either way', () => {
    for (const { problem: p } of benchRooms()) {
      const best = solve(p);
      const above = findPlacement(p, {
        gap: 1,
        maxBoxes: 200_000,
        turns: 'any',
        floor: best.value - 20,
        target: best.value - 20,
      });
      expect(above.value).toBeGreaterThan(best.value - 20);
      expect(above.boxes).toBeLessThanOrEqual(best.boxes + 10);
      const none = findPlacement(p, { gap: 1, maxBoxes: 200_000, turns: 'any', floor: best.upperBound + 20 });
      expect(none).toMatchObject({ pose: null, value: 0, stopped: false });
      expect(none.upperBound).toBeGreaterThanOrEqual(best.upperBound + 20);
      expect(none.upperBound).toBeLessThanOrEqual(best.upperBound + 21 + 1e-6);
      expect(none.boxes).toBeLessThanOrEqual(best.boxes);
    }
  });

  it('works in a room of 10,000 corners', () => {
    const n = 10_000;
    const outline = Array.from({ length: n }, (_, i): [number, number] => {
      const angle = (2 * Math.PI * i) / n;
      const far = 3200 + 40 * Math.cos(17 * angle) + (i % 2);
      return [far * Math.cos(angle), far * Math.sin(angle)];
    });
    const found = findPlacement(room(outline), { gap: 20, maxBoxes: 40, turns: 'any' });
    // A disc of 3160 lies in the room; the corners of Q are 1118 from its middle.
    expect(found.upperBound).toBeGreaterThan(3160 - Math.hypot(1000, 500));
    expect(found.upperBound).toBeLessThan(3241 - 500);
    expect(found.value).toBeGreaterThan(1500);
  });
});
