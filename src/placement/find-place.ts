import type { CueSpec, TableSpec } from '../equipment/equipment-types.js';
import { inSteps, SAME_SHARE } from '../geometry/steady.js';
import type { Placement } from '../geometry/types.js';
import { kindestRoom } from '../room/rooms-within.js';
import type { Scene } from '../room/scene.js';
import { shotShares } from '../stroke/shot-shares.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import { A_LONG_LOOK, A_LOOK, promisingPoses } from './best-shares.js';
import { clearanceProbe } from './clearance-at.js';
import { compassSearch } from './compass-search.js';
import { findPlacement } from './find-placement.js';
import { type OpenReach, openReach } from './open-reach.js';
import { placeTable, REACHES } from './place-table.js';
import type { PlacementOptions } from './placement-problem.js';
import { playerStrip } from './player-strip.js';
import { type PoseViews, poseViews } from './pose-views.js';
import { cueingProblem, surelyBlockingProblem, tableProblem } from './problem-for.js';
import { PLAYABLE } from './share-score.js';

/** What {@link findPlace} is asked. */
export interface PlaceQuestion {
  readonly scene: Scene;
  readonly table: TableSpec;
  readonly stroke: StrokeSettings;
  /** The wanted one first. */
  readonly cues: readonly CueSpec[];
  readonly search: Pick<PlacementOptions, 'gap' | 'maxBoxes' | 'turns' | 'onProgress'>;
}

/** Where the table should stand. */
export interface FoundPlace {
  /** Null: no place was found where the table can stand. */
  readonly pose: Placement | null;
  /** Views from there, where some were made on the way. */
  readonly views: PoseViews | null;
  /** No place where the table can stand has more clearance for the wanted cue, mm. */
  readonly upperBound: number;
  /** True: the bounds did not meet, because the search was stopped or ran out of boxes. */
  readonly stopped: boolean;
}

/** Shots by which promising poses are told apart. */
const RANKING_SHOTS = 256;
/** A pose has to be better by this to be taken instead of one with more clearance, or proposed earlier. */
const BETTER = 0.002;

/** Below this score the room is crowded, and the place is worth more looking. */
const CROWDED = 0.85;
const CLIMB = { step: 640, stop: 40, most: 40 } as const;
/** With more corners than this a long look would take seconds, and is left out. */
const MOST_CORNERS = 300;
/** Places to climb from. */
const CLIMBERS = 5;

/**
 * The place with the greatest clearance or, where that one is not clear by distance alone, the one that is found to have the
 * largest share of playable shots. The bound holds whatever is returned.
 */
export function findPlace(question: PlaceQuestion): FoundPlace {
  const { scene, table, stroke, cues, search } = question;
  const [cue] = cues;
  const reach = openReach(table, stroke, cue);
  const problem = cueingProblem(scene, table, stroke.margin, reach);
  const enough = cues.map((c) => openReach(table, stroke, c).rho);
  const most = placeTable(problem, { ...search, enough });
  const { upperBound, stopped } = most;
  if (most.pose === null) {
    // Things that hang over the frame count as tall there, but do not keep the table from standing.
    const standing = placeTable(tableProblem(scene, table), { ...search, enough: [] });
    return { pose: standing.pose, views: null, upperBound, stopped: stopped || standing.stopped };
  }
  const strip = playerStrip(scene, table, most.pose);
  const plain =
    most.value >= reach.rho - REACHES &&
    strip >= reach.strip - REACHES &&
    reach.steepest <= stroke.maxElevation;
  if (plain) return { pose: most.pose, views: null, upperBound, stopped };
  return { ...bestByShares(question, reach, most.pose), upperBound, stopped };
}

