import { writeMm } from '../equipment/read-plausible.js';
import {
  FLAT_TOLERANCE,
  inStandardOrder,
  type NamedRing,
  withoutFlatCorners,
} from '../geometry/named-ring.js';
import { perimeter, signedArea } from '../geometry/ring.js';
import { findSelfContacts, type SelfContact } from '../geometry/simple-ring.js';
import type { Point } from '../geometry/types.js';
import { at, type ProblemList } from '../length/read-input.js';
import { capital } from './names.js';
import { ROOM_LIMITS } from './room-limits.js';

/** What a shape is called in problems. */
export interface ShapeWords {
  /** First part of the problems' codes: `outline` gives `outline-crosses-itself`. */
  readonly code: 'outline' | 'footprint';
  /** `The outline`, `The footprint of "sofa"`. */
  readonly shape: string;
  /** `wall`, `side`. */
  readonly side: string;
}

/**
 * The shape with the corners given, as a simple anticlockwise ring without repeated and straight corners, or null with
 * problems. `starts` keeps the caller's numbers: side k of the ring starts at the caller's corner `starts[k]` (from 0), in
 * the caller's own order, also where that was clockwise.
 */
export function checkShape(
  corners: readonly Point[],
  path: string,
  words: ShapeWords,
  problems: ProblemList,
): NamedRing | null {
  if (corners.length < 3) {
    return problems.add(
      path,
      `${words.code}-too-few-corners`,
      `${words.shape} has ${count(corners.length, 'corner')}; it needs at least 3.`,
    );
  }
  const named = withoutFlatCorners(corners);
  if (named.ring.length < 3) {
    return problems.add(
      path,
      `${words.code}-no-area`,
      `${words.shape} encloses nothing: all its corners lie on one line or in one point.`,
    );
  }
  const contacts = findSelfContacts(named.ring, FLAT_TOLERANCE, ROOM_LIMITS.count.contacts);
  for (const contact of contacts) addContact(contact, named, path, words, problems);
  if (contacts.length > 0) return null;
  if (2 * Math.abs(signedArea(named.ring)) <= FLAT_TOLERANCE * perimeter(named.ring)) {
    return problems.add(
      path,
      `${words.code}-no-area`,
      `${words.shape} encloses nothing: it is no wider than a line.`,
    );
  }
  return inStandardOrder(named);
}

function addContact(
  { kind, sides, at: [x, y] }: SelfContact,
  { starts }: NamedRing,
  path: string,
  { code, shape, side }: ShapeWords,
  problems: ProblemList,
): void {
  const [first, second] = sides.map((k) => starts[k]).sort((a, b) => a - b);
  const both = `${side} ${first + 1} and ${side} ${second + 1}`;
  const where = `(${writeMm(x)}, ${writeMm(y)})`;
  const numbers = `(${capital(side)} ${first + 1} starts at corner ${first + 1} of the list.)`;
  const [what, does, then] = {
    cross: ['crosses', 'cross at', 'Check the order of the corners and their signs.'],
    touch: ['touches', 'meet at', 'Check the corners there: a gap without width is none.'],
    overlap: [
      'touches',
      'run along one another at',
      'Leave out the corner that goes back, or give what stands there its thickness.',
    ],
  }[kind];
  problems.add(
    at(path, first),
    `${code}-${what}-itself`,
    `${shape} ${what} itself: ${both} ${does} ${where}. ${then} ${numbers}`,
  );
}

function count(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}
