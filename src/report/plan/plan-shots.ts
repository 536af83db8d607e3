import type { CueSpec, TableSpec } from '../../equipment/equipment-types.js';
import type { CushionProfile, ShotMap } from '../fit-report.js';
import { readable } from './dimension.js';
import { type Draft, label, type Places } from './draft.js';
import type { Candidate } from './label-placer.js';
import { pathOf } from './svg.js';
import { halfCushion, type TableFrame } from './table-frame.js';
import type { Paint, Pattern } from './theme.js';
import { WORDS } from './words.js';

type CellClass = 'crampedSome' | 'crampedMany' | 'blockedSome' | 'blockedMany';

const CLASSES = ['crampedSome', 'crampedMany', 'blockedSome', 'blockedMany'] as const;
const PATTERN: Readonly<Record<CellClass, Pattern>> = {
  crampedSome: 'cramped-some',
  crampedMany: 'cramped-many',
  blockedSome: 'blocked-some',
  blockedMany: 'blocked-many',
};
/** From this share of a cell's shots on they are many. */
const MANY = 0.25;

/** The map of shots on the field: equal cells beside and above each other in one piece. */
export function drawShotMap({ pen, view, legend }: Draft, map: ShotMap, frame: TableFrame): void {
  const { columns, rows, length, width } = map;
  const place = (column: number, row: number) =>
    view.at(frame.at((column / columns - 0.5) * length, (row / rows - 0.5) * width));
  pen.group('shots', () => {
    for (const kind of CLASSES) {
      const blocks = blocksOf(map, kind);
      if (blocks.length === 0) continue;
      const data = blocks.map(({ left, right, low, high }) =>
        pathOf([place(left, low), place(right, low), place(right, high), place(left, high)], true),
      );
      const paint: Paint = { fill: { pattern: PATTERN[kind] } };
      pen.path(data.join(''), paint, ` data-part="${PATTERN[kind]}"`);
      legend.explain(WORDS[kind], 'area', {
        ...paint,
        stroke: kind.startsWith('cramped') ? 'cramped' : 'blocked',
      });
    }
  });
}

function classOf({ cramped, blocked }: ShotMap, cell: number): CellClass | null {
  if (blocked[cell] > 0) return blocked[cell] < MANY ? 'blockedSome' : 'blockedMany';
  if (cramped[cell] > 0) return cramped[cell] < MANY ? 'crampedSome' : 'crampedMany';
  return null;
}

interface Block {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  high: number;
}

/** Runs of cells of one class in each row, joined to the same run of the row before. */
function blocksOf(map: ShotMap, kind: CellClass): readonly Block[] {
  const blocks: Block[] = [];
  for (let row = 0; row < map.rows; row++) {
    let left = -1;
    for (let column = 0; column <= map.columns; column++) {
      const inside = column < map.columns && classOf(map, row * map.columns + column) === kind;
      if (inside && left < 0) left = column;
      if (inside || left < 0) continue;
      const same = blocks.find((b) => b.left === left && b.right === column && b.high === row);
      if (same === undefined) blocks.push({ left, right: column, low: row, high: row + 1 });
      else same.high = row + 1;
      left = -1;
    }
  }
  return blocks;
}

/** Stretches of one cushion that get their number. */
const MOST_NAMED = 6;

/** Less than this and a shorter cue is no shorter, mm. */
const SAME_CUE = 0.5;

interface Stretch {
  readonly from: number;
  to: number;
  readonly short: boolean;
  /** The worst spot. */
  at: number;
  open: number;
  cramped: number;
}

/** Along the rails where only a shorter cue will do: a band, and the longest cue at the worst spot of each stretch. */
export function drawCushions(
  draft: Draft,
  profiles: readonly CushionProfile[],
  table: TableSpec,
  cue: CueSpec,
  frame: TableFrame,
): void {
  const { pen, view, lengths, legend } = draft;
  for (const { cushion, spots } of profiles) {
    const depth = cushion.startsWith('end')
      ? (table.outer.length - table.field.length) / 2
      : (table.outer.width - table.field.width) / 2;
    const put = (out: number, along: number) => view.at(frame.behind(cushion, table, out, along));
    let named = 0;
    for (const stretch of stretches(spots, halfCushion(cushion, table), cue.length)) {
      const { from, to, short, at, open, cramped } = stretch;
      const paint: Paint = { fill: { pattern: short ? 'cramped-many' : 'blocked-many' } };
      pen.group('shorter-cue', () =>
        pen.polygon([put(0, from), put(0, to), put(depth, to), put(depth, from)], paint),
      );
      legend.explain(short ? WORDS.shorterFull : WORDS.shorter, 'area', {
        ...paint,
        stroke: short ? 'cramped' : 'blocked',
      });
      named++;
      if (named > MOST_NAMED) continue;
      const words =
        open > 0
          ? WORDS.longest(lengths.bare(open, 'down'))
          : cramped > 0
            ? WORDS.longestShort(lengths.bare(cramped, 'down'))
            : WORDS.noCue;
      const [x, y] = put(depth, at);
      const [ox, oy] = put(depth + view.scale, at);
      label(draft, 'cushion-text', [words], besideRail([x, y], [ox - x, oy - y]), words);
    }
  }
}

/** Neighbouring spots at which the cue is too long for the full backswing, by whether the short one will do. */
function stretches(spots: CushionProfile['spots'], half: number, wanted: number): readonly Stretch[] {
  const found: Stretch[] = [];
  let last: Stretch | null = null;
  spots.forEach((spot, i) => {
    if (spot.open >= wanted - SAME_CUE) {
      last = null;
      return;
    }
    const from = i === 0 ? -half : (spots[i - 1].at + spot.at) / 2;
    const to = i === spots.length - 1 ? half : (spot.at + spots[i + 1].at) / 2;
    const short = spot.cramped >= wanted - SAME_CUE;
    if (last === null || last.short !== short) {
      last = { from, to, short, ...spot };
      found.push(last);
      return;
    }
    last.to = to;
    if (spot.open < last.open || (spot.open === last.open && spot.cramped < last.cramped))
      Object.assign(last, spot);
  });
  return found;
}

/** Places outside a rail, along it, ever farther out. */
function besideRail([x, y]: readonly [number, number], [ox, oy]: readonly [number, number]): Places {
  return (width, height) => {
    const angle = readable(Math.atan2(ox, -oy));
    const found: Candidate[] = [];
    for (const out of [0.6, 3, 6]) {
      for (const along of [0, 0.5, -0.5, 1, -1]) {
        const by = out + height / 2;
        const box = {
          x: x + ox * by - oy * along * width,
          y: y + oy * by + ox * along * width,
          width,
          height,
          angle,
        };
        const cost = out + 2 * Math.abs(along);
        // From the spot on the rail to the middle of the box's nearer side.
        const foot = [box.x - (ox * height) / 2, box.y - (oy * height) / 2] as const;
        found.push(out < 1 ? { box, cost } : { box, cost, leader: [[x, y], foot] });
      }
    }
    return found;
  };
}
