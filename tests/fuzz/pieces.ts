import fc from 'fast-check';
import type {
  ArrangementInput,
  FurnishingInput,
  UseZoneInput,
} from '../../src/arrangement/furnishing-input.js';
import { FURNISHING_IDS } from '../../src/equipment/furnishings-ids.js';
import type { Point } from '../../src/geometry/types.js';
import type { Length } from '../../src/length/length.js';
import { mostly } from './shapes.js';

/** Where shares of the room's box are. */
type At = (x: number, y: number) => Point;

const size = fc.integer({ min: 5, max: 3000 });
const zoneSide = mostly(
  fc.constantFrom<Length>(0, 300, '60 cm', 1200, 2440),
  fc.constantFrom<Length>(-1, 1e6),
);

const zone: fc.Arbitrary<UseZoneInput> = fc.record(
  {
    front: zoneSide,
    back: zoneSide,
    left: zoneSide,
    right: zoneSide,
    from: fc.constantFrom(0, 400),
    to: fc.constantFrom(1200, 2000),
    shares: fc.subarray(['cueing' as const, 'zones' as const]),
    offDoors: fc.boolean(),
  },
  { requiredKeys: [] },
);

const footprint: fc.Arbitrary<NonNullable<FurnishingInput['footprint']>> = fc.oneof(
  fc.record({ length: size, width: size }),
  size.map((diameter) => ({ diameter })),
  fc.tuple(size, size).map(([length, width]): Point[] => [
    [0, 0],
    [length, 0],
    [length, width / 2],
    [length / 2, width / 2],
    [length / 2, width],
    [0, width],
  ]),
  fc.tuple(size, size).map(([length, width]): Point[] => [
    [0, 0],
    [length, 0],
    [0, width],
  ]),
);

const ways = fc.record(
  {
    stands: fc.constantFrom(
      'wall' as const,
      'corner' as const,
      'free' as const,
      'hung' as const,
      'over-table' as const,
    ),
    turns: fc.oneof(
      fc.constantFrom('back' as const, 'square' as const, 'any' as const),
      fc.array(fc.constantFrom(0, 33.3, 90, 359.999, -45), { minLength: 1, maxLength: 3 }),
    ),
    zones: fc.array(zone, { maxLength: 2 }),
    from: mostly(fc.constantFrom<Length>(0, 900, '1.5 m'), fc.constant(-5)),
    mass: mostly(fc.integer({ min: 1, max: 500 }), fc.constant(0)),
  },
  { requiredKeys: [] },
);

const place = fc.option(
  fc.tuple(
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.constantFrom(0, 45, 90, -90, 1e-9, 720),
  ),
  { nil: null, freq: 1 },
);

const piece: fc.Arbitrary<(at: At) => FurnishingInput> = fc
  .tuple(
    fc.oneof(
      fc.constantFrom(...FURNISHING_IDS).map((kind) => ({ kind })),
      fc.record({ footprint, height: fc.integer({ min: 5, max: 2500 }) }),
    ),
    fc.oneof({ weight: 2, arbitrary: fc.constant({}) }, { weight: 1, arbitrary: ways }),
    place,
  )
  .map(([what, how, spot]) => (at) => {
    if (spot === null) return { ...what, ...how };
    const [x, y] = at(spot[0], spot[1]);
    return { ...what, ...how, pose: { x, y, turn: spot[2] } };
  });

const arrangement: fc.Arbitrary<ArrangementInput> = fc.record(
  {
    effort: fc.constantFrom(1, 2, 4),
    way: mostly(fc.constantFrom<Length>(600, '80 cm', 300, 1200), fc.constant(0)),
    onProgress: fc.constantFrom(
      () => undefined,
      () => false,
    ),
  },
  { requiredKeys: ['effort'] },
);

export interface Pieces {
  readonly furnishings: readonly FurnishingInput[];
  readonly arrangement: ArrangementInput;
}

/** Other pieces for a room, of the catalogue and by their measurements, some with a place; looked for a place with little effort. */
export const pieces: fc.Arbitrary<(at: At) => Pieces> = fc
  .tuple(fc.array(piece, { minLength: 1, maxLength: 3 }), arrangement)
  .map(([made, how]) => (at) => ({ furnishings: made.map((make) => make(at)), arrangement: how }));
