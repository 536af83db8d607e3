import type { Point, Ring } from '../../src/geometry/types.js';
import type { TapeSurvey } from '../../src/room/tape-input.js';
import type { TapedRoom } from '../../src/room/tape-report.js';
import { randomNumbers } from '../placement/rooms.js';

/** Normal deviates by the polar method, from a seeded generator. */
export function normalNumbers(seed: number): () => number {
  const random = randomNumbers(seed);
  return () => {
    for (;;) {
      const [u, v] = [2 * random() - 1, 2 * random() - 1];
      const s = u * u + v * v;
      if (s > 0 && s < 1) return u * Math.sqrt((-2 * Math.log(s)) / s);
    }
  };
}

export function distanceBetween([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay);
}

/** Degrees of floor at each corner of a ring that runs clockwise. */
export function floorAngles(ring: Ring): number[] {
  const n = ring.length;
  return ring.map(([x, y], i) => {
    const [px, py] = ring[(i + n - 1) % n];
    const [nx, ny] = ring[(i + 1) % n];
    const turn = Math.atan2(ny - y, nx - x) - Math.atan2(py - y, px - x);
    return ((((turn * 180) / Math.PI) % 360) + 360) % 360;
  });
}

/** How a known room is measured: which diagonals, and with what errors. */
export interface Measuring {
  readonly diagonals: readonly (readonly [number, number])[];
  /** Standard deviation of every distance, mm, also told to the survey. */
  readonly deviation: number;
  /** Standard deviation of every corner, degrees, also told to the survey. */
  readonly cornerDeviation: number;
}

const NAMES = Array.from({ length: 200 }, (_, i) => `P${i}`);

/** One survey of a room (clockwise, as corners), each reading with a normal error of its own; no errors without `normal`. */
export function measure(ring: Ring, how: Measuring, normal: () => number = () => 0): TapeSurvey {
  const n = ring.length;
  const angles = floorAngles(ring);
  const read = (p: number, q: number): { length: number; deviation: number } => ({
    length: distanceBetween(ring[p], ring[q]) + how.deviation * normal(),
    deviation: how.deviation,
  });
  return {
    walls: ring.map((_, i) => ({
      from: NAMES[i],
      length: read(i, (i + 1) % n),
      corner: angles[(i + 1) % n] + how.cornerDeviation * normal(),
      cornerDeviation: how.cornerDeviation,
    })),
    diagonals: how.diagonals.map(([p, q]) => ({ from: NAMES[p], to: NAMES[q], length: read(p, q) })),
  };
}

/** The ring moved and turned onto `onto` with the least sum of squares of distances between corners (Procrustes in the plane). */
export function laidOver(ring: Ring, onto: Ring): Ring {
  const middle = (points: Ring): Point => [
    points.reduce((sum, [x]) => sum + x, 0) / points.length,
    points.reduce((sum, [, y]) => sum + y, 0) / points.length,
  ];
  const [ax, ay] = middle(ring);
  const [bx, by] = middle(onto);
  let [dot, cross] = [0, 0];
  ring.forEach(([x, y], i) => {
    const [u, v] = [x - ax, y - ay];
    const [s, t] = [onto[i][0] - bx, onto[i][1] - by];
    dot += u * s + v * t;
    cross += u * t - v * s;
  });
  const size = Math.hypot(dot, cross);
  const [cos, sin] = [dot / size, cross / size];
  return ring.map(
    ([x, y]): Point => [bx + cos * (x - ax) - sin * (y - ay), by + sin * (x - ax) + cos * (y - ay)],
  );
}

/** A star-shaped room of n corners, clockwise, with `count` diagonals to corners a third of the way round. */
export function starRoom(
  n: number,
  count: number,
  seed: number,
): { ring: Ring; diagonals: [number, number][] } {
  const random = randomNumbers(seed);
  const ring = Array.from({ length: n }, (_, i): Point => {
    const angle = (-2 * Math.PI * (i + 0.4 * (random() - 0.5))) / n;
    const radius = 5000 + 1500 * random();
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
  const third = Math.round(n / 3);
  const diagonals = Array.from({ length: count }, (_, k): [number, number] => [
    k % n,
    (k + third + Math.floor(k / n)) % n,
  ]);
  return { ring, diagonals };
}

/** The ring moved so that its first corner is the origin and its first wall runs along +y: a clockwise survey's datum. */
export function inDatum(ring: Ring): Ring {
  const [[ax, ay], [bx, by]] = ring;
  const length = Math.hypot(bx - ax, by - ay);
  const [cos, sin] = [(by - ay) / length, (bx - ax) / length];
  return ring.map(([x, y]): Point => [cos * (x - ax) - sin * (y - ay), sin * (x - ax) + cos * (y - ay)]);
}

/** Whether the true room, laid over the adjusted one, has every wall within its band: both ends, square to the wall. */
export function wallsInBands(truth: Ring, room: TapedRoom): boolean {
  const found = room.corners.map(({ x, y }): Point => [x, y]);
  const laid = laidOver(truth, found);
  return room.walls.every(({ band }, i) => {
    const next = (i + 1) % found.length;
    const [dx, dy] = [found[next][0] - found[i][0], found[next][1] - found[i][1]];
    const length = Math.hypot(dx, dy);
    return [i, next].every((c) => {
      const [ex, ey] = [laid[c][0] - found[c][0], laid[c][1] - found[c][1]];
      return Math.abs(dx * ey - dy * ex) / length <= band;
    });
  });
}
