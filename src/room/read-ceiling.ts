import { readPlausible, writeMm } from '../equipment/read-plausible.js';
import { boundingBox } from '../geometry/ring.js';
import type { Ring } from '../geometry/types.js';
import { at, type ProblemList } from '../length/read-input.js';
import { faceAt, lowestFaceAt, partUnder } from './ceiling.js';
import { capital } from './names.js';
import { readCoordinates, readList } from './read-corners.js';
import { ROOM_LIMITS } from './room-limits.js';
import type { SceneCeilingFace } from './scene.js';

type SpacePoint = readonly [x: number, y: number, z: number];

/** The ceiling's faces from one height or from planes by three points each, or null with problems. */
export function readCeiling(value: unknown, path: string, problems: ProblemList): SceneCeilingFace[] | null {
  if (!Array.isArray(value)) {
    const height = readPlausible(value, path, 'height of the ceiling', ROOM_LIMITS.ceiling, problems);
    return height === null ? null : [{ name: 'ceiling', height, slopeX: 0, slopeY: 0 }];
  }
  const list = readList(value, path, 'faces of the ceiling', ROOM_LIMITS.count.ceilingFaces, problems);
  if (list === null) return null;
  if (list.length === 0) {
    return problems.add(
      path,
      'no-ceiling-faces',
      "The list of the ceiling's faces is empty; leave it out if the ceiling does not matter.",
    );
  }
  const faces = list.map((face, i) => readFace(face, at(path, i), `ceiling ${i + 1}`, problems));
  const good = faces.filter((face) => face !== null);
  return good.length === faces.length ? good : null;
}

/** Whether the ceiling is over the floor everywhere in the room and high enough to be one somewhere. */
export function checkCeilingHeights(
  faces: readonly SceneCeilingFace[],
  outline: Ring,
  tolerance: number,
  path: string,
  problems: ProblemList,
): void {
  if (faces.length === 0) return;
  const least = ROOM_LIMITS.ceiling[0];
  const box = boundingBox(outline);
  const whole: Ring = [
    [box.minX, box.minY],
    [box.maxX, box.minY],
    [box.maxX, box.maxY],
    [box.minX, box.maxY],
  ];
  if (partUnder(whole, faces, least).length === 0) {
    problems.add(
      path,
      'ceiling-wrong-unit',
      `Nowhere in the room is the ceiling ${writeMm(least)} high. Check the heights of its points; a number is in millimetres, text carries its unit, such as "2.4 m".`,
    );
    return;
  }
  // The lowest of planes is lowest over the whole room at one of its corners.
  let worst = outline[0];
  let height = Number.POSITIVE_INFINITY;
  for (const corner of outline) {
    const face = lowestFaceAt(faces, corner[0], corner[1]);
    if (face !== null && faceAt(face, corner[0], corner[1]) < height) {
      height = faceAt(face, corner[0], corner[1]);
      worst = corner;
    }
  }
  if (height >= -Math.max(tolerance, ROOM_LIMITS.ceilingUnderFloor)) return;
  const face = lowestFaceAt(faces, worst[0], worst[1]);
  problems.add(
    path,
    'ceiling-under-floor',
    `At the corner (${writeMm(worst[0])}, ${writeMm(worst[1])}) the ceiling would lie ${writeMm(-height)} under the floor${face === null ? '' : ` (${face.name})`}. Each face reaches across the whole room and the lowest counts; check its points, or give what hangs low over a part of the room as an obstacle.`,
  );
}

function readFace(
  value: unknown,
  path: string,
  name: string,
  problems: ProblemList,
): SceneCeilingFace | null {
  const list = readList(value, path, 'three points of the ceiling', 3, problems);
  if (list === null) return null;
  if (list.length !== 3) {
    return problems.add(
      path,
      'ceiling-not-three-points',
      `${capital(name)} has ${list.length} points; give three, [x, y, z] each.`,
    );
  }
  const points = list.map((point, k) =>
    readSpacePoint(point, at(path, k), `point ${k + 1} of ${name}`, problems),
  );
  const [p, q, r] = points;
  return p === null || q === null || r === null ? null : faceThrough(p, q, r, path, name, problems);
}

function readSpacePoint(
  value: unknown,
  path: string,
  what: string,
  problems: ProblemList,
): SpacePoint | null {
  const before = problems.problems.length;
  const read = readCoordinates(value, path, what, ['x', 'y', 'z'], problems);
  if (read === null || problems.problems.length > before) return null;
  const [x, y, z] = read;
  if (z >= 0 && z <= ROOM_LIMITS.ceiling[1]) return [x, y, z];
  return problems.add(
    at(path, 2),
    'implausible-length',
    `The z of ${what} is ${writeMm(z)}; expected 0 mm to ${writeMm(ROOM_LIMITS.ceiling[1])} above the floor.`,
  );
}

/** z = height + slopeX x + slopeY y through three points, by Cramer's rule on their differences. */
function faceThrough(
  p: SpacePoint,
  q: SpacePoint,
  r: SpacePoint,
  path: string,
  name: string,
  problems: ProblemList,
): SceneCeilingFace | null {
  const [ux, uy, uz] = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
  const [vx, vy, vz] = [r[0] - p[0], r[1] - p[1], r[2] - p[2]];
  const det = ux * vy - uy * vx;
  const longest = Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy), Math.hypot(vx - ux, vy - uy));
  const least = ROOM_LIMITS.ceilingPointsOffLine;
  if (Math.abs(det) < least * longest || longest === 0) {
    const area = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, det);
    const side = Math.max(
      Math.hypot(ux, uy, uz),
      Math.hypot(vx, vy, vz),
      Math.hypot(vx - ux, vy - uy, vz - uz),
    );
    if (area < least * side || side === 0) {
      return problems.add(
        path,
        'ceiling-points-in-line',
        `The three points of ${name} lie on one line; choose one of them at least ${writeMm(least)} off it.`,
      );
    }
    return problems.add(
      path,
      'ceiling-face-vertical',
      `The three points of ${name} lie above one another, as on a wall; a ceiling's face needs three points that are apart in plan.`,
    );
  }
  const slopeX = (uz * vy - vz * uy) / det;
  const slopeY = (ux * vz - vx * uz) / det;
  if (Math.hypot(slopeX, slopeY) > ROOM_LIMITS.ceilingSlope) {
    return problems.add(
      path,
      'ceiling-face-vertical',
      `${capital(name)} is steeper than 80 degrees, as a wall is; check its points, or draw it as part of the outline or as an obstacle.`,
    );
  }
  // Adding 0 makes 0 of -0.
  return { name, height: p[2] - slopeX * p[0] - slopeY * p[1], slopeX: slopeX + 0, slopeY: slopeY + 0 };
}
