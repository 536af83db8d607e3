import type { ClearWay } from '../../arrangement/arrangement-report.js';
import type { Point } from '../../geometry/types.js';
import { alongLine } from './dimension.js';
import type { Draft } from './draft.js';
import { textBox } from './pen.js';
import { type PaperPoint, plainText } from './svg.js';
import type { Paint } from './theme.js';
import { WORDS } from './words.js';

/** Finer than other lines, since there are many, mm. */
const FINE = 0.18;
/** More missing ways than these are counted, not named. */
const MOST_MISSING = 3;
/** A width that costs more than this, in mm of line covered, is left out. */
const MOST_COST = 14;
/** Places at this cost and more are beyond the ends of the line or apart from it. */
const BESIDE = 8;

/**
 * The middle lines of the clear ways, each stretch once however many ways share it, with their width on the longest stretch where there is
 * room; the key says it too. Ways that are missing are named in the key.
 */
export function drawWays(draft: Draft, ways: readonly ClearWay[], clip: string): void {
  const { pen, view, placer, legend, lengths } = draft;
  const paint: Paint = { stroke: 'way', width: FINE, dashes: 'doubleShort' };
  const drawn = new Set<string>();
  for (const way of ways) {
    for (const stretch of newStretches(way.path, drawn)) {
      const line = view.ring(stretch);
      pen.group('way', () => pen.polyline(line, paint), ` clip-path="url(#${clip})"`);
      for (let i = 1; i < line.length; i++) placer.avoid([[line[i - 1], line[i]]], 0.7);
    }
    if (way.path.length > 0) legend.explain(WORDS.way(lengths.full(way.width)), 'line', paint);
  }
}

/** The width of the ways, beside the longest stretch of any, if there is room. */
export function labelWays(draft: Draft, ways: readonly ClearWay[]): void {
  const { view, placer, labels, lengths } = draft;
  let longest: { readonly from: PaperPoint; readonly to: PaperPoint; readonly width: number } | null = null;
  let most = 0;
  for (const { path, width } of ways) {
    for (let i = 1; i < path.length; i++) {
      const from = view.at(path[i - 1]);
      const to = view.at(path[i]);
      const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
      if (long <= most) continue;
      longest = { from, to, width };
      most = long;
    }
  }
  if (longest === null) return;
  const lines = [WORDS.wayWidth(lengths.full(longest.width))];
  const { width, height } = textBox(lines, 0, 0);
  const places = [...alongLine(longest.from, longest.to)(width, height)];
  const found = placer.place(
    places.filter(({ cost }) => cost < BESIDE),
    MOST_COST,
  );
  if (found === null) return;
  labels.group('way-text', () => {
    labels.blank({ ...found.box, width: width - 0.4, height: height - 0.6 });
    labels.textIn(found.box, lines);
  });
}

/** Notes in the key of the ways that were not found. */
export function noteWays({ legend }: Draft, ways: readonly ClearWay[]): void {
  const missing = ways.filter(({ found }) => !found);
  for (const { from, to } of missing.slice(0, MOST_MISSING))
    legend.note(WORDS.wayMissing(plainText(from), plainText(to)), null);
  const more = missing.length - MOST_MISSING;
  if (more > 0) legend.note(WORDS.waysMissing(more), null);
}

/** The stretches of a path of which no other was drawn yet. */
function newStretches(path: readonly Point[], drawn: Set<string>): readonly (readonly Point[])[] {
  const stretches: Point[][] = [];
  let open: Point[] | null = null;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1], path[i]];
    // The same either way round.
    const key = [a, b]
      .map(([x, y]) => `${x} ${y}`)
      .sort()
      .join(' ');
    if (drawn.has(key)) {
      open = null;
      continue;
    }
    drawn.add(key);
    if (open === null) {
      open = [a];
      stretches.push(open);
    }
    open.push(b);
  }
  return stretches;
}
