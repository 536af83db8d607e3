import { pathToFileURL } from 'node:url';
import { Bench } from 'tinybench';
import { findPlacement } from '../src/placement/find-placement.js';
import { placeTable } from '../src/placement/place-table.js';
import type { PlacementProblem, PlacementResult } from '../src/placement/placement-problem.js';
import { benchRooms, randomNumbers, rectangle, turned } from '../tests/placement/rooms.js';
import { gridSearch } from './peers/grid-search.js';
import { offsetSearch } from './peers/offset-search.js';

/**
 * How long does it take to find the place with the most clearance, proved to 1 mm? Fourteen rooms of 4 to 200 corners, bare and
 * with low furniture. The peers find a place as good to 1 mm, by trial, and prove nothing: a refined grid of poses measured with
 * @flatten-js/core, and containment in offsets of the room made by JTS.
 */
const GAP = 1;
const OPTIONS = { gap: GAP, maxBoxes: 200_000, turns: 'any' } as const;
/** Rooms that the peers search as well, by their place in the list. */
const PEER_ROOMS = [0, 2, 11];

export async function run(): Promise<void> {
  const rooms = benchRooms();
  const furnished = rooms.map(({ name, problem }, i) => ({ name, problem: withLowThings(problem, 100 + i) }));
  const bare = await medians(rooms.map(({ name, problem }) => [name, () => findPlacement(problem, OPTIONS)]));
  const low = await medians(
    furnished.map(({ name, problem }) => [name, () => findPlacement(problem, OPTIONS)]),
  );
  const whole = await medians(
    rooms.map(({ name, problem }) => [name, () => placeTable(problem, { ...OPTIONS, enough: [] })]),
  );

  console.log(
    `Warm medians, ms; gap ${GAP} mm. Low: with four pieces of low furniture. Placed: squared and settled as well.`,
  );
  console.log(
    'room'.padEnd(38),
    ...['clearance', 'bound', 'boxes', 'bare', 'low', 'placed'].map((title) => title.padStart(9)),
  );
  for (const { name, problem } of rooms) {
    const { value, upperBound, boxes } = findPlacement(problem, OPTIONS);
    console.log(
      name.padEnd(38),
      value.toFixed(2).padStart(9),
      upperBound.toFixed(2).padStart(9),
      String(boxes).padStart(9),
      ...[bare, low, whole].map((times) => (times.get(name) ?? Number.NaN).toFixed(3).padStart(9)),
    );
  }

  console.log(
    '\nPeers: their second run, ms; how far below the proved bound they end, mm; and times our median.',
  );
  for (const index of PEER_ROOMS) {
    const { name, problem } = rooms[index];
    const ours = findPlacement(problem, OPTIONS);
    for (const [peer, search] of [
      ['grid, flatten-js distances', gridSearch],
      ['offsets of JTS', offsetSearch],
    ] as const) {
      let found = search(problem, ours.value - GAP);
      const start = performance.now();
      found = search(problem, ours.value - GAP);
      const time = performance.now() - start;
      console.log(
        `${name}: ${peer}`.padEnd(66),
        time.toFixed(0).padStart(7),
        (ours.upperBound - found.value).toFixed(2).padStart(7),
        `x ${Math.round(time / (bare.get(name) ?? Number.NaN)).toLocaleString('en')}`.padStart(9),
        found.value < ours.value - GAP ? ' (not reached)' : '',
        `(${found.poses} poses from ${found.spacing} mm)`,
      );
    }
  }
}

async function medians(tasks: [string, () => PlacementResult][]): Promise<Map<string, number>> {
  const bench = new Bench({ time: 250, iterations: 8, warmupTime: 80, warmupIterations: 4 });
  for (const [name, task] of tasks) bench.add(name, () => void task());
  await bench.run();
  return new Map(
    bench.tasks.map(({ name, result }) => {
      if (!('latency' in result)) throw new Error(`${name}: ${result.state}`);
      return [name, result.latency.p50];
    }),
  );
}

/** Four pieces of low furniture out of a hat. */
function withLowThings(problem: PlacementProblem, seed: number): PlacementProblem {
  const random = randomNumbers(seed);
  const xs = problem.outline.map(([x]) => x);
  const ys = problem.outline.map(([, y]) => y);
  const between = (v: readonly number[]): number =>
    Math.min(...v) + random() * (Math.max(...v) - Math.min(...v));
  const low = Array.from({ length: 4 }, () => {
    const [x, y] = [between(xs), between(ys)];
    const [halfX, halfY] = [200 + 600 * random(), 150 + 250 * random()];
    return turned(rectangle(x - halfX, y - halfY, x + halfX, y + halfY), 3 * random(), x, y);
  });
  return { ...problem, low };
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await run();
