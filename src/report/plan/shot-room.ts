import type { Point } from '../../geometry/types.js';
import { fitText } from './character-widths.js';
import { drawDimension } from './dimension.js';
import { type Draft, label } from './draft.js';
import { TEXT } from './pen.js';
import { aroundArea, sayHeights } from './plan-obstacles.js';
import { WALL_BAND } from './plan-walls.js';
import type { DrawnCue } from './shot-cue.js';
import type { ShotSection } from './shot-section.js';
import { plainText } from './svg.js';
import { LINE, type Paint } from './theme.js';
import { around, edgesOf } from './view.js';
import { WORDS } from './words.js';

/** A section and how much of it is shown, mm. */
export interface SectionView {
  readonly section: ShotSection;
  readonly start: number;
  readonly end: number;
  readonly top: number;
}

/** How deep ground and ceiling are hatched, and the strip on the floor where the player stands, mm on paper. */
const GROUND = 2.5;
const STRIP = 1.4;
const LONGEST_NAME = 40;

/** Floor, ceiling, wall, and the things that the plane cuts, with the margin that the cue keeps. */
export function drawRoomSection(draft: Draft, { section, start, end, top }: SectionView): void {
  const { pen, view, placer, legend } = draft;
  const { scale } = view;
  const ground: Paint = { fill: { pattern: 'ground' } };
  const right = section.wall?.at ?? end;
  pen.group('ground', () => {
    const level = view.ring([
      [start, 0],
      [right, 0],
      [right, -GROUND * scale],
      [start, -GROUND * scale],
    ]);
    pen.polygon(level, ground);
    pen.polyline(level.slice(0, 2), { stroke: 'ink', width: LINE.thick }, ' data-part="floor"');
    placer.avoid(edgesOf(level), 3);
  });
  legend.explain(WORDS.ground, 'area', { ...ground, stroke: 'ink' });
  const [from, to] = section.standing;
  const strip: Paint = { fill: { pattern: 'cramped-many' }, stroke: 'cramped' };
  if (from < right) {
    pen.group('standing', () =>
      pen.polygon(rectangle(draft, from, Math.min(to, right), 0, STRIP * scale), strip),
    );
    legend.explain(WORDS.standingZone, 'area', strip);
  }
  drawCeiling(draft, section.ceiling, right, top);
  if (section.wall !== null) {
    const { at } = section.wall;
    const band = rectangle(draft, at, at + WALL_BAND * scale, 0, top);
    pen.group('wall', () => {
      pen.polygon(band, { fill: { pattern: 'cut' } });
      pen.polyline(
        [view.at([at, 0]), view.at([at, top])],
        { stroke: 'ink', width: LINE.thick },
        ' data-part="face"',
      );
    });
    placer.avoid(edgesOf(band), 4);
    legend.explain(WORDS.walls, 'area', { fill: { pattern: 'cut' } });
  }
  const body: Paint = { fill: { pattern: 'cut' }, stroke: 'ink', width: LINE.thick };
  for (const { from: low, to: high, t0, t1 } of section.cut) {
    const ring = rectangle(draft, t0, t1, low, Math.min(high, top));
    pen.group('obstacle', () => {
      pen.polygon(ring, { fill: 'paper' });
      pen.polygon(ring, body);
    });
    placer.avoid(edgesOf(ring), 3);
  }
  const margin: Paint = { stroke: 'fine', dashes: 'doubleChain' };
  for (const { from: low, to: high, t0, t1 } of section.margins) {
    pen.group('margin', () =>
      pen.polygon(rectangle(draft, t0, t1, Math.max(0, low), Math.min(high, top)), margin),
    );
    legend.explain(WORDS.margin, 'line', margin);
  }
}

/** Names and heights of things, the wall's name, and how far the butt stays off it. */
export function labelSection(draft: Draft, { section, top }: SectionView, cue: DrawnCue): void {
  const { view, lengths } = draft;
  const behind = firstBehind(section, cue);
  if (behind !== null) {
    const length = behind - cue.end;
    const from = view.at([cue.end, cue.axisAt(cue.end)]);
    const to = view.at([behind, cue.axisAt(cue.end)]);
    const y = from[1] - 8;
    const line = [
      [from[0], y],
      [to[0], y],
    ] as const;
    const note = WORDS.behindButt(lengths.bare(length));
    drawDimension(draft, { from, to, line, length, note, part: 'butt' });
  }
  for (const thing of section.cut) {
    const area = around(rectangle(draft, thing.t0, thing.t1, thing.from, Math.min(thing.to, top)));
    const name = plainText(thing.name);
    const heights = sayHeights(thing, lengths);
    label(
      draft,
      'obstacle-text',
      [fitText(name, TEXT.plain, LONGEST_NAME), heights],
      aroundArea(area),
      `${name}, ${heights}`,
    );
  }
  if (section.wall !== null) {
    const { at, name } = section.wall;
    const words = fitText(plainText(name), TEXT.plain, LONGEST_NAME);
    label(
      draft,
      'wall-text',
      [words],
      aroundArea(around(rectangle(draft, at, at, 0.55 * top, 0.95 * top))),
      words,
    );
  }
}

/** The first thing behind the butt of the cue drawn back, at its height; null where there is none, or the cue is in it. */
function firstBehind({ cut, wall }: ShotSection, cue: DrawnCue): number | null {
  const z = cue.axisAt(cue.end);
  const ahead = cut.filter(({ from, to }) => from <= z && z <= to).map(({ t0 }) => t0);
  const first = Math.min(...ahead, wall?.at ?? Number.POSITIVE_INFINITY);
  return Number.isFinite(first) && first > cue.end ? first : null;
}

function drawCeiling(
  { pen, view, placer, legend }: Draft,
  ceiling: readonly Point[],
  right: number,
  top: number,
): void {
  for (let i = 0; i + 1 < ceiling.length; i++) {
    const piece = below(ceiling[i], ceiling[i + 1], right, top);
    if (piece === null) continue;
    const [a, b] = view.ring(piece);
    pen.group('ceiling', () => {
      pen.polygon([a, b, [b[0], b[1] - GROUND], [a[0], a[1] - GROUND]], { fill: { pattern: 'ground' } });
      pen.polyline([a, b], { stroke: 'ink', width: LINE.thick });
    });
    placer.avoid([[a, b]], 4);
    legend.explain(WORDS.ceilingLine, 'line', { stroke: 'ink', width: LINE.thick });
  }
}

/** The part of a line from a to b that lies left of `right` and not over `top`. */
function below([at, az]: Point, [bt, bz]: Point, right: number, top: number): readonly [Point, Point] | null {
  let low = 0;
  let high = bt > right ? (right - at) / (bt - at) : 1;
  if (az > top && bz > top) return null;
  if (az > top) low = (az - top) / (az - bz);
  if (bz > top) high = Math.min(high, (top - az) / (bz - az));
  if (!(high > low)) return null;
  const point = (share: number): Point => [at + share * (bt - at), az + share * (bz - az)];
  return [point(low), point(high)];
}

function rectangle({ view }: Draft, left: number, right: number, low: number, high: number) {
  return view.ring([
    [left, low],
    [right, low],
    [right, high],
    [left, high],
  ]);
}
