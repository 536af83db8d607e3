import { adviseArrangement } from './arrangement/advise-arrangement.js';
import { type Arranged, type ArrangeQuestion, arrange } from './arrangement/arrange.js';
import type { CheckedArrangement } from './arrangement/checked-arrangement.js';
import { clearWays } from './arrangement/clear-ways.js';
import { furnishedScene } from './arrangement/furnished-scene.js';
import { type PlacedPiece, placePiece } from './arrangement/piece-place.js';
import { placesOf, reportArrangement } from './arrangement/report-arrangement.js';
import { assessRoom } from './assess-room.js';
import type { FitQuestion } from './fit-question.js';
import type { Placement } from './geometry/types.js';
import { judgePose } from './placement/judge-pose.js';
import { openReach } from './placement/open-reach.js';
import { placeTable } from './placement/place-table.js';
import { cueingProblem } from './placement/problem-for.js';
import type { FitReport, Verdict } from './report/fit-report.js';
import type { Scene } from './room/scene.js';

/** Shots and boxes of shots by which advice is weighed. */
const ADVICE_SHOTS = 256;
const ADVICE_BOXES = 500;

/**
 * The answer for a room that other pieces are to stand in too. Table and pieces are arranged together; then all is judged in the room with
 * the pieces where they stand. The bounds of the clearance hold for every arrangement.
 */
export function furnishRoom(question: FitQuestion, arrangement: CheckedArrangement): FitReport {
  const { scene, table, stroke, cues, search } = question;
  const [cue] = cues;
  const { gap, maxBoxes, turns } = search;
  const asked: ArrangeQuestion = {
    scene,
    table,
    stroke,
    cue,
    pose: question.pose,
    arrangement,
    search: { gap, maxBoxes, turns },
  };
  const arranged = arrange(asked);
  const placed = placesOf(arrangement.pieces, arranged).filter((piece) => piece !== null);
  const { tablePose } = arranged;
  // Without a place for the table only what was given a place is known to be in its way.
  const fixed = furnishedScene(scene, givenPieces(arrangement), table);
  const furnished = tablePose === null ? fixed : furnishedScene(scene, placed, table);
  const report = assessRoom(
    { ...question, scene: furnished },
    {
      pose: tablePose,
      views: null,
      upperBound: question.pose === null ? clearanceBound(question, fixed) : null,
      stopped: arranged.stopped,
      emptied: fixed,
    },
  );
  const standing = tablePose === null || report.verdict === 'none' ? null : { table, pose: tablePose };
  const ways = clearWays(scene, standing, placed, arrangement.way);
  return {
    ...report,
    // Pieces have rules of their own for where they may go: see the advice on the arrangement.
    advice: report.advice.filter(({ obstacle }) => !isOfPiece(obstacle, scene)),
    arrangement: {
      ...reportArrangement(asked, arranged, ways),
      advice: adviceOn(question, asked, arranged, report.verdict),
    },
  };
}

function adviceOn(question: FitQuestion, asked: ArrangeQuestion, arranged: Arranged, verdict: Verdict) {
  const { table, stroke, cues } = question;
  const judge = (scene: Scene, pose: Placement) => {
    const { cues: judged } = judgePose({
      scene,
      table,
      stroke,
      cues: [cues[0]],
      pose,
      shots: ADVICE_SHOTS,
      withTolerance: false,
      maxBoxes: ADVICE_BOXES,
    });
    return judged[0];
  };
  const { tablePose } = arranged;
  const placed = placesOf(asked.arrangement.pieces, arranged).filter((piece) => piece !== null);
  const open = tablePose === null ? 0 : judge(furnishedScene(asked.scene, placed, table), tablePose).open;
  return adviseArrangement({ ...asked, arranged, now: { verdict, open }, arrange, judge });
}

/** No place for the table has more clearance, wherever the pieces without a given pose go: an obstacle more never adds any. */
function clearanceBound({ table, stroke, cues, search }: FitQuestion, fixed: Scene): number {
  const reach = openReach(table, stroke, cues[0]);
  const { onProgress: _, ...options } = search;
  return placeTable(cueingProblem(fixed, table, stroke.margin, reach), { ...options, enough: [] }).upperBound;
}

function givenPieces({ pieces }: CheckedArrangement): readonly PlacedPiece[] {
  return pieces.flatMap((piece) => (piece.pose === null ? [] : [placePiece(piece, piece.pose)]));
}

/** Is that the name of something that the room itself does not have? */
function isOfPiece(obstacle: string | undefined, scene: Scene): boolean {
  return obstacle !== undefined && scene.obstacles.every(({ name }) => name !== obstacle);
}
