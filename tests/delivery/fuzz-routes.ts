/**
 * `npx tsx tests/delivery/fuzz-routes.ts [seed] [seconds]`: random boxes in random passages of every kind. What passes must have a motion that
 * is replayed from the near side to the far side; brackets must be in order; and what is known of the passage narrowed by a random delta
 * must not contradict what is known of the passage as given.
 */
import { crossPassage } from '../../src/delivery/cross-passage.js';
import type { HoldName, PassageInput } from '../../src/delivery/delivery-input.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import { readDelivery } from '../../src/delivery/read-delivery.js';
import { replayPassage } from '../../src/delivery/replay.js';
import { ProblemList } from '../../src/length/read-input.js';
import { randomNumbers } from '../placement/rooms.js';

const [seed = 1, seconds = 60] = process.argv.slice(2).map(Number);
const random = randomNumbers(seed);
const between = (least: number, most: number): number => least + (most - least) * random();
const maybe = <T>(share: number, value: () => T): T | undefined => (random() < share ? value() : undefined);
const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];

// As a stranger's JSON: what is undefined is left out, and the reader checks the rest.
const space = () => ({
  depth: between(700, 2500),
  left: maybe(0.4, () => between(0, 1500)),
  right: maybe(0.4, () => between(0, 1500)),
  height: maybe(0.4, () => between(2000, 2600)),
});
const slope = () =>
  random() < 0.5 ? { pitch: between(20, 45) } : { rise: between(150, 220), going: between(220, 300) };
const level = () => ({ depth: between(700, 2000), height: maybe(0.5, () => between(1900, 2600)) });

const KINDS: Readonly<Record<PassageInput['kind'], () => unknown>> = {
  doorway: () => ({
    kind: 'doorway',
    width: between(600, 1100),
    height: between(1800, 2200),
    depth: between(50, 300),
    before: maybe(0.6, space),
    after: maybe(0.5, space),
  }),
  corridor: () => ({ kind: 'corridor', width: between(600, 1400), height: between(1900, 2700) }),
  corner: () => ({
    kind: 'corner',
    width: between(700, 1400),
    height: between(1900, 2700),
    widthAfter: between(700, 1400),
    heightAfter: between(1900, 2700),
    turn: between(10, 170),
  }),
  stair: () => ({
    kind: 'stair',
    width: between(600, 1100),
    headroom: between(1700, 2300),
    ...slope(),
    run: maybe(0.5, () => between(800, 4000)),
    bottom: maybe(0.5, level),
    top: maybe(0.5, level),
  }),
  'quarter-landing': () => {
    const [width, widthAfter] = [between(650, 1100), between(650, 1100)];
    const depth = maybe(0.5, () => widthAfter + between(0, 500));
    const breadth = maybe(0.5, () => width + between(0, 500));
    const headroom = between(1800, 2400);
    return { kind: 'quarter-landing', width, widthAfter, headroom, ...slope(), depth, breadth };
  },
  'half-landing': () => ({
    kind: 'half-landing',
    width: between(650, 1100),
    widthAfter: between(650, 1100),
    headroom: between(1800, 2400),
    ...slope(),
    well: maybe(0.5, () => between(0, 300)),
    depth: maybe(0.5, () => between(700, 1500)),
  }),
  winder: () => ({
    kind: 'winder',
    width: between(600, 1000),
    headroom: between(1800, 2300),
    ...slope(),
  }),
  lift: () => {
    const width = between(900, 1600);
    const door = { width: between(600, width), height: between(1900, 2000) };
    const before = maybe(0.5, space);
    return { kind: 'lift', width, depth: between(1000, 2200), height: between(2000, 2400), door, before };
  },
  opening: () => ({
    kind: 'opening',
    width: between(600, 1500),
    height: between(500, 1500),
    sill: between(0, 1000),
    after: maybe(0.5, space),
  }),
};
const HELD: readonly (readonly HoldName[])[] = [
  ['flat', 'on-edge', 'on-end'],
  ['on-edge', 'on-end'],
  ['on-edge'],
  ['flat'],
];

const counts = new Map<string, number>();
const times = new Map<string, number[]>();
let tried = 0;
let wrong = 0;
for (const end = Date.now() + seconds * 1000; Date.now() < end; ) {
  const input =
    KINDS[pick(Object.keys(KINDS).filter((kind): kind is PassageInput['kind'] => kind in KINDS))]();
  const length = between(300, 3200);
  const width = between(60, Math.min(length, 1500));
  const size = { length, width, thickness: between(15, Math.min(width, 600)) };
  const piece = { name: 'box', ...size, held: pick(HELD), tilt: pick([0, 20, 45, 90]) };
  const checked = readDelivery({ route: [input], pieces: [piece] }, 'way', null, new ProblemList(), []);
  const passage = checked?.route[0];
  const read = checked?.pieces[0];
  if (passage === undefined || read === undefined) continue;
  const box = { l: read.length, w: read.width, h: read.thickness, held: read.held, tilt: read.tilt };
  const start = performance.now();
  const found = crossPassage(passage, box, { maxBoxes: 60_000 });
  const took = performance.now() - start;
  times.set(passage.kind, [...(times.get(passage.kind) ?? []), took]);
  tried++;
  const { atLeast, atMost, atMostAnyMotion, motion } = found;
  const fail = (what: string): void => {
    wrong++;
    console.log(
      'WRONG',
      what,
      JSON.stringify(input),
      JSON.stringify(piece),
      atLeast,
      atMost,
      atMostAnyMotion,
    );
  };
  const word = atLeast >= 0 ? 'passes' : atMost < 0 ? 'blocked' : 'undecided';
  counts.set(`${passage.kind} ${word}`, (counts.get(`${passage.kind} ${word}`) ?? 0) + 1);
  if (atLeast > atMost + 0.01 || atMost > atMostAnyMotion + 0.01) fail('bracket');
  if (atLeast >= 0.05) {
    const replay = motion === null ? null : replayPassage(passage, motion);
    if (replay === null || !(replay.clearance > 1e-6 && replay.startsNear && replay.endsFar))
      fail(`replay: ${replay?.clearance}, ${replay?.nearest}`);
  }
  const delta = between(1, 60);
  const narrower = crossPassage(narrowPassage(passage, delta), box, { maxBoxes: 20_000 });
  if (narrower.atLeast + delta > atMost + 0.5) fail(`passes when narrowed by ${delta}`);
}
console.log(`${tried} boxes, ${wrong} wrong`);
for (const [kind, list] of times) {
  const sorted = list.sort((a, b) => a - b);
  const at = (share: number): string => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(2);
  const said = [...counts]
    .filter(([key]) => key.startsWith(`${kind} `))
    .map(([key, n]) => `${key.slice(kind.length + 1)} ${n}`);
  console.log(`${kind}: ${said.join(', ')}; ms: median ${at(0.5)}, 95 % ${at(0.95)}, most ${at(1)}`);
}
