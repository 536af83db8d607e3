import { perimeter } from '../../geometry/ring.js';
import type { SceneObstacle } from '../../room/scene.js';
import type { Area } from './boxes.js';
import { fitText } from './character-widths.js';
import { type Draft, label, type Places } from './draft.js';
import type { Candidate } from './label-placer.js';
import type { Lengths } from './lengths.js';
import { TEXT } from './pen.js';
import { type PaperPoint, plainText } from './svg.js';
import { LINE, type Paint } from './theme.js';
import { around, edgesOf } from './view.js';
import { WORDS } from './words.js';

/** Names longer than this on paper are cut short; the key and the report have them in full. */
const LONGEST_NAME = 42;
/** More names than these and nobody finds any. */
const MOST_NAMES = 60;

/** A thing in the room as a plan shows it. */
export type PlanThing = Pick<SceneObstacle, 'name' | 'ring' | 'from' | 'to'>;

/**
 * Things in the room, drawn as lower, cut or overhead by the height at which a level cue passes, mm; `kinds` in the order in which
 * they lie over each other. What of a thing lies behind the walls is cut off by `clip`.
 */
export function drawObstacles(
  draft: Draft,
  obstacles: readonly PlanThing[],
  level: number,
  kinds: readonly ObstacleKind[],
  clip: string,
  part: 'obstacle' | 'piece' = 'obstacle',
): void {
  const { pen, view, placer, legend, lengths } = draft;
  for (const kind of kinds) {
    const words = { low: WORDS.low, cut: WORDS.cut(lengths.full(level)), overhead: WORDS.overhead }[kind];
    for (const obstacle of obstacles.filter((o) => kindOf(o, level) === kind)) {
      const ring = view.ring(obstacle.ring);
      pen.group(
        `${part}-${kind}`,
        () => {
          if (kind !== 'overhead') pen.polygon(ring, { fill: 'paper' });
          pen.polygon(ring, PAINT[kind], ' data-part="footprint"');
        },
        ` clip-path="url(#${clip})"`,
      );
      placer.avoid(edgesOf(ring), kind === 'cut' ? 3 : 1.5);
      legend.explain(words, 'area', PAINT[kind]);
    }
  }
}

/** Lower than a level cue, as high as it, or above it. */
export type ObstacleKind = 'low' | 'cut' | 'overhead';

/** Name and heights at each, the largest things first. */
export function labelObstacles(draft: Draft, obstacles: readonly PlanThing[], room: Area): void {
  const named = [...obstacles]
    .map((obstacle, i) => ({ obstacle, i, size: perimeter(obstacle.ring) }))
    .sort((a, b) => b.size - a.size || a.i - b.i)
    .slice(0, MOST_NAMES);
  for (const { obstacle } of named) {
    const name = plainText(obstacle.name);
    const heights = sayHeights(obstacle, draft.lengths);
    const lines = [fitText(name, TEXT.plain, LONGEST_NAME), heights];
    const places = aroundArea(within(around(draft.view.ring(obstacle.ring)), room));
    label(draft, 'obstacle-text', lines, places, `${name}, ${heights}`);
  }
  if (named.length < obstacles.length)
    draft.legend.note(WORDS.thingsLeft(obstacles.length - named.length), null);
}

/** `up to 800`, `1800 to 2100`, `from 1800 up`, `to the ceiling`. */
export function sayHeights({ from, to }: Pick<SceneObstacle, 'from' | 'to'>, lengths: Lengths): string {
  const { heights } = WORDS;
  if (!Number.isFinite(to)) return from > 0 ? heights.from(lengths.bare(from)) : heights.full;
  return from > 0 ? heights.between(lengths.bare(from), lengths.bare(to)) : heights.upTo(lengths.bare(to));
}

const PAINT: Readonly<Record<ObstacleKind, Paint>> = {
  low: { stroke: 'ink', width: LINE.thin },
  cut: { fill: { pattern: 'cut' }, stroke: 'ink', width: LINE.thick },
  overhead: { stroke: 'ink', width: LINE.thin, dashes: 'dashed' },
};

function kindOf({ from, to }: PlanThing, level: number): ObstacleKind {
  if (to < level) return 'low';
  return from > level ? 'overhead' : 'cut';
}

/** The part of an area in another; at the edge of that where they have none in common. */
function within(area: Area, room: Area): Area {
  const x = (value: number): number => Math.min(room.right, Math.max(room.left, value));
  const y = (value: number): number => Math.min(room.bottom, Math.max(room.top, value));
  return { left: x(area.left), right: x(area.right), top: y(area.top), bottom: y(area.bottom) };
}

/** Places for a label: in the area, then around it, ever farther off with a leader. */
export function aroundArea({ left, right, top, bottom }: Area): Places {
  return (width, height) => {
    const x = (left + right) / 2;
    const y = (top + bottom) / 2;
    const found: Candidate[] = [];
    const box = (cx: number, cy: number): Candidate['box'] => ({ x: cx, y: cy, width, height, angle: 0 });
    if (width <= right - left && height <= bottom - top) {
      const sx = (right - left - width) / 2;
      const sy = (bottom - top - height) / 2;
      for (const [i, j] of SPREAD) found.push({ box: box(x + i * sx, y + j * sy), cost: Math.hypot(i, j) });
    }
    for (const off of [0.8, 3, 6, 10, 15, 21, 28]) {
      for (const [i, j] of AROUND) {
        // Off a corner and without a leader, nobody knows what it names.
        if (off < 1 && i !== 0 && j !== 0) continue;
        const cx = x + i * ((right - left + width) / 2 + off);
        const cy = y + j * ((bottom - top + height) / 2 + off);
        const place = { box: box(cx, cy), cost: 6 + off };
        // From the middle of the shape's side or its corner to the middle of the box's.
        const from: PaperPoint = [x + (i * (right - left)) / 2, y + (j * (bottom - top)) / 2];
        const to: PaperPoint = [cx - (i * width) / 2, cy - (j * height) / 2];
        found.push(off < 1 ? place : { ...place, leader: [from, to] });
      }
    }
    return found;
  };
}

const SPREAD: readonly (readonly [number, number])[] = [0, 0.5, -0.5, 1, -1].flatMap((i) =>
  [0, 0.5, -0.5, 1, -1].map((j): readonly [number, number] => [i, j]),
);
const AROUND: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
];
