/**
 * Long fuzz of stairs, landings and winders: every motion is replayed by the certified checker, bounds never cross, and readings that
 * shrink never help. Run by hand: npx tsx tests/delivery/fuzz-stairs.ts [stair|landing|winder] [count] [seed]
 */
import type { Carried } from '../../src/delivery/carried.js';
import { crossPassage } from '../../src/delivery/cross-passage.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Passage } from '../../src/delivery/passages.js';
import { replayPassage } from '../../src/delivery/replay.js';
import { randomBox, randomSource, randomStairPassage } from './stair-samples.js';

const kind = process.argv[2] ?? 'stair';
const count = Number(process.argv[3] ?? 300);
const random = randomSource(Number(process.argv[4] ?? 1));
const tally = { passes: 0, blocked: 0, undecided: 0, certain: 0, subdivided: 0 };
let worstReplay = Number.POSITIVE_INFINITY;
let time = 0;
const times: number[] = [];
const problems: string[] = [];

for (let i = 0; i < count; i++) {
  const passage: Passage = randomStairPassage(kind, random);
  const box: Carried = randomBox(random);
  const note = (what: string) => problems.push(`${i}: ${what} ${JSON.stringify({ passage, box })}`);
  const before = performance.now();
  const crossing = crossPassage(passage, box, { maxBoxes: 60_000 });
  const took = performance.now() - before;
  time += took;
  times.push(took);
  if (crossing.method === 'subdivision') tally.subdivided++;
  if (crossing.atLeast >= 0) tally.passes++;
  else if (crossing.atMost < 0) tally.blocked++;
  else tally.undecided++;
  if (crossing.atLeast > passage.tolerance || crossing.atMost < -passage.tolerance) tally.certain++;
  if (crossing.atLeast > crossing.atMost + 1e-6)
    note(`atLeast ${crossing.atLeast} > atMost ${crossing.atMost}`);
  if (crossing.atMost > crossing.atMostAnyMotion + 1e-6) note('atMost > atMostAnyMotion');
  if (crossing.atLeast >= 0) {
    if (crossing.motion === null) note('no motion');
    else {
      const replay = replayPassage(passage, crossing.motion);
      worstReplay = Math.min(worstReplay, replay.clearance);
      if (!(replay.clearance > 0) && crossing.atLeast > 0.05)
        note(`replay ${replay.clearance} at ${replay.nearest}, spare ${crossing.atLeast}`);
      if (!replay.startsNear || !replay.endsFar) note(`starts ${replay.startsNear} ends ${replay.endsFar}`);
    }
  }
  if (i % 4 === 0 && Number.isFinite(crossing.atLeast)) {
    const narrower = crossPassage(narrowPassage(passage, 30), box, { maxBoxes: 60_000 });
    // A spare of s leaves s - 30 once 30 is gone; neither bound may contradict the other passage's.
    if (narrower.atLeast > crossing.atMost - 30 + 0.01)
      note(`narrower ${narrower.atLeast} against ${crossing.atMost}`);
    if (crossing.atLeast - 30 > narrower.atMost + 0.01)
      note(`narrower at most ${narrower.atMost}, was ${crossing.atLeast}`);
  }
}
times.sort((a, b) => a - b);
console.log(kind, count, tally, {
  worstReplay,
  meanMs: time / count,
  median: times[count >> 1],
  p95: times[Math.floor(count * 0.95)],
  max: times[count - 1],
});
for (const line of problems.slice(0, 12)) console.log(line);
console.log(`${problems.length} problems`);
