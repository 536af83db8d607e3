/**
 * Inputs that are good, and every way to spoil their shape in one place: for the schema and for the check, which must agree.
 */
import type { FitInput } from '../../src/fit-input.js';

/** Every property that the types know, in one input or the other; the compiler holds these to the types. */
export const VALID_INPUTS: Readonly<Record<string, FitInput>> = {
  least: {
    room: {
      outline: [
        [0, 0],
        [5000, 0],
        [5000, 4000],
        [0, 4000],
      ],
    },
    table: 'pool-9ft',
  },
  full: {
    room: {
      outline: [
        ['0 m', 0],
        ['7 m', 0],
        [7000, '5.5 m'],
        [0, 5500],
        [0, 0],
      ],
      ceiling: '2.5 m',
      obstacles: [
        {
          name: 'cupboard',
          footprint: [
            [0, 0],
            [600, 0],
            [600, '120 cm'],
            [0, 1200],
          ],
          from: 0,
          to: 2000,
          movable: true,
        },
        { name: 'bench', footprint: { center: [3000, 400], length: 1500, width: '40 cm', turn: 5 }, to: 450 },
        { name: 'post', footprint: { center: [6500, 3000], diameter: '12 cm' }, movable: false },
        { name: 'beam', footprint: { center: [3500, 5000], length: 2000, width: 200 }, from: '2.1 m' },
      ],
      doors: [
        { name: 'hall door', hinge: [7000, 1000], latch: [7000, 1900], opens: 'in' },
        { hinge: [2000, 5500], latch: [2900, 5500], opens: 'out' },
        { hinge: [4000, 5500], latch: [5000, 5500], opens: 'slides' },
      ],
      tolerance: 15,
      wallTolerances: [5, '6 mm', 0, 12.5],
    },
    table: {
      name: 'club table',
      game: 'pool',
      field: { length: '2540 mm', width: 1270 },
      outer: { length: 2840, width: '157 cm' },
      bedHeight: 780,
      noseHeight: 36,
      railHeight: '4.2 cm',
      ballDiameter: 57.15,
      mass: 400,
    },
    cues: ['57 in', 1220, { length: '48 in', tipDiameter: 12, buttDiameter: '29 mm' }, { length: 1400 }],
    pose: { x: 3500, y: '2.75 m', turn: 0 },
    stroke: { backswing: 150, shortBackswing: '4 cm', margin: 20, tipOffset: 9, maxElevation: 18.5 },
    search: { turns: 'square', gap: '2 mm', maxBoxes: 10_000 },
    detail: 'shots',
  },
  sloping: {
    room: {
      outline: [
        [0, 0],
        [6000, 0],
        [6000, 5000],
        [0, 5000],
      ],
      ceiling: [
        [
          [0, 0, 2000],
          [6000, 0, 2000],
          [0, 2500, '3.5 m'],
        ],
        [
          [0, 5000, 2000],
          [6000, 5000, 2000],
          [0, 2500, '3.5 m'],
        ],
      ],
      obstacles: [],
      doors: [],
    },
    table: 'pool-9ft',
    pose: { x: 3000, y: 2500 },
    search: { turns: 'any' },
    detail: 'verdict',
  },
  taped: {
    room: {
      tape: {
        walls: [
          { from: 'A', length: '6.2 m', corner: 'internal' },
          { from: 'B', length: { length: [4500, '4.503 m'], by: 'tape', deviation: '4 mm' } },
          { length: '6200 mm', corner: 90.2, cornerDeviation: 0.6 },
          { length: 4502 },
        ],
        walk: 'clockwise',
        diagonals: [
          { from: 'A', to: 'C', length: { length: '7.66 m', by: 'laser' } },
          { from: 'B', to: 'D', length: 7661 },
        ],
        angles: [{ corner: 'A', before: 600, after: '80 cm', across: { length: 1001 } }],
        offsets: [
          { kind: 'breast', name: 'chimney', wall: 'A', start: 1500, width: 1200, depth: 350, rest: 3500 },
          { kind: 'bay', wall: 'C', start: 1000, width: 2000, depth: 500, front: { length: 1400 } },
        ],
        heights: [2400, { length: '2.41 m' }],
        by: 'tape',
        tapeClass: 'II',
      },
      obstacles: [{ name: 'bench', footprint: { center: [4000, 300], length: 900, width: 300 }, to: 450 }],
      doors: [
        { name: 'hall door', wall: 'B', start: 300, width: '90 cm', hinge: 'end', opens: 'in' },
        { hinge: [4300, 0], latch: [3400, 0], opens: 'out' },
      ],
      tolerance: 12,
    },
    table: 'pool-7ft-bar',
  },
  furnished: {
    room: {
      outline: [
        [0, 0],
        [9000, 0],
        [9000, 7000],
        [0, 7000],
      ],
      ceiling: 2600,
    },
    table: 'pool-7ft-bar',
    furnishings: [
      { kind: 'darts' },
      {
        kind: 'sofa',
        name: 'long sofa',
        footprint: { length: '2.4 m', width: 950 },
        height: '80 cm',
        mass: 70.5,
        stands: 'corner',
        turns: 'square',
        zones: [],
        pose: { x: 1200, y: '475 mm', turn: 0 },
      },
      {
        name: 'L-shaped desk',
        footprint: [
          [0, 0],
          ['1.6 m', 0],
          [1600, 600],
          [600, 600],
          [600, 1600],
          [0, 1600],
        ],
        height: 750,
        turns: [0, 90, -90],
        zones: [
          {
            name: 'chair',
            front: '90 cm',
            back: 0,
            left: 0,
            right: 100,
            from: 0,
            to: '1.9 m',
            shares: ['zones'],
            offDoors: true,
          },
          { back: 600, shares: [] },
        ],
      },
      { footprint: { diameter: '60 cm' }, height: 1100, stands: 'free', pose: { x: 4500, y: 3500 } },
      { footprint: { length: 900, width: 100 }, height: 600, from: '1.2 m', stands: 'hung', turns: 'any' },
      { kind: 'lamp', from: 1900 },
    ],
    arrangement: { way: '70 cm', effort: 50 },
  },
};

