import type { Point } from '../geometry/types.js';
import type { Scene } from './scene.js';
import { greatestReach, mayMoveSingly, movedCorner, type WallBands, wallBands } from './wall-bands.js';

/**
 * A room that stands for all rooms within the tolerances, to be looked at with every boundary moved by `grow`, mm: what that
 * shows of it holds in each of them.
 */
export interface RoomWithin {
  readonly scene: Scene;
  readonly grow: number;
}

/** Where walls have tolerances of their own, nothing counts as known better than this, mm, so that `grow` is never 0 there. */
const LEAST = 0.001;

/**
 * The least kind room: what is free in it with every boundary `grow` (e) nearer is free in every room within the tolerances.
 *
 * Walls with tolerances of their own are moved into the room by t - e beforehand, so that e more makes t. Where two of them make
 * a corner that juts into the room, their bands reach farther than e takes a corner: a small wedge is put before it, so that
 * e around the wedge covers the outermost corner. It costs less than 0.3 e near such a square corner. Where walls are so near to one
 * another that their bands meet, everything counts as off by as much as any corner may be.
 */
export function hardestRoom(scene: Scene): RoomWithin {
  const bands = wallBands(scene);
  if (bands === null) return { scene, grow: scene.tolerance };
  const e = Math.max(scene.tolerance, LEAST);
  if (!mayMoveSingly(bands, e)) return { scene, grow: Math.max(e, greatestReach(bands)) };
  return { scene: moved(scene, bands, (i) => wedgeAt(bands, i, e)), grow: e };
}

/**
 * The kindest room: what is in the way in it with every boundary e farther off (`grow` is -e) is in the way in every room within
 * the tolerances. Null: there is none to be had, because walls are too near to one another.
 *
 * Strokes cannot be given more room than their `margin` (mm), see `growthInPlan`; what e exceeds it by, the walls are moved.
 */
export function kindestRoom(scene: Scene, margin: number = Number.POSITIVE_INFINITY): RoomWithin | null {
  const bands = wallBands(scene);
  if (bands === null) return { scene, grow: -scene.tolerance };
  const e = Math.max(scene.tolerance, LEAST);
  const give = Math.min(e, margin);
  if (mayMoveSingly(bands, e)) {
    return { scene: moved(scene, bands, (i) => bevelAt(bands, i, give)), grow: -e };
  }
  const grow = Math.max(e, greatestReach(bands));
  return grow > margin ? null : { scene, grow: -grow };
}

/** Tolerance of one wall of the scene, mm. */
export function wallTolerance({ tolerance, wallTolerances }: Scene, wall: number): number {
  return wallTolerances === null ? tolerance : wallTolerances[wall];
}

/** The scene with other corners. Each gives its new points, the first of them on the wall that ends there. */
function moved(scene: Scene, bands: WallBands, pointsAt: (corner: number) => readonly Point[]): Scene {
  const n = bands.outline.length;
  const outline: Point[] = [];
  const wallNames: string[] = [];
  const wallTolerances: number[] = [];
  for (let i = 0; i < n; i++) {
    const points = pointsAt(i);
    points.forEach((point, k) => {
      // The wall that leaves the corner takes half of what is put there.
      const wall = 2 * k < points.length - 1 ? (i + n - 1) % n : i;
      outline.push(point);
      wallNames.push(scene.wallNames[wall]);
      wallTolerances.push(bands.tolerances[wall]);
    });
  }
  return { ...scene, outline, wallNames, wallTolerances };
}

/**
 * The corner moved by t - e. Before a reflex one, a wedge: it begins e along either wall, and its tip is e from the corner moved
 * by t. A disc of radius e round each point of a side of the wedge covers the wall moved by t from there to its corner, since the
 * hull of two discs covers what lies between points of them.
 */
function wedgeAt(bands: WallBands, i: number, e: number): readonly Point[] {
  const [first, second] = tolerancesAt(bands, i);
  const corner = movedCorner(bands, i, first - e, second - e);
  if (bands.sin[i] >= 0 || e === 0) return [corner];
  const outermost = movedCorner(bands, i, first, second);
  const tip = towards(outermost, corner, e);
  if (isBlunt(corner, tip)) return [tip];
  const [px, py] = bands.along[(i + bands.along.length - 1) % bands.along.length];
  const [qx, qy] = bands.along[i];
  return [[corner[0] - e * px, corner[1] - e * py], tip, [corner[0] + e * qx, corner[1] + e * qy]];
}

/** The corner moved out by t - give. A reflex one cut off inside the disc of that radius round the corner moved out by t. */
function bevelAt(bands: WallBands, i: number, give: number): readonly Point[] {
  const [first, second] = tolerancesAt(bands, i);
  const corner = movedCorner(bands, i, give - first, give - second);
  if (bands.sin[i] >= 0 || give === 0) return [corner];
  const innermost = movedCorner(bands, i, -first, -second);
  const middle = towards(innermost, corner, give);
  if (isBlunt(corner, middle)) return [middle];
  const [px, py] = bands.along[(i + bands.along.length - 1) % bands.along.length];
  const [qx, qy] = bands.along[i];
  return [
    [innermost[0] - give * py, innermost[1] + give * px],
    middle,
    [innermost[0] - give * qy, innermost[1] + give * qx],
  ];
}

/** So flat a corner that a wedge or a cut changes nothing but to make sides too short to have a direction. */
function isBlunt(corner: Point, tip: Point): boolean {
  return Math.hypot(tip[0] - corner[0], tip[1] - corner[1]) < 1e-4;
}

function tolerancesAt({ tolerances }: WallBands, i: number): readonly [number, number] {
  return [tolerances[(i + tolerances.length - 1) % tolerances.length], tolerances[i]];
}

/** The point `distance` from `from` on the way to `to`. */
function towards(from: Point, to: Point, distance: number): Point {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const share = distance / Math.hypot(dx, dy);
  return [from[0] + share * dx, from[1] + share * dy];
}
