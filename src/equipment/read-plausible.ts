import { formatLength } from '../length/format-length.js';
import { tryParseLength } from '../length/parse-length.js';
import { type ProblemList, readLength } from '../length/read-input.js';

/**
 * A length within what such a thing measures, mm, or null with a problem. A bare number that would be plausible in another
 * unit is answered with the text to write.
 */
export function readPlausible(
  value: unknown,
  path: string,
  what: string,
  [least, most]: readonly [number, number],
  problems: ProblemList,
): number | null {
  const mm = readLength(value, path, { what }, problems);
  if (mm === null || (mm >= least && mm <= most)) return mm;
  return problems.add(
    path,
    'implausible-length',
    `The ${what} is ${writeMm(mm)}; expected ${writeMm(least)} to ${writeMm(most)}. ${unitHint(value, [least, most])}`,
  );
}

/** Millimetres for a message. */
export function writeMm(mm: number): string {
  return Math.abs(mm) <= 1e6 ? formatLength(mm, 'mm', { decimals: 2 }) : `${mm} mm`;
}

const OTHER_UNITS = ['cm', 'm', 'in', 'ft'] as const;

/** What to write instead of a number whose unit was forgotten. */
export function unitHint(value: unknown, [least, most]: readonly [number, number]): string {
  if (typeof value !== 'number') return 'Check the number and its unit.';
  // Only text that would be read is suggested.
  const meant = OTHER_UNITS.map((unit) => `${value} ${unit}`).filter((text) => {
    const parsed = tryParseLength(text);
    return parsed.ok && parsed.mm >= least && parsed.mm <= most;
  });
  if (meant.length === 0) return 'A number is in millimetres; text carries its unit, such as "183 cm".';
  return `A number is in millimetres; write ${meant.map((text) => `"${text}"`).join(' or ')} if that is what was meant.`;
}
