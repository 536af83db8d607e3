import type { TableId } from '../../src/equipment/tables.js';

/**
 * Published room sizes, every row of them, beside the rule that its author gives. Lengths in mm, from the printed feet, inches
 * and centimetres.
 *
 * How a rule becomes a stroke. All these rules say: room = rectangle of the table + twice a clear distance. The model says: field +
 * twice (cue + backswing + margin). So a row is asked with margin 0 and a cue and backswing that add up to the clear distance,
 * as measured from the nose:
 * - measured from the playing area: that is it;
 * - measured from the nominal size ("12 x 6 ft"): the table asked about is given the nominal size as its field, because that is the
 *   rectangle the rule starts from; the true field of a table of that name is smaller, see `catalogue`;
 * - measured from the outside of the rail: the clear distance and the rail's width.
 */
export interface RoomRow {
  readonly source: string;
  /** How far the figures can be trusted. */
  readonly tag: 'seen' | 'second-hand' | 'from memory' | 'derived';
  readonly table: string;
  readonly datum: 'nominal size' | 'playing area' | 'outside of the rail';
  /** The field asked about, and the outside of its rails. */
  readonly field: Size;
  readonly outer: Size;
  readonly room: Size;
  /** The author's clear distance, from the datum. */
  readonly clear: number;
  /** The cue that the author has in mind; the rest of the distance is backswing. */
  readonly cue: number;
  /**
   * What the printed room has more (less, if negative) than the author's own rule, at each end and on each side; 0: the row keeps
   * its rule exactly.
   */
  readonly off: { readonly along: number; readonly across: number };
  /** A table of the catalogue that goes by this name. */
  readonly catalogue?: TableId;
}

interface Size {
  readonly length: number;
  readonly width: number;
}

const INCH = 25.4;
const FOOT = 12 * INCH;
const KEPT = { along: 0, across: 0 };

const feet = (length: number, width: number): Size => ({ length: length * FOOT, width: width * FOOT });
const inches = (length: number, width: number): Size => ({ length: length * INCH, width: width * INCH });
const centimetres = (length: number, width: number): Size => ({ length: length * 10, width: width * 10 });

const CUE_57 = 57 * INCH;

/** A field with its rails. Where a rule starts from the nominal size or the playing area they do not enter it; 5 in are usual. */
const table = (field: Size, rail = 5 * INCH): { readonly field: Size; readonly outer: Size } => ({
  field,
  outer: { length: field.length + 2 * rail, width: field.width + 2 * rail },
});

const GARNO = {
  source: 'B. Garno, Modern Billiards (late 19th century), the billiard room: 5 ft of clear floor',
  tag: 'seen',
  datum: 'nominal size',
  clear: 5 * FOOT,
  cue: CUE_57,
} as const;

const BROADFOOT = {
  source: 'W. Broadfoot (ed.), Billiards, Badminton Library (1896): 6 ft called the regulation space',
  tag: 'seen',
  table: '12 x 6 ft',
  datum: 'nominal size',
  ...table(feet(12, 6)),
  clear: 6 * FOOT,
  cue: CUE_57,
  catalogue: 'snooker-12ft',
} as const;

const OLDER = {
  source: 'Wikipedia, Billiard room, older text: cue a bit under 5 ft + 6 in of stroke, rounded up to 6 ft',
  tag: 'seen',
  datum: 'nominal size',
  clear: 6 * FOOT,
  cue: CUE_57,
} as const;

const NEWER = {
  source: 'Wikipedia, Billiard room, newer text: 5 ft all round (the rule is seen, its sums are derived)',
  tag: 'derived',
  datum: 'nominal size',
  clear: 5 * FOOT,
  cue: CUE_57,
  off: KEPT,
} as const;

const NEUFERT = {
  source: 'E. Neufert, Bauentwurfslehre: 145 cm round the playing area, no stroke',
  tag: 'from memory',
  datum: 'playing area',
  clear: 1450,
  cue: 1450,
  off: KEPT,
} as const;

const WPA = {
  source: 'WPA Recommended Equipment Specifications (2001), s. 19: 6 ft from the outside edge of the rail',
  tag: 'derived',
  datum: 'outside of the rail',
  clear: 6 * FOOT,
  cue: 58 * INCH,
  off: KEPT,
} as const;

