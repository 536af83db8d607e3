import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import { writeMm } from '../equipment/read-plausible.js';
import type { Placement } from '../geometry/types.js';
import { at, type ProblemList, readLength, readNumber, readObject } from '../length/read-input.js';
import { capital } from '../room/names.js';
import { nearestWall, overlapsRoom } from '../room/obstacle-in-room.js';
import { ROOM_LIMITS } from '../room/room-limits.js';
import type { Scene } from '../room/scene.js';
import { placePiece } from './piece-place.js';

/** A given pose, and whether its turn was left out. */
export interface GivenPose {
  readonly pose: Placement;
  readonly unturned: boolean;
}

/** Middle (mm) and turn (radians in [0, 2 pi)) of a piece, or null with problems. */
export function readPiecePose(
  value: unknown,
  path: string,
  owner: string,
  problems: ProblemList,
): GivenPose | null {
  const fields = readObject(value, path, ['x', 'y', 'turn'], problems);
  if (fields === null) return null;
  const most = ROOM_LIMITS.coordinate;
  const coordinate = (key: 'x' | 'y'): number | null => {
    const what = `${key} of the middle of ${owner}`;
    return fields.has(key)
      ? readLength(fields.get(key), at(path, key), { what, min: -most, max: most }, problems)
      : problems.add(at(path, key), 'missing', `The ${what} is missing.`);
  };
  const x = coordinate('x');
  const y = coordinate('y');
  const unturned = !fields.has('turn');
  const limits = { what: `turn of ${owner}`, min: -360, max: 360 };
  const turn = unturned ? 0 : readNumber(fields.get('turn'), at(path, 'turn'), limits, ' degrees', problems);
  if (x === null || y === null || turn === null) return null;
  // Adding 0 makes 0 of -0.
  return { pose: { x: x + 0, y: y + 0, angle: (((turn + 360) % 360) * Math.PI) / 180 }, unturned };
}

/** That some of a piece at its given pose lies in the room; else a number is wrong, or its unit. */
export function checkPiecePlace(
  spec: FurnishingSpec,
  pose: Placement,
  path: string,
  owner: string,
  { outline, wallNames }: Scene,
  problems: ProblemList,
): void {
  if (overlapsRoom(placePiece(spec, pose).parts, outline)) return;
  const nearest = nearestWall([pose.x, pose.y], outline);
  problems.add(
    path,
    'piece-outside',
    `${capital(owner)} lies entirely outside the room: its middle is ${writeMm(nearest.distance)} from ${wallNames[nearest.wall]}, the nearest. Check its pose.`,
  );
}
