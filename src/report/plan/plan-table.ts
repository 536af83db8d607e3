import type { TableSpec } from '../../equipment/equipment-types.js';
import type { Draft } from './draft.js';
import { num, type PaperPoint } from './svg.js';
import type { TableFrame } from './table-frame.js';
import { LINE, type Paint } from './theme.js';
import { edgesOf } from './view.js';
import { WORDS } from './words.js';

/** How far centre lines go beyond the rails, and the arrow at the end of the long one, mm on paper. */
const BEYOND = 3;
const ARROW = { length: 2.4, width: 1.6 } as const;

/** The outside of a table's rails is drawn between thin and thick: it is an edge in view, and the thing that matters. */
const EDGE = 0.35;

const RULED = Array.from({ length: 19 }, (_, i) => (i - 9) / 10);

/** Rails and play field. */
export function drawTable({ pen, view, placer }: Draft, table: TableSpec, frame: TableFrame): void {
  const outer = view.ring(frame.rectangle(table.outer.length, table.outer.width));
  const field = view.ring(frame.rectangle(table.field.length, table.field.width));
  pen.group('table', () => {
    pen.polygon(outer, { fill: 'paper', stroke: 'ink', width: EDGE }, ' data-part="outer"');
    pen.polygon(field, { fill: 'cloth', stroke: 'ink' }, ' data-part="field"');
  });
  placer.avoid(edgesOf(outer), 4);
  placer.avoid(edgesOf(field), 2);
  // Labels stay off the field where they can: it counts as ruled.
  for (const share of RULED)
    placer.avoid(
      [
        [
          view.at(frame.at((-share * table.outer.length) / 2, -table.outer.width / 2)),
          view.at(frame.at((-share * table.outer.length) / 2, table.outer.width / 2)),
        ],
      ],
      1.5,
    );
}

/** Centre lines over the field, the long one with an arrow at the table's +x. */
export function drawAxes({ pen, view, legend }: Draft, table: TableSpec, frame: TableFrame): void {
  const beyond = BEYOND * view.scale;
  const u = table.outer.length / 2 + beyond;
  const v = table.outer.width / 2 + beyond;
  const axis: Paint = { stroke: 'fine', width: LINE.thin, dashes: 'chain' };
  const tip = view.at(frame.at(u, 0));
  const [bx, by] = view.at(frame.at(u - ARROW.length * view.scale, 0));
  const [sx, sy] = view.at(frame.at(u, (ARROW.width / 2) * view.scale));
  const side: PaperPoint = [sx - tip[0], sy - tip[1]];
  pen.group('axes', () => {
    pen.polyline([view.at(frame.at(-u, 0)), view.at(frame.at(u, 0))], axis);
    pen.polyline([view.at(frame.at(0, -v)), view.at(frame.at(0, v))], axis);
    pen.polyline([view.at(frame.at(table.outer.length / 2, 0)), tip], { stroke: 'fine' });
    pen.polyline([view.at(frame.at(table.outer.length / 2, 0)), tip], { stroke: 'fine' });
    pen.polygon([tip, [bx + side[0], by + side[1]], [bx - side[0], by - side[1]]], { fill: 'fine' });
  });
  legend.explain(WORDS.field, 'line', axis);
}

/**
 * The reach of the wanted cue: the rectangle of ball centres grown by rho = R + s + L + a. Drawn as far as the room goes, so
 * that a wall that cuts it is seen to.
 */
export function drawReach(
  draft: Draft,
  table: TableSpec,
  frame: TableFrame,
  rho: number,
  clip: string,
): void {
  const { pen, view, legend } = draft;
  const u = (table.field.length - table.ballDiameter) / 2;
  const v = (table.field.width - table.ballDiameter) / 2;
  const radius = num(rho / view.scale);
  const to = (x: number, y: number): string =>
    view
      .at(frame.at(x, y))
      .map((value) => num(value))
      .join(' ');
  // Anticlockwise in the room, so every corner turns left; SVG calls that sweep 0.
  const turn = (x: number, y: number): string => `A${radius} ${radius} 0 0 0 ${to(x, y)}`;
  const path =
    `M${to(-u, -v - rho)}L${to(u, -v - rho)}${turn(u + rho, -v)}L${to(u + rho, v)}${turn(u, v + rho)}` +
    `L${to(-u, v + rho)}${turn(-u - rho, v)}L${to(-u - rho, -v)}${turn(-u, -v - rho)}Z`;
  const paint: Paint = { stroke: 'fine', width: LINE.thin, dashes: 'dashed' };
  pen.group('reach', () => pen.path(path, paint), ` clip-path="url(#${clip})"`);
  legend.explain(WORDS.reach, 'line', paint);
}
