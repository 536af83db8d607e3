/**
 * Random right corners, widths from 0.75 to 1.25 of the critical one, against the closed form: `npx tsx tests/delivery/fuzz-boxes.ts [corners] [seed]
 * [resolution] [maxBoxes]`. Every way is followed by the slow check as well. Prints counts; a conflict ends it with exit code 1.
 */
import { spaceInRing } from '../../src/delivery/plan-space.js';
import { findPath } from '../../src/delivery/subdivide.js';
import { distanceAlong } from './plan-collision.js';
import { cornerWidth, rightCorridor } from './plan-rooms.js';

const [corners = 120, seed = 1, resolution = 2, maxBoxes = 60_000] = process.argv.slice(2).map(Number);

let state = seed;
function random(): number {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 2 ** 32;
}

const counts = { path: 0, no: 0, undecided: 0, conflict: 0 };
let boxes = 0;
let open = 0;
let time = 0;
for (let done = 0; done < corners; ) {
  const [a, b] = [700 + 800 * random(), 700 + 800 * random()];
  const l = Math.max(a, b) * (1.02 + 1.2 * random());
  const share = 0.75 + 0.5 * random();
  const widest = cornerWidth(l, a, b);
  if (widest < 60) continue;
  done++;
  const shape = { halfLength: l / 2, halfWidth: (widest * share) / 2, radius: 0 };
  const ring = rightCorridor(a, b, 6000);
  const out = 6000 - l / 2 - 120;
  const start = { x: out, y: a / 2, heading: 0 };
  const goal = { x: b / 2, y: out, heading: Math.PI / 2 };
  const began = process.cpuUsage();
  const found = findPath(spaceInRing(ring), shape, start, goal, { maxBoxes, resolution });
  const used = process.cpuUsage(began);
  time += (used.user + used.system) / 1000;
  boxes += found.boxes;
  counts[found.answer]++;
  // Above the corner's width no way is left unless the rectangle fits across a corridor, which l > max(a, b) rules out.
  const wrong =
    found.answer === 'path'
      ? share > 1 || distanceAlong(ring, shape, found.poses, 5) <= 0
      : found.answer === 'no' && share < 1;
  if (wrong) {
    counts.conflict++;
    console.log('conflict', { a, b, l, share, answer: found.answer });
  }
  if (found.answer === 'undecided') open = Math.max(open, Math.abs(share - 1));
}
console.log(
  counts,
  `${(boxes / corners).toFixed(0)} boxes and ${(time / corners).toFixed(1)} ms of processor time each;`,
  `farthest undecided ${(100 * open).toFixed(2)} % off the critical width`,
);
if (counts.conflict > 0) process.exitCode = 1;
