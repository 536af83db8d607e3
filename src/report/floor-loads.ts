/** A characteristic load that a building code designs floors for, to set beside what a table brings. */
export interface FloorLoad {
  /** Code and row, as a person would look it up. */
  readonly name: string;
  /** Uniform load, least and greatest value of the row, kN/m2. */
  readonly area: readonly [least: number, greatest: number];
  /** Concentrated load, least and greatest value, kN; null where we have no figure. */
  readonly point: readonly [least: number, greatest: number] | null;
  /** How far the figure can be trusted: nobody here has read the code itself. */
  readonly standing: 'from memory' | 'second-hand';
  /** Words about the code's own standing, such as that it was withdrawn; empty for none. */
  readonly note: string;
}

/**
 * The one table of floor loads. Every figure is second-hand or from memory and is printed with those words: look the value up in the code that
 * governs the building.
 */
export const FLOOR_LOADS: readonly FloorLoad[] = [
  {
    name: 'EN 1991-1-1, category A (dwellings)',
    area: [1.5, 2],
    point: [2, 3],
    standing: 'from memory',
    note: 'the national annex decides',
  },
  {
    name: 'BS 6399-1, billiard rooms',
    area: [2, 2],
    point: [2.7, 2.7],
    standing: 'second-hand',
    note: 'withdrawn',
  },
  {
    name: 'BS 6399-1, dwellings',
    area: [1.5, 1.5],
    point: [1.4, 1.4],
    standing: 'second-hand',
    note: 'withdrawn',
  },
  {
    name: 'ASCE 7, dwellings (40 psf)',
    area: [1.92, 1.92],
    point: null,
    standing: 'second-hand',
    note: '',
  },
  {
    name: 'ASCE 7, poolrooms (75 psf)',
    area: [3.59, 3.59],
    point: null,
    standing: 'from memory',
    note: '',
  },
];

/** Standard gravity, m/s2 (CGPM 1901). */
export const GRAVITY = 9.80665;

/** Above this mass the advice to ask an engineer holds on any floor but solid ground, kg; common practice, no source. */
export const HEAVY_TABLE = 500;

/** What a table puts on a floor. */
export interface TableLoad {
  /** Weight of the whole table, kN. */
  readonly total: number;
  /** Mean pressure over the outer rectangle, kN/m2. */
  readonly pressure: number;
  /** kN on each leg when all share alike; null where the number of legs is not known. */
  readonly perLeg: number | null;
  /** kN on each of two diagonal legs that carry the whole table, as a stiff table of four legs on an uneven floor may stand; null for other tables. */
  readonly perDiagonalLeg: number | null;
}

/** The load of `mass` kg on `legs` legs over an outer rectangle of `length` x `width` mm. Exact; people are not counted. */
export function tableLoad(mass: number, legs: number | null, length: number, width: number): TableLoad {
  const total = (mass * GRAVITY) / 1000;
  return {
    total,
    pressure: total / ((length / 1000) * (width / 1000)),
    perLeg: legs === null ? null : total / legs,
    perDiagonalLeg: legs === 4 ? total / 2 : null,
  };
}
