import { type Curves, curveCrossings, straightCrossings, TOUCH } from '../geometry/curve-crossings.js';
import { depthInRing, distanceToConvex, distanceToEdge } from '../geometry/shape-distance.js';
import { distanceToCurve, type StanceCurves, stanceCurves } from './stance-curves.js';
import { CELL, CELL_RADIUS, StandingCells } from './standing-cells.js';
import type { StrokeScene } from './stroke-scene.js';

/** How many cells make the side of a block, whose points share one list of what is near. */
const CELLS_IN_BLOCK = 12;
const BLOCK = CELLS_IN_BLOCK * CELL;
const BLOCK_RADIUS = CELLS_IN_BLOCK * CELL_RADIUS;

/** What can matter in one block: */
interface Block {
  readonly walls: readonly number[];
  /** indices into the list of stance parts, */
  readonly parts: readonly number[];
  /** and, once asked for, curves of those walls and parts, of the outer rectangle and of low ceilings. */
  curves: readonly number[] | null;
}

/**
 * Where a player's disc may stand around the table: S, the closed set of centres at which it keeps clear of walls, stance
 * parts, the outer rectangle and low ceilings. Found when first asked for and kept, so that asking again is cheap; the answers
 * do not depend on what was asked before.
 *
 * Floor farther than `reach` from the outer rectangle is not looked at and counts as no room to stand.
 */
