import { describe, expect, test } from 'vitest';
import { TABLES } from '../../src/equipment/tables.js';
import { rectangleRing, rotated, translated } from '../../src/geometry/ring.js';
import type { Ring } from '../../src/geometry/types.js';
import { gapsAt, spansAt, spansOfRoom } from '../../src/report/spans.js';
import type { Scene } from '../../src/room/scene.js';
import type { StrokeSettings } from '../../src/stroke/stroke-settings.js';

const table = TABLES['pool-9ft'];
const stroke: StrokeSettings = {
  backswing: 150,
  shortBackswing: 45,
  margin: 20,
  tipOffset: 10,
  maxElevation: 0.35,
};

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

function box(name: string, ring: Ring, from: number, to: number): Scene['obstacles'][number] {
  return { name, ring, parts: [ring], from, to, movable: false };
}

describe('gaps behind the cushions', () => {
  const outline = rectangleRing([0, 0], 6000, 4000);

  test('are the tape-measure distances from nose to wall, with the walls named', () => {
    const gaps = gapsAt(room(outline), table, stroke, { x: 100, y: -50, angle: 0 });
    const half = { length: table.field.length / 2, width: table.field.width / 2 };
    expect(gaps.map((g) => [g.cushion, g.distance, g.to])).toEqual([
      ['endA', 3000 - 100 - half.length, 'wall 2'],
      ['sideA', 2000 + 50 - half.width, 'wall 3'],
      ['endB', 3000 + 100 - half.length, 'wall 4'],
      ['sideB', 2000 - 50 - half.width, 'wall 1'],
    ]);
  });

  test('end at what a level cue meets, not at what it passes over or under', () => {
    const place = rectangleRing([0, 1700], 400, 200);
    const at = (from: number, to: number) =>
      gapsAt(room(outline, [box('thing', place, from, to)]), table, stroke, { x: 0, y: 0, angle: 0 })[1];
    const level = table.bedHeight + table.ballDiameter / 2 + stroke.tipOffset;
    expect(at(0, 2000)).toEqual({ cushion: 'sideA', distance: 1600 - table.field.width / 2, to: 'thing' });
    expect(at(0, level - stroke.margin - 1).to).toBe('wall 3');
    expect(at(level + stroke.margin + 1, 2000).to).toBe('wall 3');
    expect(at(level + stroke.margin - 1, 2000).to).toBe('thing');
  });

  test('see only what stands behind the cushion itself', () => {
    const beside = rectangleRing([table.field.length / 2 + 300, 1700], 400, 200);
    const gaps = gapsAt(room(outline, [box('thing', beside, 0, 2000)]), table, stroke, {
      x: 0,
      y: 0,
      angle: 0,
    });
    expect(gaps.map((g) => g.to)).toEqual(['wall 2', 'wall 3', 'wall 4', 'wall 1']);
  });

  test('move with the room under a rigid motion', () => {
    const ring: Ring = [
      [-3000, -2000],
      [3200, -2100],
      [3000, 2300],
      [400, 2300],
      [400, 1700],
      [-2900, 1800],
    ];
    const still = gapsAt(room(ring), table, stroke, { x: 0, y: 0, angle: 0.1 });
    const turned = translated(rotated(ring, 1.1), 777, -333);
    const moved = gapsAt(room(turned), table, stroke, { x: 777, y: -333, angle: 1.2 });
    moved.forEach((gap, i) => {
      expect(gap.distance).toBeCloseTo(still[i].distance, 6);
      expect(gap.to).toBe(still[i].to);
    });
  });
});

describe('spans', () => {
  test('add up as the trade reckons: field + 2 (cue + backswing + margin)', () => {
    // Common practice, no source: play field plus twice the cue and its stroke.
    const scene = room(rectangleRing([0, 0], 6000, 4500));
    const { along, across } = spansAt(
      table,
      stroke,
      1448,
      gapsAt(scene, table, stroke, { x: 200, y: 0, angle: 0 }),
    );
    expect(along).toEqual({ needed: 2540 + 2 * (1448 + 150 + 20), available: 6000, spare: 6000 - 5776 });
    expect(across).toEqual({ needed: 1270 + 2 * (1448 + 150 + 20), available: 4500, spare: 4500 - 4506 });
  });

  test('of a room that cannot hold the table are taken along and across its longest wall', () => {
    const scene = room(rotated(rectangleRing([0, 0], 2000, 1500), 0.4));
    const { along, across } = spansOfRoom(scene, table, stroke, 1448);
    expect(along.available).toBeCloseTo(2000, 6);
    expect(across.available).toBeCloseTo(1500, 6);
    expect(along.spare).toBeLessThan(0);
  });
});
