import { describe, expect, it } from 'vitest';
import * as delivery from '../../src/delivery/index.js';
import * as geometry from '../../src/geometry/index.js';
import * as index from '../../src/index.js';
import * as placement from '../../src/placement/index.js';
import * as plan from '../../src/plan.js';
import * as stroke from '../../src/stroke/index.js';
import { prototypesAsTheyAre } from './plain.js';
import { runsOf, TARGETS } from './targets.js';

const RUNS = 2000;
const SEED = 20251205;

const entries = { index, geometry, stroke, placement, delivery, plan };

describe('structured fuzz', () => {
  it('tries every function of every entry point', () => {
    const exported = Object.entries(entries).flatMap(([entry, names]) =>
      Object.entries(names)
        .filter(([, value]) => typeof value === 'function')
        .map(([name]) => `${entry}/${name}`),
    );
    const tried = new Set(TARGETS.flatMap(({ of }) => of));
    expect(exported.length).toBeGreaterThan(70);
    expect(exported.filter((name) => !tried.has(name))).toEqual([]);
    expect([...tried].filter((name) => !exported.includes(name))).toEqual([]);
  });

  it.each(TARGETS.map((target) => [target.name, target] as const))('%s', (_, target) => {
    const before = prototypesAsTheyAre();
    target.run({ seed: SEED, numRuns: runsOf(target, RUNS) });
    expect(prototypesAsTheyAre()).toBe(before);
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
  });
});
