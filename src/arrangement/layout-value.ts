import { DEFAULTS } from '../equipment/defaults.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import { growRing } from '../geometry/grow-ring.js';
import { rectangleRing } from '../geometry/ring.js';
import type { Placement, Ring } from '../geometry/types.js';
import { clearanceProbe } from '../placement/clearance-at.js';
import { type OpenReach, openReach } from '../placement/open-reach.js';
import { REACHES } from '../placement/place-table.js';
import { playerStrip } from '../placement/player-strip.js';
import { cueingProblem, playSize, tableProblem } from '../placement/problem-for.js';
import type { Scene } from '../room/scene.js';
import { prepareStrokes } from '../stroke/prepare-strokes.js';
import { standingRoom } from '../stroke/standing.js';
import type { StrokeSettings } from '../stroke/stroke-settings.js';
import type { ArrangeQuestion, Layout } from './arrange-question.js';
import type { ArrangementValue } from './arrangement-report.js';
import { furnishedScene } from './furnished-scene.js';
import { fitsBeside, fitsRoom, fitsTable, type RoomRules, roomRules, tableRing } from './layout-rules.js';
import { layoutWays, type WayJudge } from './layout-ways.js';
import { type PlacedPiece, placePiece } from './piece-place.js';
import { SAMPLE_SHOTS, type SampleShots, samplePlay, sampleShots } from './play-sample.js';
import { apartShare } from './zone-sharing.js';

/** What a layout is worth, with everything that its room asks prepared once. */
export type LayoutJudge = (layout: Layout) => ArrangementValue;

/**
 * What a layout is worth: the terms of {@link ArrangementValue}. Nothing is placed or played where the pieces cut off the table, or a door that
 * leads to it, from the others, or where the table cannot stand (unless its pose is given); play counts by the share of the doors that lead to the table. Play is 1 where distances prove it, else taken from
 * a fixed sample of shots and less than 1. The bound is the sum of the weights. The same layout has the same value, to the last bit.
 */
export function layoutValue(question: ArrangeQuestion, layout: Layout): ArrangementValue {
  return layoutJudge(question)(layout);
}

export function layoutJudge(question: ArrangeQuestion): LayoutJudge {
  const { scene, table, stroke, cue, arrangement } = question;
  const rules = roomRules(scene, arrangement.way);
  const ways = layoutWays(scene, table, arrangement.way);
  const shots = sampleShots();
  const reach = table === null ? null : openReach(table, stroke, cue);
  return ({ tablePose, poses }) => {
    const placed = poses.map((pose, i) => (pose === null ? null : placePiece(arrangement.pieces[i], pose)));
    return judge({ question, rules, ways, shots, reach }, tablePose, placed);
  };
}

interface Prepared {
  readonly question: ArrangeQuestion;
  readonly rules: RoomRules;
  readonly ways: WayJudge;
  readonly shots: SampleShots;
  readonly reach: OpenReach | null;
}

function judge(
  { question, rules, ways, shots, reach }: Prepared,
  tablePose: Placement | null,
  placed: readonly (PlacedPiece | null)[],
): ArrangementValue {
  const { table } = question;
  const there = placed.filter((piece) => piece !== null);
  const stood =
    table === null || tablePose === null || reach === null ? null : { table, pose: tablePose, reach };
  const reached = ways(tablePose, placed);
  const keepsRules = (piece: PlacedPiece): boolean =>
    fitsRoom(rules, piece) &&
    (stood === null || fitsTable(piece, stood.table, stood.pose)) &&
    there.every((other) => other === piece || fitsBeside(piece, other));
  // A table that could stand elsewhere is not given up for a piece.
  const stands =
    stood === null || question.pose !== null || standsAt(question, stood.table, stood.pose, there);
  const whole = reached.table && stands;
  const good = placed.filter((piece, i) => piece !== null && reached.pieces[i] && keepsRules(piece)).length;
  const placedShare = whole ? good / Math.max(1, placed.length) : 0;
  const play =
    stood === null || !whole ? 0 : reached.doors * playAt(question, stood.pose, there, shots, stood.reach);
  const cueing = stood === null ? [] : cueingArea(stood.table, stood.pose, stood.reach);
  const apart = apartShare(there, cueing);
  const { weights } = DEFAULTS.arrangement;
  return {
    value: weights.placed * placedShare + weights.play * play + weights.apart * apart,
    upperBound: weights.placed + weights.play + weights.apart,
    placed: placedShare,
    play,
    apart,
  };
}

/** open + 0.9 cramped of the wanted cue's shots with these pieces in the room; 0 where the table cannot stand, 1 where and only where distances prove it. */
export function playAt(
  { scene, table, stroke, cue }: ArrangeQuestion,
  pose: Placement,
  pieces: readonly PlacedPiece[],
  shots: SampleShots,
  reach: OpenReach,
): number {
  if (table === null) return 0;
  const room = furnishedScene(scene, pieces, table);
  if (!standsIn(room, table, pose)) return 0;
  if (plainlyClear(room, table, stroke, reach, pose)) return 1;
  const strokes = prepareStrokes(room, table, pose, stroke);
  return Math.min(MOST_UNPROVED, samplePlay(strokes, standingRoom(strokes), cue, shots));
}

function standsAt(
  { scene }: ArrangeQuestion,
  table: TableSpec,
  pose: Placement,
  pieces: readonly PlacedPiece[],
): boolean {
  return standsIn(furnishedScene(scene, pieces, table), table, pose);
}

function standsIn(room: Scene, table: TableSpec, pose: Placement): boolean {
  return clearanceProbe(tableProblem(room, table)).stands(pose);
}

/** Play that distances do not prove is at most this, one shot less than all: a few shots may be lost that no sample shows. */
export const MOST_UNPROVED: number = 1 - 1 / SAMPLE_SHOTS;

/** Do distances alone prove that every shot is open with the table at this pose? */
export function plainlyClear(
  room: Scene,
  table: TableSpec,
  stroke: StrokeSettings,
  reach: OpenReach,
  pose: Placement,
): boolean {
  return (
    reach.steepest <= stroke.maxElevation &&
    clearanceProbe(cueingProblem(room, table, stroke.margin, reach)).clearance(pose) >= reach.rho - REACHES &&
    playerStrip(room, table, pose) >= reach.strip - REACHES
  );
}

/** How far the round corners of {@link cueingArea} may lie outside the true ones, mm: less than anything that a layout's worth turns on. */
const ROUGH = 25;

/** Where cues and players of the table go, as `cueingFloor` has it but with rougher corners. */
function cueingArea(table: TableSpec, pose: Placement, { rho, strip }: OpenReach): readonly Ring[] {
  const { length, width } = playSize(table);
  const q = rectangleRing([pose.x, pose.y], length, width, pose.angle);
  const arcs = { arcs: 'circumscribed', sagitta: ROUGH } as const;
  return [growRing(q, rho, arcs), growRing(tableRing(table, pose), strip, arcs)];
}
