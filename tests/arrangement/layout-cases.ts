import fc from 'fast-check';
import { type PlacedPiece, placePiece } from '../../src/arrangement/piece-place.js';
import type { FurnishingSpec, UseZoneSpec } from '../../src/equipment/furnishing-types.js';
import { convexParts } from '../../src/geometry/convex-parts.js';
import { boundingBox, rectangleRing, translated } from '../../src/geometry/ring.js';
import type { Placement, Point, Ring } from '../../src/geometry/types.js';
import { doorSwing } from '../../src/room/door-swing.js';
import type { Scene, SceneDoor, SceneObstacle } from '../../src/room/scene.js';

/** Rooms and pieces as plain data for the tests of layouts. Lengths in mm. */

export function sceneOf(outline: Ring, things: Partial<Scene> = {}): Scene {
  return {
    outline,
    wallNames: outline.map((_, i) => `wall ${i + 1}`),
    obstacles: [],
    ceiling: [],
    doors: [],
    reserved: [],
    tolerance: 10,
    wallTolerances: null,
    ...things,
  };
}

export function obstacleOf(name: string, ring: Ring, from = 0, to = Infinity): SceneObstacle {
  return { name, ring, parts: convexParts(ring), from, to, movable: false };
}

export function flatCeiling(height: number): Scene['ceiling'] {
  return [{ name: 'ceiling', height, slopeX: 0, slopeY: 0 }];
}

/** A door that opens in, in a wall that has the room on the left of the way from hinge to latch. */
export function doorIn(name: string, hinge: Point, latch: Point): SceneDoor {
  return { name, hinge, latch, opens: 'in', swing: doorSwing(hinge, latch, true) };
}

/** A rectangle that stands free and turns as it likes, 900 mm high. */
export function box(
  name: string,
  length: number,
  width: number,
  more: Partial<FurnishingSpec> = {},
): FurnishingSpec {
  return {
    kind: null,
    name,
    ring: rectangleRing([0, 0], length, width),
    length,
    width,
    from: 0,
    to: 900,
    mass: null,
    stand: 'free',
    turns: 'any',
    zones: [],
    source: 'made up for a test',
    ...more,
  };
}

/** A piece with another footprint: its bounding rectangle's middle becomes the origin. */
export function shaped(name: string, ring: Ring, more: Partial<FurnishingSpec> = {}): FurnishingSpec {
  const { minX, minY, maxX, maxY } = boundingBox(ring);
  const moved = translated(ring, -(minX + maxX) / 2, -(minY + maxY) / 2);
  return { ...box(name, maxX - minX, maxY - minY, more), ring: moved };
}

/** An L, concave at its inner corner. */
export const L_SHAPE: Ring = [
  [0, 0],
  [2000, 0],
  [2000, 800],
  [800, 800],
  [800, 2000],
  [0, 2000],
];

export function zone(more: Partial<UseZoneSpec> = {}): UseZoneSpec {
  return {
    name: 'use',
    front: 0,
    back: 0,
    left: 0,
    right: 0,
    from: 0,
    to: 2000,
    withCueing: true,
    withZones: true,
    offDoors: false,
    ...more,
  };
}

export function put(spec: FurnishingSpec, x: number, y: number, degrees = 0): PlacedPiece {
  return placePiece(spec, { x, y, angle: (degrees * Math.PI) / 180 });
}

const sides = fc.integer({ min: 50, max: 2500 });
const reach = fc.integer({ min: 0, max: 1500 });

/** Use zones of all sorts. */
export const zones: fc.Arbitrary<UseZoneSpec> = fc
  .record({
    front: reach,
    back: reach,
    left: reach,
    right: reach,
    from: fc.constantFrom(0, 0, 500, 900),
    height: fc.constantFrom(400, 1100, 2000),
    withCueing: fc.boolean(),
    withZones: fc.boolean(),
    offDoors: fc.boolean(),
  })
  .map(({ height, from, ...rest }) => zone({ ...rest, from, to: from + height }));

/** Pieces of all sorts: rectangles and Ls, at several heights, with up to two zones. They stand free. */
export const specs: fc.Arbitrary<FurnishingSpec> = fc
  .record({
    name: fc.constant('piece'),
    length: sides,
    width: sides,
    concave: fc.boolean(),
    from: fc.constantFrom(0, 0, 0, 700, 1500),
    height: fc.constantFrom(300, 800, 1200),
    zones: fc.array(zones, { maxLength: 2 }),
  })
  .map(({ name, length, width, concave, from, height, zones: list }) => {
    const named = list.map((z, i) => ({ ...z, name: `use ${i + 1}` }));
    const more = { from, to: from + height, zones: named };
    if (!concave) return box(name, length, width, more);
    const [a, b] = [length, width];
    const ring: Ring = [
      [0, 0],
      [a, 0],
      [a, b / 3],
      [a / 4, b / 3],
      [a / 4, b],
      [0, b],
    ];
    return shaped(name, ring, more);
  });

/** Tenths of a millimetre and thousandths of a radian: whole numbers are soon shrunk, doubles are not. */
export function poses(span: number): fc.Arbitrary<Placement> {
  const place = fc.integer({ min: -10 * span, max: 10 * span }).map((n) => n / 10);
  return fc.record({ x: place, y: place, angle: fc.integer({ min: 0, max: 6283 }).map((n) => n / 1000) });
}

export function renamed(spec: FurnishingSpec, name: string): FurnishingSpec {
  return { ...spec, name };
}

/** A whole layout turned about the origin and moved. */
export function movedPoint([x, y]: Point, angle: number, [dx, dy]: Point): Point {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return [dx + cos * x - sin * y, dy + sin * x + cos * y];
}

export function movedPose(pose: Placement, angle: number, by: Point): Placement {
  const [x, y] = movedPoint([pose.x, pose.y], angle, by);
  return { x, y, angle: pose.angle + angle };
}

export function movedScene(scene: Scene, angle: number, by: Point): Scene {
  const ring = (r: Ring): Ring => r.map((p) => movedPoint(p, angle, by));
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return {
    ...scene,
    outline: ring(scene.outline),
    obstacles: scene.obstacles.map((o) => ({ ...o, ring: ring(o.ring), parts: o.parts.map(ring) })),
    doors: scene.doors.map((d) => ({
      ...d,
      hinge: movedPoint(d.hinge, angle, by),
      latch: movedPoint(d.latch, angle, by),
      swing: d.swing === null ? null : ring(d.swing),
    })),
    ceiling: scene.ceiling.map((face) => {
      const slopeX = cos * face.slopeX - sin * face.slopeY;
      const slopeY = sin * face.slopeX + cos * face.slopeY;
      return { ...face, slopeX, slopeY, height: face.height - slopeX * by[0] - slopeY * by[1] };
    }),
  };
}
