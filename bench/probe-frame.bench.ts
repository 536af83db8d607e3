import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { FRAME_PLANS, type SamplePlan } from '../docs/try/probe/frame-budget.js';
import { mapPaths } from '../docs/try/probe/shot-map.js';
import type { FitInput } from '../src/fit-input.js';
import type { Ring } from '../src/geometry/types.js';
import type { Scene } from '../src/room/scene.js';
import { classifyShot } from '../src/stroke/classify-shot.js';
import { prepareStrokes, withStroke } from '../src/stroke/prepare-strokes.js';
import { type ShotTally, shotShares } from '../src/stroke/shot-shares.js';
import { standingRoom } from '../src/stroke/standing.js';
import type { StrokeScene } from '../src/stroke/stroke-scene.js';
import { buildProbePage } from '../tests/browser/fixtures/probe/build.js';
import { CHROMIUM, launch, serve } from '../tests/browser/harness.js';
import { box, CUE, obstacle, room, STROKE, TABLE } from '../tests/stroke/scenes.js';

/**
 * Does a slider of the try-it page redraw shares and map within a frame of 16 ms? Two answers:
 *
 * - the reckoning alone, in Node: a new margin and cue length, the sample, the paths of the map; for every sample that the page may
 *   take. Peer in the same run: a map without the library's sample, one `classifyShot` for every shot, from the input each time.
 *   It is timed on a few shots and multiplied up.
 * - all that the page does in a frame, in chromium: the above, the shot, plan, words and the side elevation. Figures of the page's own clock.
 */
const PEER_SHOTS = 60;
const MOVES = 90;
const POSE = { x: 0, y: 0, angle: 0 };

interface Case {
  readonly name: string;
  readonly outline: Ring;
  readonly things: readonly { readonly name: string; readonly ring: Ring; readonly to: number }[];
}

function boxed(x: number, y: number): Ring {
  return [
    [-x, -y],
    [x, -y],
    [x, y],
    [-x, y],
  ];
}

function furnished(x: number, y: number): Case['things'] {
  return [
    { name: 'sofa', ring: box(-x / 2, y - 300, x / 2, 500, 0), to: 850 },
    { name: 'shelf', ring: box(x - 200, -y + 400, 300, 700, 0), to: 1900 },
    { name: 'pillar', ring: box(x - 700, y - 500, 300, 300, 0.3), to: 2400 },
    { name: 'cupboard', ring: box(-x + 400, -y + 300, 600, 500, 0.1), to: 1200 },
  ];
}

const CASES: readonly Case[] = [
  { name: 'empty and roomy', outline: boxed(3000, 2400), things: [] },
  { name: 'empty and tight', outline: boxed(2500, 1900), things: [] },
  { name: 'furnished', outline: boxed(2700, 2100), things: furnished(2700, 2100) },
  { name: 'furnished, tight', outline: boxed(2200, 1650), things: furnished(2200, 1650) },
];

function sceneOf({ outline, things }: Case): Scene {
  return room(
    outline,
    things.map(({ name, ring, to }) => obstacle(name, ring, 0, to)),
    [{ name: 'ceiling', height: 2400, slopeX: 0, slopeY: 0 }],
  );
}

function inputOf({ outline, things }: Case): FitInput {
  const obstacles = things.map(({ name, ring, to }) => ({ name, footprint: ring, to }));
  return { room: { outline, obstacles, ceiling: 2400 }, table: 'pool-8ft-home', pose: { x: 0, y: 0 } };
}

/** Median time of a redraw's reckoning over moves of a slider, ms, with the standing room kept as the page keeps it. */
function reckoning(scene: Scene, { columns, rows, shots }: SamplePlan): { median: number; tally: ShotTally } {
  const strokes = prepareStrokes(scene, TABLE, POSE, STROKE);
  const standing = standingRoom(strokes);
  const redraw = (move: number): ShotTally => {
    const moved: StrokeScene = withStroke(strokes, { ...STROKE, margin: 10 + (move % 30) });
    const cue = { ...CUE, length: 1300 + 5 * (move % 40) };
    const tally = shotShares(moved, standing, [cue], { shots, grid: { columns, rows } });
    if (tally.grid === null) throw new Error('There is no map.');
    mapPaths(tally.grid, 560, 280);
    return tally;
  };
  const times: number[] = [];
  for (let move = 0; move < MOVES; move++) {
    const start = performance.now();
    redraw(move);
    times.push(performance.now() - start);
  }
  return { median: quantile(times, 0.5), tally: redraw(0) };
}

