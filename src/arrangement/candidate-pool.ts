import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import { type Box, boundingBox } from '../geometry/ring.js';
import type { Placement } from '../geometry/types.js';
import { type Bits, emptyBits, setBit } from './bits.js';
import { fitsBeside } from './layout-rules.js';
import { type PlacedPiece, placePiece } from './piece-place.js';

/** Most places that are kept for all pieces together. */
export const MOST_CANDIDATES = 4096;
/** Side of the squares, mm, and number of the turns, in which two poses of one kind are one. */
const SAME = 4;
const TURNS = 3600;

/** A place where a piece of some kind may stand as far as the room, the given pieces and the rules go. */
export interface Candidate {
  readonly kind: number;
  readonly placed: PlacedPiece;
  /** Around its body and zones. */
  readonly box: Box;
}

/** Candidates of all kinds, and which of them go together; worked out when first asked for. */
export class CandidatePool {
  readonly list: Candidate[] = [];
  readonly #byKind: Bits[];
  readonly #numbers = new Map<string, number>();
  /** Row k: the candidates that go with candidate k, as far as `#known[k]` of them. */
  readonly #rows: (Bits | null)[] = [];
  readonly #known: number[] = [];

  /**
   * @param kinds One piece of each kind.
   * @param fits Whether a place is good as far as everything goes that never moves.
   */
  constructor(
    readonly kinds: readonly FurnishingSpec[],
    readonly fits: (piece: PlacedPiece) => boolean,
  ) {
    this.#byKind = kinds.map(() => emptyBits(MOST_CANDIDATES));
  }

  /** All candidates of a kind. */
  ofKind(kind: number): Bits {
    return this.#byKind[kind];
  }

  /** Adds a place if it is good, and returns its number; that of the same place where it is known; -1 where it is not good. */
  add(kind: number, pose: Placement): number {
    const spec = this.kinds[kind];
    const key = placeKey(kind, pose);
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    if (this.list.length >= MOST_CANDIDATES) return -1;
    const placed = placePiece(spec, pose);
    const k = this.fits(placed) ? this.list.length : -1;
    this.#numbers.set(key, k);
    if (k < 0) return k;
    const box = boundingBox([...placed.ring, ...placed.zones.flatMap(({ ring }) => ring)]);
    this.list.push({ kind, placed, box });
    this.#rows.push(null);
    this.#known.push(0);
    setBit(this.#byKind[kind], k);
    return k;
  }

  /** The candidates that go with candidate k: of other kinds and of its own. */
  together(k: number): Bits {
    const row = this.#rows[k] ?? emptyBits(MOST_CANDIDATES);
    this.#rows[k] = row;
    const mine = this.list[k];
    for (let j = this.#known[k]; j < this.list.length; j++) {
      const other = this.list[j];
      if (apart(mine.box, other.box) || (j !== k && fitsBeside(mine.placed, other.placed))) setBit(row, j);
    }
    this.#known[k] = this.list.length;
    return row;
  }
}

export function apart(a: Box, b: Box): boolean {
  return a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;
}

/** Poses that come out the same, to a few millimetres, are one. */
function placeKey(kind: number, { x, y, angle }: Placement): string {
  const turn = Math.round(((angle / (2 * Math.PI)) % 1) * TURNS + TURNS) % TURNS;
  return `${kind} ${Math.round(x / SAME)} ${Math.round(y / SAME)} ${turn}`;
}
