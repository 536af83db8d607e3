import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/types.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { canStand, standingFrom, standingRoom, standingTo } from '../../src/stroke/standing.js';
import type { StrokeScene } from '../../src/stroke/stroke-scene.js';
import { between, obstacle, random, randomScene, rectangle, room, STROKE, TABLE } from './scenes.js';
import { greatestInWindow, outsideBy } from './shot-oracle.js';

const POSE = { x: 0, y: 0, angle: 0 };

function ringOf(edges: StrokeScene['walls'], first: number, end: number): Ring {
  return Array.from({ length: end - first }, (_, i) => [edges.ax[first + i], edges.ay[first + i]]);
}

/** The slack from its definition, thing by thing. */
function slowSlack(scene: StrokeScene): (x: number, y: number) => number {
  const { walls, parts, stance, rimX, rimY } = scene;
  const outline = ringOf(walls, 0, walls.count);
  const blocking = stance.parts.map((k) => ringOf(parts.edges, parts.start[k], parts.start[k + 1]));
  blocking.push(rectangle(-rimX, -rimY, rimX, rimY));
  return (x, y) => {
    let least = stance.never ? -Infinity : -outsideBy(outline, x, y);
    for (const ring of blocking) least = Math.min(least, outsideBy(ring, x, y));
    for (const { nx, ny, d } of stance.low) least = Math.min(least, d - nx * x - ny * y);
    return least - stance.radius;
  };
}

