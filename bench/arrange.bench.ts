import { pathToFileURL } from 'node:url';
import { arrange } from '../src/arrangement/arrange.js';
import type { ArrangeQuestion, Layout } from '../src/arrangement/arrange-question.js';
import { assessFit } from '../src/assess-fit.js';
import type { FitInput } from '../src/fit-input.js';
import type { Placement } from '../src/geometry/types.js';
import { type Annealed, anneal } from './annealing-peer.js';
import { areaOf, CUES, FORTY, PIECES, questionOf, realRooms, TABLE } from './arrange-rooms.js';

/**
 * How long does it take to place a table and six pieces in a room of 40 m2? And how good are the layouts? The peer is simulated annealing
 * (annealing-peer.ts) with the same judge, in ten real rooms, for the time that the search takes there, and for half a second where that is longer.
 * The value is that of `ArrangementValue`: 1000 for all pieces placed and reached, 100 for all shots open, 5 for no sharing.
 */
const TIMED = 9;
/** Runs of the search in each real room; the peer is given their median time. */
const REPEATS = 3;
const SEEDS = [1, 2, 3];
/** Starts of the peer in its time: of one, two and three, two did best. */
const STARTS = 2;
/** What a room of 40 m2 may take, ms. */
const TARGET = 500;
/** Values that differ by less are equal. */
const SAME = 1e-6;

export async function run(): Promise<void> {
  console.log(
    `Table and ${PIECES.length} pieces; ${TIMED} runs after one, ms: median, with the best and the worst; ${TARGET} is the aim.`,
  );
  for (const { name, room } of FORTY) {
    const asked = questionOf(room);
    const bare: FitInput = { room, table: TABLE, cues: CUES };
    const input: FitInput = { ...bare, furnishings: PIECES };
    const { value, layouts } = arrange(asked);
    const tasks: readonly (readonly [string, () => unknown])[] = [
      ['arrange', () => arrange(asked)],
      ['assessFit with pieces', () => assessFit(input)],
      ['assessFit without', () => assessFit(bare)],
    ];
    for (const [task, work] of tasks) {
      const times = timesOf(TIMED, work);
      console.log(
        `${name}: ${task}`.padEnd(40),
        medianOf(times).toFixed(0).padStart(6),
        `(${times[0].toFixed(0)} to ${times[times.length - 1].toFixed(0)})`,
      );
    }
    console.log(`${name}: value ${value.value.toFixed(2)} of ${value.upperBound}, ${layouts} layouts`);
  }

  console.log(
    `\nAnnealing: median of ${SEEDS.length} seeds, best of them, layouts weighed; at the time of the search, and at ${TARGET} ms where that is longer.`,
  );
  console.log(
    'room'.padEnd(8),
    ...['m2', 'ms', 'layouts', 'search'].map((title) => title.padStart(8)),
    'annealing: median'.padStart(18),
    'best'.padStart(8),
  );
  const counts = { better: 0, equal: 0, worse: 0, beatsBest: 0 };
  for (const { name, room } of realRooms()) {
    const asked = questionOf(room);
    const ours = arrange(asked);
    const time = medianOf(timesOf(REPEATS, () => arrange(asked)));
    const same = peersOf(asked, time);
    const longer = time < TARGET ? peersOf(asked, TARGET) : null;
    const gain = ours.value.value - medianOf(same.map(({ value }) => value));
    counts[gain > SAME ? 'better' : gain >= -SAME ? 'equal' : 'worse']++;
    if (ours.value.value > same[SEEDS.length - 1].value + SAME) counts.beatsBest++;
    console.log(
      name.padEnd(8),
      ...[areaOf(asked).toFixed(1), time.toFixed(0), ours.layouts, ours.value.value.toFixed(2)].map(
        (figure) => String(figure).padStart(8),
      ),
      inWords(same),
      ...(longer === null ? [] : [`  at ${TARGET} ms: ${inWords(longer)}`]),
    );
    const best = (longer ?? same)[SEEDS.length - 1];
    if (best.value > ours.value.value + SAME) {
      console.log(`  search:    ${layoutInWords(asked, ours)}`);
      console.log(`  annealing: ${layoutInWords(asked, best)}`);
    }
  }
  const { better, equal, worse, beatsBest } = counts;
  console.log(
    `Against the median of the seeds at equal time the search is better in ${better} rooms, equal in ${equal}, worse in ${worse}; better than the best of them in ${beatsBest}.`,
  );
}

/** What each seed finds, the worst first. */
function peersOf(asked: ArrangeQuestion, time: number): readonly Annealed[] {
  return SEEDS.map((seed) => anneal(asked, time, seed, STARTS)).sort((a, b) => a.value - b.value);
}

function inWords(peers: readonly Annealed[]): string {
  const median = medianOf(peers.map(({ value }) => value)).toFixed(2);
  const best = peers[peers.length - 1].value.toFixed(2);
  return `${median.padStart(17)} ${best.padStart(8)} (${peers.map(({ layouts }) => layouts).join(', ')})`;
}

/** Where everything stands, in whole millimetres and degrees. */
function layoutInWords({ arrangement }: ArrangeQuestion, { tablePose, poses }: Layout): string {
  const at = (pose: Placement | null): string =>
    pose === null
      ? 'out'
      : `${Math.round(pose.x)} ${Math.round(pose.y)} ${Math.round((pose.angle * 180) / Math.PI)}`;
  const pieces = poses.map((pose, i) => `${arrangement.pieces[i].name} ${at(pose)}`);
  return [`table ${at(tablePose)}`, ...pieces].join(', ');
}

/** Times of some runs, ms, the shortest first. */
function timesOf(count: number, work: () => unknown): readonly number[] {
  return Array.from({ length: count }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
}

/** Of an odd number of figures in order. */
function medianOf(sorted: readonly number[]): number {
  return sorted[sorted.length >> 1];
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await run();
