import fc from 'fast-check';
import type { DeliveryInput, PassageInput, PieceInput } from '../../src/delivery/delivery-input.js';

/** A measure about so large, and now and then one that is far off. */
function about(least: number, most: number): fc.Arbitrary<number> {
  return fc.oneof(
    { weight: 50, arbitrary: fc.integer({ min: least, max: most }) },
    { weight: 10, arbitrary: fc.double({ min: least, max: most, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(least, most, 0, 1e-9, 1e6) },
  );
}

const width = about(300, 1600);
const height = about(1500, 2800);
const space = fc.record(
  { depth: about(100, 3000), left: about(0, 1500), right: about(0, 1500), height: about(1800, 2800) },
  { requiredKeys: ['depth'] },
);
const tolerance = fc.constantFrom(0, 10, 50);

const passage: fc.Arbitrary<PassageInput> = fc.oneof(
  fc.record(
    {
      kind: fc.constant('doorway' as const),
      width,
      height,
      depth: about(0, 600),
      leaf: about(5, 150),
      before: space,
      after: space,
      tolerance,
    },
    { requiredKeys: ['kind', 'width', 'height'] },
  ),
  fc.record(
    {
      kind: fc.constant('opening' as const),
      width,
      height,
      depth: about(0, 600),
      sill: about(0, 1500),
      before: space,
      after: space,
    },
    { requiredKeys: ['kind', 'width', 'height'] },
  ),
  fc.record({ kind: fc.constant('corridor' as const), width, height, tolerance }),
  fc.record(
    {
      kind: fc.constant('corner' as const),
      width,
      height,
      widthAfter: width,
      heightAfter: height,
      turn: about(5, 175),
    },
    { requiredKeys: ['kind', 'width', 'height'] },
  ),
  fc.record(
    {
      kind: fc.constant('stair' as const),
      width,
      headroom: height,
      pitch: about(2, 75),
      run: about(100, 9000),
      bottom: space.map(({ depth }) => ({ depth })),
      top: fc.constant({ depth: 1000 }),
    },
    { requiredKeys: ['kind', 'width', 'headroom', 'pitch'] },
  ),
  fc.record(
    {
      kind: fc.constant('quarter-landing' as const),
      width,
      widthAfter: width,
      headroom: height,
      pitch: about(2, 75),
      depth: width,
      breadth: width,
    },
    { requiredKeys: ['kind', 'width', 'headroom', 'pitch'] },
  ),
  fc.record(
    {
      kind: fc.constant('half-landing' as const),
      width,
      headroom: height,
      rise: about(20, 400),
      going: about(50, 1500),
      depth: width,
      well: about(0, 300),
    },
    { requiredKeys: ['kind', 'width', 'headroom', 'rise', 'going'] },
  ),
  fc.record(
    {
      kind: fc.constant('winder' as const),
      width,
      headroom: height,
      pitch: about(2, 75),
      climb: about(50, 3000),
    },
    { requiredKeys: ['kind', 'width', 'headroom', 'pitch'] },
  ),
  fc.record({
    kind: fc.constant('lift' as const),
    width: about(400, 3000),
    depth: about(400, 3000),
    height: about(1000, 3000),
    door: fc.record({ width, height }),
  }),
);

const piece: fc.Arbitrary<PieceInput> = fc
  .record(
    {
      length: about(5, 3000),
      width: about(5, 1800),
      thickness: about(5, 1000),
      count: fc.constantFrom(1, 3, 200),
      mass: about(1, 900),
      tilt: fc.constantFrom(0, 45, 90, 12.5),
      held: fc.subarray(['flat' as const, 'on-edge' as const, 'on-end' as const], { minLength: 1 }),
    },
    { requiredKeys: ['length', 'width', 'thickness'] },
  )
  .map((rest) => ({ name: 'Crate', ...rest }));

/** Ways in, good and bad, with few boxes to search. */
export const way: fc.Arbitrary<DeliveryInput> = fc.record(
  {
    route: fc.array(passage, { minLength: 1, maxLength: 3 }),
    pieces: fc.oneof(
      fc.constant('one-piece'),
      piece.map((one) => [one]),
    ),
    handRoom: fc.constantFrom(0, 20, 200),
    tolerance,
    detail: fc.constantFrom('answer' as const, 'motions' as const),
    maxBoxes: fc.constantFrom(1, 100, 500),
  },
  { requiredKeys: ['route', 'maxBoxes'] },
);