describe('room to stand', () => {
  it('is found exactly where halving the window finds some', () => {
    const next = random(5);
    let yes = 0;
    let no = 0;
    for (let k = 0; k < 90; k++) {
      const { scene, pose } = randomScene(next, next() < 0.5 ? 0.3 : 0.8);
      const prepared = prepareStrokes(scene, TABLE, pose, STROKE, between(next, -10, 10));
      const standing = standingRoom(prepared);
      const slack = slowSlack(prepared);
      for (let j = 0; j < 20; j++) {
        const [x, y] = [between(next, -3000, 3000), between(next, -2500, 2500)];
        if (prepared.stance.never) continue;
        expect(standing.slack(x, y)).toBeCloseTo(slack(x, y), 6);
      }
      for (let j = 0; j < 30; j++) {
        const px = between(next, -1, 1) * prepared.qx;
        const py = between(next, -1, 1) * prepared.qy;
        const phi = next() < 0.1 ? Math.round(4 * next()) * (Math.PI / 2) : next() * 2 * Math.PI;
        const [ux, uy] = [Math.cos(phi), Math.sin(phi)];
        // Windows of strokes, and small ones, as bounds over boxes of shots ask for.
        const small = next() < 0.4;
        const from = small ? between(next, 300, 1500) : 650;
        const to = from + (small ? between(next, 0, 300) : between(next, 300, 1500));
        const half = small ? between(next, 0, 100) : 350;
        const best = greatestInWindow(
          (t, side) => slack(px + t * ux - side * uy, py + t * uy + side * ux),
          from,
          to,
          half,
          1e-3,
        );
        if (best < 0 && best > -2e-3) continue;
        const found = canStand(prepared, standing, px, py, ux, uy, from, to, half);
        expect(found).toBe(best >= 0);
        if (found) yes++;
        else no++;
      }
    }
    expect(Math.min(yes, no)).toBeGreaterThan(500);
  });

  it('is found in windows that hold hardly any of it, wherever they touch it', () => {
    // Windows laid so that their sides, corners and inside meet the floor by a hair, or miss it by one.
    const next = random(6);
    for (const hair of [0.01, -0.01]) {
      for (let k = 0; k < 25; k++) {
        const { scene, pose } = randomScene(next, 0.6);
        const prepared = prepareStrokes(scene, TABLE, pose, STROKE);
        const standing = standingRoom(prepared);
        const slack = slowSlack(prepared);
        for (let j = 0; j < 10; j++) {
          const phi = next() * 2 * Math.PI;
          const [ux, uy] = [Math.cos(phi), Math.sin(phi)];
          const px = between(next, -1, 1) * prepared.qx;
          const py = between(next, -1, 1) * prepared.qy;
          const half = between(next, 5, 300);
          const near = between(next, 200, 1500);
          const meets = (to: number): boolean =>
            greatestInWindow(
              (t, side) => slack(px + t * ux - side * uy, py + t * uy + side * ux),
              near,
              to,
              half,
              5e-4,
            ) >= 0;
          if (meets(near) || !meets(near + 800)) continue;
          let low = near;
          let high = near + 800;
          while (high - low > 1e-3) {
            const to = (low + high) / 2;
            if (meets(to)) high = to;
            else low = to;
          }
          // The floor's point farthest ahead lies at the window's far side, give or take 1e-3.
          expect(canStand(prepared, standing, px, py, ux, uy, near, high + hair, half)).toBe(hair > 0);
        }
      }
    }
  });

  it('counts touching as room: an alley as wide as the disc, and no narrower', () => {
    const stand = (gap: number): boolean => {
      const y = TABLE.outer.width / 2 + gap;
      const prepared = prepareStrokes(room(rectangle(-1400, -5000, 1400, y)), TABLE, POSE, STROKE);
      return canStand(prepared, standingRoom(prepared), 0, 0, 0, 1, 650, 1448, 350);
    };
    expect(stand(460)).toBe(true);
    expect(stand(459.9)).toBe(false);
  });

  it('lets a player stand at a pillar, beside the line of the cue', () => {
    const pillar = obstacle('pillar', rectangle(-200, 900, 200, 2000));
    const prepared = prepareStrokes(room(rectangle(-5000, -5000, 5000, 5000), [pillar]), TABLE, POSE, STROKE);
    const standing = standingRoom(prepared);
    const ask = (half: number): boolean => canStand(prepared, standing, 0, 500, 0, 1, 450, 1100, half);
    // The pillar leaves room from 200 + 230 mm aside.
    expect(ask(429)).toBe(false);
    expect(ask(430)).toBe(true);
  });

  it('needs head height: things and ceilings that hang too low leave none', () => {
    const hall = rectangle(-5000, -5000, 5000, 5000);
    const ask = (from: number, ceiling: number): boolean => {
      const shelf = obstacle('shelf', rectangle(-3000, 700, 3000, 3000), from, 2500);
      const face = { name: 'ceiling', height: ceiling, slopeX: 0, slopeY: 0 };
      const prepared = prepareStrokes(room(hall, [shelf], [face]), TABLE, POSE, STROKE);
      return canStand(prepared, standingRoom(prepared), 0, 0, 0, 1, 650, 1448, 350);
    };
    expect(ask(1900, 2600)).toBe(true);
    expect(ask(1899, 2600)).toBe(false);
    expect(ask(1900, 1500)).toBe(true);
    expect(ask(1900, 1499)).toBe(false);
    // A roof that comes down to 1,500 mm at y = 1,000: a disc must keep 230 mm off that line.
    const roof = { name: 'roof', height: 2500, slopeX: 0, slopeY: -1 };
    const prepared = prepareStrokes(room(hall, [], [roof]), TABLE, POSE, STROKE);
    const standing = standingRoom(prepared);
    expect(canStand(prepared, standing, 2000, 0, 0, 1, 770, 1448, 350)).toBe(true);
    expect(canStand(prepared, standing, 2000, 0, 0, 1, 770.001, 1448, 350)).toBe(false);
  });

  it('follows the model: from 0.45 L to L, or to 460 mm behind the rail', () => {
    expect(standingFrom(1448)).toBeCloseTo(651.6, 9);
    expect(standingTo(1448, 500)).toBe(1448);
    expect(standingTo(1448, 1200)).toBe(1660);
  });

  it('answers the same whatever was asked before', () => {
    const next = random(9);
    const { scene, pose } = randomScene(next, 0.5);
    const prepared = prepareStrokes(scene, TABLE, pose, STROKE);
    const used = standingRoom(prepared);
    for (let k = 0; k < 300; k++) {
      const phi = next() * 2 * Math.PI;
      const x = between(next, -1, 1) * prepared.qx;
      const ask = (standing: typeof used): boolean =>
        canStand(prepared, standing, x, 0, Math.cos(phi), Math.sin(phi), 650, 1448, 350);
      const fresh = standingRoom(prepared);
      expect(ask(used)).toBe(ask(fresh));
    }
  });

  it('looks no farther than its reach', () => {
    const prepared = prepareStrokes(room(rectangle(-9000, -9000, 9000, 9000)), TABLE, POSE, STROKE);
    const ask = (reach: number): boolean =>
      canStand(prepared, standingRoom(prepared, reach), 0, 0, 0, 1, 3700, 3800, 10);
    expect(ask(2000)).toBe(false);
    expect(ask(3500)).toBe(true);
  });
});
