import type { CueSpec, TableSpec } from '../../equipment/equipment-types.js';
import type { Point } from '../../geometry/types.js';
import type { SceneObstacle } from '../../room/scene.js';
import { type AnsweredShot, STANDING_ROOM } from '../../stroke/answer-shot.js';
import type { StrokeScene } from '../../stroke/stroke-scene.js';
import type { Draft } from './draft.js';
import { sayScale } from './draw-plan.js';
import { LabelPlacer } from './label-placer.js';
import { Legend } from './legend.js';
import { Lengths } from './lengths.js';
import { Pen } from './pen.js';
import type { CheckedPlanOptions } from './plan-options.js';
import { type Content, chooseSheet, type Sheet } from './sheet.js';
import { writeSheet } from './sheet-frame.js';
import { type DrawnCue, drawCue, drawnCue, sayAngle } from './shot-cue.js';
import { drawRoomSection, labelSection, type SectionView } from './shot-room.js';
import { type ShotSection, shotSection } from './shot-section.js';
import { drawTableSection } from './shot-table.js';
import { plainText } from './svg.js';
import { Palette } from './theme.js';
import type { Title } from './title-block.js';
import { View } from './view.js';
import { WORDS } from './words.js';

/** One shot that was judged, in the table's frame: mm and radians. */
export interface ShotFacts {
  readonly strokes: StrokeScene;
  readonly obstacles: readonly SceneObstacle[];
  readonly table: TableSpec;
  readonly cue: CueSpec;
  readonly ball: Point;
  readonly phi: number;
  readonly answer: AnsweredShot;
}

/** How far the drawing goes beyond what it shows, behind the ball at most, and how high at least and at most, mm. */
const BEYOND = 150;
const BEHIND = 450;
const TO_WALL = 600;
const HEIGHT = { least: 1900, most: 3200, over: 300 } as const;
/** What ground, walls and dimensions take around the section, mm on paper. */
const AROUND = { left: 16, right: 6, top: 8, bottom: 14 } as const;

/** The side elevation of a shot as an SVG document. */
export function drawShot(facts: ShotFacts, options: CheckedPlanOptions): string {
  const { strokes, obstacles, table, cue, ball, phi, answer } = facts;
  const lengths = new Lengths(options.unit);
  const drawn = drawnCue(strokes, cue, elevationDrawn(facts), swingOf(answer));
  const cutTo = (end: number): ShotSection => shotSection(strokes, obstacles, cue, ball, phi, [0, end]);
  const { ahead, behind, standing } = cutTo(0);
  const start = -Math.min(BEHIND, behind.rim + BEYOND);
  const least = Math.max(drawn.end, standing[1], ahead.rim) + BEYOND;
  // A wall that is not far beyond is shown.
  const end = Math.max(least, cutTo(least + TO_WALL).wall?.at ?? 0);
  const section = shotSection(strokes, obstacles, cue, ball, phi, [start, end]);
  const top = topOf(
    section.ceiling.map(([, z]) => z),
    drawn,
  );
  const content: Content = { width: end - start, height: top, around: AROUND };
  const sheet = chooseSheet(content, options);
  const palette = new Palette(options.id, options.theme);
  const view = new View(sheet, content, start, 0);
  const placer = new LabelPlacer(sheet.drawing);
  const draft: Draft = {
    pen: new Pen(palette),
    labels: new Pen(palette),
    placer,
    view,
    lengths,
    legend: new Legend(),
  };
  const shown: SectionView = { section, start, end, top };
  drawRoomSection(draft, shown);
  drawTableSection(draft, table, strokes, shown);
  drawCue(draft, strokes, drawn, answer);
  labelSection(draft, shown, drawn);
  const words = WORDS.shot[answer.class];
  return writeSheet({
    sheet,
    palette,
    draft,
    title: titleOf(facts, sheet, lengths),
    id: options.id,
    heading: WORDS.shotTitle(plainText(table.name)),
    description: WORDS.shotDescription(words, sayScale(sheet.scale)),
    definitions: '',
  });
}

/** The elevation found; where none is free, the rail's, so that the drawing shows what is in the way of it. */
function elevationDrawn({ strokes, answer }: ShotFacts): number {
  return answer.elevation ?? Math.min(answer.railElevation ?? 0, strokes.stroke.maxElevation);
}

/** The short backswing where the full one is what does not go. */
function swingOf({ elevation, meets }: AnsweredShot): 'full' | 'short' {
  return elevation === null || meets.every((name) => name === STANDING_ROOM) ? 'full' : 'short';
}

function topOf(ceiling: readonly number[], { high }: DrawnCue): number {
  const needed = Math.max(HEIGHT.least, high + HEIGHT.over);
  const highest = Math.max(0, ...ceiling);
  return ceiling.length > 0 && highest <= Math.max(HEIGHT.most, needed) ? Math.max(highest, high) : needed;
}

function titleOf(
  { strokes, table, cue, ball, phi, answer }: ShotFacts,
  sheet: Sheet,
  lengths: Lengths,
): Title {
  const { rows, shotRows } = WORDS;
  const rail = answer.railElevation === null ? WORDS.noElevation : sayAngle(answer.railElevation);
  const direction = (((phi * 180) / Math.PI) % 360).toFixed(1);
  return {
    answer: WORDS.shot[answer.class],
    certainty: '',
    scale: sheet.scale,
    rows: [
      [rows.table, plainText(table.name)],
      [rows.cue, lengths.full(cue.length)],
      [shotRows.ball, WORDS.ballAt(lengths.bare(ball[0]), lengths.bare(ball[1]))],
      [shotRows.direction, WORDS.direction(String(Number(direction)))],
      [
        shotRows.elevation,
        answer.elevation === null ? WORDS.noElevation : WORDS.elevation(sayAngle(answer.elevation), rail),
      ],
      [shotRows.meets, answer.meets.length === 0 ? WORDS.nothing : answer.meets.map(plainText).join(', ')],
      [shotRows.standing, answer.canStand ? WORDS.stands : WORDS.noStanding],
      [WORDS.marginRow, lengths.full(strokes.stroke.margin)],
      [rows.lengths, WORDS.units[lengths.unit]],
      [rows.scale, WORDS.scaleOn(sayScale(sheet.scale), sheet.name)],
    ],
  };
}