/** One classifyShot a shot: ms a shot. */
function naive(input: FitInput): number {
  const times: number[] = [];
  for (let k = 0; k < PEER_SHOTS; k++) {
    const start = performance.now();
    classifyShot({
      room: input.room,
      table: input.table,
      pose: { x: 0, y: 0 },
      cue: CUE.length,
      ball: { x: (k % 11) * 180 - 900, y: (k % 7) * 150 - 450 },
      direction: (k * 137.5) % 360,
    });
    times.push(performance.now() - start);
  }
  return quantile(times, 0.5);
}

function quantile(values: readonly number[], q: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(q * (sorted.length - 1))] ?? Number.NaN;
}

export async function run(): Promise<void> {
  for (const given of CASES) {
    const scene = sceneOf(given);
    const perShot = naive(inputOf(given));
    console.log(`${given.name}: one classifyShot ${perShot.toFixed(3)} ms`);
    for (const plan of FRAME_PLANS) {
      const { median, tally } = reckoning(scene, plan);
      const [cue] = tally.cues;
      const error = (100 * (cue?.error ?? 0)).toFixed(2);
      console.log(
        `  ${`${plan.columns} x ${plan.rows}`.padStart(7)} cells, ${String(plan.shots).padStart(4)} shots: ${median.toFixed(2)} ms, error ${error} %; ` +
          `peer, classifyShot for every shot: ${(perShot * plan.shots).toFixed(0)} ms, ${((perShot * plan.shots) / median).toFixed(0)} times as long; ` +
          `once a cell, which tells no share: ${((perShot * plan.columns * plan.rows) / median).toFixed(0)} times`,
      );
    }
  }
  await inThePage();
}

/** Moves each slider to and fro in chromium and prints what the page says its redraws took. */
async function inThePage(): Promise<void> {
  if (statSync(CHROMIUM, { throwIfNoEntry: false }) === undefined) {
    console.log(`in the page: not measured, there is no browser at ${CHROMIUM}`);
    return;
  }
  const folder = mkdtempSync(join(tmpdir(), 'elbowroom-probe-bench-'));
  await buildProbePage(folder);
  const server = await serve(folder);
  const browser = await launch();
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.goto(`${server.url}#worker`);
    for (const given of CASES) {
      await page.evaluate(`window.probePage.show(${JSON.stringify(inputOf(given))})`);
      const frames: Frame[] = [];
      for (const name of ['cueLength', 'backswing', 'margin'])
        frames.push(...(await slideInPage(page, name)));
      const times = frames.map(({ milliseconds }) => milliseconds);
      const late = frames.filter(({ milliseconds }) => milliseconds > 16).length;
      const drawn = frames.filter(({ elevation }) => elevation).length;
      const shots = quantile(
        frames.map((frame) => frame.shots),
        0.5,
      );
      console.log(
        `in the page, ${given.name}: ${frames.length} redraws, median ${quantile(times, 0.5).toFixed(1)} ms, 95 % within ${quantile(times, 0.95).toFixed(1)} ms, ` +
          `${late} over 16 ms; ${shots} shots in most, side elevation in ${drawn} of them`,
      );
    }
  } finally {
    await browser.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Frame {
  readonly milliseconds: number;
  readonly shots: number;
  readonly elevation: boolean;
}

async function slideInPage(
  page: { evaluate(program: string): Promise<unknown> },
  name: string,
): Promise<readonly Frame[]> {
  const frames = await page.evaluate(`(async () => {
    const slider = document.querySelector('#probe-${name}');
    const [least, most] = [Number(slider.min), Number(slider.max)];
    const move = async (k) => {
      slider.value = String(least + (most - least) * (0.5 + 0.5 * Math.sin(k / 7)));
      slider.dispatchEvent(new Event('input', { bubbles: true }));
      await new Promise((done) => requestAnimationFrame(done));
    };
    for (let k = 0; k < 20; k++) await move(k);
    window.probePage.frames.length = 0;
    for (let k = 20; k < 20 + ${MOVES}; k++) await move(k);
    return window.probePage.frames;
  })()`);
  return Array.isArray(frames) ? frames : [];
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await run();
