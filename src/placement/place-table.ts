import { DEFAULTS } from '../equipment/defaults.js';
import { clearanceProbe } from './clearance-at.js';
import { ascending, callersPose } from './find-placement.js';
import type { PlacementOptions, PlacementProblem, PlacementResult } from './placement-problem.js';
import type { FoundPose } from './pose-probe.js';
import { searchPlaces } from './search.js';
import { roomBound, type SearchScene, searchScene } from './search-scene.js';
import { settle } from './settle.js';
import { squareTurns } from './square-turns.js';

export interface TableOptions extends PlacementOptions {
  /** Clearances from which on the verdict is another one (mm), such as rho of each cue. */
  readonly enough: readonly number[];
  /** A turn off square is taken where it gains more than this, mm; default 50. */
  readonly offSquareGain?: number;
}

export interface TablePlace extends PlacementResult {
  /** The table stands square to a wall. */
  readonly square: boolean;
}

/** A clearance counts as reaching what is enough when it misses it by no more than this, mm: rounding. */
export const REACHES = 1e-6;
/** How close to a decisive clearance the question is pursued whether it can be reached, mm. */
const DECIDED = 0.01;
/** With more square turns than this, the one next to the best turn of all will do if it gives nearly as much: */
const MANY_TURNS = 16;
/** all but this share of what a turn off square would have to gain. */
const NEARLY = 0.2;

/**
 * Where a table goes: the place with the most clearance, square to a wall unless another turn reaches one of `enough` that no
 * square place does, or gains more than `offSquareGain`; then settled (see `settle`) at the cost of at most `gap`, and never
 * below what it reached of `enough`.
 *
 * `value` is the clearance where it stands. `upperBound` is for every turn (with `turns: 'square'`: every square turn), so it may
 * exceed `value` by `offSquareGain` as well as the gap. If bounds would leave it open whether one of `enough` can be reached,
 * they are narrowed to 0.01 mm first. In a room of very many directions the square place may be up to a fifth of
 * `offSquareGain` short of the best one. `maxBoxes` is for all of it together.
 */
export function placeTable(problem: PlacementProblem, options: TableOptions): TablePlace {
  const scene = searchScene(problem);
  const turns = ascending(squareTurns(problem.outline));
  const spent: Spent = { boxes: 0, value: 0, stopped: false, halted: false };
  const gain = options.offSquareGain ?? DEFAULTS.search.offSquareGain;
  const planner: Planner = { scene, options, turns, gain, spent };

  const best =
    options.turns === 'square'
      ? search(planner, turns, options.floor ?? 0, roomBound(scene))
      : turns.length > MANY_TURNS
        ? anyTurnFirst(planner)
        : squareFirst(planner);
  const { found, upperBound } = best;
  const { boxes, stopped } = spent;
  if (found === null) return { pose: null, value: 0, upperBound, boxes, stopped, square: false };

  const reached = options.enough.filter((e) => reaches(best.value, e));
  const keep = Math.max(best.value - options.gap, ...reached) - REACHES;
  const pose = settle(problem, callersPose(scene, found), keep);
  const value = clearanceProbe(problem).clearance(pose);
  const square = turns.includes(found.angle);
  return { pose, value, upperBound: Math.max(upperBound, value), boxes, stopped, square };
}

interface Planner {
  readonly scene: SearchScene;
  readonly options: TableOptions;
  /** Turns square to a wall, ascending. */
  readonly turns: readonly number[];
  readonly gain: number;
  readonly spent: Spent;
}

/** What the searches for one table have come to so far. */
interface Spent {
  boxes: number;
  /** Best clearance found by any of them. */
  value: number;
  stopped: boolean;
  /** The caller wants no more. */
  halted: boolean;
}

interface Best {
  readonly found: FoundPose | null;
  readonly value: number;
  readonly upperBound: number;
}

/** Few square turns: their best place is a floor for the search through all turns, which then mostly has to prove. */
function squareFirst(planner: Planner): Best {
  const { scene, options, turns } = planner;
  const floor = options.floor ?? 0;
  const square = search(planner, turns, floor, roomBound(scene), roomBound(scene));
  const any = search(planner, null, Math.max(square.value, floor), roomBound(scene));
  return { ...(worthTurning(planner, square, any) ? any : square), upperBound: any.upperBound };
}

/** Many square turns: one of them lies next to the best turn of all. */
function anyTurnFirst(planner: Planner): Best {
  const { scene, options, turns, gain } = planner;
  const floor = options.floor ?? 0;
  const any = search(planner, null, floor, roomBound(scene));
  if (any.found === null) return any;
  const { angle } = any.found;
  const off = (turn: number): number => Math.abs(Math.sin(turn - angle));
  const next = turns.toSorted((a, b) => off(a) - off(b)).slice(0, 2);
  let square = search(planner, ascending(next), floor, any.upperBound, any.upperBound);
  const nearly = any.value - square.value <= NEARLY * gain && !worthTurning(planner, square, any);
  if (!nearly) {
    const other = search(planner, turns, Math.max(square.value, floor), any.upperBound, any.upperBound);
    if (other.found !== null) square = other;
  }
  return { ...(worthTurning(planner, square, any) ? any : square), upperBound: any.upperBound };
}

function worthTurning({ options, gain }: Planner, square: Best, any: Best): boolean {
  if (any.found === null || square.found === null) return any.found !== null;
  return (
    any.value - square.value > gain ||
    options.enough.some((e) => reaches(any.value, e) && !reaches(square.value, e))
  );
}

function reaches(value: number, enough: number): boolean {
  return value >= enough - REACHES;
}

/**
 * One search, narrowed where its bounds straddle one of `enough`. `ceiling` is a bound known before; bounds reported on the way
 * are at least `reported`, for a search of some turns only.
 */
function search(
  { scene, options, spent }: Planner,
  turns: readonly number[] | null,
  floor: number,
  ceiling: number,
  reported = 0,
): Best {
  const { onProgress, target = Number.POSITIVE_INFINITY } = options;
  const run = (from: number, gap: number): Best => {
    if (spent.halted) return { found: null, value: 0, upperBound: Math.max(ceiling, 0) };
    const before = spent.boxes;
    const outcome = searchPlaces(scene, {
      turns,
      gap,
      maxBoxes: Math.max(options.maxBoxes - before, 0),
      floor: from,
      target,
      ceiling,
      onProgress: (value, upperBound, boxes) => {
        spent.value = Math.max(spent.value, value);
        const progress = {
          value: spent.value,
          upperBound: Math.max(upperBound, reported),
          boxes: before + boxes,
        };
        if (onProgress?.(progress) === false) spent.halted = true;
        return !spent.halted;
      },
    });
    spent.boxes += outcome.boxes;
    spent.stopped ||= outcome.stopped || spent.halted;
    const { found, upperBound } = outcome;
    return { found, value: found === null ? 0 : found.value, upperBound };
  };
  let best = run(floor, options.gap);
  for (const e of options.enough) {
    const known = Math.max(best.value, floor);
    if (spent.stopped || reaches(known, e) || best.upperBound < e) continue;
    const closer = run(Math.max(known, e - 2 * DECIDED), DECIDED);
    const upperBound = Math.min(best.upperBound, closer.upperBound);
    best = { ...(closer.found === null ? best : closer), upperBound };
  }
  return best;
}
