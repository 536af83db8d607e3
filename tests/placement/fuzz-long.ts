import { pathToFileURL } from 'node:url';
import { fuzzBounds } from './bound-fuzz.js';
import { crossCheck } from './cross-check.js';

/**
 * The fuzz of the placement at full size: `npx tsx tests/placement/fuzz-long.ts [seed] [minutes]`. Prints the numbers of checks
 * and of violations; ends with an error if there is any.
 */
export function run(seed: number, minutes: number): void {
  const end = performance.now() + minutes * 60_000;
  const bounds = { playRows: 0, frameRows: 0, boxBounds: 0, violations: 0, worst: 0, rooms: 0 };
  const cross = { rooms: 0, standing: 0, unfinished: 0, disagreements: 0 };
  for (let round = 0; performance.now() < end; round++) {
    const some = fuzzBounds(seed * 1000 + round, 60, 60, 12);
    bounds.rooms += 60;
    bounds.playRows += some.playRows;
    bounds.frameRows += some.frameRows;
    bounds.boxBounds += some.boxBounds;
    bounds.violations += some.violations;
    bounds.worst = Math.max(bounds.worst, some.worst);
    for (const example of some.examples) console.log(example);
    const others = crossCheck(seed * 1000 + round, 12, 5, 30_000);
    cross.rooms += others.rooms;
    cross.standing += others.standing;
    cross.unfinished += others.unfinished;
    cross.disagreements += others.disagreements.length;
    for (const disagreement of others.disagreements) console.log(disagreement);
  }
  console.log('bounds over boxes against plain distances', bounds);
  console.log('searches against the plain solver', cross);
  if (bounds.violations > 0 || cross.disagreements > 0) process.exitCode = 1;
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  run(Number(process.argv[2] ?? 1), Number(process.argv[3] ?? 5));
}