/** The pose with the largest share of playable shots; the one with most clearance where none is seen to be blocked there. */
function bestByShares(
  question: PlaceQuestion,
  reach: OpenReach,
  most: Placement,
): Pick<FoundPlace, 'pose' | 'views'> {
  const { scene, table, stroke, cues, search } = question;
  const [cue] = cues;
  const look = (pose: Placement) => {
    const views = poseViews(scene, table, pose, stroke);
    const { strokes, standing } = views(0);
    const [{ open, cramped, blocked }] = shotShares(strokes, standing, [cue], { shots: RANKING_SHOTS }).cues;
    return { pose, views, blocked, score: open + PLAYABLE * cramped };
  };
  let best = look(most);
  if (best.blocked === 0) return best;
  const shares = { scene, table, stroke, cue, reach, best: most };
  for (const pose of promisingPoses(shares, A_LOOK)) {
    const found = look(pose);
    if (found.score > best.score + BETTER) best = found;
  }
  if (best.score >= CROWDED || scene.outline.length > MOST_CORNERS) return best;
  // In a crowded room the players' floor decides, which the quick score does not know: climb on by the shots themselves.
  const stander = clearanceProbe(tableProblem(scene, table));
  const score = (pose: Placement): number =>
    stander.stands(pose) ? look(pose).score : Number.NEGATIVE_INFINITY;
  // A turned table gains shots sooner than it gains the clearance for which it may be turned.
  const { gap, maxBoxes } = search;
  const problem = cueingProblem(scene, table, stroke.margin, reach);
  const turned = findPlacement(problem, { gap, maxBoxes, turns: 'any' }).pose;
  const wide = promisingPoses(shares, A_LONG_LOOK);
  const looked = (turned === null || search.turns === 'square' ? wide : [turned, ...wide]).map(look);
  const starts = [best, ...looked].sort(
    (a, b) => inSteps(b.score, SAME_SHARE) - inSteps(a.score, SAME_SHARE),
  );
  for (const start of starts.slice(0, CLIMBERS)) {
    const climbed = compassSearch(start.pose, score, CLIMB);
    if (climbed.score > best.score + BETTER) best = look(climbed.pose);
  }
  return best;
}

/**
 * Is it proved that no place in the room is clear for the cue? By the clearance to things that an open stroke can pass neither
 * over nor under: a ball at the point of Q that is nearest to such a thing, played with the butt towards it, asks for at least
 * ell cos(theta) + a, theta being at most the steepest theta_rail. False where it is not proved, which does not mean that
 * there is such a place.
 */
export function clearNowhere(question: NowhereQuestion): boolean {
  const { scene, table, stroke, cue, upperBound, maxBoxes } = question;
  const reach = openReach(table, stroke, cue);
  const problem = surelyBlockingProblem(scene, table, { under: reach.under, over: reach.high });
  const tall = cueingProblem(scene, table, stroke.margin, reach).tall.length;
  // Where everything tall blocks surely, the search for the best place has proved it or not.
  if (upperBound !== null && problem.tall.length === tall) return upperBound < reach.least;
  // Half the gap below the threshold is floor enough: what lies above it is not proved away.
  const floor = Math.max(0, reach.least - 2 * SURE);
  const found = findPlacement(problem, { gap: SURE, maxBoxes, turns: 'any', floor });
  return found.upperBound < reach.least;
}

/** What {@link clearNowhere} is asked. */
export interface NowhereQuestion {
  readonly scene: Scene;
  readonly table: TableSpec;
  readonly stroke: StrokeSettings;
  readonly cue: CueSpec;
  /** No place has more clearance for this cue, by a search over all turns (mm); null where only some were searched. */
  readonly upperBound: number | null;
  readonly maxBoxes: number;
}

/** Margin by which the proof that no place is clear must hold, mm. */
const SURE = 0.5;

/** Can the table stand anywhere in some room within the tolerances? True where that is not ruled out. */
export function mayStandWithin(scene: Scene, table: TableSpec, maxBoxes: number): boolean {
  const kind = kindestRoom(scene);
  return kind === null || standsWithin(kind.scene, table, -kind.grow, maxBoxes);
}

/** Can a table that is e smaller all round stand anywhere? Where it cannot, no room within the tolerance holds the table. */
export function standsWithin(scene: Scene, table: TableSpec, e: number, maxBoxes: number): boolean {
  const problem = tableProblem(scene, table, -e);
  const frame = { length: problem.frame.length - 2 * e, width: problem.frame.width - 2 * e };
  const play = { length: problem.play.length - 2 * e, width: problem.play.width - 2 * e };
  const found = findPlacement({ ...problem, frame, play }, { gap: 10, maxBoxes, turns: 'any' });
  return found.pose !== null || found.stopped;
}
