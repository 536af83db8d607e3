import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Bench } from 'tinybench';
import { fitQuestion } from '../src/check-fit-input.js';
import { assessFit, type FitInput } from '../src/index.js';
import { findPlacement } from '../src/placement/find-placement.js';
import { openReach } from '../src/placement/open-reach.js';
import { cueingProblem } from '../src/placement/problem-for.js';
import { FURNISHED_ROOMS, SMALL_TABLE } from '../tests/helpers/external-furnished.js';
import { gridSearch } from './peers/grid-search.js';

/**
 * How long does a whole answer take? Domestic rooms with 16 to 20 corners and 6 things in them, three cues, search and proofs
 * included; a room of 200 corners; a given place; the map of shots; the first call of a fresh process. The peer does the first part
 * alone and by trial: a refined grid of poses, measured with the distances of @flatten-js/core, until it comes within 1 mm of the
 * place with the most clearance.
 */
const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const LONG_CUES = ['58 in', '52 in', '48 in'];
const SHORT_CUES = ['48 in', '42 in', '36 in'];
const FRESH_PROCESSES = 9;

const domestic = FURNISHED_ROOMS.flatMap(({ name, room }) => [
  { name: `${name}, 7 ft bar table`, input: { room, table: 'pool-7ft-bar', cues: LONG_CUES } },
  { name: `${name}, 6 ft table`, input: { room, table: SMALL_TABLE, cues: SHORT_CUES } },
]) satisfies { name: string; input: FitInput }[];

/** A rough circle: every corner 3.0 to 3.3 m from the middle. */
const roughCircle: FitInput = {
  room: {
    outline: Array.from({ length: 200 }, (_, i): [number, number] => {
      const r = 3000 + 300 * Math.abs(Math.sin(12.9898 * i));
      const angle = (2 * Math.PI * i) / 200;
      return [r * Math.cos(angle), r * Math.sin(angle)];
    }),
  },
  table: 'pool-9ft',
  cues: LONG_CUES,
};

export async function run(): Promise<void> {
  const [first] = domestic;
  const place = assessFit(first.input).pose ?? { x: 0, y: 0, turn: 0 };
  const cases: readonly { readonly name: string; readonly input: FitInput }[] = [
    ...domestic,
    { name: '200 corners, 9 ft table', input: roughCircle },
    { name: `${first.name}, place given`, input: { ...first.input, pose: place } },
    { name: `${first.name}, with the map of shots`, input: { ...first.input, detail: 'shots' } },
  ];
  const bench = new Bench({ time: 1500, iterations: 8, warmupTime: 500, warmupIterations: 4 });
  for (const { name, input } of cases) bench.add(name, () => void assessFit(input));
  await bench.run();

  console.log('warm, ms'.padEnd(46), 'median'.padStart(9), '75 %'.padStart(9), ' verdicts (proofs)');
  const medians = new Map<string, number>();
  for (const task of bench.tasks) {
    const { result } = task;
    if (!('latency' in result)) throw new Error(`${task.name}: ${result.state}`);
    medians.set(task.name, result.latency.p50);
    const input = cases.find(({ name }) => name === task.name)?.input;
    const cues = input === undefined ? [] : assessFit(input).cues;
    const verdicts = cues.map(({ verdict, proof }) => `${verdict} (${proof})`).join(', ');
    const figures = [result.latency.p50, result.latency.p75].map((ms) => ms.toFixed(1).padStart(9));
    console.log(task.name.padEnd(46), ...figures, ` ${verdicts}`);
  }
  const all = domestic.map(({ name }) => medians.get(name) ?? Number.NaN).sort((a, b) => a - b);
  const middle = (all[Math.floor((all.length - 1) / 2)] + all[Math.ceil((all.length - 1) / 2)]) / 2;
  console.log(
    `domestic rooms: median of medians ${middle.toFixed(1)} ms, greatest ${all[all.length - 1].toFixed(1)} ms`,
  );
  const own = medians.get(first.name) ?? Number.NaN;
  const peer = peerRun(first.input);
  console.log(
    `${first.name}: the peer takes ${peer.ms.toFixed(0)} ms for the place alone, ${(peer.ms / own).toFixed(0)} times the whole answer (${peer.words})`,
  );
  console.log(`first call in a fresh process, ${first.name}: ${freshProcesses(first.input)}`);
}

/** The peer's second run in ms, and what it found against the proved bound. */
function peerRun(input: FitInput): { readonly ms: number; readonly words: string } {
  const { scene, table, stroke, cues } = fitQuestion(input);
  const problem = cueingProblem(scene, table, stroke.margin, openReach(table, stroke, cues[0]));
  const ours = findPlacement(problem, { gap: 1, maxBoxes: 200_000, turns: 'any' });
  gridSearch(problem, ours.value - 1);
  const start = performance.now();
  const found = gridSearch(problem, ours.value - 1);
  const ms = performance.now() - start;
  const short = (ours.upperBound - found.value).toFixed(1);
  return { ms, words: `${found.poses} poses, ends ${short} mm below the proved bound` };
}

/** Median over fresh processes of the first call alone, the library loaded; from the build if there is one, else from the sources. */
function freshProcesses(input: FitInput): string {
  const built = join(ROOT, 'dist', 'index.js');
  const fromBuild = existsSync(built);
  const library = pathToFileURL(fromBuild ? built : join(ROOT, 'src', 'index.ts')).href;
  const program = `
    import { assessFit } from ${JSON.stringify(library)};
    const input = ${JSON.stringify(input)};
    const start = performance.now();
    assessFit(input);
    console.log(performance.now() - start);`;
  const loader = fromBuild ? [] : ['--import', 'tsx'];
  const times = Array.from({ length: FRESH_PROCESSES }, () =>
    Number(
      execFileSync(process.execPath, [...loader, '--input-type=module', '--eval', program], {
        cwd: ROOT,
        encoding: 'utf8',
      }),
    ),
  ).sort((a, b) => a - b);
  const middle = times[Math.floor(times.length / 2)];
  const from = fromBuild ? 'build' : 'sources';
  return `median ${middle.toFixed(0)} ms, ${times[0].toFixed(0)} to ${times[times.length - 1].toFixed(0)} ms (from the ${from})`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await run();
