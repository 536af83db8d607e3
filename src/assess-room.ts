import { DEFAULTS } from './equipment/defaults.js';
import type { FitQuestion } from './fit-question.js';
import type { Placement } from './geometry/types.js';
import { clearNowhere, findPlace, mayStandWithin } from './placement/find-place.js';
import { type CueJudgement, judgePose, type PoseJudgement } from './placement/judge-pose.js';
import { longestLevelCue } from './placement/longest-cue.js';
import { type OpenReach, openReach } from './placement/open-reach.js';
import { type PoseViews, poseViews } from './placement/pose-views.js';
import { playSize } from './placement/problem-for.js';
import { adviceFor } from './report/advice.js';
import { cautionsFor } from './report/cautions.js';
import type { Clearance, CueResult, FitReport, Pose, ShotMap } from './report/fit-report.js';
import { limitsAt, limitsOfNone } from './report/limits.js';
import { gapsAt, spansAt, spansOfRoom } from './report/spans.js';
import type { Scene } from './room/scene.js';
import { answerShot } from './stroke/answer-shot.js';
import { cushionProfiles } from './stroke/cushion-profile.js';

/** Shots sampled for a verdict, and for a map of shots. */
const VERDICT_SHOTS = 1024;
const MAP = { columns: 24, rows: 12, shots: 16_128 } as const;
/** Spots along each cushion for which the longest cue is found. */
const CUSHION_SPOTS = 7;

/**
 * The answer for one room with all that stands in it: the place, the verdict for each cue, what holds it back and what would help. The way in
 * and the survey are left out.
 *
 * @param place Where the table stands, if that was looked for already.
 */
export function assessRoom(question: FitQuestion, place: Place = placeFor(question)): FitReport {
  const { scene, table, cues, stroke, search, detail } = question;
  const [cue] = cues;
  const reach = openReach(table, stroke, cue);
  const { pose } = place;
  if (pose === null) return noneReport(question, place, null, reach);
  const views = place.views ?? poseViews(scene, table, pose, stroke);
  const judged = judgedAt(question, pose, views);
  if (!judged.stands) return noneReport(question, place, judged, reach);

  const results = cues.map(
    (c, i): CueResult => ({ name: c.name, length: c.length, ...cueResult(judged.cues[i]) }),
  );
  const [wanted] = results;
  const gaps = gapsAt(scene, table, stroke, pose);
  const spans = spansAt(table, stroke, cue.length, gaps);
  const holdBack = judged.tallied[0] === 0 && judged.tally !== null ? judged.tally.holdBack : [];
  const { strokes, standing } = views(0);
  const { counterexample } = judged.cues[0];
  const rareNames =
    counterexample === null
      ? []
      : answerShot(strokes, standing, cue, counterexample.x, counterexample.y, counterexample.phi).meets;
  const limits = limitsAt({
    scene,
    table,
    cue,
    reach,
    margin: stroke.margin,
    pose,
    certain: wanted.certain,
    holdBack,
    rareNames,
    rareShare: 1 / (VERDICT_SHOTS + 1),
  });
  const cushions = cushionProfiles(strokes, standing, cue, CUSHION_SPOTS);
  const { verdict, certain } = wanted;
  const open = wanted.shares.open;
  const { clearance } = judged;
  const { maxBoxes } = search;
  const asked = {
    scene,
    table,
    stroke,
    cue,
    pose,
    views,
    clearance,
    verdict,
    open,
    spans,
    limits,
    cushions,
    maxBoxes,
  };
  const advice = verdict === 'clear' ? [] : adviceFor(asked);
  const upperBound = search.turns === 'any' ? place.upperBound : null;
  const nowhere =
    verdict !== 'clear' &&
    question.pose === null &&
    clearNowhere({ scene: place.emptied ?? scene, table, stroke, cue, upperBound, maxBoxes });
  const report: FitReport = {
    schema: 'elbowroom/fit-report@1',
    verdict,
    certain,
    table,
    pose: poseInDegrees(pose),
    clearance: clearanceOf(
      clearance,
      place.upperBound ?? clearance,
      longestLevelCue({ scene, table, stroke, cue, pose, clearance }),
      reach,
      cue.length,
      nowhere,
    ),
    cues: results,
    spans,
    gaps,
    cushions,
    limits,
    advice,
    cautions: cautionsOf(question),
    assumptions: [...question.assumptions, ...searchNotes(place)],
  };
  return detail === 'shots' ? { ...report, shots: shotMap(question, judged) } : report;
}

/** A place to judge. */
export interface Place {
  readonly pose: Placement | null;
  readonly views: PoseViews | null;
  /** Null where no search was made. */
  readonly upperBound: number | null;
  readonly stopped: boolean;
  /** The room without what may stand elsewhere in it, for which the bounds hold; null: the room itself. */
  readonly emptied: Scene | null;
}

function placeFor(question: FitQuestion): Place {
  return question.pose === null ? searched(question) : given(question.pose);
}

