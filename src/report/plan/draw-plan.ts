import type { CueSpec, TableSpec } from '../../equipment/equipment-types.js';
import { pointInRing } from '../../geometry/predicates.js';
import type { Point } from '../../geometry/types.js';
import type { Scene } from '../../room/scene.js';
import type { StrokeSettings } from '../../stroke/stroke-settings.js';
import type { FitReport, Pose } from '../fit-report.js';
import { sayShares } from '../sentences.js';
import type { Draft } from './draft.js';
import { drawGaps } from './gap-dimensions.js';
import { LabelPlacer } from './label-placer.js';
import { Legend } from './legend.js';
import { Lengths } from './lengths.js';
import { Pen } from './pen.js';
import { drawContours, lowestCeiling } from './plan-ceiling.js';
import {
  describePiecesDrawn,
  drawFronts,
  drawZones,
  labelZones,
  notePieces,
  standingPieces,
  withPieces,
} from './plan-furnishings.js';
import { drawWays, labelWays, noteWays } from './plan-furnishings-ways.js';
import { drawLimits } from './plan-limits.js';
import { drawObstacles, labelObstacles, type ObstacleKind } from './plan-obstacles.js';
import type { CheckedPlanOptions } from './plan-options.js';
import { drawCushions, drawShotMap } from './plan-shots.js';
import { drawAxes, drawReach, drawTable } from './plan-table.js';
import { doorPoints, drawDoors, drawWalls } from './plan-walls.js';
import { type Content, chooseSheet, type Sheet } from './sheet.js';
import { writeSheet } from './sheet-frame.js';
import { pathOf, plainText } from './svg.js';
import { TableFrame } from './table-frame.js';
import { Palette } from './theme.js';
import type { Title } from './title-block.js';
import { around, View } from './view.js';
import { wallChains } from './wall-chains.js';
import { dimensionsAround, drawWallDimensions } from './wall-dimensions.js';
import { WORDS } from './words.js';

/** The checked question that a report answers, as far as a drawing needs it. */
export interface PlanFacts {
  readonly scene: Scene;
  readonly table: TableSpec;
  /** The wanted one. */
  readonly cue: CueSpec;
  readonly stroke: StrokeSettings;
  /** The room was made from tape readings. */
  readonly taped: boolean;
}

/** The plan as an SVG document. */
export function drawPlan(facts: PlanFacts, report: FitReport, options: CheckedPlanOptions): string {
  const { scene, table, cue, stroke } = facts;
  const { outline } = scene;
  const lengths = new Lengths(options.unit);
  const placed = onPlan(report.pose, outline);
  const frame = placed === null ? null : new TableFrame(placed);
  const rails = frame === null ? [] : frame.rectangle(table.outer.length, table.outer.width);
  const chains = wallChains(outline);
  const points = [...outline, ...scene.doors.flatMap((door) => doorPoints(door, outline)), ...rails];
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [left, low] = [Math.min(...xs), Math.min(...ys)];
  const content: Content = {
    width: Math.max(...xs) - left,
    height: Math.max(...ys) - low,
    around: dimensionsAround(chains),
  };
  const sheet = chooseSheet(content, options);
  const palette = new Palette(options.id, options.theme);
  const view = new View(sheet, content, left, low);
  const placer = new LabelPlacer(sheet.drawing);
  const draft: Draft = {
    pen: new Pen(palette),
    labels: new Pen(palette),
    placer,
    view,
    lengths,
    legend: new Legend(),
  };

  const level = table.bedHeight + table.ballDiameter / 2 + stroke.tipOffset;
  const clip = `${options.id}-room`;
  const { arrangement } = report;
  const pieces = standingPieces(arrangement);
  const drawThings = (kinds: readonly ObstacleKind[]): void => {
    drawObstacles(draft, scene.obstacles, level, kinds, clip);
    drawObstacles(draft, pieces, level, kinds, clip, 'piece');
  };
  drawWalls(draft, outline);
  if (arrangement !== undefined) {
    drawZones(draft, pieces, arrangement.sharing, clip);
    drawWays(draft, arrangement.ways, clip);
  }
  const standing = report.verdict !== 'none';
  if (standing) drawThings(['low', 'cut']);
  drawDoors(draft, scene.doors, outline);
  if (frame !== null && placed !== null) {
    drawTable(draft, table, frame);
    if (report.shots !== undefined) drawShotMap(draft, report.shots, frame);
    drawAxes(draft, table, frame);
    if (standing) drawReach(draft, table, frame, reachOf(facts), clip);
  }
  // What stands where the table cannot stand lies over it, so that it is seen.
  if (!standing) drawThings(['low', 'cut']);
  drawThings(['overhead']);
  drawFronts(draft, pieces, clip);
  drawContours(draft, scene.ceiling, outline);
  drawWallDimensions(draft, outline, scene.wallNames, chains, around(view.ring(points)));
  if (frame !== null && placed !== null) {
    drawGaps(draft, report.gaps, withPieces(scene, pieces), table, frame, placed.turn);
    drawCushions(draft, report.cushions, table, cue, frame);
    drawLimits(draft, report.limits);
  }
  labelObstacles(draft, [...scene.obstacles, ...pieces], around(view.ring(outline)));
  if (arrangement !== undefined) {
    labelWays(draft, arrangement.ways);
    labelZones(draft, pieces);
    notePieces(draft, arrangement);
    noteWays(draft, arrangement.ways);
  }
  if (report.verdict === 'none' && report.limits.length > 0)
    draft.legend.note(WORDS.limits(report.limits.map(({ name }) => plainText(name)).join(', ')), null);
  if (report.pose !== null && placed === null) draft.legend.note(WORDS.offPlan, null);

  draft.legend.spill(draft.labels, sheet.legend, sheet.drawing, placer);

  const answer = report.pose === null ? WORDS.noPlace : WORDS.verdict[report.verdict];
  const title: Title = {
    answer,
    certainty: report.certain ? WORDS.certain : WORDS.uncertain,
    rows: rowsOf(facts, report, sheet, lengths),
    scale: sheet.scale,
  };
  return writeSheet({
    sheet,
    palette,
    draft,
    title,
    id: options.id,
    heading: WORDS.planTitle(plainText(table.name), pieces.length),
    description:
      WORDS.planDescription(answer, sayScale(sheet.scale)) +
      (arrangement === undefined ? '' : describePiecesDrawn(arrangement)),
    definitions: `<clipPath id="${clip}"><path d="${pathOf(view.ring(outline), true)}"/></clipPath>`,
  });
}

