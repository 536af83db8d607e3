import type { TableSpec } from '../../src/equipment/equipment-types.js';
import type { Placement, Point, Ring } from '../../src/geometry/types.js';
import type { Scene, SceneCeilingFace, SceneObstacle } from '../../src/room/scene.js';
import type { StrokeCue } from '../../src/stroke/stroke-scene.js';
import type { StrokeSettings } from '../../src/stroke/stroke-settings.js';

/** Scenes for the tests of strokes, and a generator that gives the same numbers on every run. */

export type Random = () => number;

/** mulberry32, a small generator that is good enough to scatter test cases (from memory). */
export function random(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let z = Math.imul(state ^ (state >>> 15), state | 1);
    z ^= z + Math.imul(z ^ (z >>> 7), z | 61);
    return ((z ^ (z >>> 14)) >>> 0) / 4294967296;
  };
}

export const between = (next: Random, low: number, high: number): number => low + (high - low) * next();

/** Heights near those of a pool table; the field is 8 ft pool's (common practice, no source). */
export const TABLE: TableSpec = {
  id: null,
  name: 'test table',
  game: 'pool',
  field: { length: 2235, width: 1118 },
  outer: { length: 2515, width: 1398 },
  bedHeight: 790,
  noseHeight: 36.3,
  railHeight: 42,
  ballDiameter: 57.15,
  usualCue: 1448,
  mass: null,
  legs: null,
  source: 'made up for tests',
};

export const STROKE: StrokeSettings = {
  backswing: 150,
  shortBackswing: 45,
  margin: 20,
  tipOffset: 10,
  maxElevation: (20 * Math.PI) / 180,
};

export const CUE: StrokeCue = { length: 1448, tipRadius: 5, buttRadius: 15 };

export function rectangle(x0: number, y0: number, x1: number, y1: number): Ring {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}

export function box(cx: number, cy: number, length: number, width: number, angle: number): Ring {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return rectangle(-length / 2, -width / 2, length / 2, width / 2).map(
    ([x, y]): Point => [cx + cos * x - sin * y, cy + sin * x + cos * y],
  );
}

export function room(
  outline: Ring,
  obstacles: readonly SceneObstacle[] = [],
  ceiling: readonly SceneCeilingFace[] = [],
): Scene {
  return {
    outline,
    wallNames: outline.map((_, i) => `wall ${i + 1}`),
    obstacles,
    ceiling,
    doors: [],
    tolerance: 10,
    reserved: [],
    wallTolerances: null,
  };
}

export function obstacle(name: string, ring: Ring, from = 0, to = Infinity): SceneObstacle {
  return { name, ring, parts: [ring], from, to, movable: false };
}

/** A convex polygon of 3 to 6 corners on a circle. */
export function randomConvex(next: Random, cx: number, cy: number, radius: number): Ring {
  const corners = 3 + Math.floor(4 * next());
  const angles = Array.from({ length: corners }, (_, i) => ((i + 0.8 * next()) * 2 * Math.PI) / corners);
  return angles.map((angle): Point => [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)]);
}

