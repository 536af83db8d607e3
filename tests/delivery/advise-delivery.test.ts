import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adviseDelivery } from '../../src/delivery/advise-delivery.js';
import { type DeliveryQuestion, passes } from '../../src/delivery/advise-delivery-asking.js';
import { type Carried, carriedWith, type Piece } from '../../src/delivery/carried.js';
import { crossCorner } from '../../src/delivery/corner.js';
import type { Crossing } from '../../src/delivery/crossing.js';
import type { HoldName } from '../../src/delivery/delivery-input.js';
import type { DeliveryAdvice } from '../../src/delivery/delivery-report.js';
import { narrowPassage } from '../../src/delivery/narrow-passage.js';
import type { Corridor, Gate, Passage, Space } from '../../src/delivery/passages.js';

/** Seed of every property here, so that each run is the same. */
const SEED = 20_261_140;

const ROOMY: Space = { depth: Infinity, left: Infinity, right: Infinity, height: Infinity };
const DOOR: Gate = {
  kind: 'doorway',
  name: 'front door',
  tolerance: 10,
  width: 800,
  height: 2000,
  depth: 150,
  sill: 0,
  leaf: 0,
  before: ROOMY,
  after: ROOMY,
};
const HALL: Corridor = { kind: 'corridor', name: 'hall', tolerance: 10, width: 1200, height: 2400 };
const ANY: readonly HoldName[] = ['flat', 'on-edge', 'on-end'];
const SLATE: Piece = {
  name: 'slate',
  length: 1450,
  width: 910,
  thickness: 40,
  count: 3,
  mass: 105,
  carriers: 4,
  held: ANY,
  tilt: Math.PI / 4,
};

/** Edges level across and upright in each level way, with the length along. */
const LEVEL: Readonly<Record<HoldName, (box: Carried) => readonly [across: number, up: number]>> = {
  flat: ({ w, h }) => [w, h],
  'on-edge': ({ w, h }) => [h, w],
  'on-end': ({ l, h }) => [h, l],
};
const BETWEEN: readonly (readonly [HoldName, HoldName, (box: Carried) => readonly [number, number]])[] = [
  ['flat', 'on-edge', ({ w, h }) => [w, h]],
  ['on-edge', 'on-end', ({ l, w }) => [l, w]],
];

/**
 * A way through that any reader can check: a hole of width x height and nothing but the section that the box shows it, level or leaned by
 * whole degrees between two level ways as far as it may be. Not how the library crosses anything, but as monotone as it must be.
 */
function slot(width: number, height: number, box: Carried): Crossing {
  let spare = -Infinity;
  const look = (across: number, up: number): void => {
    spare = Math.max(spare, Math.min(width - across, height - up));
  };
  for (const name of box.held) look(...LEVEL[name](box));
  for (const [from, to, edges] of BETWEEN) {
    const [a, b] = edges(box);
    for (let degrees = 0; degrees <= 90; degrees++) {
      const o = (degrees * Math.PI) / 180;
      const near = (away: number): boolean => away <= box.tilt + 1e-9;
      if (!(box.held.includes(from) && near(o)) && !(box.held.includes(to) && near(Math.PI / 2 - o)))
        continue;
      const across = from === 'flat' ? a * Math.cos(o) + b * Math.sin(o) : box.h;
      look(across, from === 'flat' ? a * Math.sin(o) + b * Math.cos(o) : a * Math.sin(o) + b * Math.cos(o));
    }
  }
  return crossing({ atLeast: spare, atMost: spare, atMostAnyMotion: Math.min(width, height) - box.h });
}

function crossing(parts: Partial<Crossing>): Crossing {
  return {
    atLeast: -Infinity,
    atMost: Infinity,
    atMostAnyMotion: Infinity,
    hold: null,
    motion: null,
    narrowest: null,
    method: 'closed-form',
    ...parts,
  };
}

function crossSlot(passage: Passage, box: Carried): Crossing {
  if (passage.kind !== 'doorway' && passage.kind !== 'corridor') throw new Error('not asked for here');
  return slot(passage.width, passage.height, box);
}

