import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import { FURNISHING_LIMITS } from '../../src/equipment/furnishing-limits.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { FURNISHING_IDS, type FurnishingId } from '../../src/equipment/furnishings-ids.js';
import { LAMP_OVER_BED } from '../../src/equipment/furnishings-room.js';
import { boundingBox, signedArea } from '../../src/geometry/ring.js';

const INCH = 25.4;
const kinds = Object.entries(FURNISHINGS);

/** The zone of a kind that has one. */
function zoneOf(id: FurnishingId) {
  const [zone] = FURNISHINGS[id].zones;
  if (zone === undefined) throw new Error(`${id} has no zone`);
  return zone;
}

describe('darts', () => {
  // Western Australia, Sports Dimensions Guide, darts (Darts Australia rules, 2015).
  const { length, width, from, to } = FURNISHINGS.darts;

  it('has a board of 451 mm with its bull at 1.73 m', () => {
    expect(length).toBe(451);
    expect(to - from).toBe(451);
    expect((from + to) / 2).toBe(1730);
    expect(FURNISHINGS.darts.stand).toBe('hung');
    // Common practice, no source.
    expect(width).toBeLessThanOrEqual(50);
  });

  it("has a lane that holds the oche, 2.37 m from the board's face and 915 mm long, with room to stand behind it", () => {
    const lane = zoneOf('darts');
    expect(length + lane.left + lane.right).toBe(915);
    expect(lane.left).toBe(lane.right);
    const behind = lane.front - 2370;
    // Walking allowance of about 0.60 m, Metric Handbook (from memory).
    expect(behind).toBeGreaterThanOrEqual(600);
    // Not by default: whoever waits stands 1.5 m behind the oche in tournaments (the same guide).
    expect(behind).toBeLessThan(1500);
    expect(FURNISHINGS.darts.source).toContain('1.5 m behind the oche');
    // Nobody walks through a door into a throw.
    expect(lane.offDoors).toBe(true);
    expect(lane.to).toBeGreaterThanOrEqual(to);
  });

  it('agrees with the diagonal of 2.93 m from bull to oche', () => {
    // The same guide, to the nearest cm.
    const oche = zoneOf('darts').front - 600;
    expect(Math.hypot((from + to) / 2, oche) / 1000).toBeCloseTo(2.93, 2);
  });
});

describe('table tennis', () => {
  const { length, width, to, source } = FURNISHINGS['table-tennis'];

  it('has a table of 2.74 x 1.525 m, 0.76 m high', () => {
    // ITTF Technical Leaflet T1; law 2.1.
    expect([length, width, to]).toEqual([2740, 1525, 760]);
  });

  it('has a playing space of 8.5 x 4.12 m, evenly round the table', () => {
    // Recreation and coaching, second-hand.
    const { front, back, left, right } = zoneOf('table-tennis');
    expect(length + left + right).toBe(8500);
    expect(width + front + back).toBe(4120);
    expect(front).toBe(back);
    expect(left).toBe(right);
    expect(source).toContain('second-hand');
  });
});

describe('the lamp', () => {
  const { from, to, stand, zones, source } = FURNISHINGS.lamp;

  it('hangs 40 in above the bed, more than any other rule for a lamp that can be moved aside', () => {
    // WPA Recommended Equipment Specifications, s. 15: 40 in (1.016 m).
    expect(LAMP_OVER_BED).toBeCloseTo(40 * INCH, 9);
    expect(from - DEFAULTS.table.bedHeight).toBe(LAMP_OVER_BED);
    // DBU Materialnormen Snooker, s. 3.1: 0.80 m. WEPF, second-hand: 32 1/2 in (825.5 mm).
    expect(LAMP_OVER_BED).toBeGreaterThan(800);
    expect(LAMP_OVER_BED).toBeGreaterThan(32.5 * INCH);
    expect(to).toBeGreaterThan(from);
    expect(source).toMatch(/WPA.*DBU.*WEPF/);
  });

  it('needs no floor', () => {
    expect(stand).toBe('over-table');
    expect(zones).toEqual([]);
  });
});

describe('what people need round a piece', () => {
  const standing = 2 * DEFAULTS.standing.radius;

  it('is room for a person on the sides where they stand or sit', () => {
    const sides: readonly (readonly [FurnishingId, 'front' | 'back'])[] = [
      ['table-football', 'front'],
      ['table-football', 'back'],
      ['upright-cabinet', 'front'],
      ['pinball', 'front'],
      ['music-machine', 'front'],
      ['cue-rack', 'front'],
      ['score-board', 'front'],
      ['cupboard', 'front'],
      ['sofa', 'front'],
    ];
    for (const [id, side] of sides) {
      expect(Math.max(...FURNISHINGS[id].zones.map((zone) => zone[side]))).toBeGreaterThanOrEqual(standing);
    }
  });

  it('keeps cues off the stools at a bar, which stay there, and lets the host by', () => {
    const [guests, host] = FURNISHINGS.bar.zones;
    // WPA Recommended Equipment Specifications: a chair counts as an obstacle.
    expect(guests).toMatchObject({ name: 'guests', withCueing: false, withZones: false });
    expect(guests?.front).toBeGreaterThanOrEqual(FURNISHINGS.stool.length + DEFAULTS.standing.radius);
    expect(host).toMatchObject({ name: 'host', withCueing: true, front: 0 });
  });

  it('lets a cupboard open its doors, each as wide as half of it', () => {
    expect(zoneOf('cupboard').front).toBeGreaterThan(FURNISHINGS.cupboard.length / 2);
  });

  it('is shared by turns everywhere else', () => {
    for (const [id, { zones }] of kinds) {
      if (id === 'bar') continue;
      for (const zone of zones) expect([id, zone.withCueing, zone.withZones]).toEqual([id, true, true]);
    }
  });
});

