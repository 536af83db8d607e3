import type { Limit } from '../fit-report.js';
import type { Box } from './boxes.js';
import { fitText } from './character-widths.js';
import { readable } from './dimension.js';
import { type Draft, label, type Places } from './draft.js';
import type { Candidate } from './label-placer.js';
import type { Lengths } from './lengths.js';
import { TEXT } from './pen.js';
import { type PaperPoint, plainText } from './svg.js';
import { LINE, type Paint } from './theme.js';
import { WORDS } from './words.js';

/** More than so many lines and a plan is no plan; the report has them all. */
const MOST = 8;
const DOT = 0.6;
const ARROW = { length: 2.6, width: 1 } as const;
const LONGEST_NAME = 34;

/** The nearest limits: from where a ball's centre can lie to what is in the way, with what there is to spare. */
export function drawLimits(draft: Draft, limits: readonly Limit[]): void {
  const { pen, view, placer, legend, lengths } = draft;
  const paint: Paint = { stroke: 'limit', width: LINE.thin };
  const lines = limits.flatMap((limit) => {
    const { witness, spare } = limit;
    return witness === null || spare === null
      ? []
      : [{ name: plainText(limit.name), spare, from: view.at(witness[0]), to: view.at(witness[1]) }];
  });
  const drawn = lines.slice(0, MOST);
  for (const { from, to } of drawn) {
    pen.group('limit', () => {
      pen.polyline([from, to], paint, ' data-part="witness"');
      pen.circle(from, DOT, { fill: 'limit' });
      pen.polygon(arrowhead(from, to), { fill: 'limit' });
    });
    placer.avoid([[from, to]], 1);
    legend.explain(WORDS.limit, 'line', paint);
  }
  for (const { name, spare, from, to } of drawn) {
    const words = saySpare(fitText(name, TEXT.plain, LONGEST_NAME), spare, lengths);
    label(draft, 'limit-text', [words], besideLine(from, to), saySpare(name, spare, lengths));
  }
  for (const { name, spare } of lines.slice(MOST)) legend.note(saySpare(name, spare, lengths), null);
}

/** Never more to spare and never less missing than there is. */
export function saySpare(name: string, spare: number, lengths: Lengths): string {
  return spare < 0
    ? WORDS.missing(name, lengths.bare(-spare, 'up'))
    : WORDS.spare(name, lengths.bare(spare, 'down'));
}

/** Places for words about a line: level beside it at several heights, or along it. */
function besideLine(from: PaperPoint, to: PaperPoint): Places {
  return (width, height) => {
    const dx = to[0] - from[0];
    const dy = to[1] - from[1];
    const long = Math.max(Math.hypot(dx, dy), 1e-6);
    const found: Candidate[] = [];
    for (const share of SHARES) {
      const x = from[0] + share * dx;
      const y = from[1] + share * dy;
      const cost = 2 * Math.abs(share - 0.5);
      for (const side of [1, -1]) {
        // Square to the line so far that a corner of the box comes near to it.
        const nx = (-side * dy) / long;
        const ny = (side * dx) / long;
        const level = 0.7 + (Math.abs(nx) * width + Math.abs(ny) * height) / 2;
        for (const off of [0, 3, 8]) {
          const box = { x: x + nx * (level + off), y: y + ny * (level + off), width, height, angle: 0 };
          found.push(
            off === 0
              ? { box, cost }
              : { box, cost: cost + 4 + off, leader: [[x, y], nearestIn(box, [x, y])] },
          );
        }
        const along = 0.5 + height / 2;
        const angle = readable(Math.atan2(dy, dx));
        found.push({ box: { x: x + nx * along, y: y + ny * along, width, height, angle }, cost: cost + 1.5 });
      }
    }
    return found;
  };
}

/** The point of a level box that is nearest to a point. */
function nearestIn({ x, y, width, height }: Box, [px, py]: PaperPoint): PaperPoint {
  const clamp = (value: number, middle: number, half: number): number =>
    Math.min(middle + half, Math.max(middle - half, value));
  return [clamp(px, x, width / 2), clamp(py, y, height / 2)];
}

const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9] as const;

function arrowhead(from: PaperPoint, to: PaperPoint): readonly PaperPoint[] {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const long = Math.hypot(dx, dy);
  if (long === 0) return [to];
  const ux = dx / long;
  const uy = dy / long;
  const length = Math.min(ARROW.length, long);
  const half = ARROW.width / 2;
  return [
    to,
    [to[0] - ux * length + uy * half, to[1] - uy * length - ux * half],
    [to[0] - ux * length - uy * half, to[1] - uy * length + ux * half],
  ];
}
