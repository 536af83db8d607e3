import { DEFAULTS } from './defaults.js';
import type { FieldSize, TableSpec } from './equipment-types.js';

/** kg/m3: an older text of the WPA specification prints 180 lb/ft3, second-hand. */
export const SLATE_DENSITY = 2883;
/** kg/m3, hardwood; from memory. */
export const TIMBER_DENSITY = 700;
/** kg/m3, fibre board; from memory. */
const BOARD_DENSITY = 750;

/** The bed of a table: what it is made of and in how many pieces it comes. mm, kg/m3. */
export interface BedRule {
  readonly thickness: number;
  /** Timber under each slate, carried with it. */
  readonly backing: number;
  readonly density: number;
  /** A bed of board: the table is carried whole. */
  readonly board: boolean;
  /** Small enough to be carried on a cabinet in one. */
  readonly compact: boolean;
  /** Numbers of slates in use, the most usual one first. */
  readonly slates: readonly (1 | 3 | 5)[];
  /** How far the bed runs on under the cushions, as a share of the rail's width. */
  readonly underRail: number;
  readonly words: string;
}

/** What the bed rests on. mm. */
export interface FrameRule {
  readonly heavy: boolean;
  readonly pockets: boolean;
  readonly height: number;
  readonly thickness: number;
  readonly crossMembers: number;
  readonly railWidth: number;
  readonly railThickness: number;
  readonly legs: number;
  readonly legSide: number;
  /** Floor to the underside of the bed. */
  readonly underBed: number;
  readonly cabinetHeight: number;
  /** Thickness of a cabinet's sides and of its floor. */
  readonly panel: number;
  readonly floor: number;
  readonly words: string;
}

interface GameRule {
  readonly underRail: number;
  /** Thickness of the slate from this length of field on, the longest first. */
  readonly thickness: readonly (readonly [from: number, thickness: number])[];
  readonly thicknessWords: string;
  readonly backing: number;
  readonly heavy: boolean;
  readonly pockets: boolean;
}

const PRACTICE = 'common practice, no source';

/** Shares under the rail give the beds that are printed: 3658 x 1867 mm for full-size snooker. */
const GAMES: Readonly<Record<string, GameRule>> = {
  snooker: {
    underRail: 0.32,
    thickness: [
      [3200, 50],
      [2500, 38],
      [0, 25.4],
    ],
    thicknessWords:
      'about 2 in thick at full size (Britannica, 14th ed., second-hand), 38 and 25.4 mm on smaller tables (from memory)',
    backing: 0,
    heavy: true,
    pockets: true,
  },
  pyramid: {
    underRail: 0.35,
    thickness: [
      [2500, 45],
      [0, 25.4],
    ],
    thicknessWords: '45 mm thick, 25.4 mm on small tables (from memory)',
    backing: 0,
    heavy: true,
    pockets: true,
  },
  carom: {
    underRail: 0.4,
    thickness: [[0, 45]],
    thicknessWords: '45 mm thick, the least that is allowed (UMB rules, art. 2; DBU carom rules, s. 2)',
    backing: 0,
    heavy: true,
    pockets: false,
  },
  'english pool': {
    underRail: 0.5,
    thickness: [[0, 19]],
    thicknessWords: '19 mm (3/4 in) thick (from memory)',
    backing: 0,
    heavy: false,
    pockets: true,
  },
};

const POOL: GameRule = {
  underRail: 0.7,
  thickness: [[0, 25.4]],
  thicknessWords:
    '1 in thick on 3/4 in of timber, the least that is allowed (WPA Recommended Equipment Specifications (2001), s. 4)',
  backing: 19.05,
  heavy: false,
  pockets: true,
};

/** Fields of pocket tables from this length on, mm: five slates; more than one in any case; a frame that comes apart; a bed of slate. Common practice, no source. */
const FIVE_SLATES = 3200;
const NOT_IN_ONE = 2700;
const FRAMED = 2200;
const SLATE_BED = 1500;
/** No slate heavier than this is in use, kg, unless the table has no smaller; common practice, no source. */
const HEAVIEST_SLATE = 300;
/** A table that is said to weigh less than this times its slate has none. */
const SLATE_SHARE = 1.1;
const BOARD_THICKNESS = 18;

