import { DEFAULTS } from '../equipment/defaults.js';
import type { Ring } from '../geometry/types.js';
import type { SceneDoor } from '../room/scene.js';
import { type Bits, emptyBits } from './bits.js';
import { needsWay } from './clear-ways-targets.js';
import { type FloodRuns, floodCells, floodRuns } from './flood-cells.js';
import { type FloorGrid, freeCells, markNear } from './floor-grid.js';
import type { PlacedPiece } from './piece-place.js';

/** Clear ways seen by cells of the floor: to steer a search by, never to judge by. */
export interface GridWays {
  readonly grid: FloorGrid;
  /** Cells that a way may be centred on as far as the room goes. */
  readonly free: Bits;
  /** Where the way from each door starts. */
  readonly doors: readonly Bits[];
  /** Half the width of a way less what a cell may hide, mm; how near a way must come to what it leads to. */
  readonly keeps: number;
  readonly comes: number;
  readonly runs: FloodRuns;
}

/** A share of the cell by which a way may be nearer to things than its width asks for: where its middle lies off the cell's. */
const HIDDEN = 0.4;

export function gridWays(grid: FloorGrid, doors: readonly SceneDoor[], way: number): GridWays {
  const keeps = way / 2 - HIDDEN * grid.cell;
  const comes = way / 2 + 1.5 * grid.cell;
  const free = freeCells(grid, keeps);
  const starts = doors.map(({ hinge, latch }) => near(grid, [[hinge, latch]], comes));
  return {
    grid,
    free,
    doors: starts,
    keeps,
    comes,
    runs: floodRuns(grid.columns, grid.rows),
  };
}

/** Cells on which no way can be centred because of a piece, or a table's outer rectangle. */
export function wayBlocked(ways: GridWays, rings: readonly Ring[]): Bits {
  return near(ways.grid, rings, ways.keeps);
}

/** Cells from which a table is reached. */
export function frameGoal({ grid, comes }: GridWays, frame: Ring): Bits {
  return near(grid, [frame], comes);
}

/** Cells from which a piece is reached: on its zones, or at its body where it has none; null where no way needs to lead to it. */
export function pieceGoal({ grid, comes }: GridWays, piece: PlacedPiece): Bits | null {
  if (!needsWay(piece)) return null;
  const { zones, parts } = piece;
  return zones.length === 0
    ? near(grid, parts, comes)
    : near(
        grid,
        zones.map(({ ring }) => ring),
        HIDDEN * grid.cell,
      );
}

/** Body of a piece, as far as it is in a walker's way. */
export function waySolids({ spec, parts }: PlacedPiece): readonly Ring[] {
  return spec.from < DEFAULTS.standing.headHeight ? parts : [];
}

/** The cells to which a way leads from a start over the free ones. */
export function flood(ways: GridWays, free: Bits, start: Bits): Bits {
  return floodCells(ways.runs, free, start);
}

function near(grid: FloorGrid, rings: readonly Ring[], radius: number): Bits {
  const bits = emptyBits(grid.depth.length);
  markNear(grid, rings, radius, bits);
  return bits;
}
