import type { ShotMap } from './fit-report.js';
import { sayCushion } from './sentences.js';
import { LINE_WIDTH, wrapText } from './wrap.js';

/**
 * The map of shots drawn in letters, the table's long side across: at each spot the share of open shots in tenths, rounded down.
 * Empty where the map is wider than a line.
 */
export function describeShots(map: ShotMap, turn: number): string[] {
  const indent = '  ';
  if (map.columns < 1 || map.rows < 1 || indent.length + map.columns > LINE_WIDTH) return [];
  const legend =
    'The share of shots that are open at each spot of the ball, in tenths rounded down: 9 is at least 90%, * is all of them. ' +
    `The right end of the drawing is the ${sayCushion('endA', turn)} of the plan, its upper side the ${sayCushion('sideA', turn)}.`;
  const lines = ['Shots over the play field', ...wrapText(legend)];
  for (let row = map.rows - 1; row >= 0; row--) {
    const shares = map.open.slice(row * map.columns, (row + 1) * map.columns);
    lines.push(indent + shares.map(tenth).join(''));
  }
  return lines;
}

function tenth(share: number): string {
  const tenths = Math.floor(share * 10 + 1e-9);
  return tenths >= 10 ? '*' : String(Math.max(0, tenths));
}