export class StandingRoom {
  /** @internal */
  readonly cells: StandingCells;
  /**
   * Where `canStand` writes a question down: px, py, ux, uy, from, to, half.
   *
   * @internal
   */
  readonly question: Float64Array = new Float64Array(7);
  readonly #scene: StrokeScene;
  readonly #stance: StanceCurves;
  readonly #radius: number;
  readonly #blocks: (Block | null)[];
  readonly #blocksAcross: number;
  readonly #blocksUp: number;
  /** Corners of S by cell, for the cells that were asked for: x, y, x, y. */
  readonly #corners = new Map<number, readonly number[]>();
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
    this.#radius = scene.stance.radius;
    this.#blocksAcross = Math.ceil((2 * (scene.rimX + reach)) / BLOCK);
    this.#blocksUp = Math.ceil((2 * (scene.rimY + reach)) / BLOCK);
    this.#blocks = new Array<Block | null>(this.#blocksAcross * this.#blocksUp).fill(null);
    const columns = this.#blocksAcross * CELLS_IN_BLOCK;
    const rows = this.#blocksUp * CELLS_IN_BLOCK;
    this.#distances = new Float64Array(scene.walls.count);
    this.cells = new StandingCells(columns, rows, this);
  }

  /**
   * How far a disc centred at (x, y) is from the nearest thing it must keep off, mm; negative: it is in the way of something.
   * Changes by at most the distance moved. -Infinity beyond the floor that is looked at.
   */
  slack(x: number, y: number): number {
    const across = Math.floor((x - this.cells.left) / BLOCK);
    const up = Math.floor((y - this.cells.bottom) / BLOCK);
    if (!(across >= 0 && across < this.#blocksAcross && up >= 0 && up < this.#blocksUp)) return -Infinity;
    return this.#slackIn(this.#block(across, up), x, y);
  }

  /** Is (x, y) in S? Touching counts. */
  holds(x: number, y: number): boolean {
    return this.slack(x, y) >= -TOUCH;
  }

  /**
   * Does S have a corner in the cell that lies within `along` and `aside` of (x, y), measured along and across (ux, uy)?
   *
   * @internal
   */
  hasCornerWithin(
    cell: number,
    x: number,
    y: number,
    ux: number,
    uy: number,
    along: number,
    aside: number,
  ): boolean {
    const corners = this.#corners.get(cell) ?? this.#findCorners(cell);
    for (let k = 0; k < corners.length; k += 2) {
      const dx = corners[k] - x;
      const dy = corners[k + 1] - y;
      if (Math.abs(dx * ux + dy * uy) <= along + TOUCH && Math.abs(dy * ux - dx * uy) <= aside + TOUCH)
        return true;
    }
    return false;
  }

  /**
   * Is one of the corners of the window `along` and `half` around (x, y) in S, or does the boundary of S cross one of its sides in S?
   *
   * @internal
   */
  meetsEdgeOf(x: number, y: number, ux: number, uy: number, along: number, half: number): boolean {
    const nearX = x - along * ux;
    const nearY = y - along * uy;
    const farX = x + along * ux;
    const farY = y + along * uy;
    const asideX = -half * uy;
    const asideY = half * ux;
    return (
      this.holds(nearX + asideX, nearY + asideY) ||
      this.holds(nearX - asideX, nearY - asideY) ||
      this.holds(farX + asideX, farY + asideY) ||
      this.holds(farX - asideX, farY - asideY) ||
      this.#boundaryCrosses(nearX + asideX, nearY + asideY, ux, uy, 2 * along) ||
      this.#boundaryCrosses(nearX - asideX, nearY - asideY, ux, uy, 2 * along) ||
      this.#boundaryCrosses(nearX - asideX, nearY - asideY, -uy, ux, 2 * half) ||
      this.#boundaryCrosses(farX - asideX, farY - asideY, -uy, ux, 2 * half)
    );
  }

  /** Does the boundary of S cross the straight piece from (x, y) along (tx, ty) in a point of S? */
  #boundaryCrosses(x: number, y: number, tx: number, ty: number, length: number): boolean {
    const side = this.#side;
    side.x[0] = x;
    side.y[0] = y;
    side.tx[0] = tx;
    side.ty[0] = ty;
    side.length[0] = length;
    const toX = x + length * tx;
    const toY = y + length * ty;
    const { left, bottom } = this.cells;
    const firstAcross = Math.max(0, Math.floor((Math.min(x, toX) - left) / BLOCK));
    const lastAcross = Math.min(this.#blocksAcross - 1, Math.floor((Math.max(x, toX) - left) / BLOCK));
    const firstUp = Math.max(0, Math.floor((Math.min(y, toY) - bottom) / BLOCK));
    const lastUp = Math.min(this.#blocksUp - 1, Math.floor((Math.max(y, toY) - bottom) / BLOCK));
    const out = this.#crossing;
    for (let up = firstUp; up <= lastUp; up++) {
      for (let across = firstAcross; across <= lastAcross; across++) {
        for (const i of this.#curvesIn(across, up)) {
          const crossings = straightCrossings(side, 0, this.#stance.all, i, this.#radius, out);
          for (let k = 0; k < 2 * crossings; k += 2) if (this.holds(out[k], out[k + 1])) return true;
        }
      }
    }
    return false;
  }

  #slackIn(near: Block, x: number, y: number): number {
    const { walls, parts, stance } = this.#scene;
    let slack = this.#slackOfCommon(x, y);
    for (const k of near.parts) {
      const part = stance.parts[k];
      const s = distanceToConvex(parts.edges, parts.start[part], parts.start[part + 1], x, y) - this.#radius;
      if (s < slack) slack = s;
    }
    const depth = depthInRing(walls, this.#stance.reflex, near.walls, 0, near.walls.length, x, y);
    return Math.min(slack, depth - this.#radius);
  }

  /** The slack as far as the outer rectangle and the ceiling go. */
  #slackOfCommon(x: number, y: number): number {
    const { rimX, rimY, stance } = this.#scene;
    if (stance.never) return -Infinity;
    const dx = Math.abs(x) - rimX;
    const dy = Math.abs(y) - rimY;
    let slack = (dx > 0 && dy > 0 ? Math.sqrt(dx * dx + dy * dy) : Math.max(dx, dy)) - this.#radius;
    for (const { nx, ny, d } of stance.low) {
      const s = d - nx * x - ny * y - this.#radius;
      if (s < slack) slack = s;
    }
    return slack;
  }

  #block(across: number, up: number): Block {
    const index = up * this.#blocksAcross + across;
    const known = this.#blocks[index];
    if (known !== null) return known;
    const { left, bottom } = this.cells;
    const block = this.#listBlock(left + (across + 0.5) * BLOCK, bottom + (up + 0.5) * BLOCK);
    this.#blocks[index] = block;
    return block;
  }

  /**
   * A thing matters somewhere in the block around (x, y) only if it is nearest there. Each slack changes by at most the block's
   * radius between its centre and the place, so what exceeds the least slack at the centre by more than twice that is never
   * nearest.
   */
  #listBlock(x: number, y: number): Block {
    const { walls, parts, stance } = this.#scene;
    const distances = this.#distances;
    let nearestWall = Infinity;
    for (let i = 0; i < walls.count; i++) {
      distances[i] = distanceToEdge(walls, i, x, y);
      if (distances[i] < nearestWall) nearestWall = distances[i];
    }
    const wallLimit = nearestWall + 2 * BLOCK_RADIUS + TOUCH;
    const everyWall: number[] = [];
    for (let i = 0; i < walls.count; i++) if (distances[i] <= wallLimit) everyWall.push(i);
    const wallSlack =
      depthInRing(walls, this.#stance.reflex, everyWall, 0, everyWall.length, x, y) - this.#radius;
    const partSlack = stance.parts.map(
      (part) => distanceToConvex(parts.edges, parts.start[part], parts.start[part + 1], x, y) - this.#radius,
    );
    const limit = Math.min(this.#slackOfCommon(x, y), wallSlack, ...partSlack) + 2 * BLOCK_RADIUS + TOUCH;
    const nearWalls = wallSlack <= limit ? everyWall : [];
    const nearParts: number[] = [];
    partSlack.forEach((slack, k) => {
      if (slack <= limit) nearParts.push(k);
    });
    return { walls: nearWalls, parts: nearParts, curves: null };
  }

  #curvesIn(across: number, up: number): readonly number[] {
    const block = this.#block(across, up);
    if (block.curves !== null) return block.curves;
    const { all, wallCircle, partStart, common, count } = this.#stance;
    const x = this.cells.left + (across + 0.5) * BLOCK;
    const y = this.cells.bottom + (up + 0.5) * BLOCK;
    const list: number[] = [];
    const take = (i: number): void => {
      if (i >= 0 && distanceToCurve(all, i, this.#radius, x, y) <= BLOCK_RADIUS) list.push(i);
    };
    for (const i of block.walls) {
      take(i);
      take(wallCircle[i]);
    }
    for (const k of block.parts) for (let i = partStart[k]; i < partStart[k + 1]; i++) take(i);
    for (let i = common; i < count; i++) take(i);
    block.curves = list;
    return list;
  }

  #findCorners(cell: number): readonly number[] {
    const { all } = this.#stance;
    const column = cell % this.cells.columns;
    const row = (cell - column) / this.cells.columns;
    const x = this.cells.centerX(column);
    const y = this.cells.centerY(row);
    const across = Math.floor(column / CELLS_IN_BLOCK);
    const up = Math.floor(row / CELLS_IN_BLOCK);
    const block = this.#block(across, up);
    const near = this.#curvesIn(across, up).filter(
      (i) => distanceToCurve(all, i, this.#radius, x, y) <= CELL_RADIUS,
    );
    const out = this.#crossing;
    const corners: number[] = [];
    for (let i = 0; i < near.length; i++) {
      for (let j = i + 1; j < near.length; j++) {
        const crossings = curveCrossings(all, near[i], near[j], this.#radius, out);
        for (let k = 0; k < 2 * crossings; k += 2) {
          const inCell =
            Math.abs(out[k] - x) <= CELL / 2 + TOUCH && Math.abs(out[k + 1] - y) <= CELL / 2 + TOUCH;
          if (inCell && this.#slackIn(block, out[k], out[k + 1]) >= -TOUCH) corners.push(out[k], out[k + 1]);
        }
      }
    }
    this.#corners.set(cell, corners);
    return corners;
  }
}
