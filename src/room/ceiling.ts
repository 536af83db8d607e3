import { boundingBox, clipToHalfPlane } from '../geometry/ring.js';
import type { Ring } from '../geometry/types.js';
import type { Scene, SceneCeilingFace } from './scene.js';

/** How far beyond the room's box the polygons of {@link lowCeilingRings} reach, mm: more than any wall is moved by. */
const REACH_BEYOND_ROOM = 1000;

/** Height of one face above the floor at a place, mm. */
export function faceAt(face: SceneCeilingFace, x: number, y: number): number {
  return face.height + face.slopeX * x + face.slopeY * y;
}

/** The face that is lowest at a place, the first of equals; null where no ceiling is considered. */
export function lowestFaceAt(
  faces: readonly SceneCeilingFace[],
  x: number,
  y: number,
): SceneCeilingFace | null {
  let lowest: SceneCeilingFace | null = null;
  let height = Number.POSITIVE_INFINITY;
  for (const face of faces) {
    const z = faceAt(face, x, y);
    if (z < height) {
      height = z;
      lowest = face;
    }
  }
  return lowest;
}

/** Height of the ceiling above the floor at a place, mm: that of the lowest face; Infinity where no ceiling is considered. */
export function ceilingAt(scene: Scene, x: number, y: number): number {
  let height = Number.POSITIVE_INFINITY;
  for (const face of scene.ceiling) height = Math.min(height, faceAt(face, x, y));
  return height;
}

/**
 * Convex anticlockwise polygons that together cover the part of the room where the ceiling is lower than `height` mm: one for
 * each face that is that low somewhere in the room's box grown by 1 m, and as large as that box at most. They may overlap one
 * another and reach beyond the walls; where the ceiling is exactly `height` high is their boundary.
 */
export function lowCeilingRings(scene: Scene, height: number): Ring[] {
  const box = boundingBox(scene.outline);
  const grown: Ring = [
    [box.minX - REACH_BEYOND_ROOM, box.minY - REACH_BEYOND_ROOM],
    [box.maxX + REACH_BEYOND_ROOM, box.minY - REACH_BEYOND_ROOM],
    [box.maxX + REACH_BEYOND_ROOM, box.maxY + REACH_BEYOND_ROOM],
    [box.minX - REACH_BEYOND_ROOM, box.maxY + REACH_BEYOND_ROOM],
  ];
  const rings: Ring[] = [];
  for (const face of scene.ceiling) {
    const flat = face.slopeX === 0 && face.slopeY === 0;
    if (flat && face.height >= height) continue;
    const low = clipToHalfPlane(grown, face.slopeX, face.slopeY, height - face.height);
    if (low.length > 0) rings.push(low);
  }
  return rings;
}

/** Part of a convex ring over which every face is higher than `height`; empty where there is none. */
export function partUnder(ring: Ring, faces: readonly SceneCeilingFace[], height: number): Ring {
  let part = ring;
  for (const face of faces) {
    // height <= face.height + slope . p
    part = clipToHalfPlane(part, -face.slopeX, -face.slopeY, face.height - height);
  }
  return part;
}
