import { type Curves, curveCrossings, straightCrossings, TOUCH } from '../geometry/curve-crossings.js';
import { depthInRing, distanceToConvex, distanceToEdge } from '../geometry/shape-distance.js';
import { distanceToCurve, type StanceCurves, stanceCurves } from './stance-curves.js';
import type { StrokeScene } from './stroke-scene.js';

/** Side of a cell of the plan, mm, */
export const CELL = 64;
/** half its diagonal, */
export const CELL_RADIUS = (CELL / 2) * Math.SQRT2;
/** and how many cells make the side of a block, whose cells share their lists of what is near. */
const CELLS_IN_BLOCK = 8;

/** What can matter in one block: */
interface Block {
  readonly walls: readonly number[];
  /** indices into the list of stance parts, */
  readonly parts: readonly number[];
  /** and curves of those walls and parts, of the outer rectangle and of low ceilings. */
  readonly curves: readonly number[];
}

/**
 * Where a player's disc may stand around the table: S, the closed set of centres at which it keeps clear of walls, stance
 * parts, the outer rectangle and low ceilings. Found when first asked for and kept, so that asking again is cheap; the answers
 * do not depend on what was asked before.
 *
 * Floor farther than `reach` from the outer rectangle is not looked at and counts as no room to stand.
 */
