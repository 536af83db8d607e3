import { DEFAULTS } from '../equipment/defaults.js';
import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import type { Placement } from '../geometry/types.js';
import { type OpenReach, openReach } from '../placement/open-reach.js';
import type { ArrangeQuestion } from './arrange-question.js';
import { type Bits, emptyBits } from './bits.js';
import { CandidatePool } from './candidate-pool.js';
import { type FloorGrid, floorGrid, freeCells, markNear } from './floor-grid.js';
import { type GridWays, gridWays, pieceGoal, wayBlocked, waySolids } from './grid-ways.js';
import { fitsBeside, fitsRoom, type RoomRules, roomRules } from './layout-rules.js';
import { kindNumbers } from './piece-kinds.js';
import { type PlacedPiece, placePiece } from './piece-place.js';
import { type SampleShots, sampleShots } from './play-sample.js';
import { HIDDEN_STAND, type Solids, solidsOf } from './shot-field.js';

/** What a placed piece does to the floor and to cues, whatever the table's place. */
export interface Traces {
  readonly solids: Solids;
  /** Cells where a player can stand no more, and on which no way can be centred. */
  readonly stand: Bits;
  readonly way: Bits;
  /** Cells from which it is reached; null: it need not be. */
  readonly goal: Bits | null;
}

/** Everything about a question that stays the same while layouts are looked for. */
export interface SearchRoom {
  readonly question: ArrangeQuestion;
  readonly rules: RoomRules;
  readonly grid: FloorGrid;
  readonly ways: GridWays;
  /** Cells where a player may stand as far as the room goes. */
  readonly stand: Bits;
  readonly shots: SampleShots;
  readonly reach: OpenReach | null;
  /** Pieces with given poses, by their numbers. */
  readonly given: readonly { readonly piece: number; readonly placed: PlacedPiece; readonly good: boolean }[];
  /** Numbers of the pieces that hang over the table, and of those that are to be placed, */
  readonly lamps: readonly number[];
  readonly movable: readonly number[];
  /** and the kind of each of the latter in the pool. */
  readonly kinds: readonly number[];
  readonly pool: CandidatePool;
  readonly traces: (candidate: number) => Traces;
}

export function searchRoom(question: ArrangeQuestion): SearchRoom {
  const { scene, table, stroke, cue, arrangement } = question;
  const { pieces, way } = arrangement;
  const rules = roomRules(scene, way);
  const grid = floorGrid(scene);
  const ways = gridWays(grid, scene.doors, way);
  const fixed = pieces.flatMap(({ pose }, piece) =>
    pose === null ? [] : [{ piece, placed: placePiece(pieces[piece], pose) }],
  );
  const given = fixed.map(({ piece, placed }) => ({
    piece,
    placed,
    good: fitsRoom(rules, placed) && fixed.every((f) => f.placed === placed || fitsBeside(placed, f.placed)),
  }));
  const open = pieces.flatMap(({ pose, stand }, piece) => (pose === null ? [{ piece, stand }] : []));
  const lamps = open.filter(({ stand }) => stand === 'over-table').map(({ piece }) => piece);
  const movable = open.filter(({ stand }) => stand !== 'over-table').map(({ piece }) => piece);
  const kinds = kindNumbers(movable.map((piece) => pieces[piece]));
  const specs: FurnishingSpec[] = [];
  kinds.forEach((kind, i) => {
    specs[kind] ??= pieces[movable[i]];
  });
  const pool = new CandidatePool(
    specs,
    (placed) => fitsRoom(rules, placed) && given.every((g) => fitsBeside(placed, g.placed)),
  );
  const known: (Traces | undefined)[] = [];
  const traces = (k: number): Traces => {
    const found = known[k] ?? tracesOf(grid, ways, pool.list[k].placed);
    known[k] = found;
    return found;
  };
  return {
    question,
    rules,
    grid,
    ways,
    stand: freeCells(grid, DEFAULTS.standing.radius - HIDDEN_STAND * grid.cell),
    shots: sampleShots(),
    reach: table === null ? null : openReach(table, stroke, cue),
    given,
    lamps,
    movable,
    kinds,
    pool,
    traces,
  };
}

export function tracesOf(grid: FloorGrid, ways: GridWays, placed: PlacedPiece): Traces {
  const { radius, headHeight } = DEFAULTS.standing;
  const { spec, parts, zones } = placed;
  const stand = emptyBits(grid.depth.length);
  const blocking = zones
    .filter((z) => !z.spec.withCueing && z.spec.from < headHeight)
    .map(({ ring }) => ring);
  const standing = [...(spec.from < headHeight ? parts : []), ...blocking];
  markNear(grid, standing, radius - HIDDEN_STAND * grid.cell, stand);
  return {
    solids: solidsOf(placed),
    stand,
    way: wayBlocked(ways, waySolids(placed)),
    goal: pieceGoal(ways, placed),
  };
}

/** Pieces that hang over a table at a pose. */
export function hangLamps(
  room: SearchRoom,
  pose: Placement | null,
): readonly { readonly piece: number; readonly placed: PlacedPiece }[] {
  if (pose === null) return [];
  const { pieces } = room.question.arrangement;
  return room.lamps.map((piece) => ({ piece, placed: placePiece(pieces[piece], pose) }));
}
