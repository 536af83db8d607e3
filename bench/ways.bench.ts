import { pathToFileURL } from 'node:url';
import { Bench } from 'tinybench';
import { clearWays } from '../src/arrangement/clear-ways.js';
import { createWayCheck, quickWays } from '../src/arrangement/clear-ways-quick.js';
import { tableRing } from '../src/arrangement/layout-rules.js';
import { type PlacedPiece, placePiece } from '../src/arrangement/piece-place.js';
import { FURNISHINGS } from '../src/equipment/furnishings.js';
import type { FurnishingId } from '../src/equipment/furnishings-ids.js';
import { TABLES } from '../src/equipment/tables.js';
import type { Placement, Ring } from '../src/geometry/types.js';
import * as jts from '../tests/helpers/jsts.js';
import { randomFrom } from '../tests/helpers/rings.js';
import { sceneOf } from '../tests/room/read.js';

/**
 * How long does it take to tell the clear ways of a room of 40 m2 with two doors, a table and six pieces? All of them with paths, the widest
 * way and what holds it; and only which of them are there, as a search asks it for one layout after the other. The peer is JTS by its port:
 * the room shrunk by half the width, less everything grown by as much, and which part each thing borders on. It answers for one width, with
 * arcs of chords, without paths and without what holds a way.
 */
const WIDTH = 600;
const LAYOUTS = 60;

const SCENE = sceneOf({
  outline: [
    [0, 0],
    [7500, 0],
    [7500, 4200],
    [6000, 4200],
    [6000, 5600],
    [0, 5600],
  ],
  ceiling: 2500,
  obstacles: [
    {
      name: 'chimney breast',
      footprint: [
        [2500, 5200],
        [4000, 5200],
        [4000, 5600],
        [2500, 5600],
      ],
    },
    { name: 'post', footprint: { center: [600, 2800], diameter: 200 } },
  ],
  doors: [
    { hinge: [200, 0], latch: [1000, 0], opens: 'in' },
    { hinge: [7500, 3000], latch: [7500, 3800], opens: 'out' },
  ],
});
const TABLE = TABLES['pool-8ft-dbu'];

interface Layout {
  readonly pose: Placement;
  readonly placed: readonly PlacedPiece[];
}

export async function run(): Promise<void> {
  const layouts = [tidy(), ...Array.from({ length: LAYOUTS }, (_, k) => shuffled(k))];
  const check = createWayCheck(SCENE, WIDTH);
  const tasks: [string, (layout: Layout) => unknown][] = [
    [
      'clear ways, proved, with paths and the widest',
      ({ pose, placed }) => clearWays(SCENE, { table: TABLE, pose }, placed, WIDTH),
    ],
    [
      'which of them are there, in a search',
      ({ pose, placed }) => quickWays(check, tableRing(TABLE, pose), placed),
    ],
    ['JTS: what is free, and who borders on it', partsByJts],
  ];
  console.log(
    `Warm medians, ms; ways of ${WIDTH} mm. Shuffled: ${LAYOUTS} layouts at random, the mean of one.`,
  );
  console.log(''.padEnd(48), ...['tidy', 'shuffled'].map((title) => title.padStart(9)));
  for (const [name, task] of tasks) {
    const [one, many] = await medians([
      () => task(layouts[0]),
      () => {
        for (const layout of layouts.slice(1)) task(layout);
      },
    ]);
    console.log(name.padEnd(48), one.toFixed(3).padStart(9), (many / LAYOUTS).toFixed(3).padStart(9));
  }

  const ways = layouts.flatMap(({ pose, placed }) => clearWays(SCENE, { table: TABLE, pose }, placed, WIDTH));
  const found = ways.filter((way) => way.found).length;
  const undecided = ways.filter((way) => !way.certain).length;
  console.log(`${ways.length} ways: ${found} found, ${undecided} undecided.`);
}

/** As somebody would place them. */
function tidy(): Layout {
  const half = Math.PI / 2;
  return {
    pose: { x: 3700, y: 2500, angle: 0 },
    placed: [
      place('sofa', 3250, 4700, 2 * half),
      place('cue-rack', 7000, 100, 0),
      place('cupboard', 300, 4500, -half),
      place('darts', 5800, 5575, 2 * half),
      place('bar', 1100, 5000, 2 * half),
      place('pinball', 6900, 1700, half),
    ],
  };
}

/** The same things anywhere. */
function shuffled(seed: number): Layout {
  const random = randomFrom(seed);
  const pose = (): Placement => ({
    x: 7500 * random(),
    y: 5600 * random(),
    angle: random() < 0.7 ? (Math.PI / 2) * Math.floor(4 * random()) : 6 * random(),
  });
  return {
    pose: pose(),
    placed: tidy().placed.map(({ spec }) => placePiece(spec, pose())),
  };
}

function place(kind: FurnishingId, x: number, y: number, angle: number): PlacedPiece {
  return placePiece(FURNISHINGS[kind], { x, y, angle });
}

/** For each part of the free floor the things that it comes within a touch of. */
function partsByJts({ pose, placed }: Layout): number[][] {
  const h = WIDTH / 2;
  const frame = tableRing(TABLE, pose);
  const rings: Ring[] = [
    ...SCENE.obstacles.map(({ ring }) => ring),
    ...placed.map(({ ring }) => ring),
    frame,
  ];
  const grown = rings.map((ring) => jts.buffer(jts.polygon(ring), h, 8));
  const free = jts.difference(jts.buffer(jts.polygon(SCENE.outline), -h, 8), jts.union(grown));
  const doors = SCENE.doors.map(({ hinge, latch }) => jts.segment(hinge, latch));
  const reach = [...doors, ...[frame, ...placed.map(({ ring }) => ring)].map((ring) => jts.polygon(ring))];
  const zones = placed.flatMap(({ zones: own }) => own.map(({ ring }) => jts.polygon(ring)));
  const parts: number[][] = [];
  for (let k = 0; k < free.getNumGeometries(); k++) {
    const part = free.getGeometryN(k);
    parts.push(
      [
        ...reach.map((thing) => jts.distance(part, thing) <= h + 10),
        ...zones.map((zone) => jts.intersects(part, zone)),
      ].flatMap((yes, i) => (yes ? [i] : [])),
    );
  }
  return parts;
}

async function medians(tasks: (() => unknown)[]): Promise<number[]> {
  const bench = new Bench({ time: 300, iterations: 5, warmupTime: 100, warmupIterations: 2 });
  tasks.forEach((task, i) => {
    bench.add(String(i), () => void task());
  });
  await bench.run();
  return bench.tasks.map(({ name, result }) => {
    if (!('latency' in result)) throw new Error(`${name}: ${result.state}`);
    return result.latency.p50;
  });
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await run();
