import type { FurnishingSpec, UseZoneSpec } from '../equipment/furnishing-types.js';
import type { Ring } from '../geometry/types.js';

/** For each piece the number of its kind: pieces of one kind differ in their names alone and may change places. */
export function kindNumbers(pieces: readonly FurnishingSpec[]): readonly number[] {
  const known = new Map<string, number>();
  return pieces.map(({ ring, length, width, from, to, stand, turns, zones }) => {
    const key = JSON.stringify([
      ring,
      length,
      width,
      from,
      to,
      stand,
      turns,
      zones.map((zone) => ({ ...zone, name: '' })),
    ]);
    const number = known.get(key) ?? known.size;
    known.set(key, number);
    return number;
  });
}

/** Into how many equal parts of a full turn a piece repeats itself, with its zones: 1, 2 or 4. */
export function symmetry(spec: FurnishingSpec): 1 | 2 | 4 {
  if (!repeats(spec.ring, 2) || !spec.zones.every((z) => near(z.front, z.back) && near(z.left, z.right)))
    return 1;
  const square = near(spec.length, spec.width) && repeats(spec.ring, 4);
  return square && spec.zones.every((z) => near(z.front, z.left)) ? 4 : 2;
}

/** Whether a ring is the same after a turn by so many parts of a full one about the origin. */
function repeats(ring: Ring, parts: 2 | 4): boolean {
  return ring.every(([x, y]) => {
    const [u, v] = parts === 2 ? [-x, -y] : [-y, x];
    return ring.some(([p, q]) => near(p, u) && near(q, v));
  });
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) < 1e-6;
}

/** How far a piece with its zones reaches beyond each side of its bounding rectangle, in the order of `SIDES`, mm. */
export function zoneDepths(zones: readonly UseZoneSpec[]): readonly number[] {
  return [
    Math.max(0, ...zones.map((z) => z.back)),
    Math.max(0, ...zones.map((z) => z.left)),
    Math.max(0, ...zones.map((z) => z.front)),
    Math.max(0, ...zones.map((z) => z.right)),
  ];
}
