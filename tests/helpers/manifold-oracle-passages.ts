/** Random passages of every kind, by a generator of the caller's. mm and radians. */
import type {
  Corner,
  Gate,
  Landing,
  Lift,
  Passage,
  Space,
  Stair,
  Winder,
} from '../../src/delivery/passages.js';

export type Random = () => number;
export const KINDS = [
  'doorway',
  'opening',
  'corridor',
  'corner',
  'stair',
  'quarter-landing',
  'half-landing',
  'winder',
  'lift',
] as const;

const between = (next: Random, low: number, high: number): number => low + (high - low) * next();
/** Endless one time in three. */
const perhaps = (next: Random, low: number, high: number): number =>
  next() < 1 / 3 ? Infinity : between(next, low, high);

const COMMON = { name: 'passage', tolerance: 0 };

export function randomPassage(kind: Passage['kind'], next: Random): Passage {
  switch (kind) {
    case 'doorway':
    case 'opening':
      return randomGate(kind, next);
    case 'corridor':
      return { ...COMMON, kind, width: between(next, 700, 2500), height: perhaps(next, 1900, 3000) };
    case 'corner':
      return randomCorner(next);
    case 'stair':
      return randomStair(next);
    case 'quarter-landing':
    case 'half-landing':
      return randomLanding(kind, next);
    case 'winder':
      return randomWinder(next);
    case 'lift':
      return randomLift(next);
  }
}

function randomSpace(next: Random): Space {
  return {
    depth: perhaps(next, 600, 3000),
    left: perhaps(next, 0, 2000),
    right: perhaps(next, 0, 2000),
    height: perhaps(next, 1900, 3000),
  };
}

function randomGate(kind: 'doorway' | 'opening', next: Random): Gate {
  const outside = { depth: Infinity, left: Infinity, right: Infinity, height: Infinity };
  return {
    ...COMMON,
    kind,
    width: between(next, 500, 1600),
    height: between(next, 600, 2200),
    depth: between(next, 20, 500),
    sill: kind === 'opening' ? between(next, 0, 1200) : 0,
    leaf: 0,
    before: kind === 'opening' ? outside : randomSpace(next),
    after: randomSpace(next),
  };
}

function randomCorner(next: Random): Corner {
  const height = perhaps(next, 1900, 3000);
  return {
    ...COMMON,
    kind: 'corner',
    width: between(next, 600, 2200),
    height,
    widthAfter: between(next, 600, 2200),
    heightAfter: next() < 0.5 ? height : between(next, 1900, 3000),
    angle: (between(next, 20, 160) * Math.PI) / 180,
  };
}

function slope(next: Random): { pitch: number; rise: number } {
  return { pitch: (between(next, 15, 50) * Math.PI) / 180, rise: between(next, 120, 220) };
}

function randomStair(next: Random): Stair {
  const level = () => ({ depth: perhaps(next, 600, 3000), height: perhaps(next, 1900, 3000) });
  return {
    ...COMMON,
    kind: 'stair',
    width: between(next, 600, 1600),
    ...slope(next),
    headroom: between(next, 1700, 2600),
    run: perhaps(next, 500, 5000),
    bottom: level(),
    top: level(),
  };
}

function randomLanding(kind: 'quarter-landing' | 'half-landing', next: Random): Landing {
  const width = between(next, 600, 1600);
  const widthAfter = between(next, 600, 1600);
  return {
    ...COMMON,
    kind,
    width,
    widthAfter,
    ...slope(next),
    headroom: between(next, 1700, 2600),
    depth: next() < 0.3 ? widthAfter : widthAfter + between(next, 0, 800),
    breadth: next() < 0.3 ? width : width + between(next, 0, 800),
    well: kind === 'half-landing' ? between(next, 20, 300) : 0,
  };
}

function randomWinder(next: Random): Winder {
  return {
    ...COMMON,
    kind: 'winder',
    width: between(next, 600, 1600),
    ...slope(next),
    headroom: between(next, 1700, 2600),
    climb: between(next, 200, 900),
  };
}

function randomLift(next: Random): Lift {
  const width = between(next, 900, 2200);
  return {
    ...COMMON,
    kind: 'lift',
    width,
    depth: between(next, 900, 2600),
    height: between(next, 1900, 2600),
    door: {
      width: between(next, 600, width),
      height: between(next, 1800, 2200),
      depth: between(next, 20, 300),
    },
    before: randomSpace(next),
  };
}
