import fc from 'fast-check';
import type {
  DeliveryAdvice,
  DeliveryOutcome,
  DeliveryReport,
  HoldReport,
  MomentReport,
  PassageAnswer,
  PieceAnswer,
} from '../../src/delivery/delivery-report.js';

export const ON_EDGE: HoldReport = {
  way: 'on-edge',
  tilt: 0,
  base: 'on-edge',
  planLength: 1500,
  planWidth: 90,
  height: 960,
};
export const TILTED: HoldReport = { ...ON_EDGE, way: 'tilted', tilt: 32.84, planLength: 1260, height: 1600 };

/** One piece in one passage for hand-made reports; its figures are invented. */
export function samplePassage(parts: Partial<PassageAnswer> = {}): PassageAnswer {
  return {
    passage: 'front door',
    kind: 'doorway',
    outcome: 'passes',
    certain: true,
    anyMotion: false,
    hold: ON_EDGE,
    spare: { atLeast: 412, atMost: 412.1 },
    withoutHandRoom: false,
    narrowest: null,
    method: 'closed-form',
    replayed: 206,
    ...parts,
  };
}

export const CORNER: PassageAnswer = samplePassage({
  passage: 'corner at the stairs',
  kind: 'corner',
  hold: TILTED,
  spare: { atLeast: 43.7, atMost: 43.8 },
  narrowest: { x: 900, y: 600, z: 800, heading: 139, tilt: 32.84, roll: 0 },
});
export const BLOCKED: PassageAnswer = {
  ...CORNER,
  outcome: 'blocked',
  anyMotion: true,
  spare: { atLeast: -36.4, atMost: -36.3 },
  replayed: null,
};
export const UNDECIDED: PassageAnswer = {
  ...CORNER,
  outcome: 'undecided',
  certain: false,
  spare: { atLeast: -21, atMost: 12 },
  narrowest: null,
  hold: null,
  method: 'none',
  replayed: null,
};

export function samplePiece(
  passages: readonly PassageAnswer[],
  parts: Partial<PieceAnswer> = {},
): PieceAnswer {
  return {
    name: 'slate',
    count: 3,
    size: { length: 1450, width: 910, thickness: 40 },
    mass: 104.5,
    carriers: 4,
    massPerCarrier: 26.125,
    outcome: worst(passages.map(({ outcome }) => outcome)),
    certain: passages.every(({ certain }) => certain),
    passages,
    holdChanges: [],
    ...parts,
  };
}

/** A hand-made report whose numbers need not agree with each other; parts can be replaced. */
export function sampleDelivery(
  pieces: readonly PieceAnswer[],
  parts: Partial<DeliveryReport> = {},
): DeliveryReport {
  return {
    outcome: worst(pieces.map(({ outcome }) => outcome)),
    certain: pieces.every(({ certain }) => certain),
    pieceSet: 'three-piece',
    handRoom: 25,
    pieces,
    advice: [],
    cautions: [
      { code: 'floor-protection', message: 'Cover the floors.', source: 'common practice, no source' },
    ],
    assumptions: ['A wall is taken to be 150 mm deep.'],
    ...parts,
  };
}

function worst(outcomes: readonly DeliveryOutcome[]): DeliveryOutcome {
  if (outcomes.includes('blocked')) return 'blocked';
  return outcomes.includes('undecided') ? 'undecided' : 'passes';
}

const measure = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
// Words apart, so that wrapping cannot cut a name and the test can look for it.
const name = fc
  .array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 4 })
  .map((list) => list.join(' '));
const base = fc.constantFrom('flat', 'on-edge', 'on-end');

const hold: fc.Arbitrary<HoldReport> = fc
  .record({
    base,
    kind: fc.constantFrom('level', 'leaned', 'tilted'),
    tilt: measure(0, 45),
    planLength: measure(20, 3000),
    planWidth: measure(20, 3000),
    height: measure(20, 3000),
  })
  .map(({ kind, ...rest }) => ({
    ...rest,
    way: kind === 'level' ? rest.base : kind,
    tilt: kind === 'level' ? 0 : rest.tilt,
  }));

const moment: fc.Arbitrary<MomentReport> = fc.record({
  x: measure(-3000, 3000),
  y: measure(-3000, 3000),
  z: measure(0, 3000),
  heading: measure(-360, 720),
  tilt: measure(-60, 60),
  roll: fc.oneof(fc.constant(0), measure(-180, 180)),
});

