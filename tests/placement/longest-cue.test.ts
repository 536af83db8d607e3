import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangleRing } from '../../src/geometry/ring.js';
import { clearanceAt } from '../../src/placement/clearance-at.js';
import { longestLevelCue } from '../../src/placement/longest-cue.js';
import { openReach } from '../../src/placement/open-reach.js';
import { cueingProblem } from '../../src/placement/problem-for.js';
import type { Scene } from '../../src/room/scene.js';
import { answerShot, STANDING_ROOM } from '../../src/stroke/answer-shot.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { standingRoom } from '../../src/stroke/standing.js';
import { STROKE, TABLE } from '../stroke/scenes.js';

const pose = { x: 0, y: 0, angle: 0 };
const share = fc.double({ min: 0, max: 1, noNaN: true });
const short = { name: '36 in', length: 914, tipRadius: 5, buttRadius: 15 };

/** A hall with a shelf hung on one wall, from a height up. */
function hall(clearance: number, from: number): Scene {
  const length = TABLE.field.length - TABLE.ballDiameter + 2 * clearance;
  const width = TABLE.field.width - TABLE.ballDiameter + 2 * clearance;
  const outline = rectangleRing([0, 0], length, width);
  const ring = rectangleRing([0, width / 2 - 300], 2000, 600);
  const shelf = { name: 'shelf', ring, parts: [ring], from, to: 2200, movable: false };
  return {
    outline,
    wallNames: ['1', '2', '3', '4'],
    obstacles: [shelf],
    ceiling: [],
    doors: [],
    tolerance: 10,
    reserved: [],
    wallTolerances: null,
  };
}

function longest(scene: Scene): number {
  const reach = openReach(TABLE, STROKE, short);
  const { clearance } = clearanceAt(cueingProblem(scene, TABLE, STROKE.margin, reach), pose);
  return longestLevelCue({ scene, table: TABLE, stroke: STROKE, cue: short, pose, clearance });
}

describe('the longest cue at a pose', () => {
  test('is clearance - R - s - a where nothing hangs', () => {
    const besides = TABLE.ballDiameter / 2 + STROKE.backswing + STROKE.margin;
    expect(longest(hall(2000, 2199))).toBeCloseTo(2000 - besides, 6);
  });

  test('does not reach under a shelf that only the shorter cue stays below', () => {
    const scene = hall(2200, openReach(TABLE, STROKE, short).high + 1);
    expect(longest(scene)).toBeLessThan(2200 - 600);
  });

  test('meets nothing in any of many strokes, floor for the player left aside', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1300, max: 2300 }),
        fc.integer({ min: 950, max: 1250 }),
        fc.array(fc.tuple(share, share, share), { minLength: 300, maxLength: 300 }),
        (clearance, from, shots) => {
          const scene = hall(clearance, from);
          const length = longest(scene);
          const strokes = prepareStrokes(scene, TABLE, pose, STROKE);
          const standing = standingRoom(strokes);
          const met = new Set<string>();
          for (const [a, b, c] of shots) {
            // Frozen balls and strokes square to the walls are the critical ones: half of the shots are drawn to them.
            const x = strokes.qx * Math.max(-1, Math.min(1, 3 * a - 1.5));
            const y = strokes.qy * Math.max(-1, Math.min(1, 3 * b - 1.5));
            const phi = (Math.PI / 2) * (c < 0.5 ? Math.round(8 * c) : 8 * c);
            for (const name of answerShot(strokes, standing, { ...short, length }, x, y, phi).meets)
              met.add(name);
          }
          met.delete(STANDING_ROOM);
          expect([...met]).toEqual([]);
        },
      ),
      { seed: 31, numRuns: 40 },
    );
  });
});
