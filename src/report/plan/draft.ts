import type { Box, Segment } from './boxes.js';
import type { Candidate, LabelPlacer } from './label-placer.js';
import type { Legend } from './legend.js';
import type { Lengths } from './lengths.js';
import { type Pen, textBox } from './pen.js';
import { LINE } from './theme.js';
import type { View } from './view.js';

/** What the parts of a drawing share while it is made. */
export interface Draft {
  /** Lines and areas. */
  readonly pen: Pen;
  /** Labels, which lie over them. */
  readonly labels: Pen;
  readonly placer: LabelPlacer;
  readonly view: View;
  readonly lengths: Lengths;
  readonly legend: Legend;
}

/** Places for a box of a size, the better ones first or at less cost. */
export type Places = (width: number, height: number) => Iterable<Candidate>;

/** Diameter of the ring around a number that stands for a label. */
const RING = 5.4;
/** More than this much line under a label and the number stands there instead. */
const MOST_COVERED = 30;

/**
 * Writes a label where there is room for it; where there is none, a number in a ring with the words in the key; and where not
 * even that goes, the words alone. `group` names the label for style sheets and tests.
 */
export function label(
  draft: Draft,
  group: string,
  lines: readonly string[],
  places: Places,
  note: string,
): void {
  const { placer, labels, legend } = draft;
  const { width, height } = textBox(lines, 0, 0);
  const found = placer.place(places(width, height), MOST_COVERED);
  if (found !== null) {
    labels.group(group, () => {
      lead(draft, found.leader);
      labels.blank(inner(found.box));
      labels.textIn(found.box, lines);
    });
    return;
  }
  const ring = placer.place(places(RING, RING));
  if (ring === null) {
    legend.note(note, null);
    return;
  }
  const number = legend.note(note, legend.nextNumber());
  labels.group('number', () => {
    lead(draft, ring.leader);
    const { x, y, angle } = ring.box;
    labels.circle([x, y], RING / 2 - 0.2, { stroke: 'ink', fill: 'paper' });
    labels.textIn({ x, y, width: RING, height: RING, angle }, [String(number)]);
  });
}

function lead({ labels }: Draft, leader: Segment | undefined): void {
  if (leader !== undefined) labels.polyline(leader, { stroke: 'fine', width: LINE.thin });
}

/** The middle of a label's box, which is what its letters need. */
function inner({ x, y, width, height, angle }: Box): Box {
  return { x, y, width: width - 0.4, height: height - 0.6, angle };
}
