import type { CueSpec, TableSpec } from '../../src/equipment/equipment-types.js';
import { AXIS, FINE, FigurePen, LIGHT, SOLID, THICK } from './figure-pen.js';

/** One thing behind the table and a cue that is clear of it: heights and distances in mm, the elevation in degrees. */
export interface FigureCase {
  readonly words: string;
  readonly from: number;
  readonly to: number;
  /** Plan distance from the ball. */
  readonly at: number;
  readonly elevation: number;
  readonly table: TableSpec;
  readonly cue: CueSpec;
  readonly backswing: number;
}

/** The ways past a thing, from the side, one below the other. */
export function elevationsFigure(cases: readonly FigureCase[]): string {
  const row = 2500;
  const pen = new FigurePen(470, 190 * cases.length + 10, 0.076, -1500, row * cases.length - 100);
  for (const [i, c] of cases.entries()) drawCase(pen, c, row * (cases.length - 1 - i));
  return pen.write(
    'The ways past a thing',
    'Three views from the side: a cue that stops short of a thing, one that passes over it and one that passes under it.',
  );
}

function drawCase(pen: FigurePen, c: FigureCase, floor: number): void {
  const { table, cue } = c;
  const radius = table.ballDiameter / 2;
  const rim = (table.outer.width - table.field.width) / 2;
  const inside = 300;
  const ball = floor + table.bedHeight + radius;
  pen.line(
    [
      [-1300, floor],
      [4300, floor],
    ],
    THICK,
  );
  pen.line(
    [
      [-1300, floor + table.bedHeight],
      [inside, floor + table.bedHeight],
      [inside, floor + table.bedHeight + table.railHeight],
      [inside + rim, floor + table.bedHeight + table.railHeight],
      [inside + rim, floor + table.bedHeight - 180],
      [-1300, floor + table.bedHeight - 180],
    ],
    SOLID,
  );
  pen.line(
    [
      [c.at, floor + c.from],
      [c.at + 450, floor + c.from],
      [c.at + 450, floor + c.to],
      [c.at, floor + c.to],
    ],
    LIGHT,
    true,
  );
  const theta = (c.elevation * Math.PI) / 180;
  const point = (along: number): readonly [number, number] => [
    along * Math.cos(theta),
    ball + 0.35 * radius + along * Math.sin(theta),
  ];
  const reach = radius + c.backswing + cue.length;
  pen.line([point(-300), point(reach + 250)], AXIS);
  pen.line([point(radius + c.backswing), point(reach)], THICK);
  pen.line([point(radius), point(radius + c.backswing)], FINE);
  pen.circle([0, ball], radius * 1.6, SOLID);
  pen.text([2650, floor + 1150], c.words, 'start');
}