export type Path = readonly (string | number)[];

/** Every place in a value, the value itself first. */
export function places(value: unknown, path: Path = []): { path: Path; value: unknown }[] {
  const here = [{ path, value }];
  if (Array.isArray(value)) return here.concat(value.flatMap((item, i) => places(item, [...path, i])));
  if (typeof value === 'object' && value !== null) {
    return here.concat(Object.entries(value).flatMap(([key, item]) => places(item, [...path, key])));
  }
  return here;
}

/** A copy with the value at the path changed. */
export function changed(value: unknown, path: Path, change: (old: unknown) => unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return change(value);
  if (Array.isArray(value)) return value.map((item, i) => (i === key ? changed(item, rest, change) : item));
  return Object.fromEntries(
    Object.entries(Object(value)).map(([k, item]) => [k, k === key ? changed(item, rest, change) : item]),
  );
}

export function isPlainObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export interface Mutant {
  readonly what: string;
  readonly input: unknown;
}

/** Inputs that are wrong in one place, by their shape alone. */
function mutants(example: FitInput): Mutant[] {
  const found: Mutant[] = [];
  for (const { path, value } of places(example)) {
    const at = path.join('.');
    const put = (what: string, next: unknown): void => {
      found.push({ what: `${what} at ${at}`, input: changed(example, path, () => next) });
    };
    put('null', null);
    put('a boolean, or a word for one', typeof value === 'boolean' ? 'yes' : true);
    put('a strange object', { nonsense: 1 });
    const mayBeEmpty =
      path.at(-1) === 'furnishings' ||
      path.at(-1) === 'zones' ||
      path.at(-1) === 'shares' ||
      (path.length === 2 && (path[1] === 'obstacles' || path[1] === 'doors')) ||
      (path.length === 3 && path[1] === 'tape' && path[2] !== 'walls');
    if (!mayBeEmpty) put('an empty list', []);
    if (typeof value === 'string') put('an empty text', '');
    if (isPlainObject(value)) {
      put('an unknown property', { ...value, colour: 'green' });
      for (const key of REQUIRED.filter((name) => Object.hasOwn(value, name))) {
        if (optionalHere(path, key, value)) continue;
        put(`no ${key}`, Object.fromEntries(Object.entries(value).filter(([k]) => k !== key)));
      }
    }
    if (typeof value === 'string' && WORDS.some((word) => path.at(-1) === word))
      put('another word', 'perhaps');
    // A point, a point in space, or a face of a ceiling, with one part too few and one too many.
    if (Array.isArray(value) && value.length > 0 && isFixed(path)) {
      put('one part too few', value.slice(1));
      put('one part too many', [...value, value[0]]);
    }
    if (path.at(-1) === 'outline' || path.at(-1) === 'walls')
      put('two corners', Array.isArray(value) ? value.slice(0, 2) : value);
  }
  return found;
}

const REQUIRED = [
  'room',
  'table',
  'outline',
  'name',
  'footprint',
  'hinge',
  'latch',
  'opens',
  'center',
  'field',
  'outer',
  'x',
  'y',
  'tape',
  'walls',
  'from',
  'to',
  'corner',
  'before',
  'after',
  'across',
  'kind',
  'wall',
  'start',
  'width',
  'depth',
  'height',
  'length',
  'diameter',
];
const WORDS = ['detail', 'turns', 'opens', 'hinge', 'walk', 'by', 'tapeClass', 'kind', 'stands'];

function optionalHere(path: Path, key: string, owner: Record<string, unknown>): boolean {
  if (path[0] === 'furnishings' && path.length === 2) {
    // A piece keeps its kind, or else its footprint and height.
    const left = Object.keys(owner).filter((name) => name !== key);
    return left.includes('kind') || (left.includes('footprint') && left.includes('height'));
  }
  if (path[2] === 'zones') return true;
  if (key === 'from' || key === 'to') return path[2] !== 'diagonals';
  if (key === 'corner') return path[2] !== 'angles';
  return key === 'name' && (path[0] === 'table' || path[1] === 'doors' || path[2] === 'offsets');
}

function isFixed(path: Path): boolean {
  const last = path.at(-1);
  const before = path.at(-2);
  if (last === 'center' || last === 'hinge' || last === 'latch') return true;
  if (before === 'outline' || before === 'footprint') return true;
  return path[1] === 'ceiling' && path.length >= 3;
}

/** All mutants of all good inputs, with words for what was done. */
export const ALL_MUTANTS: readonly Mutant[] = Object.entries(VALID_INPUTS).flatMap(([name, example]) =>
  mutants(example).map(({ what, input }) => ({ what: `${name}: ${what}`, input })),
);
