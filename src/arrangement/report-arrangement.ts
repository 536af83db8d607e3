import type { Arranged, ArrangeQuestion, Layout } from './arrange-question.js';
import { arrangementBounds } from './arrangement-bounds.js';
import type { ArrangementReport, ClearWay, PieceProblem, PieceReport } from './arrangement-report.js';
import type { CheckedPiece } from './checked-arrangement.js';
import { besideProblems, roomProblems, roomRules, tableProblems } from './layout-rules.js';
import { pieceGaps } from './piece-gaps.js';
import { type PlacedPiece, placePiece } from './piece-place.js';
import { cueingFloor, sharedZones } from './zone-sharing.js';

/** What was asked, as far as the report goes by it. */
export type ReportQuestion = Pick<ArrangeQuestion, 'scene' | 'table' | 'stroke' | 'cue' | 'arrangement'>;

/**
 * The report of a layout, without its advice: for each piece where it stands, what is wrong there and the gaps round it; what its zones share;
 * the ways as they were found, and the bounds. Lengths in mm, turns in degrees, areas in m2.
 *
 * @param ways All clear ways that were looked for. A piece to or from which one is missing has the problem `no-way`.
 */
export function reportArrangement(
  question: ReportQuestion,
  arranged: Arranged,
  ways: readonly ClearWay[],
): Omit<ArrangementReport, 'advice'> {
  const { scene, table, stroke, cue, arrangement } = question;
  const { tablePose, value, layouts, stopped } = arranged;
  const places = placesOf(arrangement.pieces, arranged);
  const placed = places.filter((place) => place !== null);
  const standing = layoutProblems(question, arranged);
  const frame = table === null || tablePose === null ? null : { spec: table, pose: tablePose };
  const around = { scene, placed, table: frame };
  const pieces = arrangement.pieces.map((piece, i): PieceReport => {
    const place = places[i];
    if (place === null) return withoutPlace(piece, arranged.rejections[i] ?? []);
    const problems = [...standing[i], ...waysMissing(piece.name, ways)];
    return { ...withPlace(piece, place, problems), gaps: pieceGaps(place, around) };
  });
  const cueing = frame === null ? [] : cueingFloor(frame.spec, stroke, cue, frame.pose);
  return {
    complete: pieces.every(({ fits }) => fits) && ways.every(({ found }) => found),
    pieces,
    ways,
    sharing: sharedZones(placed, cueing),
    value,
    bounds: arrangementBounds(scene, table, arrangement.pieces),
    layouts,
    stopped,
  };
}

/** The pieces where a layout has them, in their order; null: it has no place. */
export function placesOf(
  pieces: readonly CheckedPiece[],
  { poses }: Layout,
): readonly (PlacedPiece | null)[] {
  return pieces.map((piece, i) => {
    const pose = poses[i] ?? null;
    return pose === null ? null : placePiece(piece, pose);
  });
}

/** For each piece of a layout, what is wrong where it stands, the clear ways left out of account; nothing for one without a place. */
export function layoutProblems(
  { scene, table, arrangement }: Pick<ReportQuestion, 'scene' | 'table' | 'arrangement'>,
  layout: Layout,
): readonly (readonly PieceProblem[])[] {
  const rules = roomRules(scene, arrangement.way);
  const { tablePose } = layout;
  const places = placesOf(arrangement.pieces, layout);
  return places.map((place) => {
    if (place === null) return [];
    const problems = [...roomProblems(rules, place)];
    if (table !== null && tablePose !== null) problems.push(...tableProblems(place, table, tablePose));
    for (const other of places) {
      if (other !== null && other !== place) problems.push(...besideProblems(place, other));
    }
    return problems;
  });
}

function waysMissing(name: string, ways: readonly ClearWay[]): readonly PieceProblem[] {
  return ways
    .filter(({ from, to, found }) => !found && (from === name || to === name))
    .map(({ from, to, width, widest }) => ({
      code: 'no-way',
      with: from === name ? to : from,
      zone: null,
      amount: widest === null ? null : Math.max(0, width - widest),
    }));
}

function withPlace(piece: CheckedPiece, place: PlacedPiece, problems: readonly PieceProblem[]): PieceReport {
  const { x, y, angle } = place.pose;
  return {
    name: piece.name,
    kind: piece.kind,
    pose: { x, y, turn: fullTurn(angle) },
    given: piece.pose !== null,
    fits: problems.length === 0,
    problems,
    ring: place.ring,
    from: piece.from,
    to: piece.to,
    gaps: [],
    zones: place.zones.map(({ spec: { name, from, to }, ring }) => ({ name, ring, from, to })),
  };
}

function withoutPlace(piece: CheckedPiece, rejections: readonly PieceProblem[]): PieceReport {
  return {
    name: piece.name,
    kind: piece.kind,
    pose: null,
    given: piece.pose !== null,
    fits: false,
    problems:
      rejections.length > 0 ? rejections : [{ code: 'no-place', with: null, zone: null, amount: null }],
    ring: [],
    from: piece.from,
    to: piece.to,
    gaps: [],
    zones: [],
  };
}

/** An angle in radians as degrees in [0, 360). */
export function fullTurn(angle: number): number {
  const turn = ((((angle * 180) / Math.PI) % 360) + 360) % 360;
  // Of the smallest negative angles, rounding makes a whole turn.
  return turn === 360 ? 0 : turn + 0;
}
