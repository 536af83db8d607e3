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

/**
 * Where a table goes: the place with the most clearance, square to a wall unless another turn reaches one of `enough` that no
 * square place does, or gains more than `offSquareGain`; then settled (see `settle`) at the cost of at most `gap`, and never
 * below what it reached of `enough`.
 *
 * `value` is the clearance where it stands. `upperBound` is for every turn (with `turns: 'square'`: every square turn), so it may
 * exceed `value` by `offSquareGain` as well as the gap. If bounds would leave it open whether one of `enough` can be reached,
 * they are narrowed to 0.01 mm first.
 */
export function placeTable(problem: PlacementProblem, options: TableOptions): TablePlace {
  const { gap, enough } = options;
  const scene = searchScene(problem);
  const turns = ascending(squareTurns(problem.outline));
  const spent = { boxes: 0, stopped: false };
  const floor = options.floor ?? 0;

  const everyTurn = options.turns === 'any';
  const square = search(scene, options, turns, floor, spent, everyTurn ? roomBound(scene) : 0);
  let best = square;
  if (everyTurn) {
    const any = search(scene, options, null, Math.max(square.value, floor), spent, 0);
    const better = any.found !== null && worthTurning(square, any, enough, options.offSquareGain);
    best = { ...(better ? any : square), upperBound: any.upperBound };
  }
  const { found, upperBound } = best;
  if (found === null) return { pose: null, value: 0, upperBound, ...spent, square: false };

  const reached = enough.filter((e) => best.value >= e - REACHES);
  const keep = Math.max(best.value - gap, ...reached) - REACHES;
  const pose = settle(problem, callersPose(scene, found), keep);
  const value = clearanceProbe(problem).clearance(pose);
  return { pose, value, upperBound: Math.max(upperBound, value), ...spent, square: found === square.found };
}

interface Best {
  readonly found: FoundPose | null;
  readonly value: number;
  readonly upperBound: number;
}

interface Spent {
  boxes: number;
  stopped: boolean;
}

/** One search, narrowed where its bounds straddle one of `enough`. */
function search(
  scene: SearchScene,
  options: TableOptions,
  turns: readonly number[] | null,
  floor: number,
  spent: Spent,
  leastBound: number,
): Best {
  const run = (from: number, gap: number): Best => {
    const before = spent.boxes;
    const { onProgress, target = Number.POSITIVE_INFINITY } = options;
    const outcome = searchPlaces(scene, {
      turns,
      gap,
      maxBoxes: Math.max(options.maxBoxes - before, 0),
      floor: from,
      target,
      onProgress: (value, upperBound, boxes) =>
        onProgress?.({ value, upperBound: Math.max(upperBound, leastBound), boxes: before + boxes }),
    });
    spent.boxes += outcome.boxes;
    spent.stopped ||= outcome.stopped;
    const { found, upperBound } = outcome;
    return { found, value: found === null ? 0 : found.value, upperBound };
  };
  let best = run(floor, options.gap);
  for (const e of options.enough) {
    const known = Math.max(best.value, floor);
    if (spent.stopped || known >= e - REACHES || best.upperBound < e) continue;
    const closer = run(Math.max(known, e - 2 * DECIDED), DECIDED);
    best = {
      ...(closer.found === null ? best : closer),
      upperBound: Math.min(best.upperBound, closer.upperBound),
    };
  }
  return best;
}

function worthTurning(square: Best, any: Best, enough: readonly number[], gain?: number): boolean {
  if (square.found === null) return true;
  const reaches = (value: number, e: number): boolean => value >= e - REACHES;
  return (
    any.value - square.value > (gain ?? DEFAULTS.search.offSquareGain) ||
    enough.some((e) => reaches(any.value, e) && !reaches(square.value, e))
  );
}
