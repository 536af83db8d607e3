import type { FieldSize, Source, TableSpec } from './equipment-types.js';
import {
  type BedRule,
  bedOf,
  bedRule,
  type FrameRule,
  frameRule,
  slateNumberSource,
  TIMBER_DENSITY,
} from './pieces-rules.js';

/** What a table comes apart into; the number is that of its slates. `assembled`: whole but for its legs. */
export type PieceSetName = 'one-piece' | 'three-piece' | 'five-piece' | 'assembled';

/** Ways of holding a flat piece level: its thickness, its width or its length upright. */
export type UsualHold = 'flat' | 'on-edge' | 'on-end';

/** One thing that is carried, mm, length >= width >= thickness; kg each. */
export interface UsualPiece {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly count: number;
  readonly mass: number;
  readonly held: readonly UsualHold[];
}

export interface PieceSet {
  readonly name: PieceSetName;
  readonly pieces: readonly UsualPiece[];
  /** Where the sizes, the masses and the number of slates come from. */
  readonly source: Source;
}

/** Slates bear their own weight on edge or on end; carried flat they may crack (common practice, no source). */
const SLATE_HELD: readonly UsualHold[] = ['on-edge', 'on-end'];
/** A table in one goes flat or on its side, not on its head: what is loose in it would fall (common practice, no source). */
const TABLE_HELD: readonly UsualHold[] = ['flat', 'on-edge'];
const HELD_WORDS = 'Held: slates on edge or on end, the rest every way, common practice, no source.';
const ANY_HELD: readonly UsualHold[] = ['flat', 'on-edge', 'on-end'];

/**
 * The usual sets of pieces of a table, the most usual one first; never empty. Sizes and masses are derived from the table's
 * own by stated rules and rounded up (sizes to the mm, masses to the half kilogram), so they stand in for a maker's figures and
 * do not replace them.
 */
export function piecesOf(table: TableSpec): readonly PieceSet[] {
  const bed = bedRule(table);
  const frame = frameRule(table, bed);
  if (bed.board) return [assembled(table, bed, frame)];
  const sets: PieceSet[] = bed.slates.map((count) => {
    const small = count === 1 && bed.compact;
    return small ? cabinetSet(table, bed, frame) : framedSet(table, bed, frame, count);
  });
  return bed.compact ? [...sets, assembled(table, bed, frame)] : sets;
}

/** Slates on a frame that comes apart, with loose rails: what is assembled in the room. */
function framedSet(table: TableSpec, bed: BedRule, frame: FrameRule, slates: 1 | 3 | 5): PieceSet {
  const { length, width } = bedOf(table, bed);
  const beam = (name: string, count: number, along: number) =>
    timber(name, count, [along, frame.height, frame.thickness]);
  return {
    name: SET_NAMES[slates],
    pieces: [
      slate(table, bed, slates),
      beam('Frame side', 2, length),
      beam('Frame end', 2, width),
      beam('Cross member', frame.crossMembers, width),
      ...rails(table, frame),
      legs(frame, frame.height),
      smallParts(frame),
    ],
    source: `${slateWords(table, bed, slates)} Frame, rails and legs: ${frame.words} ${HELD_WORDS}`,
  };
}

/** A slate in one on a cabinet in one, with a cushion frame in one. */
function cabinetSet(table: TableSpec, bed: BedRule, frame: FrameRule): PieceSet {
  const { length, width } = bedOf(table, bed);
  return {
    name: 'one-piece',
    pieces: [
      slate(table, bed, 1),
      piece('Cabinet', 1, [length, width, frame.cabinetHeight], cabinetMass(table, bed, frame), ANY_HELD),
      piece(
        'Cushion frame',
        1,
        [...sides(table.outer), frame.railThickness],
        railMass(table, frame),
        ANY_HELD,
      ),
      legs(frame, frame.cabinetHeight),
      smallParts(frame),
    ],
    source: `${slateWords(table, bed, 1)} Cabinet and cushion frame in one piece each: ${frame.words} ${HELD_WORDS}`,
  };
}

