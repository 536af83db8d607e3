import { pathToFileURL } from 'node:url';
import { Bench } from 'tinybench';
import { ProblemList } from '../src/length/read-input.js';
import { roomFromTape } from '../src/room/room-from-tape.js';
import { adjustNetwork } from '../src/room/tape-adjust.js';
import { buildNetwork } from '../src/room/tape-network.js';
import { readSurveyInput } from '../src/room/tape-survey.js';
import { adjustByMatrices, type PeerReading } from '../tests/room/tape-peer.js';
import { measure, normalNumbers, starRoom } from '../tests/room/tape-simulate.js';

/**
 * How long does it take to make a room of tape readings? 60 corners by 150 distances (60 walls, 90 diagonals) and 60 corner angles
 * with errors; wanted: 10 ms or less. The peer makes the same adjustment (corners and covariance) with dense matrices of ml-matrix.
 * Whole: reading the survey, the adjustment, bands, suspect, and what to read next.
 */
const SIZES = [
  [4, 2],
  [12, 18],
  [60, 90],
] as const;

export async function run(): Promise<void> {
  console.log('Warm medians, ms.');
  console.log(
    'corners'.padEnd(8),
    ...['distances', 'whole', 'adjusted', 'ml-matrix', 'times ours', 'worst mm'].map((title) =>
      title.padStart(11),
    ),
  );
  for (const [corners, count] of SIZES) {
    const { ring, diagonals } = starRoom(corners, count, 5);
    const survey = measure(ring, { diagonals, deviation: 3, cornerDeviation: 0.5 }, normalNumbers(6));
    const problems = new ProblemList();
    const checked = readSurveyInput(survey, '', problems);
    const network = checked === null ? null : buildNetwork(checked, '', problems);
    if (network === null) throw new Error('The survey of the bench is bad.');
    const readings = network.observations.map(({ form, points, read, deviation }): PeerReading => {
      const [a, b, , d] = points;
      return form === 'distance'
        ? { kind: 'distance', p: a, q: b, read, deviation }
        : { kind: 'corner', here: a, before: b, after: d, read, deviation };
    });
    const peer = () => adjustByMatrices(Array.from(network.start), network.held, true, readings);
    const ours = adjustNetwork(network);
    if (typeof ours === 'string') throw new Error(ours);
    const apart = Math.max(...peer().xy.map((value, k) => Math.abs(value - ours.xy[k])));

    const bench = new Bench({ time: 400, iterations: 6, warmupTime: 150, warmupIterations: 3 });
    bench.add('whole', () => void roomFromTape(survey));
    bench.add('adjusted', () => void adjustNetwork(network));
    bench.add('peer', () => void peer());
    await bench.run();
    const [whole, adjusted, matrices] = bench.tasks.map(({ name, result }) => {
      if (!('latency' in result)) throw new Error(`${name}: ${result.state}`);
      return result.latency.p50;
    });
    console.log(
      String(corners).padEnd(8),
      String(corners + count).padStart(11),
      whole.toFixed(3).padStart(11),
      adjusted.toFixed(3).padStart(11),
      matrices.toFixed(3).padStart(11),
      (matrices / adjusted).toFixed(1).padStart(11),
      apart.toExponential(1).padStart(11),
    );
  }
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await run();