/** rho = R + s + L + a. */
function reachOf({ table, cue, stroke }: PlanFacts): number {
  return table.ballDiameter / 2 + stroke.backswing + cue.length + stroke.margin;
}

/** The table's place, if its middle lies in the room: a table far out would shrink the plan to nothing. */
function onPlan(pose: Pose | null, outline: readonly Point[]): Pose | null {
  return pose !== null && pointInRing(outline, pose.x, pose.y) >= 0 ? pose : null;
}

/** `1:50` */
export function sayScale(scale: number): string {
  return `1:${Number(scale.toFixed(3))}`;
}

function rowsOf(
  { scene, table, cue, taped }: PlanFacts,
  report: FitReport,
  sheet: Sheet,
  lengths: Lengths,
): Title['rows'] {
  const { rows } = WORDS;
  const { pose, arrangement } = report;
  const lowest = lowestCeiling(scene.ceiling, scene.outline);
  const wanted = report.cues[0];
  const shares = wanted === undefined ? null : sayShares(wanted.shares, wanted.verdict);
  const ceiling =
    lowest === null
      ? WORDS.noCeiling
      : scene.ceiling.some(({ slopeX, slopeY }) => slopeX !== 0 || slopeY !== 0)
        ? WORDS.sloping(lengths.bare(lowest))
        : lengths.bare(lowest);
  return [
    [rows.table, plainText(table.name)],
    [rows.field, WORDS.by(lengths.bare(table.field.length), lengths.bare(table.field.width))],
    ...(pose === null ? [] : [[rows.turn, WORDS.turned(String(Number(pose.turn.toFixed(1))))] as const]),
    ...(arrangement === undefined ? [] : [[rows.pieces, sayPieces(arrangement)] as const]),
    [rows.cue, lengths.full(cue.length)],
    ...(shares === null || report.verdict === 'none'
      ? []
      : [[rows.shots, WORDS.shares(shares.open, shares.cramped, shares.blocked)] as const]),
    [rows.ceiling, ceiling],
    [rows.measured, taped ? WORDS.byTape : WORDS.tolerance(lengths.full(scene.tolerance))],
    [rows.lengths, WORDS.units[lengths.unit]],
    [rows.scale, WORDS.scaleOn(sayScale(sheet.scale), sheet.name)],
  ];
}

function sayPieces({ pieces }: NonNullable<FitReport['arrangement']>): string {
  return WORDS.piecesPlaced(pieces.filter(({ pose }) => pose !== null).length, pieces.length);
}
