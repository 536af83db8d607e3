import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { orientation, pointInRing } from '../../src/geometry/predicates.js';
import { centroid, signedArea } from '../../src/geometry/ring.js';
import type { Ring } from '../../src/geometry/types.js';
import type { Scene } from '../../src/room/scene.js';
import * as jts from '../helpers/jsts.js';
import { openRoomInput, openRooms } from '../helpers/open-rooms.js';
import { read, sceneOf } from './read.js';

/** Square metres of floor, columns taken off. */
function area(scene: Scene): number {
  const columns = scene.obstacles.filter((o) => o.name.startsWith('column'));
  return (signedArea(scene.outline) - columns.reduce((sum, o) => sum + signedArea(o.ring), 0)) / 1e6;
}

describe('the 551 open rooms', () => {
  it('are read with their published areas', () => {
    expect(openRooms).toHaveLength(551);
    for (const room of openRooms) {
      const scene = sceneOf(openRoomInput(room));
      // Published to 0.001 m2, from corners that were rounded to 0.1 mm afterwards: the area moves by perimeter x 0.05 mm.
      const rounding = 0.0005 + (jts.perimeter(jts.polygon(room.pts)) * 0.05) / 1e6;
      expect(Math.abs(area(scene) - room.area_m2)).toBeLessThanOrEqual(rounding);
    }
  });

  it('keep the contract of a scene', () => {
    for (const room of openRooms) {
      const scene = sceneOf(openRoomInput(room));
      const rings: readonly Ring[] = [scene.outline, ...scene.obstacles.map((o) => o.ring)];
      for (const ring of rings) {
        expect(jts.isValid(jts.polygon(ring))).toBe(true);
        expect(signedArea(ring)).toBeGreaterThan(0);
        const n = ring.length;
        for (let i = 0; i < n; i++)
          expect(orientation(ring[i], ring[(i + 1) % n], ring[(i + 2) % n])).not.toBe(0);
      }
      expect(new Set(scene.wallNames).size).toBe(scene.outline.length);
      for (const [i, name] of scene.wallNames.entries()) {
        const number = Number(name.slice('wall '.length));
        expect(room.pts[number - 1]).toEqual(scene.outline[i]);
      }
    }
  });

  it('have their 924 doors on a wall, those of a leaf’s width with a swing into the room', () => {
    let doors = 0;
    let leaves = 0;
    for (const room of openRooms) {
      for (const door of room.doors ?? []) {
        doors++;
        const { scene, problems } = read({
          outline: room.pts,
          doors: [{ hinge: door.a, latch: door.b, opens: 'in' }],
        });
        const width = Math.hypot(door.b[0] - door.a[0], door.b[1] - door.a[1]);
        if (width > 3000.005) {
          expect(problems.map((p) => p.code)).toEqual(['door-width']);
          continue;
        }
        expect(problems).toEqual([]);
        leaves++;
        // From the hinge, the middle of the swing lies on the room's side of the wall.
        const [x, y] = centroid(scene?.doors[0].swing ?? []);
        const step = 20 / Math.hypot(x - door.a[0], y - door.a[1]);
        const near = [door.a[0] + step * (x - door.a[0]), door.a[1] + step * (y - door.a[1])] as const;
        expect(pointInRing(room.pts, ...near)).toBe(1);
      }
    }
    expect(doors).toBe(924);
    expect(leaves).toBe(921);
  });
});

interface AwkwardRing {
  readonly why: string;
  readonly src: string;
  readonly geos: string;
  readonly geos_area_m2: number;
  readonly pts: Ring;
}

function awkwardRings(): readonly AwkwardRing[] {
  const url = new URL('../fixtures/rooms/bad-open.json', import.meta.url);
  const file: { cases: AwkwardRing[] } = JSON.parse(readFileSync(url, 'utf8'));
  return file.cases;
}

describe('the 49 awkward outlines, as GEOS judges them', () => {
  const cases = awkwardRings();

  it('are all there', () => {
    expect(cases).toHaveLength(49);
    expect(cases.filter((c) => c.geos !== 'Valid Geometry')).toHaveLength(9);
  });

  it.each(cases.map((c) => [`${c.why}: ${c.src}`, c] as const))('%s', (_, { geos, pts, geos_area_m2 }) => {
    const { scene, problems } = read({ outline: pts });
    if (geos === 'Valid Geometry') {
      expect(problems).toEqual([]);
      expect((scene === null ? 0 : signedArea(scene.outline)) / 1e6).toBeCloseTo(geos_area_m2, 4);
    } else {
      expect(scene).toBeNull();
      for (const { code } of problems) expect(code).toMatch(/^outline-(crosses|touches)-itself$/);
      expect(problems.length).toBeGreaterThan(0);
      if (geos === 'Self-intersection')
        expect(problems.map((p) => p.code)).toContain('outline-crosses-itself');
    }
  });
});
