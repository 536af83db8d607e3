import type { TableSpec } from '../../equipment/equipment-types.js';
import type { Point } from '../../geometry/types.js';
import type { StrokeScene } from '../../stroke/stroke-scene.js';
import { drawDimension } from './dimension.js';
import type { Draft } from './draft.js';
import type { SectionView } from './shot-room.js';
import { LINE, type Paint } from './theme.js';
import { edgesOf } from './view.js';
import { WORDS } from './words.js';

/** How deep the table is drawn under its cloth, mm on paper: nobody measured it. */
const DEPTH = 3;

/** Bed, cushions and rails where the plane cuts them, and how high the cloth is. */
export function drawTableSection(
  draft: Draft,
  table: TableSpec,
  scene: StrokeScene,
  { section, start }: SectionView,
): void {
  const { pen, view, placer, legend, lengths } = draft;
  const { ahead, behind } = section;
  const bed = table.bedHeight;
  const nose = scene.ballHeight + scene.noseRise;
  const rail = scene.ballHeight + scene.railRise;
  const under = bed - DEPTH * view.scale;
  // From the cloth over the cushion and the rail down their outside.
  const right: readonly Point[] = [
    [ahead.nose, bed],
    [ahead.nose, nose],
    [ahead.crest, rail],
    [ahead.rim, rail],
    [ahead.rim, under],
  ];
  const left: readonly Point[] =
    -behind.rim >= start
      ? [
          [-behind.rim, under],
          [-behind.rim, rail],
          [-behind.crest, rail],
          [-behind.nose, nose],
          [-behind.nose, bed],
        ]
      : [
          [start, under],
          [start, bed],
        ];
  const ring = view.ring([...right, ...left]);
  const paint: Paint = { fill: { pattern: 'cut' }, stroke: 'ink', width: LINE.thick };
  pen.group('table', () => pen.polygon(ring, paint, ' data-part="profile"'));
  placer.avoid(edgesOf(ring), 4);
  legend.explain(WORDS.tableBody, 'area', paint);
  const x = Math.max(start, -behind.rim);
  const [low, high] = [view.at([x, 0]), view.at([x, bed])];
  const at = Math.min(low[0], view.at([start, 0])[0]) - 7;
  drawDimension(draft, {
    from: low,
    to: high,
    line: [
      [at, low[1]],
      [at, high[1]],
    ],
    length: bed,
    note: WORDS.clothNote(lengths.bare(bed)),
    part: 'height',
  });
}