/** The table as it stands, its legs taken off. */
function assembled(table: TableSpec, bed: BedRule, frame: FrameRule): PieceSet {
  const under = legs(frame, frame.cabinetHeight);
  const derived = bedMass(table, bed) + cabinetMass(table, bed, frame) + railMass(table, frame);
  // A bed of board is guessed at; what the whole was said to weigh is better.
  const known = bed.board && table.mass !== null ? table.mass - under.count * under.mass : derived;
  const height = table.railHeight + bed.thickness + frame.cabinetHeight;
  return {
    name: 'assembled',
    pieces: [
      piece('Table without its legs', 1, [...sides(table.outer), height], Math.max(1, known), TABLE_HELD),
      under,
    ],
    source: `Carried whole but for its legs: common practice, no source. ${bed.words} The rest: ${frame.words} Held flat or on its side: common practice, no source.`,
  };
}

const SET_NAMES = { 1: 'one-piece', 3: 'three-piece', 5: 'five-piece' } as const;

function slate(table: TableSpec, bed: BedRule, count: 1 | 3 | 5): UsualPiece {
  const { length, width } = bedOf(table, bed);
  const name = count === 1 ? 'Slate in one piece' : `Slate, one of ${count}`;
  const thickness = bed.thickness + bed.backing;
  return piece(name, count, [length / count, width, thickness], bedMass(table, bed) / count, SLATE_HELD);
}

/** Pocket tables have six rails, two to each long side; carom tables four, which go round the corners. */
function rails(table: TableSpec, frame: FrameRule): UsualPiece[] {
  const { railWidth, railThickness } = frame;
  const rail = (name: string, count: number, along: number) =>
    timber(name, count, [along, railWidth, railThickness]);
  return frame.pockets
    ? [rail('Long rail', 4, table.field.length / 2), rail('End rail', 2, table.field.width)]
    : [rail('Long rail', 2, table.outer.length), rail('End rail', 2, table.outer.width)];
}

function legs(frame: FrameRule, above: number): UsualPiece {
  const length = Math.max(frame.underBed - above, frame.underBed / 3);
  return timber('Leg', frame.legs, [length, frame.legSide, frame.legSide]);
}

/** Cloth, pockets, balls, bolts and tools; common practice, no source. */
function smallParts(frame: FrameRule): UsualPiece {
  return piece('Box of small parts', 1, [600, 400, 300], frame.heavy ? 30 : 20, ANY_HELD);
}

function timber(name: string, count: number, size: readonly number[]): UsualPiece {
  return piece(name, count, size, massOf(size, TIMBER_DENSITY), ANY_HELD);
}

function piece(
  name: string,
  count: number,
  size: readonly number[],
  mass: number,
  held: readonly UsualHold[],
): UsualPiece {
  const [length, width, thickness] = [...size].map(Math.ceil).sort((a, b) => b - a);
  return { name, length, width, thickness, count, mass: Math.ceil(2 * mass) / 2, held: [...held] };
}

function bedMass(table: TableSpec, bed: BedRule): number {
  return massOf([...sides(bedOf(table, bed)), bed.thickness], bed.density);
}

/** Four panels and a floor of board. */
function cabinetMass(table: TableSpec, bed: BedRule, frame: FrameRule): number {
  const { length, width } = bedOf(table, bed);
  const panels = massOf([2 * (length + width), frame.cabinetHeight, frame.panel], TIMBER_DENSITY);
  return panels + massOf([length, width, frame.floor], TIMBER_DENSITY);
}

function railMass(table: TableSpec, frame: FrameRule): number {
  return rails(table, frame).reduce((sum, { count, length, width, thickness }) => {
    return sum + count * massOf([length, width, thickness], TIMBER_DENSITY);
  }, 0);
}

/** kg of a block in mm, density in kg/m3. */
function massOf(size: readonly number[], density: number): number {
  return size.reduce((volume, side) => volume * side, 1e-9 * density);
}

function sides({ length, width }: FieldSize): [number, number] {
  return [length, width];
}

function slateWords(table: TableSpec, bed: BedRule, slates: 1 | 3 | 5): string {
  const number = slates === 1 ? 'one slate' : `${slates} slates of one size`;
  return `Number: ${number}, ${slateNumberSource(table, slates)}. ${bed.words}`;
}