function gameRule(table: TableSpec): GameRule {
  const game = table.game.trim().toLowerCase();
  if (game === 'blackball') return GAMES['english pool'];
  return Object.hasOwn(GAMES, game) ? GAMES[game] : POOL;
}

/** The bed that a table of this game and size usually has. */
export function bedRule(table: TableSpec): BedRule {
  const game = gameRule(table);
  const { length } = table.field;
  const [, thickness] = game.thickness.find(([from]) => length >= from) ?? [0, BOARD_THICKNESS];
  const bed = bedOf(table, game);
  const slateMass = bed.length * bed.width * thickness * SLATE_DENSITY * 1e-9;
  const light = table.mass !== null && table.mass < SLATE_SHARE * slateMass;
  const { underRail } = game;
  const size = `derived, the field and ${underRail} of the rail's width all round (${PRACTICE})`;
  if (length < SLATE_BED || light) {
    return {
      underRail,
      thickness: BOARD_THICKNESS,
      backing: 0,
      density: BOARD_DENSITY,
      board: true,
      compact: true,
      slates: [],
      words: `Bed: of board, because the table is ${light ? 'too light for slate' : 'small'} (${PRACTICE}); its size ${size}.`,
    };
  }
  const compact = length < FRAMED && game.pockets;
  return {
    underRail,
    thickness,
    backing: compact ? 0 : game.backing,
    density: SLATE_DENSITY,
    board: false,
    compact,
    slates: slateCounts(length, game.pockets, slateMass),
    words: `Slate: size ${size}; ${game.thicknessWords}; mass derived, ${SLATE_DENSITY} kg/m3 (an older text of the WPA specification, second-hand).`,
  };
}

function slateCounts(length: number, pockets: boolean, mass: number): readonly (1 | 3 | 5)[] {
  const [usual, other] = usualCounts(length, pockets);
  return mass / other <= HEAVIEST_SLATE ? [usual, other] : [usual];
}

function usualCounts(length: number, pockets: boolean): readonly [usual: 1 | 3 | 5, other: 1 | 3 | 5] {
  if (!pockets) return [3, 1];
  if (length >= FIVE_SLATES) return [5, 3];
  if (length >= NOT_IN_ONE) return [3, 5];
  return length >= FRAMED ? [3, 1] : [1, 3];
}

/** Where the number of slates comes from. */
export function slateNumberSource(table: TableSpec, slates: 1 | 3 | 5): string {
  const game = gameRule(table);
  if (game === POOL && slates === 3) return 'WPA Recommended Equipment Specifications (2001), s. 4';
  if (game === GAMES.snooker && slates === 5 && table.field.length >= FIVE_SLATES)
    return 'Britannica, 14th ed., second-hand';
  return PRACTICE;
}

/** The bed as a whole, mm. */
export function bedOf(table: TableSpec, { underRail }: { readonly underRail: number }): FieldSize {
  const { field, outer } = table;
  return {
    length: field.length + underRail * (outer.length - field.length),
    width: field.width + underRail * (outer.width - field.width),
  };
}

/** Frame, rails and legs by the game and the size; common practice, no source. */
export function frameRule(table: TableSpec, bed: BedRule): FrameRule {
  const { heavy, pockets } = gameRule(table);
  const { field, outer, bedHeight } = table;
  const large = heavy && pockets && field.length >= EIGHT_LEGS;
  const underBed = Math.max(bedHeight - bed.thickness, bedHeight / 2);
  return {
    heavy,
    pockets,
    height: Math.min(heavy ? 300 : 250, underBed / 2),
    thickness: heavy ? 60 : 40,
    crossMembers: large ? 4 : 2,
    railWidth: Math.max(DEFAULTS.table.cushionDepth, (outer.length - field.length) / 2),
    // What stands above the cloth and a little below it, where it is bolted on.
    railThickness: table.railHeight + 10,
    legs: table.legs ?? (large ? 8 : 4),
    legSide: Math.min(heavy ? 200 : 150, field.width / 5),
    underBed,
    cabinetHeight: Math.min(400, underBed / 2),
    panel: 30,
    floor: 12,
    words: `derived from the table's sizes with timber of ${TIMBER_DENSITY} kg/m3, ${PRACTICE}.`,
  };
}

/** Fields of heavy pocket tables from this length on stand on eight legs, mm; from memory. */
const EIGHT_LEGS = 2900;
