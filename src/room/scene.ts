import type { Point, Ring } from '../geometry/types.js';

/**
 * The checked room: all the upper floors see of the input. Millimetre numbers, rings anticlockwise, no repeated and no
 * collinear corners, no optional fields.
 */
export interface Scene {
  /** Inside faces of the walls, anticlockwise: free floor lies left of every edge. */
  readonly outline: Ring;
  /** `wallNames[i]` names the wall from `outline[i]` to `outline[i + 1]`: `'wall 3'` starts at the third corner of the caller's list (see `readRoom` for merged corners). */
  readonly wallNames: readonly string[];
  readonly obstacles: readonly SceneObstacle[];
  /** Faces of the ceiling; the lowest governs. Empty: no ceiling is considered. */
  readonly ceiling: readonly SceneCeilingFace[];
  readonly doors: readonly SceneDoor[];
  /** Floor that the table's frame must keep off, while cues and players may use it by turns: use zones of other pieces. Empty unless other pieces stand in the room. */
  readonly reserved: readonly SceneReserved[];
  /** e: how far off any boundary may be, mm. */
  readonly tolerance: number;
  /** Instead of that, how far off the wall of `outline` with the same index may be, square to it, mm; null: `tolerance` holds for the walls too. */
  readonly wallTolerances: readonly number[] | null;
}

export interface SceneObstacle {
  readonly name: string;
  /** Footprint, anticlockwise. A circle becomes a polygon around it (never smaller than the circle). */
  readonly ring: Ring;
  /** Convex anticlockwise pieces whose union is the footprint. */
  readonly parts: readonly Ring[];
  /** Underside above the floor, mm. */
  readonly from: number;
  /** Top above the floor, mm; `Infinity`: up to the ceiling. */
  readonly to: number;
  readonly movable: boolean;
}

/** The face z = height + slopeX * x + slopeY * y, mm above the floor. */
export interface SceneCeilingFace {
  readonly name: string;
  readonly height: number;
  readonly slopeX: number;
  readonly slopeY: number;
}

export interface SceneDoor {
  readonly name: string;
  readonly hinge: Point;
  readonly latch: Point;
  readonly opens: 'in' | 'out' | 'slides';
  /** Convex anticlockwise polygon around the leaf's quarter circle; null when the leaf does not open in. */
  readonly swing: Ring | null;
}

/** Floor kept free of the table, from the floor up to at least its rails. */
export interface SceneReserved {
  /** `'darts board: throw lane'` */
  readonly name: string;
  /** Convex, anticlockwise. */
  readonly ring: Ring;
}
