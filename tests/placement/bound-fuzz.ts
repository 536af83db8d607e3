import type { Placement, Point, Ring, Size } from '../../src/geometry/types.js';
import { boundBox, createBoxBounds } from '../../src/placement/box-bounds.js';
import { createBoxLp, solveBoxLp } from '../../src/placement/box-lp.js';
import type { PlacementProblem } from '../../src/placement/placement-problem.js';
import { setPoseBox } from '../../src/placement/pose-box.js';
import { searchScene } from '../../src/placement/search-scene.js';
import { plainClearance, plainFrameDistance } from './plain-distance.js';
import {
  benchRooms,
  framed,
  irregular,
  PLAY,
  problem,
  randomNumbers,
  rectangle,
  regular,
  shifted,
  turned,
} from './rooms.js';

/** How many bounds were compared with poses, and how many of them were too low. */
export interface FuzzCount {
  /** Rows of Q against clearances, */
  playRows: number;
  /** rows of the frame against its distances, */
  frameRows: number;
  /** and whole bounds of boxes (scalar and linear program). */
  boxBounds: number;
  violations: number;
  /** Largest violation, mm. */
  worst: number;
  /** The first few in words. */
  readonly examples: string[];
}

/** The plain distance and ours round differently, mm. */
const ROUNDING = 1e-6;
/** More than any distance in these rooms, mm. */
const MOVED_IN = 1e5;

/**
 * Throws random boxes at random rooms: every row must over-estimate, at every pose of the box where the table stands free, the
 * plain distance it is about, and so must the box's bounds.
 */
export function fuzzBounds(
  seed: number,
  rooms: number,
  boxesPerRoom: number,
  posesPerBox: number,
): FuzzCount {
  const random = randomNumbers(seed);
  const count: FuzzCount = {
    playRows: 0,
    frameRows: 0,
    boxBounds: 0,
    violations: 0,
    worst: 0,
    examples: [],
  };
  for (let k = 0; k < rooms; k++) fuzzRoom(fuzzProblem(random, k), random, boxesPerRoom, posesPerBox, count);
  return count;
}

/** A room out of a hat. Footprints overlap one another, stick out of the room, part it, lie flush with walls. */
export function fuzzProblem(random: () => number, k: number): PlacementProblem {
  const plays: Size[] = [
    PLAY.sevenFoot,
    PLAY.nineFoot,
    { length: 1500, width: 300 },
    { length: 900, width: 900 },
    { length: 700, width: 1400 },
  ];
  const play = plays[Math.floor(random() * plays.length)];
  const frames: Size[] = [
    framed(play),
    framed(play, 20),
    { length: play.length + 600, width: play.width + 40 },
    { length: play.length + 40, width: play.width + 1500 },
    play,
  ];
  const frame = frames[Math.floor(random() * frames.length)];
  const bench = benchRooms();
  if (k % 4 === 0) {
    const room = bench[Math.floor(random() * bench.length)].problem;
    return { ...room, low: footprints(random, 2), frame: framed(room.play, 20 + 200 * random()) };
  }
  const outline =
    k % 4 === 1
      ? rectangle(
          -2000 - 2000 * random(),
          -2000 - 1500 * random(),
          2000 + 2000 * random(),
          2000 + 1500 * random(),
        )
      : irregular(5 + Math.floor(20 * random()), 1200 + 2100 * random(), 4500, Math.floor(1e6 * random()));
  return problem(outline, play, footprints(random, 4), footprints(random, 3), frame);
}

function footprints(random: () => number, most: number): Ring[] {
  return Array.from({ length: Math.floor((most + 1) * random()) }, () => {
    const x = (random() - 0.5) * 8000;
    const y = (random() - 0.5) * 7000;
    const kind = random();
    if (kind < 0.35) {
      const halfX = 60 + 700 * random();
      const halfY = 60 + 400 * random();
      const ring = rectangle(x - halfX, y - halfY, x + halfX, y + halfY);
      return random() < 0.5 ? ring : turned(ring, 3 * random(), x, y);
    }
    if (kind < 0.55) return regular(3 + Math.floor(9 * random()), 50 + 400 * random(), x, y);
    // A partition right across, thin or with a gap beside it.
    if (kind < 0.7)
      return turned(rectangle(x - 9000 * random(), y, x + 9000 * random(), y + 100), 3 * random(), x, y);
    // Notched, so not convex.
    if (kind < 0.85) {
      const notched: Point[] = [
        [0, 0],
        [900, 0],
        [900, 300],
        [400, 300],
        [400, 800],
        [0, 800],
      ];
      return turned(shifted(notched, x, y), 3 * random(), x, y);
    }
    // Flush with lines that other footprints and walls may share.
    const gridX = 500 * Math.round(x / 500);
    const gridY = 500 * Math.round(y / 500);
    return rectangle(gridX, gridY, gridX + 500, gridY + 1000);
  });
}

