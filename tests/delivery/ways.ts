/** Ways in of our own making, for tests and the bench: none is a real house. */
import type { DeliveryInput, PassageInput, PieceInput } from '../../src/delivery/delivery-input.js';

/** Six passages that formulas decide. */
export const PLAIN_ROUTE: readonly PassageInput[] = [
  { kind: 'doorway', name: 'front door', width: 830, height: 2000 },
  { kind: 'corridor', name: 'hall', width: 1100, height: 2400 },
  { kind: 'corner', name: 'end of the hall', width: 1100, widthAfter: 1000, height: 2400 },
  { kind: 'stair', name: 'cellar stair', width: 900, headroom: 2000, rise: 190, going: 250 },
  { kind: 'corner', name: 'foot of the stair', width: 1200, widthAfter: 1100, height: 2200, turn: 75 },
  { kind: 'doorway', name: 'games-room door', width: 800, height: 1981, leaf: 40 },
];

/** Six passages of which two need a search: a door in the side of a corridor, and a lift that is entered from a narrow lobby. */
export const SEARCHED_ROUTE: readonly PassageInput[] = [
  { kind: 'doorway', name: 'street door', width: 900, height: 2050 },
  { kind: 'corridor', name: 'passage', width: 1200, height: 2400 },
  { kind: 'doorway', name: 'side door', width: 820, height: 2000, depth: 120, before: { depth: 1200 } },
  { kind: 'corner', name: 'turn', width: 1100, height: 2400 },
  {
    kind: 'lift',
    name: 'lift',
    width: 1400,
    depth: 1800,
    height: 2200,
    door: { width: 900, height: 2050 },
    before: { depth: 1500 },
  },
  { kind: 'doorway', name: 'flat door', width: 830, height: 2000 },
];

/** Five pieces, no two alike. */
export const FIVE_PIECES: readonly PieceInput[] = [
  { name: 'middle slate', length: 1450, width: 910, thickness: 45, mass: 96, held: ['on-edge', 'on-end'] },
  { name: 'end slate', length: 1440, width: 900, thickness: 45, mass: 95, held: ['on-edge', 'on-end'] },
  { name: 'frame side', length: 2300, width: 250, thickness: 40, mass: 17 },
  { name: 'rail', length: 1250, width: 130, thickness: 52, mass: 6, count: 6 },
  { name: 'crate', length: 1200, width: 500, thickness: 400, mass: 40 },
];

export const PLAIN_WAY: DeliveryInput = { route: PLAIN_ROUTE, pieces: FIVE_PIECES };
export const SEARCHED_WAY: DeliveryInput = { route: SEARCHED_ROUTE, pieces: FIVE_PIECES };
