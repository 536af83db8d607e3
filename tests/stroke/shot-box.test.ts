import { describe, expect, it } from 'vitest';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { ALL_OPEN, ALL_PLAYABLE, boxStatus, NONE_OPEN, NONE_PLAYABLE } from '../../src/stroke/shot-box.js';
import { standingRoom } from '../../src/stroke/standing.js';
import { fuzzBoxes } from './fuzz-boxes.js';
import { CUE, obstacle, rectangle, room, STROKE, TABLE } from './scenes.js';

const POSE = { x: 0, y: 0, angle: 0 };

/** Status of a box in a rectangular room with walls at +-x and +-y. */
function statusIn(
  x: number,
  y: number,
  box: [u: number, v: number, phi: number, halfU: number, halfV: number, halfPhi: number],
): number {
  const scene = prepareStrokes(room(rectangle(-x, -y, x, y)), TABLE, POSE, STROKE);
  const [u, v, phi, halfU, halfV, halfPhi] = box;
  return boxStatus(scene, standingRoom(scene), CUE, { u, v, phi, halfU, halfV, halfPhi });
}

describe('boxStatus', () => {
  it('proves all shots of a wide box open in a hall', () => {
    expect(statusIn(6000, 6000, [800, 0, 0, 200, 300, 0.5])).toBe(ALL_OPEN | ALL_PLAYABLE);
  });

  it('proves a box blocked that faces a near wall', () => {
    expect(statusIn(1900, 6000, [1000, 0, 0, 50, 300, 0.2])).toBe(NONE_OPEN | NONE_PLAYABLE);
  });

  it('tells cramped from open where only the short backswing fits', () => {
    // Balls within 30 mm of the cushion, square to a wall that a steeper, shorter stroke clears.
    const status = statusIn(2620, 6000, [1070, 0, 0, 15, 300, 0.02]);
    expect(status).toBe(NONE_OPEN | ALL_PLAYABLE);
  });

  it('says nothing of a box that holds open and blocked shots', () => {
    expect(statusIn(1900, 6000, [0, 0, 0, 1000, 500, Math.PI])).toBe(0);
  });

  it('proves shots blocked for want of floor alone', () => {
    // A platform under every cue, all round the table: nowhere to stand, everything to cue over.
    const around = [
      obstacle('platform 1', rectangle(-5000, 720, 5000, 5000), 0, 300),
      obstacle('platform 2', rectangle(-5000, -5000, 5000, -720), 0, 300),
      obstacle('platform 3', rectangle(1280, -5000, 5000, 5000), 0, 300),
      obstacle('platform 4', rectangle(-5000, -5000, -1280, 5000), 0, 300),
    ];
    const scene = prepareStrokes(room(rectangle(-6000, -6000, 6000, 6000), around), TABLE, POSE, STROKE);
    const status = boxStatus(scene, standingRoom(scene), CUE, {
      u: 800,
      v: 0,
      phi: 0,
      halfU: 200,
      halfV: 200,
      halfPhi: 0.2,
    });
    expect(status).toBe(NONE_OPEN | NONE_PLAYABLE);
  });

  // At full size: npx tsx tests/stroke/fuzz-boxes.ts 10000
  it('is never wrong of a shot, by its exact class or by points along the cue', () => {
    const counts = fuzzBoxes({ seed: 90, scenes: 90, boxes: 100, shots: 10, slowOneIn: 800 });
    expect(counts.examples).toEqual([]);
    expect(counts.violations + counts.slowViolations).toBe(0);
    // And it is not silent: every status came about, often.
    expect(counts.shots).toBeGreaterThan(50_000);
    expect(counts.slowShots).toBeGreaterThan(50);
    for (const status of [counts.allOpen, counts.allPlayable, counts.noneOpen, counts.nonePlayable]) {
      expect(status).toBeGreaterThan(1500);
    }
    expect(counts.undecided).toBeLessThan(counts.boxes / 4);
  });
});
