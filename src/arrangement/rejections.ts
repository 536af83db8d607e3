import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import type { Placement } from '../geometry/types.js';
import type { ArrangeQuestion, Layout } from './arrange-question.js';
import type { PieceProblem } from './arrangement-report.js';
import { gridPoses } from './free-poses.js';
import { besideProblems, type RoomRules, roomProblems, roomRules, tableProblems } from './layout-rules.js';
import { symmetry } from './piece-kinds.js';
import { type PlacedPiece, placePiece } from './piece-place.js';

/** Places along every wall, for each side of the piece, that are asked what is wrong with them. */
const ALONG = 24;
/** Reasons that are told. */
const MOST = 8;

/** What held back the places of one piece: for each the first reason, those of the room before the table and the other pieces. Most often first. */
export function rejectionsOf(
  question: ArrangeQuestion,
  layout: Layout,
  piece: number,
): readonly PieceProblem[] {
  const { scene, table, arrangement } = question;
  const spec = arrangement.pieces[piece];
  const rules = roomRules(scene, arrangement.way);
  const others = layout.poses.flatMap((pose, i) =>
    pose === null || i === piece ? [] : [placePiece(arrangement.pieces[i], pose)],
  );
  const { tablePose } = layout;
  const firstProblem = (placed: PlacedPiece): PieceProblem => {
    const inRoom = roomProblems(rules, placed);
    if (inRoom.length > 0) return inRoom[0];
    const atTable = table === null || tablePose === null ? [] : tableProblems(placed, table, tablePose);
    if (atTable.length > 0) return atTable[0];
    for (const other of others) {
      const beside = besideProblems(placed, other);
      if (beside.length > 0) return beside[0];
    }
    return NOWHERE;
  };
  const tally = new Map<string, { problem: PieceProblem; count: number }>();
  for (const pose of triedPoses(rules, spec, tablePose)) {
    const problem = firstProblem(placePiece(spec, pose));
    const key = `${problem.code}|${problem.with}|${problem.zone}`;
    const known = tally.get(key);
    if (known === undefined) tally.set(key, { problem, count: 1 });
    else {
      known.count++;
      if ((problem.amount ?? Infinity) < (known.problem.amount ?? Infinity)) known.problem = problem;
    }
  }
  const problems = [...tally.values()].sort((a, b) => b.count - a.count).map(({ problem }) => problem);
  return problems.length === 0 ? [NOWHERE] : problems.slice(0, MOST);
}

const NOWHERE: PieceProblem = { code: 'no-place', with: null, zone: null, amount: null };

function triedPoses(
  rules: RoomRules,
  spec: FurnishingSpec,
  tablePose: Placement | null,
): readonly Placement[] {
  if (spec.stand === 'over-table') return tablePose === null ? [] : [tablePose];
  if (spec.stand === 'free') return gridPoses(spec, rules.scene.outline);
  const sides = spec.turns === 'back' ? [0] : [0, 1, 2, 3].slice(0, 4 / symmetry(spec));
  return rules.walls.flatMap(([[ax, ay], [bx, by]]) => {
    const length = Math.hypot(bx - ax, by - ay);
    const [tx, ty] = [(bx - ax) / length, (by - ay) / length];
    return sides.flatMap((side) => {
      const half = (side % 2 === 0 ? spec.length : spec.width) / 2;
      const depth = (side % 2 === 0 ? spec.width : spec.length) / 2;
      return Array.from({ length: ALONG + 1 }, (_, k): Placement => {
        const s = half + (k / ALONG) * (length - 2 * half);
        return {
          x: ax + s * tx - depth * ty,
          y: ay + s * ty + depth * tx,
          angle: Math.atan2(ty, tx) - (side * Math.PI) / 2,
        };
      });
    });
  });
}
