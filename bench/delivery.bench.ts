import { pathToFileURL } from 'node:url';
import { Bench } from 'tinybench';
import { assessDelivery } from '../src/delivery/assess-delivery.js';
import { carriedWith } from '../src/delivery/carried.js';
import { crossGate } from '../src/delivery/cross-gate.js';
import type { DeliveryInput } from '../src/delivery/delivery-input.js';
import type { Gate } from '../src/delivery/passages.js';
import { gateInPlan } from '../src/delivery/plan-space-gate.js';
import { readDelivery } from '../src/delivery/read-delivery.js';
import { findPath } from '../src/delivery/subdivide.js';
import { ProblemList } from '../src/length/read-input.js';
import { PLAIN_WAY, SEARCHED_WAY } from '../tests/delivery/ways.js';
import { roadmapPlan } from './delivery-peer.js';

/**
 * How long does it take to answer a way in of six passages for five pieces, every motion found replayed? Once where formulas decide, once where two
 * passages are searched by boxes of poses. The peer is a sampled roadmap that is asked for the same motions, with as many samples as it
 * needs to find them; it can never say that there is none.
 */
const FIRST_SAMPLES = 125;
const MOST_SAMPLES = 4000;

export async function run(): Promise<void> {
  const ways: readonly (readonly [string, DeliveryInput])[] = [
    ['six passages, five pieces, formulas', PLAIN_WAY],
    ['six passages, five pieces, two searched', SEARCHED_WAY],
  ];
  const bench = new Bench({ time: 1000, iterations: 8, warmupTime: 300, warmupIterations: 3 });
  for (const [name, way] of ways) bench.add(name, () => void assessDelivery(way));
  await bench.run();
  console.log('Warm medians, ms; every answer with its motions replayed.');
  for (const { name, result } of bench.tasks) {
    const median = 'latency' in result ? result.latency.p50 : Number.NaN;
    console.log(name.padEnd(42), median.toFixed(2).padStart(9));
  }
  for (const [name, way] of ways) {
    const { pieces } = assessDelivery(way);
    const counts = new Map<string, number>();
    for (const { outcome, method } of pieces.flatMap((p) => p.passages)) {
      const key = `${outcome} by ${method}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    console.log(`${name}: ${[...counts].map(([key, count]) => `${count} ${key}`).join(', ')}`);
  }

  console.log(
    '\nA door in the side of a corridor: the certified search and the peer, at equal answers (a motion found).',
  );
  console.log(
    'corridor, door, crate'.padEnd(34),
    'ms'.padStart(8),
    'boxes'.padStart(8),
    'peer ms'.padStart(10),
    'samples'.padStart(8),
    'times'.padStart(8),
  );
  for (const [corridor, door, length, width] of SIDE_DOORS) {
    const gate = sideDoor(corridor, door);
    const shape = { halfLength: length / 2, halfWidth: width / 2, radius: 0 };
    const { space, near, far } = gateInPlan(gate, shape);
    const options = { maxBoxes: 60_000, resolution: 2 };
    const ours = timed(() => findPath(space, shape, near, far, options), 9);
    const label = `${corridor}, ${door}, ${length} x ${width}: ${ours.value.answer}`;
    const start = ours.value.poses[0];
    const goal = ours.value.poses.at(-1);
    if (start === undefined || goal === undefined) {
      console.log(label.padEnd(34), ours.ms.toFixed(1).padStart(8), String(ours.value.boxes).padStart(8));
      continue;
    }
    let samples = FIRST_SAMPLES;
    let spent = 0;
    let found = false;
    while (!found && samples <= MOST_SAMPLES) {
      const peer = timed(() => roadmapPlan(space, shape, start, goal, samples), 1);
      // Only the run that finds it counts: nobody could know beforehand how many samples it takes.
      spent = peer.ms;
      found = peer.value.found;
      if (!found) samples *= 2;
    }
    console.log(
      label.padEnd(34),
      ours.ms.toFixed(1).padStart(8),
      String(ours.value.boxes).padStart(8),
      spent.toFixed(0).padStart(10),
      (found ? String(samples) : `>${MOST_SAMPLES}`).padStart(8),
      `x ${(spent / ours.ms).toFixed(0)}`.padStart(8),
    );
  }

  const [piece] = checked(SEARCHED_WAY).pieces;
  if (piece === undefined) return;
  const gate = sideDoor(1200, 820);
  const cross = timed(
    () =>
      crossGate(gate, carriedWith({ ...piece, length: 2300, width: 250, thickness: 200 }, 25), {
        maxBoxes: 60_000,
      }),
    5,
  );
  console.log(
    `\nThe bracket of the spare of one such door: ${cross.ms.toFixed(1)} ms (${cross.value.atLeast.toFixed(1)} to ${cross.value.atMost.toFixed(1)} mm)`,
  );
}

/** Corridor, door, length and width of what is carried, mm. */
const SIDE_DOORS: readonly (readonly [number, number, number, number])[] = [
  [1000, 820, 1900, 300],
  [1200, 820, 2600, 250],
  [1100, 800, 2000, 350],
  [1300, 900, 2400, 300],
  [900, 760, 1600, 250],
];

function sideDoor(corridor: number, door: number): Gate {
  const endless = Number.POSITIVE_INFINITY;
  const open = { depth: endless, left: endless, right: endless, height: endless };
  return {
    kind: 'doorway',
    name: 'side door',
    tolerance: 10,
    width: door,
    height: 2000,
    depth: 120,
    sill: 0,
    leaf: 0,
    before: { ...open, depth: corridor },
    after: open,
  };
}

function checked(way: DeliveryInput) {
  const problems = new ProblemList();
  const read = readDelivery(way, 'delivery', null, problems, []);
  if (read === null) throw new Error(problems.problems.map((p) => p.message).join('\n'));
  return read;
}

/** Median time of so many runs, ms, after one to warm up if there are several. */
function timed<T>(task: () => T, runs: number): { readonly value: T; readonly ms: number } {
  let value = task();
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    value = task();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return { value, ms: times[times.length >> 1] ?? Number.NaN };
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await run();