export const ROOM_ROWS: readonly RoomRow[] = [
  {
    ...GARNO,
    table: '12 x 6 ft',
    ...table(feet(12, 6)),
    room: feet(22, 16),
    off: KEPT,
    catalogue: 'snooker-12ft',
  },
  // The scan drops the half in the width of the table; its own rule implies it.
  { ...GARNO, table: '11 x 5 1/2 ft', ...table(feet(11, 5.5)), room: feet(21, 15.5), off: KEPT },
  {
    ...GARNO,
    table: '10 x 5 ft',
    ...table(feet(10, 5)),
    room: feet(20, 15),
    off: KEPT,
    catalogue: 'carom-match',
  },
  {
    ...GARNO,
    table: '9 x 4 1/2 ft',
    ...table(feet(9, 4.5)),
    room: feet(18.5, 14.5),
    off: { along: -0.25 * FOOT, across: 0 },
    catalogue: 'pool-9ft',
  },
  {
    ...GARNO,
    table: '8 x 4 ft',
    ...table(feet(8, 4)),
    room: feet(17.5, 14),
    off: { along: -0.25 * FOOT, across: 0 },
    catalogue: 'pool-8ft-home',
  },
  {
    ...GARNO,
    table: '7 x 3 1/2 ft',
    ...table(feet(7, 3.5)),
    room: feet(15, 12),
    off: { along: -1 * FOOT, across: -0.75 * FOOT },
    catalogue: 'pool-7ft-bar',
  },
  { ...BROADFOOT, room: feet(24, 18), off: KEPT },
  // Advised, with seats and smokers: more than the regulation space.
  { ...BROADFOOT, room: feet(30, 20), off: { along: 3 * FOOT, across: 1 * FOOT } },
  { ...BROADFOOT, room: feet(32, 20), off: { along: 4 * FOOT, across: 1 * FOOT } },
  // Inconsistent in itself: its own 6 ft give 19 x 15 1/2 ft.
  {
    ...OLDER,
    table: '7 x 3 1/2 ft',
    ...table(feet(7, 3.5)),
    room: feet(17, 15.5),
    off: { along: -1 * FOOT, across: 0 },
    catalogue: 'pool-7ft-bar',
  },
  {
    ...OLDER,
    table: '8 x 4 ft',
    ...table(feet(8, 4)),
    room: feet(20, 16),
    off: KEPT,
    catalogue: 'pool-8ft-home',
  },
  {
    ...OLDER,
    table: '9 x 4 1/2 ft',
    ...table(feet(9, 4.5)),
    room: feet(21, 16.5),
    off: KEPT,
    catalogue: 'pool-9ft',
  },
  {
    ...OLDER,
    table: '10 x 5 ft carom',
    ...table(feet(10, 5)),
    room: feet(22, 17),
    off: KEPT,
    catalogue: 'carom-match',
  },
  // Longer cues: 7 ft.
  {
    ...OLDER,
    table: '10 x 5 ft snooker',
    ...table(feet(10, 5)),
    room: feet(24, 19),
    clear: 7 * FOOT,
    off: KEPT,
  },
  {
    ...OLDER,
    tag: 'from memory',
    table: '12 x 6 ft snooker',
    ...table(feet(12, 6)),
    room: feet(26, 20),
    clear: 7 * FOOT,
    off: KEPT,
    catalogue: 'snooker-12ft',
  },
  {
    ...NEWER,
    table: '7 x 3 1/2 ft',
    ...table(feet(7, 3.5)),
    room: feet(17, 13.5),
    catalogue: 'pool-7ft-bar',
  },
  { ...NEWER, table: '8 x 4 ft', ...table(feet(8, 4)), room: feet(18, 14), catalogue: 'pool-8ft-home' },
  { ...NEWER, table: '9 x 4 1/2 ft', ...table(feet(9, 4.5)), room: feet(19, 14.5), catalogue: 'pool-9ft' },
  { ...NEWER, table: '10 x 5 ft', ...table(feet(10, 5)), room: feet(20, 15), catalogue: 'carom-match' },
  { ...NEWER, table: '12 x 6 ft', ...table(feet(12, 6)), room: feet(22, 16), catalogue: 'snooker-12ft' },
  { ...NEUFERT, table: '285 x 142.5 cm', ...table(centimetres(285, 142.5)), room: centimetres(575, 432.5) },
  {
    ...NEUFERT,
    table: '230 x 115 cm',
    ...table(centimetres(230, 115)),
    room: centimetres(520, 405),
    catalogue: 'carom-half-de',
  },
  { ...NEUFERT, table: '220 x 110 cm', ...table(centimetres(220, 110)), room: centimetres(510, 400) },
  { ...NEUFERT, table: '200 x 100 cm', ...table(centimetres(200, 100)), room: centimetres(490, 390) },
  { ...NEUFERT, table: '190 x 95 cm', ...table(centimetres(190, 95)), room: centimetres(480, 385) },
  { ...WPA, table: '9 ft, rail 4 in', ...table(inches(100, 50), 4 * INCH), room: inches(252, 202) },
  {
    ...WPA,
    table: '9 ft, rail 5 in',
    ...table(inches(100, 50), 5 * INCH),
    room: inches(254, 204),
    catalogue: 'pool-9ft',
  },
  { ...WPA, table: '9 ft, rail 7 1/2 in', ...table(inches(100, 50), 7.5 * INCH), room: inches(259, 209) },
  { ...WPA, table: '8 ft, rail 4 in', ...table(inches(92, 46), 4 * INCH), room: inches(244, 198) },
  {
    ...WPA,
    table: '8 ft, rail 5 in',
    ...table(inches(92, 46), 5 * INCH),
    room: inches(246, 200),
    catalogue: 'pool-8ft-wpa',
  },
  { ...WPA, table: '8 ft, rail 7 1/2 in', ...table(inches(92, 46), 7.5 * INCH), room: inches(251, 205) },
  {
    source:
      'DBU Materialnormen Snooker, s. 3.2: 1.50 m from the outside edge; outside 3.85 x 2.06 m second-hand',
    tag: 'derived',
    table: '12 ft snooker',
    datum: 'outside of the rail',
    field: { length: 3569, width: 1778 },
    outer: { length: 3850, width: 2060 },
    room: { length: 6850, width: 5060 },
    clear: 1500,
    cue: CUE_57,
    off: KEPT,
    catalogue: 'snooker-12ft',
  },
];

/** The clear distance of the author's rule, from the nose. */
export function ruleReach({ datum, clear, field, outer }: RoomRow): Reach {
  if (datum !== 'outside of the rail') return { along: clear, across: clear };
  return {
    along: clear + (outer.length - field.length) / 2,
    across: clear + (outer.width - field.width) / 2,
  };
}

/** What the printed room gives from the nose to the wall, the table in its middle. */
export function printedReach({ room, field }: RoomRow): Reach {
  return { along: (room.length - field.length) / 2, across: (room.width - field.width) / 2 };
}

export interface Reach {
  readonly along: number;
  readonly across: number;
}