describe('every kind', () => {
  it('has an id of the list, in its order within games and furniture', () => {
    expect(kinds.map(([id]) => id).sort()).toEqual([...FURNISHING_IDS].sort());
    for (const [id, spec] of kinds) expect(spec.kind).toBe(id);
    const names = kinds.map(([, { name }]) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(kinds)('%s hangs together', (_, spec) => {
    const { ring, length, width, from, to, zones, stand, turns } = spec;
    const box = boundingBox(ring);
    expect(signedArea(ring)).toBeGreaterThan(0);
    expect(box.minX + box.maxX).toBeCloseTo(0, 9);
    expect(box.minY + box.maxY).toBeCloseTo(0, 9);
    expect(box.maxX - box.minX).toBeCloseTo(length, 9);
    expect(box.maxY - box.minY).toBeCloseTo(width, 9);
    expect(to).toBeGreaterThan(from);
    expect(from > 0).toBe(stand === 'hung' || stand === 'over-table');
    if (turns === 'back') expect(['wall', 'hung']).toContain(stand);
    expect(new Set(zones.map(({ name }) => name)).size).toBe(zones.length);
    for (const zone of zones) {
      expect(zone.to).toBeGreaterThan(zone.from);
      expect(zone.front + zone.back + zone.left + zone.right).toBeGreaterThan(0);
      expect(Math.min(zone.front, zone.back, zone.left, zone.right)).toBeGreaterThanOrEqual(0);
    }
  });

  it.each(kinds)('%s passes the limits that measurements of its own would have to pass', (_, spec) => {
    const { side, longest, height, from, zone } = FURNISHING_LIMITS;
    const within = (mm: number, [least, most]: readonly [number, number]) => mm >= least && mm <= most;
    expect(within(spec.length, side) && within(spec.width, side)).toBe(true);
    expect(within(Math.max(spec.length, spec.width), longest)).toBe(true);
    expect(within(spec.to - spec.from, height)).toBe(true);
    expect(spec.from === 0 || within(spec.from, from)).toBe(true);
    for (const { front, back, left, right, to } of spec.zones) {
      for (const mm of [front, back, left, right]) expect(mm === 0 || within(mm, zone.side)).toBe(true);
      expect(within(to, zone.to)).toBe(true);
    }
  });

  it('says where its figures come from, and what has no source', () => {
    for (const [id, { source }] of kinds) {
      expect([id, source]).toEqual([id, expect.stringMatching(/common practice, no source/)]);
      expect(source).toMatch(/\.$/);
    }
    // No reliable standard exists for these.
    for (const id of ['table-football', 'upright-cabinet', 'pinball', 'music-machine'] as const) {
      expect(FURNISHINGS[id].source).toContain('measure your own');
    }
  });

  it('cannot be changed by one user for all others', () => {
    expect(Object.isFrozen(FURNISHINGS)).toBe(true);
    for (const [, spec] of kinds) {
      expect(Object.isFrozen(spec) && Object.isFrozen(spec.ring) && Object.isFrozen(spec.ring[0])).toBe(true);
      expect(Object.isFrozen(spec.zones) && spec.zones.every((zone) => Object.isFrozen(zone))).toBe(true);
    }
  });
});

describe('what a bundle pays for the kinds', () => {
  const src = resolve(dirname(fileURLToPath(import.meta.url)), '../../src');
  const bundle = async (contents: string): Promise<string> => {
    const { outputFiles } = await build({
      stdin: { contents, resolveDir: src, loader: 'ts' },
      bundle: true,
      minify: true,
      format: 'esm',
      write: false,
    });
    return outputFiles[0]?.text ?? '';
  };

  it('is nothing where they are not used, and little where they are', async () => {
    const unused = `import { FURNISHINGS } from './equipment/furnishings.js'; export const nothing = 1;`;
    expect(await bundle(unused)).toMatch(/^var \w+=1;export\{\w+ as nothing\};\s*$/);
    const used = await bundle(`export { FURNISHINGS } from './equipment/furnishings.js';`);
    expect(gzipSync(used).length).toBeLessThan(4000);
  });
});