function fuzzRoom(
  room: PlacementProblem,
  random: () => number,
  boxes: number,
  poses: number,
  count: FuzzCount,
): void {
  const scene = searchScene(room);
  const bounds = createBoxBounds(scene);
  const lp = createBoxLp();
  const list = Uint32Array.from({ length: scene.fullCount }, (_, item) => item);
  const { box, rows } = bounds;
  for (let b = 0; b < boxes; b++) {
    const scale = 10 ** (-3 * random());
    let x = (2 * random() - 1) * scene.halfX;
    let y = (2 * random() - 1) * scene.halfY;
    let angle = random() * Math.PI;
    if (random() < 0.3) angle = (Math.round(angle / (Math.PI / 4)) * Math.PI) / 4;
    // Flat boxes as well: wide in one direction only.
    const flat = (): number => (random() < 0.3 ? 10 ** (-3 * random()) : 1);
    const dx = flat() * scale * 1500 * random();
    const dy = flat() * scale * 1500 * random();
    const turn = random() < 0.1 ? 0 : Math.min(Math.PI / 2, flat() * 2 * scale * random());
    // Half of the boxes are put about a pose that stands free, so that small ones are not all in walls.
    if (random() < 0.5) {
      for (let attempt = 0; attempt < 40; attempt++) {
        const pose = callersPose(scene, x, y, angle);
        if (plainClearance(room, pose) > 0 && plainFrameDistance(room, pose) > 0) {
          x += (2 * random() - 1) * dx;
          y += (2 * random() - 1) * dy;
          angle += (2 * random() - 1) * turn;
          break;
        }
        x = (2 * random() - 1) * scene.halfX;
        y = (2 * random() - 1) * scene.halfY;
        angle = random() * Math.PI;
      }
    }
    setPoseBox(box, x, y, angle, dx, dy, turn);
    const bound = boundBox(bounds, list, list.length, 1e5, Number.NEGATIVE_INFINITY, 0);
    let program = bound;
    if (bound > Number.NEGATIVE_INFINITY) {
      solveBoxLp(lp, rows, Number.NEGATIVE_INFINITY);
      program = lp.bound + ROUNDING;
      // Again for the rows one by one. Rows of the frame that cannot bind are left out, so all are moved in by more than a room.
      boundBox(bounds, list, list.length, 1e5, Number.NaN, MOVED_IN);
    }
    for (let p = 0; p < poses; p++) {
      let s0 = 2 * random() - 1;
      let s1 = 2 * random() - 1;
      let s2 = 2 * random() - 1;
      if (random() < 0.3) {
        s0 = Math.sign(s0);
        s1 = Math.sign(s1);
        s2 = Math.sign(s2);
      }
      const pose = callersPose(scene, x + s0 * dx, y + s1 * dy, angle + s2 * turn);
      const clearance = plainClearance(room, pose);
      if (!(clearance > 0)) continue;
      const frame = plainFrameDistance(room, pose);
      if (!(frame > 0)) continue;
      const check = (have: number, want: number, what: string): void => {
        if (have >= want - ROUNDING) return;
        count.violations++;
        count.worst = Math.max(count.worst, want - have);
        if (count.examples.length < 5) {
          count.examples.push(
            `${what}: ${have} < ${want} at ${JSON.stringify(pose)} in the box ${[x, y, angle, dx, dy, turn]} of ${JSON.stringify(room)}`,
          );
        }
      };
      count.boxBounds += 2;
      check(bound, clearance, 'bound of the box');
      check(program, clearance, 'linear program');
      if (bound === Number.NEGATIVE_INFINITY) continue;
      for (let i = 0; i < rows.count; i++) {
        const value = rows.a[i] + rows.b0[i] * s0 + rows.b1[i] * s1 + rows.b2[i] * s2;
        if (rows.tau[i] === 1) {
          count.playRows++;
          check(value, clearance, 'row of Q');
        } else {
          count.frameRows++;
          check(value + MOVED_IN, frame, 'row of the frame');
        }
      }
    }
  }
}

function callersPose(
  scene: { centerX: number; centerY: number; swapped: boolean },
  x: number,
  y: number,
  angle: number,
): Placement {
  return { x: x + scene.centerX, y: y + scene.centerY, angle: angle + (scene.swapped ? Math.PI / 2 : 0) };
}
