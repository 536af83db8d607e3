import type { PieceGap, PieceReport } from '../arrangement/arrangement-report.js';
import { leastLength, plainName, type SentenceUnits, sayDegrees, sayLength } from './sentences.js';

/** A turn this near to a quarter of a circle is one, degrees: what {@link sayDegrees} would say. */
const SQUARE = 0.05;

/** Parts of the plan, x to the right and y up, by eighths of a circle from +x. */
const PARTS = [
  'right',
  'upper right',
  'top',
  'upper left',
  'left',
  'lower left',
  'bottom',
  'lower right',
] as const;

/** Whether people stand before a piece: not before what hangs overhead and has no use zone, such as a lamp. */
export function hasFront({ zones, from }: Pick<PieceReport, 'zones' | 'from'>): boolean {
  return zones.length > 0 || from === 0;
}

/**
 * Where each piece that has a place stands, in words to act on: how far its sides are from what is nearest, as one faces it, then its middle
 * on the plan. Room is rounded down.
 */
export function describePieces(pieces: readonly PieceReport[], units: SentenceUnits): readonly string[] {
  return pieces.flatMap((piece) => {
    const { name, pose, given, from } = piece;
    if (pose === null) return [];
    const beside = hasFront(piece) ? besideWords(piece.gaps, units) : [];
    const first = beside.length === 0 ? '' : ` ${beside.join('; ')}.`;
    const middle = `x = ${sayLength(pose.x, units)}, y = ${sayLength(pose.y, units)}`;
    const hung = from > 0 ? `, its underside ${sayLength(from, units)} above the floor` : '';
    const place = `${first === '' ? 'its' : 'Its'} middle is at ${middle}${hung}; ${turnWords(piece, pose.turn)}.`;
    return [`${plainName(name)}:${first} ${place}${given ? ' This place was given.' : ''}`];
  });
}

/** `back at wall 1`, `as one faces it, 35 cm to wall 4 on the left and 2 cm to bar on the right`, `in front of it, 80 cm to the table`. */
function besideWords(gaps: readonly PieceGap[], units: SentenceUnits): readonly string[] {
  const find = (side: PieceGap['side']): PieceGap | undefined => gaps.find((gap) => gap.side === side);
  const said: string[] = [];
  const back = find('back');
  if (back !== undefined) said.push(`back ${awayWords(back, units)}`);
  const sides = (['left', 'right'] as const).flatMap((side) => {
    const gap = find(side);
    return gap === undefined ? [] : [`${distanceWords(gap, units)} on the ${side}`];
  });
  if (sides.length > 0) said.push(`as one faces it, ${sides.join(' and ')}`);
  const front = find('front');
  if (front !== undefined) said.push(`in front of it, ${distanceWords(front, units)}`);
  return said;
}

/** `at wall 1` or `35 cm from wall 1`. */
function awayWords({ distance, to }: PieceGap, units: SentenceUnits): string {
  const said = sayLength(distance, units, 'down');
  return said === sayLength(0, units) ? `at ${plainName(to)}` : `${said} from ${plainName(to)}`;
}

/** `35 cm to wall 4` or `less than 1 cm to wall 4`. */
function distanceWords({ distance, to }: PieceGap, units: SentenceUnits): string {
  const said = sayLength(distance, units, 'down');
  const amount = said === sayLength(0, units) ? `less than ${leastLength(units)}` : said;
  return `${amount} to ${plainName(to)}`;
}

function turnWords(piece: PieceReport, turn: number): string {
  if (!hasFront(piece)) {
    const along = Math.abs(turn - 90 * Math.round(turn / 90)) < SQUARE;
    if (!along) return `its length is turned about ${sayDegrees(turn)} anticlockwise from the x direction`;
    return `its length runs along ${Math.round(turn / 90) % 2 === 0 ? 'x' : 'y'}`;
  }
  // The front lies a quarter turn anticlockwise from the length.
  const facing = turn + 90;
  const eighth = Math.round(facing / 45);
  const part = PARTS[((eighth % 8) + 8) % 8];
  const exact = Math.abs(facing - 45 * eighth) < SQUARE;
  const turned = exact
    ? ''
    : `, its length turned about ${sayDegrees(turn)} anticlockwise from the x direction`;
  return `it faces the ${part} of the plan${turned}`;
}
