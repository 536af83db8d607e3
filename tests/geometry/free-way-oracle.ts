import { WAY_TOUCH, type WayTarget } from '../../src/geometry/free-way-target.js';
import {
  boundingBox,
  circleRing,
  mirrored,
  rectangleRing,
  reversed,
  rotated,
  translated,
} from '../../src/geometry/ring.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import * as jts from '../helpers/jsts.js';
import { openRooms } from '../helpers/open-rooms.js';
import { randomFrom } from '../helpers/rings.js';

/** Walls, things and two targets. */
export interface WayCase {
  readonly outline: Ring;
  readonly blocked: readonly Ring[];
  readonly targets: readonly [WayTarget, WayTarget];
}

export const inside = (...regions: Ring[]): WayTarget => ({ sides: [], openings: [], regions });
export const beside = (ring: Ring): WayTarget => ({
  sides: ring.map((a, i) => [a, ring[(i + 1) % ring.length]]),
  openings: [],
  regions: [],
});

/** Upright rectangle by two corners. */
export function upright(minX: number, minY: number, maxX: number, maxY: number): Ring {
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
}

/** Chords to a quarter circle: for ways up to 1.2 m wide no arc is off by more than 1.3 mm, so no width by more than 2.6 mm. */
const QUADRANT = 12;

/**
 * Whether a disc can go from one target to the other by JTS: what is left of the room shrunk by half the width, less everything grown by
 * as much, falls into parts; one of them has to meet floor on which the disc has arrived at the first, and at the second.
 */
export function connectedByJts({ outline, blocked, targets }: WayCase, width: number): boolean {
  const h = width / 2;
  const grown = blocked.map((ring) => jts.buffer(jts.polygon(ring), h, QUADRANT));
  const shrunk = jts.buffer(jts.polygon(outline), -h, QUADRANT);
  const free = grown.length === 0 ? shrunk : jts.difference(shrunk, jts.union(grown));
  const [from, to] = targets.map((target) => arrivedFloor(target, h));
  for (let k = 0; k < free.getNumGeometries(); k++) {
    const part = free.getGeometryN(k);
    if (from.some((f) => jts.intersects(part, f)) && to.some((t) => jts.intersects(part, t))) return true;
  }
  return false;
}

function arrivedFloor({ sides, regions }: WayTarget, h: number): jts.JtsGeometry[] {
  const strips = sides.map(([[ax, ay], [bx, by]]): Ring => {
    const length = Math.hypot(bx - ax, by - ay);
    const nx = (by - ay) / length;
    const ny = -(bx - ax) / length;
    const at = (x: number, y: number, off: number): Point => [x + off * nx, y + off * ny];
    return [at(ax, ay, h + WAY_TOUCH), at(bx, by, h + WAY_TOUCH), at(bx, by, h), at(ax, ay, h)];
  });
  return [...regions, ...strips].map((ring) => jts.polygon(ring));
}

/** How far apart a path is looked at, mm. */
export const SAMPLE_STEP = 5;

/**
 * The least distance of a path's points, a few mm apart, to any edge, by the plainest distance; -1 where a point is outside the room or in a thing by
 * counting crossings.
 */
export function sampledClearance(outline: Ring, blocked: readonly Ring[], path: readonly Point[]): number {
  let square = Infinity;
  let out = false;
  const look = (x: number, y: number): void => {
    if (!isIn(outline, x, y) || blocked.some((ring) => isIn(ring, x, y))) out = true;
    for (const ring of [outline, ...blocked]) {
      for (let i = 0; i < ring.length; i++) {
        const [ax, ay] = ring[i];
        const [bx, by] = ring[(i + 1) % ring.length];
        const t = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
        const s = Math.min(1, Math.max(0, t));
        square = Math.min(square, (x - ax - s * (bx - ax)) ** 2 + (y - ay - s * (by - ay)) ** 2);
      }
    }
  };
  for (let k = 0; k < path.length; k++) {
    const [ax, ay] = path[Math.max(0, k - 1)];
    const [bx, by] = path[k];
    const parts = Math.ceil(Math.hypot(bx - ax, by - ay) / SAMPLE_STEP) + 1;
    for (let p = 0; p <= parts; p++) look(ax + ((bx - ax) * p) / parts, ay + ((by - ay) * p) / parts);
  }
  return out ? -1 : Math.sqrt(square);
}

export function isIn(ring: Ring, x: number, y: number): boolean {
  let crossings = 0;
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[(i + 1) % ring.length];
    if (ay > y !== by > y && ax + ((y - ay) / (by - ay)) * (bx - ax) > x) crossings++;
  }
  return crossings % 2 === 1;
}

/** A bare or a real room with up to ten things and two targets out of a hat, always the same for a seed. */
export function randomCase(seed: number): WayCase {
  const random = randomFrom(seed);
  const between = (low: number, high: number): number => low + random() * (high - low);
  const outline =
    random() < 0.4
      ? upright(0, 0, between(3000, 8000), between(2500, 6000))
      : roomy[Math.floor(random() * roomy.length)].pts;
  const box = boundingBox(outline);
  const spot = (): Point => [between(box.minX, box.maxX), between(box.minY, box.maxY)];
  const square = random() < 0.5;
  const thing = (): Ring => {
    const sort = random();
    if (sort < 0.15) return elbow(spot(), between(600, 2000));
    if (sort < 0.25) return circleRing(spot(), between(150, 1000));
    return rectangleRing(spot(), between(200, 2500), between(100, 1500), square ? 0 : between(0, Math.PI));
  };
  const zone = (): Ring => rectangleRing(spot(), between(100, 1200), between(100, 800), between(0, 3));
  const blocked = Array.from({ length: Math.floor(random() * 11) }, thing);
  const targets = [0, 1].map((k) => {
    const sort = random();
    if (sort < 0.4 && blocked.length > k) return beside(blocked[k]);
    return sort < 0.5 ? inside(zone(), zone()) : inside(zone());
  });
  return { outline, blocked, targets: [targets[0], targets[1]] };
}

/** The same case turned, moved and, where asked, mirrored. */
export function movedCase(
  { outline, blocked, targets }: WayCase,
  angle: number,
  [dx, dy]: Point,
  mirror: boolean,
): WayCase {
  const move = (ring: Ring): Ring => translated(rotated(mirror ? mirrored(ring) : ring, angle), dx, dy);
  const ring = (r: Ring): Ring => (mirror ? reversed(move(r)) : move(r));
  const target = ({ sides, openings, regions }: WayTarget): WayTarget => ({
    sides: sides.map((side) => {
      const [a, b] = move(side);
      return mirror ? [b, a] : [a, b];
    }),
    openings: openings.map((side) => {
      const [a, b] = move(side);
      return [a, b];
    }),
    regions: regions.map(ring),
  });
  return {
    outline: ring(outline),
    blocked: blocked.map(ring),
    targets: [target(targets[0]), target(targets[1])],
  };
}

const roomy = openRooms.filter(({ area_m2 }) => area_m2 > 12 && area_m2 < 70);

/** A thing with a nook. */
function elbow([x, y]: Point, size: number): Ring {
  const part = size * 0.3;
  return [
    [x, y],
    [x + size, y],
    [x + size, y + size],
    [x + size - part, y + size],
    [x + size - part, y + part],
    [x + part, y + part],
    [x + part, y + size],
    [x, y + size],
  ];
}
