import { pathToFileURL } from 'node:url';
import { Bench } from 'tinybench';
import type { Ring } from '../src/geometry/types.js';
import type { Scene } from '../src/room/scene.js';
import { StrokeClassifier } from '../src/stroke/classify-traced.js';
import { prepareStrokes } from '../src/stroke/prepare-strokes.js';
import { type ShotTally, shotShares } from '../src/stroke/shot-shares.js';
import { standingRoom } from '../src/stroke/standing.js';
import { ShotTrace } from '../src/stroke/trace-shot.js';
import { box, CUE, obstacle, random, room, STROKE, TABLE } from '../tests/stroke/scenes.js';
import { Oracle } from '../tests/stroke/shot-oracle.js';

/**
 * How long does the map of all shots take, preparation included? A room of 16 corners with 6 things of four corners, roomy and
 * tight; the map has 24 x 12 cells and an error estimate of at most 1 %. Peers in the same run:
 *
 * - plain Monte Carlo: random shots through the same classifier, as many as its own 99 % bound asks for to state the same error;
 * - elevation grid: the way without closed forms, shot by shot: 21 elevations, points every millimetre along the cue. Measured on
 *   a few shots and multiplied up to the map's number; it leaves out standing room.
 */
const POSE = { x: 0, y: 0, angle: 0 };
const MAP = { shots: 16_128, grid: { columns: 24, rows: 12 } };
const CUES = [1448, 1372, 1219].map((length) => ({ ...CUE, length }));
const GRID_SHOTS = 24;
const ELEVATIONS = 21;

/** `size` 1 leaves a wide way round the table, 0 hardly any. */
function furnished(size: number): Scene {
  const x = 1300 + 1700 * size;
  const y = 750 + 1550 * size;
  // A chimney breast, a bay and a niche: 16 corners.
  const outline: Ring = [
    [-x, -y],
    [-600, -y],
    [-600, -y + 250],
    [700, -y + 250],
    [700, -y],
    [x, -y],
    [x, -600],
    [x + 300, -600],
    [x + 300, 600],
    [x, 600],
    [x, y],
    [500, y],
    [500, y + 150],
    [-500, y + 150],
    [-500, y],
    [-x, y],
  ];
  const things = [
    obstacle('sofa', box(-x / 2, y - 300, x / 2, 500, 0), 0, 850),
    obstacle('shelf', box(x - 200, -y + 400, 300, 700, 0), 0, 1900),
    obstacle('cue rack', box(-x + 70, 0, 100, 700, 0), 600, 1800),
    obstacle('pillar', box(x - 700, y - 500, 300, 300, 0.3)),
    obstacle('lamp', box(0, 0, 1200, 300, 0), 1550, 1900),
    obstacle('cupboard', box(-x + 400, -y + 300, 600, 500, 0.1), 0, 1200),
  ];
  return room(outline, things, [{ name: 'ceiling', height: 2400, slopeX: 0, slopeY: 0 }]);
}

function shares(
  scene: Scene,
  cues: readonly (typeof CUE)[],
  options: Parameters<typeof shotShares>[3],
): ShotTally {
  const strokes = prepareStrokes(scene, TABLE, POSE, STROKE);
  return shotShares(strokes, standingRoom(strokes), cues, options);
}

/** Random shots; returns the share of open ones. */
function monteCarlo(scene: Scene, shots: number): number {
  const strokes = prepareStrokes(scene, TABLE, POSE, STROKE);
  const standing = standingRoom(strokes);
  const classifier = new StrokeClassifier(strokes, CUE);
  const trace = new ShotTrace(strokes, classifier.ell);
  const next = random(1);
  let open = 0;
  for (let k = 0; k < shots; k++) {
    const phi = 2 * Math.PI * next();
    trace.follow((2 * next() - 1) * strokes.qx, (2 * next() - 1) * strokes.qy, Math.cos(phi), Math.sin(phi));
    if (classifier.classify(trace, standing) === 0) open++;
  }
  return open / shots;
}

/** How many random shots state a share p to within `error` with 99 % (2.576 standard deviations). */
function shotsFor(p: number, error: number): number {
  return Math.ceil(p * (1 - p) * (2.576 / error) ** 2);
}

/** Shots by elevations and points along the cue; returns how many have some elevation. */
function elevationGrid(scene: Scene): number {
  const strokes = prepareStrokes(scene, TABLE, POSE, STROKE);
  const next = random(2);
  let playable = 0;
  for (let k = 0; k < GRID_SHOTS; k++) {
    const x = (2 * next() - 1) * strokes.qx;
    const y = (2 * next() - 1) * strokes.qy;
    const shot = {
      scene,
      table: TABLE,
      pose: POSE,
      stroke: STROKE,
      cue: CUE,
      x,
      y,
      phi: 2 * Math.PI * next(),
    };
    const oracle = new Oracle(shot);
    const least = oracle.railElevation();
    for (let i = 0; i < ELEVATIONS; i++) {
      const theta = least + ((STROKE.maxElevation - least) * i) / (ELEVATIONS - 1);
      if (!oracle.free(theta, i === 0 ? STROKE.backswing : STROKE.shortBackswing, 0)) continue;
      playable++;
      break;
    }
  }
  return playable;
}

export async function run(): Promise<void> {
  for (const [name, size] of [
    ['roomy', 0.8],
    ['middling', 0.6],
    ['tight', 0.4],
  ] as const) {
    const scene = furnished(size);
    const map = shares(scene, [CUE], MAP);
    const [cue] = map.cues;
    const random = Math.max(...[cue.open, cue.cramped, cue.blocked].map((p) => shotsFor(p, cue.error)));
    const bench = new Bench({ time: 1500, iterations: 8, warmupTime: 700, warmupIterations: 8 });
    bench
      .add('map', () => void shares(scene, [CUE], MAP))
      .add('verdict', () => void shares(scene, CUES, { shots: 2000 }))
      .add('room', () => void shares(scene, [CUE], { shots: 8 }))
      .add('monte carlo', () => void monteCarlo(scene, random))
      .add('grid', () => void elevationGrid(scene));
    await bench.run();
    const median = (task: string): number => {
      const result = bench.tasks.find((t) => t.name === task)?.result;
      if (result === undefined || !('latency' in result)) throw new Error(`${task} did not run.`);
      return result.latency.p50;
    };
    const ms = median('map');
    const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
    console.log(
      `${name}: open ${percent(cue.open)}, cramped ${percent(cue.cramped)}, blocked ${percent(cue.blocked)}, error at most ${percent(cue.error)}`,
    );
    console.log(
      `  map of ${map.shots} shots, one cue: ${ms.toFixed(1)} ms, ${((1000 * ms) / map.shots).toFixed(2)} us a shot`,
    );
    console.log(
      `  verdict, 2,000 shots, three cues: ${median('verdict').toFixed(2)} ms; preparation alone ${median('room').toFixed(2)} ms`,
    );
    const carlo = median('monte carlo');
    console.log(
      `  peer, plain Monte Carlo to the same error: ${random} shots, ${carlo.toFixed(1)} ms, ${(carlo / ms).toFixed(1)} times as long`,
    );
    const grid = (median('grid') / GRID_SHOTS) * map.shots;
    console.log(
      `  peer, elevation grid: ${(grid / 1000).toFixed(1)} s for as many shots, ${(grid / ms).toFixed(0)} times as long`,
    );
  }
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await run();
