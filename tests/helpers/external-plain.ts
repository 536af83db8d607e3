import type { RoomInput } from '../../src/index.js';
import { type Corners, rectangleAt } from '../external/slow/plane.js';

/** Inputs in plain millimetres read without the library. */

export function plain(value: unknown): number {
  if (typeof value !== 'number') throw new TypeError(`Only plain millimetres here, not ${String(value)}.`);
  return value;
}

export function plainRing(ring: readonly (readonly [unknown, unknown])[]): Corners {
  return ring.map(([x, y]): [number, number] => [plain(x), plain(y)]);
}

/** Corners of a footprint; a circle as a 96-gon in it. */
export function footprintRing(footprint: NonNullable<RoomInput['obstacles']>[number]['footprint']): Corners {
  if ('diameter' in footprint) {
    const [x, y] = footprint.center.map(plain);
    const r = plain(footprint.diameter) / 2;
    return Array.from({ length: 96 }, (_, i): [number, number] => [
      x + r * Math.cos((i * Math.PI) / 48),
      y + r * Math.sin((i * Math.PI) / 48),
    ]);
  }
  if ('center' in footprint) {
    const [x, y] = footprint.center.map(plain);
    const angle = ((footprint.turn ?? 0) * Math.PI) / 180;
    return rectangleAt(x, y, angle, plain(footprint.length), plain(footprint.width));
  }
  return plainRing(footprint);
}