export class StandingRoom {
  readonly radius: number;
  readonly curves: Curves;
  /** Cells in rows from the lower left corner (left, bottom) of the floor that is looked at. */
  readonly columns: number;
  readonly rows: number;
  readonly left: number;
  readonly bottom: number;
  readonly #scene: StrokeScene;
  readonly #stance: StanceCurves;
  readonly #blocks: (Block | null)[];
  readonly #blocksAcross: number;
  readonly #blocksUp: number;
  readonly #slack: Float64Array;
  /** Corners of S in the cells asked for: x, y, x, y. */
  readonly #corners: number[] = [];
  readonly #cornerStart: Int32Array;
  readonly #cornerEnd: Int32Array;
  readonly #distances: Float64Array;
  readonly #crossing = new Float64Array(4);
  readonly #side: Curves = {
    x: new Float64Array(1),
    y: new Float64Array(1),
    tx: new Float64Array(1),
    ty: new Float64Array(1),
    length: new Float64Array(1),
  };

  constructor(scene: StrokeScene, reach: number) {
    this.#scene = scene;
    this.#stance = stanceCurves(scene);
    this.radius = scene.stance.radius;
    this.curves = this.#stance.all;
    this.left = -scene.rimX - reach;
    this.bottom = -scene.rimY - reach;
    this.#blocksAcross = Math.ceil((-2 * this.left) / (CELL * CELLS_IN_BLOCK));
    this.#blocksUp = Math.ceil((-2 * this.bottom) / (CELL * CELLS_IN_BLOCK));
    this.columns = this.#blocksAcross * CELLS_IN_BLOCK;
    this.rows = this.#blocksUp * CELLS_IN_BLOCK;
    this.#blocks = new Array<Block | null>(this.#blocksAcross * this.#blocksUp).fill(null);
    this.#slack = new Float64Array(this.columns * this.rows).fill(Number.NaN);
    this.#cornerStart = new Int32Array(this.columns * this.rows).fill(-1);
    this.#cornerEnd = new Int32Array(this.columns * this.rows);
    this.#distances = new Float64Array(scene.walls.count);
  }

  /** Cell that (x, y) lies in, or -1 beyond the floor that is looked at. */
  cellAt(x: number, y: number): number {
    const column = Math.floor((x - this.left) / CELL);
    const row = Math.floor((y - this.bottom) / CELL);
    if (!(column >= 0 && column < this.columns && row >= 0 && row < this.rows)) return -1;
    return row * this.columns + column;
  }

  /** x of the centre of column `column`, */
  centerX(column: number): number {
    return this.left + (column + 0.5) * CELL;
  }

  /** and y of that of row `row`. */
  centerY(row: number): number {
    return this.bottom + (row + 0.5) * CELL;
  }

  /**
   * How far a disc centred at (x, y) is from the nearest thing it must keep off, mm; negative: it is in the way of something.
   * Changes by at most the distance moved. -Infinity beyond the floor that is looked at.
   */
  slack(x: number, y: number): number {
    const cell = this.cellAt(x, y);
    return cell < 0 ? -Infinity : this.#slackAt(this.#blockOf(cell), x, y);
  }

  /** Is (x, y) in S? Touching counts. */
  holds(x: number, y: number): boolean {
    const cell = this.cellAt(x, y);
    if (cell < 0) return false;
    const slack = this.slackOfCell(cell);
    if (slack >= CELL_RADIUS) return true;
    if (slack < -CELL_RADIUS - TOUCH) return false;
    return this.#slackAt(this.#blockOf(cell), x, y) >= -TOUCH;
  }

  /** The slack at a cell's centre, which bounds it in the whole cell. */
  slackOfCell(cell: number): number {
    const known = this.#slack[cell];
    if (!Number.isNaN(known)) return known;
    const row = Math.floor(cell / this.columns);
    const slack = this.#slackAt(
      this.#blockOf(cell),
      this.centerX(cell - row * this.columns),
      this.centerY(row),
    );
    this.#slack[cell] = slack;
    return slack;
  }

  /** Does S have a corner in the cell that lies within `along` and `aside` of (x, y), measured along and across (ux, uy)? */
  hasCornerWithin(
    cell: number,
    x: number,
    y: number,
    ux: number,
    uy: number,
    along: number,
    aside: number,
  ): boolean {
    if (this.#cornerStart[cell] < 0) this.#findCorners(cell);
    for (let k = this.#cornerStart[cell]; k < this.#cornerEnd[cell]; k += 2) {
      const dx = this.#corners[k] - x;
      const dy = this.#corners[k + 1] - y;
      if (Math.abs(dx * ux + dy * uy) <= along + TOUCH && Math.abs(dy * ux - dx * uy) <= aside + TOUCH)
        return true;
    }
    return false;
  }

  /** Does the boundary of S cross the straight piece from (x, y) along (tx, ty) in a point of S? */
  boundaryCrosses(x: number, y: number, tx: number, ty: number, length: number): boolean {
    const side = this.#side;
    side.x[0] = x;
    side.y[0] = y;
    side.tx[0] = tx;
    side.ty[0] = ty;
    side.length[0] = length;
    const toX = x + length * tx;
    const toY = y + length * ty;
    const size = CELL * CELLS_IN_BLOCK;
    const firstAcross = Math.max(0, Math.floor((Math.min(x, toX) - this.left) / size));
    const lastAcross = Math.min(this.#blocksAcross - 1, Math.floor((Math.max(x, toX) - this.left) / size));
    const firstUp = Math.max(0, Math.floor((Math.min(y, toY) - this.bottom) / size));
    const lastUp = Math.min(this.#blocksUp - 1, Math.floor((Math.max(y, toY) - this.bottom) / size));
    const out = this.#crossing;
    for (let up = firstUp; up <= lastUp; up++) {
      for (let across = firstAcross; across <= lastAcross; across++) {
        for (const i of this.#block(across, up).curves) {
          const crossings = straightCrossings(side, 0, this.curves, i, this.radius, out);
          for (let k = 0; k < 2 * crossings; k += 2) if (this.holds(out[k], out[k + 1])) return true;
        }
      }
    }
    return false;
  }

  #blockOf(cell: number): Block {
    const row = Math.floor(cell / this.columns);
    const column = cell - row * this.columns;
    return this.#block(Math.floor(column / CELLS_IN_BLOCK), Math.floor(row / CELLS_IN_BLOCK));
  }

  #block(across: number, up: number): Block {
    const index = up * this.#blocksAcross + across;
    const known = this.#blocks[index];
    if (known !== null) return known;
    const block = this.#listBlock(
      this.left + (across + 0.5) * CELLS_IN_BLOCK * CELL,
      this.bottom + (up + 0.5) * CELLS_IN_BLOCK * CELL,
      CELLS_IN_BLOCK * CELL_RADIUS,
    );
    this.#blocks[index] = block;
    return block;
  }

  #slackAt(near: Block, x: number, y: number): number {
    const { walls, parts, stance } = this.#scene;
    let slack = this.#slackOfCommon(x, y);
    for (const k of near.parts) {
      const part = stance.parts[k];
      const s = distanceToConvex(parts.edges, parts.start[part], parts.start[part + 1], x, y) - this.radius;
      if (s < slack) slack = s;
    }
    const s = depthInRing(walls, this.#stance.reflex, near.walls, 0, near.walls.length, x, y) - this.radius;
    return Math.min(s, slack);
  }

  /** The slack as far as the outer rectangle and the ceiling go. */
  #slackOfCommon(x: number, y: number): number {
    const { rimX, rimY, stance } = this.#scene;
    if (stance.never) return -Infinity;
    const dx = Math.abs(x) - rimX;
    const dy = Math.abs(y) - rimY;
    let slack = (dx > 0 && dy > 0 ? Math.sqrt(dx * dx + dy * dy) : Math.max(dx, dy)) - this.radius;
    for (const { nx, ny, d } of stance.low) {
      const s = d - nx * x - ny * y - this.radius;
      if (s < slack) slack = s;
    }
    return slack;
  }

  /**
   * A thing matters somewhere in the block only if it is nearest there. Each slack changes by at most the block's radius between
   * its centre and the place, so what exceeds the least slack at the centre by more than twice that is never nearest.
   */
  #listBlock(x: number, y: number, blockRadius: number): Block {
    const { walls, parts, stance } = this.#scene;
    const distances = this.#distances;
    let nearestWall = Infinity;
    const everyWall: number[] = [];
    for (let i = 0; i < walls.count; i++) {
      distances[i] = distanceToEdge(walls, i, x, y);
      if (distances[i] < nearestWall) nearestWall = distances[i];
    }
    const wallLimit = nearestWall + 2 * blockRadius + TOUCH;
    for (let i = 0; i < walls.count; i++) if (distances[i] <= wallLimit) everyWall.push(i);
    const wallSlack =
      depthInRing(walls, this.#stance.reflex, everyWall, 0, everyWall.length, x, y) - this.radius;
    const partSlack = stance.parts.map(
      (part) => distanceToConvex(parts.edges, parts.start[part], parts.start[part + 1], x, y) - this.radius,
    );
    const limit = Math.min(this.#slackOfCommon(x, y), wallSlack, ...partSlack) + 2 * blockRadius + TOUCH;
    const nearWalls = wallSlack <= limit ? everyWall : [];
    const nearParts: number[] = [];
    partSlack.forEach((slack, k) => {
      if (slack <= limit) nearParts.push(k);
    });
    return {
      walls: nearWalls,
      parts: nearParts,
      curves: this.#curvesOf(nearWalls, nearParts, x, y, blockRadius),
    };
  }

  #curvesOf(
    nearWalls: readonly number[],
    nearParts: readonly number[],
    x: number,
    y: number,
    within: number,
  ): readonly number[] {
    const { wallCircle, partStart, common, count } = this.#stance;
    const list: number[] = [];
    const take = (i: number): void => {
      if (i >= 0 && distanceToCurve(this.curves, i, this.radius, x, y) <= within) list.push(i);
    };
    for (const i of nearWalls) {
      take(i);
      take(wallCircle[i]);
    }
    for (const k of nearParts) for (let i = partStart[k]; i < partStart[k + 1]; i++) take(i);
    for (let i = common; i < count; i++) take(i);
    return list;
  }

  #findCorners(cell: number): void {
    const row = Math.floor(cell / this.columns);
    const x = this.centerX(cell - row * this.columns);
    const y = this.centerY(row);
    const found = this.#corners;
    this.#cornerStart[cell] = found.length;
    const out = this.#crossing;
    const block = this.#blockOf(cell);
    const near = block.curves.filter(
      (i) => distanceToCurve(this.curves, i, this.radius, x, y) <= CELL_RADIUS,
    );
    for (let i = 0; i < near.length; i++) {
      for (let j = i + 1; j < near.length; j++) {
        const crossings = curveCrossings(this.curves, near[i], near[j], this.radius, out);
        for (let k = 0; k < 2 * crossings; k += 2) {
          const inCell =
            Math.abs(out[k] - x) <= CELL / 2 + TOUCH && Math.abs(out[k + 1] - y) <= CELL / 2 + TOUCH;
          if (inCell && this.#slackAt(block, out[k], out[k + 1]) >= -TOUCH) found.push(out[k], out[k + 1]);
        }
      }
    }
    this.#cornerEnd[cell] = found.length;
  }
}