/** Spares that an outcome allows: small ones are the hard ones to say. */
function spareOf(outcome: DeliveryOutcome): fc.Arbitrary<PassageAnswer['spare']> {
  const size = fc.oneof(measure(0, 900), measure(0, 15), fc.constantFrom(0, 1e-9, 10, 12.7));
  const more = fc.oneof(fc.constant(0), measure(0, 300));
  switch (outcome) {
    case 'passes':
      return fc.record({ atLeast: size, atMost: fc.option(measure(900, 2000)) });
    case 'blocked':
      // A bound below zero, by however little.
      return fc.tuple(size, fc.option(more)).map(([least, gap]) => ({
        atMost: -least - 1e-12,
        atLeast: gap === null ? null : -least - 1e-12 - gap,
      }));
    case 'undecided':
      return fc
        .tuple(fc.option(size), fc.option(measure(0, 500)))
        .map(([missing, atMost]) => ({ atLeast: missing === null ? null : -missing - 1e-12, atMost }));
  }
}

const anyPassage = (passage: string): fc.Arbitrary<PassageAnswer> =>
  fc.constantFrom<DeliveryOutcome[]>('passes', 'passes', 'blocked', 'undecided').chain((outcome) =>
    fc.record({
      passage: fc.constant(passage),
      kind: fc.constantFrom<PassageAnswer['kind'][]>(
        'doorway',
        'corridor',
        'corner',
        'stair',
        'quarter-landing',
        'half-landing',
        'winder',
        'lift',
        'opening',
      ),
      outcome: fc.constant(outcome),
      certain: outcome === 'undecided' ? fc.constant(false) : fc.boolean(),
      anyMotion: outcome === 'blocked' ? fc.boolean() : fc.constant(false),
      hold: fc.option(hold),
      spare: spareOf(outcome),
      withoutHandRoom: outcome === 'passes' ? fc.constant(false) : fc.boolean(),
      narrowest: fc.option(moment),
      method: fc.constantFrom('closed-form', 'subdivision', 'none'),
      replayed: outcome === 'passes' ? measure(0, 300) : fc.constant(null),
    }),
  );

const advice: fc.Arbitrary<DeliveryAdvice> = fc.record(
  {
    kind: fc.constantFrom<DeliveryAdvice['kind'][]>(
      'take-door-off',
      'other-pieces',
      'allow-hold',
      'less-hand-room',
      'widen',
      'other-way',
      'measure-again',
    ),
    outcome: fc.constantFrom<DeliveryOutcome[]>('passes', 'blocked', 'undecided'),
    passage: fc.integer({ min: 0, max: 3 }),
    piece: name,
    pieces: name,
    hold: base,
    tilt: measure(0, 90),
    amount: measure(0, 400),
  },
  { requiredKeys: ['kind', 'outcome'] },
);

/** Any report that the types allow, and a few that no assessment would give. */
export const anyDelivery: fc.Arbitrary<DeliveryReport> = fc
  .array(name, { maxLength: 4 })
  .chain((route) =>
    fc.record({
      pieces: fc.array(
        fc
          .record({
            name,
            count: fc.integer({ min: 1, max: 5 }),
            size: fc.record({
              length: measure(20, 3000),
              width: measure(20, 3000),
              thickness: measure(10, 800),
            }),
            mass: fc.option(measure(0.1, 900)),
            carriers: fc.option(fc.integer({ min: 1, max: 6 })),
            passages: fc.tuple(...route.map(anyPassage)),
            changes: fc.array(
              fc.record({
                after: fc.integer({ min: 0, max: 3 }),
                from: hold,
                to: hold,
                needsHeight: measure(100, 3000),
                needsFloor: measure(100, 3000),
              }),
              { maxLength: 3 },
            ),
          })
          .map(({ changes, passages, ...rest }) =>
            samplePiece(passages, {
              ...rest,
              massPerCarrier: rest.mass === null || rest.carriers === null ? null : rest.mass / rest.carriers,
              holdChanges: changes.filter(({ after }) => after + 1 < passages.length),
            }),
          ),
        { maxLength: 4 },
      ),
      handRoom: fc.oneof(fc.constant(0), measure(0, 100)),
      pieceSet: fc.option(name),
      advice: fc.array(advice, { maxLength: 5 }),
      assumptions: fc.array(name, { maxLength: 3 }),
    }),
  )
  .map(({ pieces, ...parts }) => sampleDelivery(pieces, parts));
