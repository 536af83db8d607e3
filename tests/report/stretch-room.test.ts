import { describe, expect, test } from 'vitest';
import { rectangleRing, rotated, signedArea } from '../../src/geometry/ring.js';
import { isSimple } from '../../src/geometry/simple-ring.js';
import type { Ring } from '../../src/geometry/types.js';
import { gapsAt } from '../../src/report/spans.js';
import { stretchRoom } from '../../src/report/stretch-room.js';
import type { Scene } from '../../src/room/scene.js';
import { STROKE, TABLE } from '../stroke/scenes.js';

function room(outline: Ring, obstacles: Scene['obstacles'] = []): Scene {
  const wallNames = outline.map((_, i) => `wall ${i + 1}`);
  return {
    outline,
    wallNames,
    obstacles,
    ceiling: [],
    doors: [],
    reserved: [],
    tolerance: 10,
    wallTolerances: null,
  };
}

describe('a room made longer about a table', () => {
  test('grows by just so much behind the cushions, and by area as a stretched rectangle does', () => {
    const scene = room(rectangleRing([0, 0], 6000, 4500));
    const longer = stretchRoom(scene, { x: 300, y: -200, angle: 0 }, 400, 150);
    expect(signedArea(longer.outline)).toBeCloseTo(6400 * 4650, 3);
    const pose = { x: 300, y: -200, angle: 0 };
    const before = gapsAt(scene, TABLE, STROKE, pose).map((g) => g.distance);
    const after = gapsAt(longer, TABLE, STROKE, pose).map((g) => g.distance);
    expect(after.map((d, i) => d - before[i])).toEqual([200, 75, 200, 75]);
  });

  test('turns with the table, and keeps alcoves and things whole', () => {
    const outline: Ring = [
      [-3000, -2000],
      [3000, -2000],
      [3000, 2000],
      [600, 2000],
      [600, 2500],
      [-600, 2500],
      [-600, 2000],
      [-3000, 2000],
    ];
    const ring = rectangleRing([2000, 1500], 600, 400);
    const thing = { name: 'chest', ring, parts: [ring], from: 0, to: 700, movable: true };
    const flat = stretchRoom(room(outline, [thing]), { x: 0, y: 0, angle: 0 }, 500, 300);
    const turned = stretchRoom(
      room(rotated(outline, 0.6), [{ ...thing, ring: rotated(ring, 0.6), parts: [rotated(ring, 0.6)] }]),
      { x: 0, y: 0, angle: 0.6 },
      500,
      300,
    );
    expect(isSimple(flat.outline)).toBe(true);
    expect(signedArea(turned.outline)).toBeCloseTo(signedArea(flat.outline), 3);
    const [moved] = flat.obstacles;
    expect(signedArea(moved.ring)).toBeCloseTo(600 * 400, 6);
    expect(moved.ring[0]).toEqual([ring[0][0] + 250, ring[0][1] + 150]);
    rotated(flat.outline, 0.6).forEach(([x, y], i) => {
      expect(turned.outline[i][0]).toBeCloseTo(x, 6);
      expect(turned.outline[i][1]).toBeCloseTo(y, 6);
    });
  });
});
