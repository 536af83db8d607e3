import { formatLength } from '../length/format-length.js';
import { type Rounding, roundTo, type SentenceUnits } from './sentences.js';
import { NO_BREAK } from './wrap.js';

/** Steps of small measures such as the thickness of a slate, mm: a millimetre, or an eighth of an inch. */
const FINE = { mm: 1, cm: 1, ftin: 3.175 } as const;

/** A small measure in mm as text, to the millimetre or an eighth of an inch: `2.5 cm`. */
export function sayFine(mm: number, units: SentenceUnits, rounding: Rounding): string {
  return formatLength(roundTo(mm, FINE[units], rounding), units).replaceAll(' ', NO_BREAK);
}
