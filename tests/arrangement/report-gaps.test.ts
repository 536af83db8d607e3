import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SIDES } from '../../src/arrangement/layout-rules-stand.js';
import { pieceGaps } from '../../src/arrangement/piece-gaps.js';
import { placePiece } from '../../src/arrangement/piece-place.js';
import { TABLES } from '../../src/equipment/tables.js';
import { rectangleRing } from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import * as jts from '../helpers/jsts.js';
import { crookedRings, skylineRings } from '../helpers/rings.js';
import { box, L_SHAPE, obstacleOf, poses, put, renamed, sceneOf, shaped, specs } from './layout-cases.js';

const ROOM = sceneOf([
  [0, 0],
  [6000, 0],
  [6000, 5000],
  [0, 5000],
]);

function told(...asked: Parameters<typeof pieceGaps>): string[] {
  return pieceGaps(...asked).map(({ side, distance, to }) => `${side} ${Math.round(distance)} ${to}`);
}

describe('gaps round a piece', () => {
  const chest = put(box('chest', 1000, 500), 3000, 250);

  it('go to the walls of an empty room', () => {
    expect(told(chest, { scene: ROOM, placed: [chest], table: null })).toEqual([
      'back 0 wall 1',
      'left 2500 wall 2',
      'front 4500 wall 3',
      'right 2500 wall 4',
    ]);
    const turned = put(box('chest', 1000, 500), 3000, 4000, 180);
    expect(told(turned, { scene: ROOM, placed: [], table: null })).toEqual([
      'back 750 wall 3',
      'left 2500 wall 4',
      'front 3750 wall 1',
      'right 2500 wall 2',
    ]);
  });

  it("go to the nearest thing at the piece's own heights", () => {
    const scene = {
      ...ROOM,
      obstacles: [
        obstacleOf('radiator', rectangleRing([3400, 2000], 400, 200), 0, 900),
        obstacleOf('beam', rectangleRing([3400, 1000], 400, 200), 2200),
        // Flush beside the strip before the front.
        obstacleOf('post', rectangleRing([3600, 1000], 200, 200)),
      ],
    };
    const shelf = put(box('shelf', 500, 500, { from: 900, to: 1200 }), 4500, 250);
    const stool = put(box('stool', 400, 400), 1800, 300);
    expect(told(chest, { scene, placed: [chest, shelf, stool], table: null })).toEqual([
      'back 0 wall 1',
      'left 2500 wall 2',
      'front 1400 radiator',
      'right 500 stool',
    ]);
  });

  it('go to the table below its rails', () => {
    const spec = TABLES['pool-7ft-bar'];
    const table = { spec, pose: { x: 3000, y: 2500, angle: 0 } };
    const high = put(
      box('shelf', 1000, 500, { from: spec.bedHeight + spec.railHeight, to: 1400 }),
      3000,
      250,
    );
    expect(told(chest, { scene: ROOM, placed: [], table })[2]).toBe(
      `front ${Math.round(2500 - spec.outer.width / 2 - 500)} the table`,
    );
    expect(told(high, { scene: ROOM, placed: [], table })[2]).toBe('front 4500 wall 3');
  });

  it('leave out what stands in the hollow of a piece', () => {
    const seat = put(shaped('corner seat', L_SHAPE), 1000, 1000);
    const inHollow = put(box('stool', 1200, 1200), 1400, 1400);
    expect(told(seat, { scene: ROOM, placed: [seat, inHollow], table: null })).toEqual([
      'back 0 wall 1',
      'left 4000 wall 2',
      'front 3000 wall 3',
      'right 0 wall 4',
    ]);
  });

  it('are 0 to what overlaps a side, and none from beyond the walls', () => {
    const stool = put(box('stool', 400, 400), 3000, 600);
    expect(told(chest, { scene: ROOM, placed: [stool], table: null })[2]).toBe('front 0 stool');
    const outside = put(box('chest', 1000, 500), 3000, -1000);
    expect(told(outside, { scene: ROOM, placed: [], table: null })).toEqual(['front 750 wall 1']);
  });

  it('are as wide as JTS finds free, and no wider', () => {
    let looked = 0;
    fc.assert(
      fc.property(
        fc.oneof(
          skylineRings(5),
          crookedRings(14).filter((ring) => ring.length >= 4),
        ),
        specs,
        specs,
        poses(2000),
        poses(2500),
        (outline, spec, other, at, there) => {
          const scene = sceneOf(outline);
          const middle = outline.reduce<Point>(
            ([x, y], p) => [x + p[0] / outline.length, y + p[1] / outline.length],
            [0, 0],
          );
          const piece = placePiece(renamed(spec, 'piece'), {
            ...at,
            x: at.x + middle[0],
            y: at.y + middle[1],
          });
          const beside = placePiece(renamed(other, 'other'), {
            ...there,
            x: there.x + middle[0],
            y: there.y + middle[1],
          });
          const walls = outline.map((a, i) => jts.segment(a, outline[(i + 1) % outline.length]));
          const corners = rectangleRing(
            [piece.pose.x, piece.pose.y],
            spec.length,
            spec.width,
            piece.pose.angle,
          );
          const met = spec.from < other.to && other.from < spec.to;
          // Only from free floor: what lies in the bounding rectangle may reach out of it.
          const own = jts.polygon(corners);
          fc.pre(walls.every((wall) => !jts.intersects(wall, own)));
          fc.pre(!met || !jts.intersects(jts.polygon(beside.ring), own));
          for (const { side, distance, to } of pieceGaps(piece, {
            scene,
            placed: [piece, beside],
            table: null,
          })) {
            const i = SIDES.indexOf(side);
            const [p, q] = [corners[i], corners[(i + 1) % 4]];
            const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
            const [ox, oy] = [(q[1] - p[1]) / length, (p[0] - q[0]) / length];
            // Things that reach into the strip's flanks by no more than the slack of 0.01 mm do not count.
            const [ix, iy] = [-oy * 0.011, ox * 0.011];
            const strip = (from: number, till: number): Ring => [
              [p[0] + ox * till + ix, p[1] + oy * till + iy],
              [p[0] + ox * from + ix, p[1] + oy * from + iy],
              [q[0] + ox * from - ix, q[1] + oy * from - iy],
              [q[0] + ox * till - ix, q[1] + oy * till - iy],
            ];
            const thing = to === 'other' ? jts.polygon(beside.ring) : walls[scene.wallNames.indexOf(to)];
            expect(jts.intersects(jts.polygon(strip(distance - 0.5, distance + 0.5)), thing)).toBe(true);
            if (distance < 2) continue;
            const free = jts.polygon(strip(0.01, distance - 0.5));
            for (const wall of walls) expect(jts.intersects(wall, free)).toBe(false);
            if (met) expect(jts.intersects(jts.polygon(beside.ring), free)).toBe(false);
            looked++;
          }
        },
      ),
      { seed: 523, numRuns: 90 },
    );
    expect(looked).toBeGreaterThan(120);
  });
});