/** A room with a bay, a chimney breast or skewed walls, furniture of all heights, and now and then a sloping ceiling. */
export function randomScene(next: Random, tight = 1): { scene: Scene; pose: Placement } {
  const halfX = TABLE.outer.length / 2 + tight * between(next, 200, 1900);
  const halfY = TABLE.outer.width / 2 + tight * between(next, 200, 1900);
  let outline: Ring = rectangle(-halfX, -halfY, halfX, halfY);
  const kind = next();
  if (kind < 0.35) {
    const at = between(next, -0.6, 0.2) * halfX;
    const width = between(next, 300, 1200);
    const depth = between(next, 100, 500) * (next() < 0.5 ? 1 : -1);
    outline = [
      [-halfX, -halfY],
      [at, -halfY],
      [at, -halfY + Math.min(depth, halfY - TABLE.outer.width / 2 - 60)],
      [at + width, -halfY + Math.min(depth, halfY - TABLE.outer.width / 2 - 60)],
      [at + width, -halfY],
      [Math.max(halfX, at + width + 50), -halfY],
      [Math.max(halfX, at + width + 50), halfY],
      [-halfX, halfY],
    ];
  } else if (kind < 0.6) {
    const skew = (): number => between(next, 0, 300);
    outline = [
      [-halfX - skew(), -halfY - skew()],
      [halfX + skew(), -halfY - skew()],
      [halfX + skew(), halfY + skew()],
      [-halfX - skew(), halfY + skew()],
    ];
  }
  const obstacles: SceneObstacle[] = [];
  const count = Math.floor(8 * next());
  for (let k = 0; k < count; k++) {
    const radius = between(next, 60, 500);
    const away = TABLE.outer.length / 2 + radius;
    const side = next() < 0.5 ? 1 : -1;
    const [cx, cy]: Point =
      next() < 0.5
        ? [side * (away + between(next, 20, 900)), between(next, -halfY, halfY)]
        : [between(next, -halfX, halfX), side * (TABLE.outer.width / 2 + radius + between(next, 20, 900))];
    const ring =
      next() < 0.5
        ? randomConvex(next, cx, cy, radius)
        : box(cx, cy, radius, between(next, 30, radius), next() * Math.PI);
    const shape = next();
    const from = shape < 0.6 ? 0 : between(next, 850, 2000);
    const to =
      shape < 0.25 ? Infinity : from + between(next, shape < 0.6 ? 400 : 50, shape < 0.6 ? 1500 : 700);
    obstacles.push(obstacle(`thing ${k + 1}`, ring, from, to));
  }
  if (next() < 0.4) {
    // A lamp over the table.
    obstacles.push(
      obstacle(
        'lamp',
        box(between(next, -500, 500), 0, between(next, 200, 1200), 300, 0),
        between(next, 850, 1400),
        1700,
      ),
    );
  }
  const ceiling: SceneCeilingFace[] = [];
  const roof = next();
  if (roof < 0.6)
    ceiling.push({
      name: 'ceiling',
      height: between(next, next() < 0.2 ? 860 : 1400, 2500),
      slopeX: 0,
      slopeY: 0,
    });
  if (roof > 0.4) {
    const angle = next() * 2 * Math.PI;
    const slope = between(next, 0.2, 1.5);
    ceiling.push({
      name: 'slope',
      height: between(next, 1500, 3500),
      slopeX: slope * Math.cos(angle),
      slopeY: slope * Math.sin(angle),
    });
  }
  const pose = {
    x: between(next, -80, 80),
    y: between(next, -80, 80),
    angle: next() < 0.5 ? 0 : between(next, -0.1, 0.1),
  };
  return {
    scene: moved(room(outline, obstacles, ceiling), pose),
    pose: { ...pose, angle: pose.angle < 0 ? pose.angle + Math.PI : pose.angle },
  };
}

/** The scene carried along by a pose, so that the table stands in it as it stood at the origin. */
export function moved(scene: Scene, pose: Placement): Scene {
  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  const ring = (r: Ring): Ring =>
    r.map(([x, y]): Point => [pose.x + cos * x - sin * y, pose.y + sin * x + cos * y]);
  return {
    ...scene,
    outline: ring(scene.outline),
    obstacles: scene.obstacles.map((o) => ({ ...o, ring: ring(o.ring), parts: o.parts.map(ring) })),
    ceiling: scene.ceiling.map((face) => {
      const slopeX = cos * face.slopeX - sin * face.slopeY;
      const slopeY = sin * face.slopeX + cos * face.slopeY;
      return { ...face, slopeX, slopeY, height: face.height - slopeX * pose.x - slopeY * pose.y };
    }),
  };
}

/** The scene seen in a mirror along the x axis. */
export function mirrored(scene: Scene): Scene {
  const ring = (r: Ring): Ring => r.map(([x, y]): Point => [x, -y]).reverse();
  const outline = ring(scene.outline);
  // Edge i of the mirrored ring runs from old corner n - 1 - i to n - 2 - i, so it is old edge n - 2 - i.
  const n = outline.length;
  return {
    ...scene,
    outline,
    wallNames: outline.map((_, i) => scene.wallNames[(2 * n - 2 - i) % n]),
    obstacles: scene.obstacles.map((o) => ({ ...o, ring: ring(o.ring), parts: o.parts.map(ring) })),
    ceiling: scene.ceiling.map((face) => ({ ...face, slopeY: -face.slopeY })),
  };
}