function question(
  route: readonly Passage[],
  pieces: readonly Piece[],
  parts: Partial<DeliveryQuestion> = {},
): DeliveryQuestion {
  const cross = parts.cross ?? crossSlot;
  const handRoom = parts.handRoom ?? 25;
  return {
    route,
    pieces: pieces.map((piece) => ({
      piece,
      crossings: route.map((passage) => cross(passage, carriedWith(piece, handRoom))),
    })),
    otherSets: [],
    ...parts,
    handRoom,
    cross,
  };
}

const kinds = (advice: readonly DeliveryAdvice[]): string[] => advice.map(({ kind }) => kind);
const narrowDoor = (width: number, height: number, parts: Partial<Gate> = {}): Gate => ({
  ...DOOR,
  width,
  height,
  ...parts,
});

describe('adviseDelivery', () => {
  it('asks nothing and says nothing where every piece passes for certain', () => {
    let calls = 0;
    const asked = question([DOOR, HALL], [SLATE]);
    const counting = { ...asked, cross: () => crossing({ atLeast: ++calls }) };
    expect(adviseDelivery(counting)).toEqual([]);
    expect(calls).toBe(0);
  });

  it('takes the door off where that much more width does it', () => {
    // Flat, 910 + 50 mm wide: 940 mm and a leaf of 44 mm are enough, 40 mm of height to spare.
    const flat = { ...SLATE, held: ['flat'] as const, tilt: 0 };
    const [first] = adviseDelivery(question([narrowDoor(940, 400, { leaf: 44 })], [flat]));
    expect(first).toEqual({
      kind: 'take-door-off',
      passage: 0,
      piece: 'slate',
      amount: 44,
      outcome: 'passes',
    });
    expect(kinds(adviseDelivery(question([narrowDoor(940, 400, { leaf: 15 })], [flat])))).not.toContain(
      'take-door-off',
    );
    expect(kinds(adviseDelivery(question([narrowDoor(940, 400)], [flat])))).not.toContain('take-door-off');
  });

  it('counts the floor beside a doorway from the wider edge, whichever side the leaf hangs on', () => {
    const beside = { ...ROOMY, left: 300, right: 20 };
    const asked: Passage[] = [];
    const cross = (passage: Passage): Crossing => {
      asked.push(passage);
      return crossing({ atLeast: passage.kind === 'doorway' && passage.width > 800 ? 1 : -1, atMost: -1 });
    };
    adviseDelivery(question([{ ...DOOR, leaf: 44, before: beside }], [SLATE], { cross, handRoom: 0 }));
    expect(asked).toContainEqual({
      ...DOOR,
      width: 844,
      leaf: 0,
      before: { ...ROOMY, left: 256, right: 0 },
    });
  });

  it('allows the hold that does it', () => {
    // Nothing but on edge goes through 100 x 1000: 40 + 50 wide, 910 + 50 high.
    const flat = { ...SLATE, held: ['flat'] as const, tilt: 0 };
    const found = adviseDelivery(question([narrowDoor(100, 1000)], [flat]));
    expect(found).toContainEqual({
      kind: 'allow-hold',
      passage: 0,
      piece: 'slate',
      hold: 'on-edge',
      outcome: 'passes',
    });
  });

  it('allows the least tilt, to the degree', () => {
    // Leaned out of flat by o it is 960 cos o + 90 sin o wide; on edge it would be too high.
    const flat = { ...SLATE, held: ['flat'] as const, tilt: Math.PI / 6 };
    const found = adviseDelivery(question([narrowDoor(710, 800)], [flat]));
    const tilt = found.find(({ kind }) => kind === 'allow-hold')?.tilt ?? 0;
    const o = (tilt * Math.PI) / 180;
    expect(960 * Math.cos(o) + 90 * Math.sin(o)).toBeLessThanOrEqual(710);
    const less = ((tilt - 1) * Math.PI) / 180;
    expect(960 * Math.cos(less) + 90 * Math.sin(less)).toBeGreaterThan(710);
    expect(tilt).toBeGreaterThan(30);
  });

  it('allows no hold where a bound rules out every motion, and asks for none', () => {
    const flat = { ...SLATE, held: ['flat'] as const };
    let calls = 0;
    const cross = (): Crossing => {
      calls++;
      return crossing({ atLeast: -50, atMost: -50, atMostAnyMotion: -20 });
    };
    const asked = question([DOOR], [flat], { cross, handRoom: 0 });
    calls = 0;
    expect(kinds(adviseDelivery(asked))).toEqual(['other-way']);
    // Twice for the widening, which this fake never lets pass.
    expect(calls).toBe(2);
  });

  it('finds the most hand room that passes, to the millimetre', () => {
    // On edge 40 + 2 r wide: 78 mm leave 19.
    const found = adviseDelivery(question([narrowDoor(78, 1600)], [{ ...SLATE, held: ['on-edge'] }]));
    expect(found.find(({ kind }) => kind === 'less-hand-room')?.amount).toBe(19);
    const bare = adviseDelivery(question([narrowDoor(41, 1600)], [{ ...SLATE, held: ['on-edge'] }]));
    expect(bare.find(({ kind }) => kind === 'less-hand-room')?.amount).toBe(0);
    const none = adviseDelivery(question([narrowDoor(39, 1600)], [{ ...SLATE, held: ['on-edge'] }]));
    expect(kinds(none)).not.toContain('less-hand-room');
  });

  it('names the first other set that passes as a whole', () => {
    const half = { ...SLATE, name: 'half slate', length: 700, width: 500 };
    const third = { ...SLATE, name: 'third', length: 500, width: 300 };
    const sets = [
      { name: 'one piece', pieces: [{ ...SLATE, width: 1300 }] },
      { name: 'two pieces', pieces: [half, { ...SLATE, name: 'frame', width: 1200, thickness: 200 }] },
      { name: 'three pieces', pieces: [third, half] },
      { name: 'four pieces', pieces: [third] },
    ];
    const found = adviseDelivery(question([narrowDoor(100, 600)], [SLATE], { otherSets: sets }));
    expect(found[0]).toEqual({ kind: 'other-pieces', pieces: 'three pieces', outcome: 'passes' });
    expect(kinds(found)).not.toContain('other-way');
  });

  it('asks for another set only where the present one does not pass', () => {
    const sets = [{ name: 'small', pieces: [{ ...SLATE, width: 300 }] }];
    expect(adviseDelivery(question([DOOR], [SLATE], { otherSets: sets }))).toEqual([]);
  });

  it('says by how much every measure would have to be larger, from a bracket and without one', () => {
    const edge = { ...SLATE, held: ['on-edge'] as const, tilt: 0 };
    const widening = (height: number, cross: DeliveryQuestion['cross']): number | undefined =>
      adviseDelivery(question([narrowDoor(300, height)], [edge], { cross })).find(
        ({ kind }) => kind === 'widen',
      )?.amount;
    // A method that only says yes or no: found by steps.
    const blind = (passage: Passage, box: Carried): Crossing => {
      const { atLeast } = crossSlot(passage, box);
      return crossing(atLeast >= 0 ? { atLeast } : {});
    };
    for (const cross of [crossSlot, blind]) {
      // On edge the slate is 910 + 50 mm high: more than 100 mm are not to be had.
      expect(widening(859, cross)).toBeUndefined();
      expect(widening(860, cross)).toBe(100);
      expect(widening(903, cross)).toBe(57);
      expect(widening(902.7, cross)).toBe(58);
    }
    // Nor does a bound that gives no figure stand in the way.
    expect(
      widening(903, (passage, box) =>
        passes(crossSlot(passage, box)) ? crossSlot(passage, box) : crossing({ atMost: -Infinity }),
      ),
    ).toBe(57);
  });

  it('names the passage to be avoided where nothing else helps, with the outcome of the rest', () => {
    const tight = narrowDoor(30, 2000, { name: 'hatch' });
    const alone = adviseDelivery(question([DOOR, tight, HALL], [SLATE]));
    expect(alone).toContainEqual({ kind: 'other-way', passage: 1, outcome: 'passes' });
    const edgeOnly = { ...SLATE, held: ['on-edge'] as const, tilt: 0 };
    const helped = narrowDoor(78, 2000, { name: 'side door' });
    const both = adviseDelivery(question([helped, tight], [edgeOnly]));
    expect(both).toContainEqual({ kind: 'other-way', passage: 1, outcome: 'blocked' });
    expect(both.some(({ kind, passage }) => kind === 'other-way' && passage === 0)).toBe(false);
  });

  it('sends back to the tape where the tolerance could change the outcome, and says which outcome it could bring', () => {
    const told = (parts: Partial<Crossing>): string | undefined =>
      adviseDelivery(question([HALL], [SLATE], { cross: () => crossing(parts), handRoom: 0 })).find(
        ({ kind }) => kind === 'measure-again',
      )?.outcome;
    expect(told({ atLeast: 4, atMost: 4 })).toBe('blocked');
    expect(told({ atLeast: 4, atMost: 40 })).toBe('undecided');
    expect(told({ atLeast: 10, atMost: 40 })).toBeUndefined();
    expect(told({ atLeast: -4, atMost: -4 })).toBe('passes');
    expect(told({ atLeast: -40, atMost: -4 })).toBe('undecided');
    expect(told({ atLeast: -40, atMost: -11 })).toBeUndefined();
    expect(told({ atLeast: -4, atMost: 30 })).toBe('passes');
    expect(told({ atLeast: -40, atMost: 4 })).toBe('blocked');
    expect(told({})).toBeUndefined();
  });

  it('puts first what makes the whole way pass', () => {
    const edge = { ...SLATE, held: ['on-edge'] as const, tilt: 0 };
    const leafDoor = narrowDoor(70, 2000, { leaf: 40 });
    const sets = [{ name: 'five pieces', pieces: [{ ...edge, width: 500, thickness: 15 }] }];
    const one = adviseDelivery(question([leafDoor, HALL], [edge], { otherSets: sets }));
    expect(kinds(one).slice(0, 3)).toEqual(['take-door-off', 'less-hand-room', 'other-pieces']);
    const two = adviseDelivery(
      question([leafDoor, narrowDoor(800, 700, { name: 'hatch' })], [edge], { otherSets: sets }),
    );
    expect(kinds(two).slice(0, 2)).toEqual(['other-pieces', 'take-door-off']);
  });

  it('changes the outcome in real corners and corridors too', () => {
    const corner = (width: number, height: number): Passage => ({
      kind: 'corner',
      name: 'corner',
      tolerance: 10,
      width,
      height,
      widthAfter: 900,
      heightAfter: height,
      angle: Math.PI / 2,
    });
    const cross = (passage: Passage, box: Carried): Crossing =>
      passage.kind === 'corner' ? crossCorner(passage, box) : crossSlot(passage, box);
    const met = new Set<string>();
    for (const [length, width, thickness, held, tilt, ceiling] of [
      [2560, 400, 30, ['on-edge'], 0.2, 2300],
      [2900, 720, 50, ['on-edge', 'on-end'], 0.785, 2300],
      [2410, 600, 40, ['on-edge'], 0, 2300],
      [2500, 1270, 30, ['on-edge', 'on-end'], 0.785, 2300],
      [1900, 900, 60, ['flat'], 0, 2300],
      [1900, 900, 60, ['on-end'], 0, 1800],
    ] as const) {
      const piece: Piece = { ...SLATE, length, width, thickness, held, tilt };
      const route = [corner(900, ceiling), HALL];
      for (const advice of adviseDelivery(question(route, [piece], { cross }))) {
        met.add(advice.kind);
        if (advice.kind === 'other-way' || advice.kind === 'measure-again') continue;
        const passage = route[advice.passage ?? 0] ?? HALL;
        expect(cross(passage, carriedWith(piece, 25)).atLeast).toBeLessThan(0);
        expect(applied(advice, passage, piece, 25, cross).atLeast).toBeGreaterThanOrEqual(0);
      }
    }
    expect([...met].sort()).toEqual(['allow-hold', 'less-hand-room', 'other-way', 'widen']);
  });

  it('changes the outcome with each advice when it is applied', () => {
    const measure = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const anyPiece = fc
      .record({
        sides: fc.tuple(measure(20, 2200), measure(20, 1400), measure(15, 400)),
        held: fc.subarray([...ANY], { minLength: 1 }),
        tilt: measure(0, Math.PI / 2),
      })
      .map(({ sides, held, tilt }, i = 0): Piece => {
        const [length = 0, width = 0, thickness = 0] = [...sides].sort((a, b) => b - a);
        return { ...SLATE, name: `piece ${i}`, length, width, thickness, held, tilt };
      });
    const anyDoor = fc
      .record({ width: measure(40, 1000), height: measure(300, 2100), leaf: fc.constantFrom(0, 35, 60) })
      .map((parts): Gate => ({ ...DOOR, ...parts }));
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(
        fc.array(anyDoor, { minLength: 1, maxLength: 3 }),
        fc.array(anyPiece, { minLength: 1, maxLength: 3 }),
        measure(0, 60),
        fc.constantFrom('closed-form', 'subdivision'),
        (route, unnamed, handRoom, method) => {
          const pieces = unnamed.map((piece, i) => ({ ...piece, name: `piece ${i}` }));
          let calls = 0;
          const cross = (passage: Passage, box: Carried): Crossing => {
            calls++;
            return { ...crossSlot(passage, box), method };
          };
          const otherSets = [{ name: 'small', pieces: [{ ...SLATE, width: 500, thickness: 20 }] }];
          const asked = question(route, pieces, { cross, handRoom, otherSets });
          calls = 0;
          const found = adviseDelivery(asked);
          expect(calls).toBeLessThanOrEqual(method === 'closed-form' ? 120 : 6);
          for (const advice of found) {
            seen.set(advice.kind, (seen.get(advice.kind) ?? 0) + 1);
            const passage = route[advice.passage ?? 0];
            const piece = pieces.find(({ name }) => name === advice.piece);
            if (advice.kind === 'other-pieces') {
              for (const door of route) {
                for (const other of otherSets[0]?.pieces ?? []) {
                  expect(crossSlot(door, carriedWith(other, handRoom)).atLeast).toBeGreaterThanOrEqual(0);
                }
              }
              continue;
            }
            if (passage === undefined) throw new Error('no passage');
            if (advice.kind === 'other-way') {
              expect(pieces.some((p) => crossSlot(passage, carriedWith(p, handRoom)).atLeast < 0)).toBe(true);
              continue;
            }
            if (piece === undefined) throw new Error('no piece');
            const before = crossSlot(passage, carriedWith(piece, handRoom));
            if (advice.kind === 'measure-again') {
              expect(Math.abs(before.atLeast)).toBeLessThanOrEqual(passage.tolerance);
              continue;
            }
            expect(before.atLeast).toBeLessThan(0);
            expect(applied(advice, passage, piece, handRoom).atLeast).toBeGreaterThanOrEqual(0);
          }
        },
      ),
      { seed: SEED, numRuns: 400 },
    );
    // Every kind was met, so that each was tested.
    expect([...seen.keys()].sort()).toEqual([
      'allow-hold',
      'less-hand-room',
      'measure-again',
      'other-pieces',
      'other-way',
      'take-door-off',
      'widen',
    ]);
  });
});

/** The answer once the advice is taken, by its words alone. */
function applied(
  advice: DeliveryAdvice,
  passage: Passage,
  piece: Piece,
  handRoom: number,
  crossIt: DeliveryQuestion['cross'] = crossSlot,
): Crossing {
  const { amount = Number.NaN } = advice;
  switch (advice.kind) {
    case 'take-door-off':
      if (passage.kind !== 'doorway') throw new Error('no door to take off');
      return crossIt({ ...passage, width: passage.width + amount }, carriedWith(piece, handRoom));
    case 'less-hand-room':
      expect(amount).toBeLessThan(handRoom);
      return crossIt(passage, carriedWith(piece, amount));
    case 'widen':
      return crossIt(narrowPassage(passage, -amount), carriedWith(piece, handRoom));
    default: {
      const held = advice.hold === undefined ? piece.held : [...piece.held, advice.hold];
      const tilt = advice.tilt === undefined ? piece.tilt : (advice.tilt * Math.PI) / 180;
      return crossIt(passage, carriedWith({ ...piece, held, tilt }, handRoom));
    }
  }
}
