import { describe, expect, test } from 'vitest';
import { rectangleRing } from '../../src/geometry/ring.js';
import type { Ring } from '../../src/geometry/types.js';
import { openReach } from '../../src/placement/open-reach.js';
import { limitsAt, limitsOfNone } from '../../src/report/limits.js';
import type { Scene } from '../../src/room/scene.js';
import { distance, polygon as polygonOf } from '../helpers/jsts.js';
import { STROKE, TABLE } from '../stroke/scenes.js';

const cue = { name: '57 in', length: 1448, tipRadius: 5, buttRadius: 15 };
const reach = openReach(TABLE, STROKE, cue);
const play = {
  length: TABLE.field.length - TABLE.ballDiameter,
  width: TABLE.field.width - TABLE.ballDiameter,
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

function prism(name: string, ring: Ring, to: number): Scene['obstacles'][number] {
  return { name, ring, parts: [ring], from: 0, to, movable: false };
}

const pose = { x: 0, y: 0, angle: 0 };
const base = { table: TABLE, cue, reach, margin: STROKE.margin, pose, rareNames: [], rareShare: 0 } as const;
const held = (kind: 'wall' | 'obstacle', index: number, name: string, share: number) => ({
  kind,
  index,
  name,
  share,
});

describe('what holds the verdict back', () => {
  const cabinet = prism('cabinet', rectangleRing([1900, 900], 500, 400, 0.3), 1800);
  const scene = room(rectangleRing([0, 0], 5200, 4000), [
    cabinet,
    prism('stool', rectangleRing([-1800, 900], 300, 300), 450),
  ]);

  test('is told nearest first, with distances that JTS agrees with', () => {
    const holdBack = [
      held('wall', 0, 'wall 1', 0.02),
      held('wall', 1, 'wall 2', 0.01),
      held('obstacle', 0, 'cabinet', 0.05),
    ];
    const limits = limitsAt({ ...base, scene, certain: true, holdBack });
    expect(limits.map((l) => l.name)).toEqual(['cabinet', 'wall 1', 'wall 2']);
    const rectangle = polygonOf(rectangleRing([0, 0], play.length, play.width));
    expect(limits[0].distance).toBeCloseTo(distance(rectangle, polygonOf(cabinet.ring)), 6);
    for (const { distance: d, needed, spare, witness, measureAgain } of limits) {
      expect(needed).toBe(reach.rho);
      expect(spare).toBeCloseTo((d ?? 0) - reach.rho, 9);
      const [[ax, ay], [bx, by]] = witness ?? [
        [0, 0],
        [0, 0],
      ];
      expect(Math.hypot(ax - bx, ay - by)).toBeCloseTo(d ?? -1, 2);
      expect(measureAgain).toBe(false);
    }
  });

  test('leaves out what holds nothing back, and takes in what a proof found beside the sample', () => {
    expect(limitsAt({ ...base, scene, certain: true, holdBack: [] })).toEqual([]);
    const rare = limitsAt({
      ...base,
      scene,
      certain: true,
      holdBack: [],
      rareNames: ['wall 4', 'standing room'],
      rareShare: 0.001,
    });
    expect(rare.map((l) => [l.name, l.share])).toEqual([
      ['wall 4', 0.001],
      ['standing room', 0.001],
    ]);
  });

  test('marks the measurement that the answer hangs on', () => {
    const length = play.length + 2 * (reach.rho - 4);
    const width = play.width + 2 * (reach.rho + 300);
    const tight = room(rectangleRing([0, 0], length, width));
    const limits = limitsAt({ ...base, scene: tight, certain: false, holdBack: [] });
    expect(limits.map((l) => [l.name, l.measureAgain])).toEqual([
      ['wall 2', true],
      ['wall 4', true],
    ]);
  });

  test('goes by the own tolerance of each wall where they have one', () => {
    const length = play.length + 2 * (reach.rho - 4);
    const width = play.width + 2 * (reach.rho + 12);
    const tight = room(rectangleRing([0, 0], length, width));
    // Walls 2 and 4 are 4 mm short, walls 1 and 3 have 12 mm to spare.
    const marked = (wallTolerances: readonly number[]) =>
      limitsAt({ ...base, scene: { ...tight, wallTolerances }, certain: false, holdBack: [] })
        .filter((l) => l.measureAgain)
        .map((l) => l.name)
        .sort();
    expect(marked([15, 5, 3, 5])).toEqual(['wall 1', 'wall 2', 'wall 4']);
    expect(marked([3, 5, 15, 2.5])).toEqual(['wall 2', 'wall 3', 'wall 4']);
    expect(marked([15, 1, 15, 1])).toEqual(['wall 1', 'wall 3']);
    for (const limit of limitsAt({
      ...base,
      scene: { ...tight, wallTolerances: [15, 5, 3, 5] },
      certain: false,
      holdBack: [],
    })) {
      expect(limit).not.toHaveProperty('tolerance');
    }
  });
});

describe('what keeps a table from standing', () => {
  const search = { maxBoxes: 10_000, turns: 'any' } as const;

  test('is what its outside overlaps, the deepest first', () => {
    const box = prism('box', rectangleRing([0, 300], 400, 400), 500);
    const scene = room(rectangleRing([-900, 0], 4000, 4000), [box]);
    const limits = limitsOfNone({ scene, table: TABLE, search }, pose, true);
    expect(limits.map((l) => l.name)).toEqual(['box', 'wall 2']);
    expect(limits[1].spare).toBeCloseTo(1100 - TABLE.outer.length / 2, 6);
  });

  test('is the room where even the bare floor is too small, to be measured again where it is a matter of millimetres', () => {
    const scene = room(rectangleRing([0, 0], TABLE.outer.length - 5, 1500));
    const [limit, ...others] = limitsOfNone({ scene, table: TABLE, search }, null, false);
    expect([limit.kind, limit.measureAgain, others]).toEqual(['room', true, []]);
  });
});
