import { formatLength } from '../../length/format-length.js';
import type { LengthUnit } from '../../length/length.js';
import { type Rounding, roundTo } from '../sentences.js';
import { NO_BREAK } from '../wrap.js';

/** Steps that {@link formatLength} writes in, mm. */
const STEP: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 1, m: 1, in: 3.175, ftin: 3.175 };

/** Writes the lengths of a drawing in its unit. */
export class Lengths {
  readonly unit: LengthUnit;

  constructor(unit: LengthUnit) {
    this.unit = unit;
  }

  /** As dimensions are written: millimetres, centimetres and metres without the unit, which the title block names; inches with marks. */
  bare(mm: number, rounding: Rounding = 'near'): string {
    const text = this.full(mm, rounding);
    if (this.unit === 'in' || this.unit === 'ftin') return text;
    return text.slice(0, text.indexOf(NO_BREAK));
  }

  /** With the unit. */
  full(mm: number, rounding: Rounding = 'near'): string {
    const step = STEP[this.unit];
    const text = formatLength(rounding === 'near' ? mm : roundTo(mm, step, rounding), this.unit);
    return text.replace(' ft', '\u2032').replace(' in', '\u2033').replaceAll(' ', NO_BREAK);
  }
}
