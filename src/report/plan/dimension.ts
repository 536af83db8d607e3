import { type Draft, label, type Places } from './draft.js';
import type { Candidate } from './label-placer.js';
import type { PaperPoint } from './svg.js';

/** A length to be written between two points of the drawing. */
export interface Dimension {
  /** What is measured, on paper. */
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  /** The dimension line, parallel to what is measured; its ends lie square off `from` and `to`. */
  readonly line: readonly [PaperPoint, PaperPoint];
  /** Extension lines begin so far from `from` and `to`, mm. */
  readonly clear?: number;
  /** The length in the room, mm. */
  readonly length: number;
  /** What the key says where the number finds no room. */
  readonly note: string;
  /** Name of the part, for style sheets and tests. */
  readonly part: string;
}

/** Half of the oblique stroke that ends a dimension line; and how far extension lines stay off what is measured and go beyond the line, mm. */
const TICK = 1;
const CLEAR = 0.8;
const BEYOND = 1.5;
/** Between a dimension line and its number. */
const GAP = 0.35;

/**
 * Draws a dimension after ISO 129-1: thin lines, oblique strokes, the number above its line and to be read from below or from the
 * right.
 */
export function drawDimension(draft: Draft, dimension: Dimension): void {
  const { from, to, line, clear = CLEAR, length, part, note } = dimension;
  const { pen, placer, lengths } = draft;
  const [a, b] = line;
  pen.group(part, () => {
    pen.polyline(line, { stroke: 'ink' }, ' data-part="dimension-line"');
    for (const [end, measured] of [
      [a, from],
      [b, to],
    ]) {
      const extension = extended(measured, end, clear);
      if (extension !== null) pen.polyline(extension, { stroke: 'ink' });
      pen.polyline(tick(end, a, b), { stroke: 'ink' });
    }
  });
  placer.avoid([line], 2);
  label(draft, `${part}-text`, [lengths.bare(length)], alongLine(a, b), note);
}

function extended(measured: PaperPoint, end: PaperPoint, clear: number): readonly PaperPoint[] | null {
  const dx = end[0] - measured[0];
  const dy = end[1] - measured[1];
  const long = Math.hypot(dx, dy);
  if (long <= clear) return null;
  const share = clear / long;
  const beyond = 1 + BEYOND / long;
  return [
    [measured[0] + share * dx, measured[1] + share * dy],
    [measured[0] + beyond * dx, measured[1] + beyond * dy],
  ];
}

/** Places for the number of a line from a to b: above its middle, below, beside the middle, beyond the ends, and farther off. */
export function alongLine(a: PaperPoint, b: PaperPoint): Places {
  return (width, height) => {
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const angle = readable(Math.atan2(b[1] - a[1], b[0] - a[0]));
    const ux = Math.cos(angle);
    const uy = Math.sin(angle);
    const middle: PaperPoint = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const at = (along: number, up: number, cost: number, led = false): Candidate => {
      const x = middle[0] + ux * along + uy * up;
      const y = middle[1] + uy * along - ux * up;
      const box = { x, y, width, height, angle };
      if (!led) return { box, cost };
      // From the middle of the line to the middle of the box's nearer side.
      const near = up - (Math.sign(up) * height) / 2;
      const foot: PaperPoint = [middle[0] + ux * along + uy * near, middle[1] + uy * along - ux * near];
      return { box, cost, leader: [middle, foot] };
    };
    const above = GAP + height / 2;
    const found: Candidate[] = [];
    const slack = (long - width) / 2 - TICK;
    if (slack >= 0) {
      found.push(at(0, above, 0), at(0, -above, 4));
      for (const share of [0.3, -0.3, 0.6, -0.6, 0.9, -0.9]) {
        found.push(
          at(share * slack, above, 1 + Math.abs(share)),
          at(share * slack, -above, 5 + Math.abs(share)),
        );
      }
    }
    const beyond = long / 2 + width / 2 + TICK + GAP;
    for (const side of [1, -1]) {
      found.push(at(side * beyond, above, 8), at(side * beyond, -above, 10));
    }
    for (const up of [height, 1.8 * height, 2.6 * height]) {
      for (const along of [0, width / 2, -width / 2, width, -width]) {
        found.push(at(along, up + above, 12 + up, true), at(along, -up - above, 14 + up, true));
      }
    }
    return found;
  };
}

/**
 * The same direction or its opposite, to be read from below or from the right, radians clockwise. Lines within ten degrees of upright
 * count as upright, so that those a little to either side do not read opposite ways.
 */
export function readable(angle: number): number {
  let turned = angle;
  while (turned >= MOST_TURNED) turned -= Math.PI;
  while (turned < MOST_TURNED - Math.PI) turned += Math.PI;
  return turned;
}

const MOST_TURNED = (80 * Math.PI) / 180;

function tick([x, y]: PaperPoint, a: PaperPoint, b: PaperPoint): readonly PaperPoint[] {
  const angle = readable(Math.atan2(b[1] - a[1], b[0] - a[0])) - Math.PI / 4;
  const dx = TICK * Math.cos(angle);
  const dy = TICK * Math.sin(angle);
  return [
    [x - dx, y - dy],
    [x + dx, y + dy],
  ];
}
