import type { Carried } from '../../src/delivery/carried.js';
import type { HoldName } from '../../src/delivery/delivery-input.js';
import type { Landing, Stair, Winder } from '../../src/delivery/passages.js';

/** A small seeded source of numbers in [0, 1) (mulberry32), so that a run can be repeated. */
export function randomSource(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const HOLDS: readonly HoldName[] = ['flat', 'on-edge', 'on-end'];

/** Slates, frames, crates: long and flat to nearly cubic. */
export function randomBox(random: () => number): Carried {
  const l = 600 + 2600 * random();
  const w = Math.min(l, 200 + 1400 * random());
  const h = Math.min(w, 40 + 600 * random() ** 2);
  const held = random() < 0.6 ? HOLDS : HOLDS.filter(() => random() < 0.6);
  return { l, w, h, held: held.length > 0 ? held : ['flat'], tilt: (Math.PI / 2) * random() };
}

export function randomStairPassage(kind: string, random: () => number): Stair | Landing | Winder {
  if (kind === 'stair') return randomStair(random);
  return kind === 'winder' ? randomWinder(random) : randomLanding(random);
}

function randomSlope(random: () => number) {
  const pitch = ((20 + 30 * random()) * Math.PI) / 180;
  return { name: '', tolerance: 10, pitch, rise: 150 + 70 * random(), width: 600 + 700 * random() };
}

export function randomStair(random: () => number): Stair {
  const level = () => ({
    depth: random() < 0.5 ? Number.POSITIVE_INFINITY : 700 + 1500 * random(),
    height: random() < 0.4 ? Number.POSITIVE_INFINITY : 1900 + 900 * random(),
  });
  return {
    kind: 'stair',
    ...randomSlope(random),
    headroom: 1700 + 600 * random(),
    run: random() < 0.3 ? Number.POSITIVE_INFINITY : 800 + 4000 * random(),
    bottom: level(),
    top: level(),
  };
}

export function randomLanding(random: () => number): Landing {
  const slope = randomSlope(random);
  const kind = random() < 0.5 ? 'quarter-landing' : 'half-landing';
  const widthAfter = random() < 0.5 ? slope.width : 600 + 700 * random();
  const well = kind === 'quarter-landing' || random() < 0.5 ? 0 : 300 * random();
  const least = kind === 'quarter-landing' ? widthAfter : 600;
  const depth = random() < 0.5 ? Math.max(least, slope.width) : least + 800 * random();
  const wider = random() < 0.5 ? 0 : 600 * random();
  const breadth = kind === 'quarter-landing' ? slope.width + wider : slope.width + well + widthAfter;
  return { kind, ...slope, widthAfter, headroom: 1800 + 600 * random(), depth, breadth, well };
}

export function randomWinder(random: () => number): Winder {
  return {
    kind: 'winder',
    ...randomSlope(random),
    headroom: 1800 + 600 * random(),
    climb: 600 * random(),
  };
}
