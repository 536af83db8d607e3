import { DEFAULTS } from '../../src/equipment/defaults.js';
import type { TableSpec } from '../../src/equipment/equipment-types.js';
import { AXIS, DASHED, FigurePen, LIGHT, SOLID, THICK } from './figure-pen.js';

/** Where a player may stand for one shot, from above: the window for the middle of the disc of free floor. */
export function standingFigure(table: TableSpec, cueLength: number): string {
  const { radius, sideways, nearShare, behindRail } = DEFAULTS.standing;
  const rim = (table.outer.width - table.field.width) / 2;
  // The ball lies this far inside the nose; the cue points along +x, square off the cushion.
  const inside = 330;
  const toRim = inside + rim;
  const near = nearShare * cueLength;
  const far = Math.max(cueLength, toRim + behindRail);
  const pen = new FigurePen(760, 420, 0.3, -520, 700);
  pen.line(
    [
      [-500, -640],
      [toRim, -640],
      [toRim, 640],
      [-500, 640],
    ],
    SOLID,
  );
  pen.line(
    [
      [-500, -620],
      [inside, -620],
      [inside, 620],
      [-500, 620],
    ],
    LIGHT,
  );
  pen.line(
    [
      [near, -sideways],
      [far, -sideways],
      [far, sideways],
      [near, sideways],
    ],
    DASHED,
    true,
  );
  pen.line(
    [
      [-200, 0],
      [1950, 0],
    ],
    AXIS,
  );
  pen.line(
    [
      [60, 0],
      [60 + cueLength, 0],
    ],
    THICK,
  );
  pen.circle([0, 0], table.ballDiameter / 2, SOLID);
  const stands = Math.max(near, toRim + radius) + 60;
  pen.circle([stands, -190], radius, LIGHT);
  pen.text([stands, -190], 'player');
  pen.text([-40, 60], 'ball p', 'end');
  pen.text([-60, 520], 'play field', 'end');
  pen.dimension([0, 440], [near, 440], `${nearShare} L`, 30);
  pen.dimension([0, 560], [far, 560], `max(L, t_o + ${behindRail})`, 30);
  pen.dimension([far + 60, 0], [far + 60, sideways], `  ${sideways}`, -10, 'start');
  pen.dimension([stands, -190], [stands + radius, -190], `${radius}`, -80);
  pen.text([toRim, -600], ' outside of the rails', 'start');
  return pen.write(
    'Where the player may stand',
    'Plan of one shot: the middle of a disc of free floor lies in a window behind the ball, either side of the line of the cue.',
  );
}