function given(pose: Placement): Place {
  return { pose, views: null, upperBound: null, stopped: false, emptied: null };
}

function searched({ scene, table, stroke, cues, search }: FitQuestion): Place {
  const { onProgress, ...limits } = search;
  const found = findPlace({
    scene,
    table,
    stroke,
    cues,
    search: onProgress === null ? limits : { ...limits, onProgress },
  });
  return { ...found, emptied: null };
}

function judgedAt(question: FitQuestion, pose: Placement, views: PoseViews): PoseJudgement {
  const { scene, table, stroke, cues, detail } = question;
  const base = { scene, table, stroke, cues, pose, views, withTolerance: true };
  if (detail === 'verdict') return judgePose({ ...base, shots: VERDICT_SHOTS });
  return judgePose({ ...base, shots: MAP.shots, grid: { columns: MAP.columns, rows: MAP.rows } });
}

function cueResult(judged: CueJudgement): Omit<CueResult, 'name' | 'length'> {
  const { verdict, certain, proof, open, cramped, blocked, error, steepest } = judged;
  return {
    verdict,
    certain,
    proof,
    shares: { open, cramped, blocked },
    shareError: error,
    steepestElevation: steepest === null ? null : toDegrees(steepest),
  };
}

/** The table cannot stand: at the given pose, or anywhere in the room. */
function noneReport(
  question: FitQuestion,
  place: Place,
  judged: PoseJudgement | null,
  reach: OpenReach,
): FitReport {
  const { scene, table, cues, stroke, search } = question;
  const [cue] = cues;
  const certain =
    judged !== null
      ? judged.cues.every((c) => c.certain)
      : !place.stopped && !mayStandWithin(scene, table, search.maxBoxes);
  const shares = { open: 0, cramped: 0, blocked: 1 };
  const result = {
    verdict: 'none',
    certain,
    proof: 'standing',
    shares,
    shareError: 0,
    steepestElevation: null,
  } as const;
  const limits = limitsOfNone(question, place.pose, certain);
  return {
    schema: 'elbowroom/fit-report@1',
    verdict: 'none',
    certain,
    table,
    pose: place.pose === null ? null : poseInDegrees(place.pose),
    clearance: clearanceOf(0, place.upperBound ?? 0, 0, reach, cue.length, place.pose === null && certain),
    cues: cues.map((c) => ({ name: c.name, length: c.length, ...result })),
    spans: spansOfRoom(scene, table, stroke, cue.length),
    gaps: [],
    cushions: [],
    limits,
    advice: [],
    cautions: cautionsOf(question),
    assumptions: [...question.assumptions, ...searchNotes(place)],
  };
}

function clearanceOf(
  value: number,
  upperBound: number,
  longestCue: number,
  reach: OpenReach,
  cueLength: number,
  clearNowhere: boolean,
): Clearance {
  // rho - L: what a level stroke takes besides the cue itself.
  const besides = reach.rho - cueLength;
  const bound = Math.max(value, upperBound);
  return {
    value,
    upperBound: bound,
    longestCue,
    longestCueUpperBound: Math.max(0, bound - besides),
    clearNowhere,
  };
}

function shotMap(question: FitQuestion, judged: PoseJudgement): ShotMap {
  const { length, width } = playSize(question.table);
  const { columns, rows } = MAP;
  const grid = judged.tallied[0] === 0 ? judged.tally?.grid : null;
  const all = (share: number): readonly number[] => new Array<number>(columns * rows).fill(share);
  // No sample was needed where distances alone prove that every shot is open.
  const shares = grid ?? { open: all(1), cramped: all(0), blocked: all(0) };
  const { open, cramped, blocked } = shares;
  return {
    columns,
    rows,
    length,
    width,
    open,
    cramped,
    blocked,
    shots: grid ? (judged.tally?.shots ?? 0) : 0,
  };
}

function cautionsOf({ scene, table, delivery, arrangement }: FitQuestion) {
  const pieces = arrangement?.pieces ?? [];
  const ofRoom = scene.obstacles.filter((o) => pieces.every((piece) => piece.name !== o.name));
  const overhead = ofRoom.filter((o) => o.from >= DEFAULTS.standing.ceiling - DEFAULTS.standing.sideways);
  return cautionsFor(table, {
    doors: scene.doors.map(({ name, opens }) => ({ name, opens })),
    overheadNames: overhead.map((o) => o.name),
    ceilingKnown: scene.ceiling.length > 0,
    deliveryChecked: delivery !== null,
    pieces,
  });
}

function searchNotes(place: Place): readonly string[] {
  return place.stopped
    ? [
        'The search for the best place was stopped before its bounds met; the bounds given are valid all the same.',
      ]
    : [];
}

function poseInDegrees({ x, y, angle }: Placement): Pose {
  const turn = toDegrees(angle);
  return { x, y, turn: turn >= 180 ? 0 : turn };
}

function toDegrees(radians: number): number {
  return (radians * 180) / Math.PI;
}
