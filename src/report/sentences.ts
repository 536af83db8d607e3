import { formatLength } from '../length/format-length.js';
import type { LengthUnit } from '../length/length.js';
import type { Cushion, Shares, Span, Verdict } from './fit-report.js';
import { NO_BREAK } from './wrap.js';

/** The units that sentences are written in: to the millimetre, the centimetre or the half inch. */
export type SentenceUnits = 'mm' | 'cm' | 'ftin';

/** Which way a number may be moved when it is rounded. Sentences round towards caution: room down, needs up. */
export type Rounding = 'near' | 'down' | 'up';

/** Steps that lengths are rounded to, mm. */
const STEP = { mm: 1, cm: 10, ftin: 12.7 } as const;
const HALF_INCH = STEP.ftin;

/** Less than this is noise of the arithmetic (1 nm) and moves no number to the next step. */
const NOISE = 1e-6;

/** A value in steps of `step`, rounded as told, back in its own unit. */
export function roundTo(value: number, step: number, rounding: Rounding): number {
  const steps = value / step;
  const noise = NOISE / step;
  const whole =
    rounding === 'near'
      ? Math.round(steps)
      : rounding === 'down'
        ? Math.floor(steps + noise)
        : Math.ceil(steps - noise);
  return whole === 0 ? 0 : whole * step;
}

/** A length as text that no line break divides. */
function write(mm: number, unit: LengthUnit): string {
  return formatLength(mm, unit).replaceAll(' ', NO_BREAK);
}

/** A length in mm as text, rounded to the step of the units. */
export function sayLength(mm: number, units: SentenceUnits, rounding: Rounding = 'near'): string {
  return write(roundTo(mm, STEP[units], rounding), units);
}

/** A length that is missing, in mm: rounded up, and never to nothing. */
export function sayAtLeastOne(mm: number, units: SentenceUnits): string {
  return write(Math.max(STEP[units], roundTo(mm, STEP[units], 'up')), units);
}

/** The least length that these units can say. */
export function leastLength(units: SentenceUnits): string {
  return write(STEP[units], units);
}

/**
 * A cue's length: in the units asked for, with inches beside them where it is a whole number of half inches within 2 mm, since
 * cues are sold by the inch. `'down'` for the longest cue that goes.
 */
export function sayCue(mm: number, units: SentenceUnits, rounding: Rounding = 'near'): string {
  const inches = roundTo(mm, HALF_INCH, rounding);
  const inInches = write(inches, 'in');
  const sold = Math.abs(inches - mm) <= 2;
  if (units === 'ftin') return rounding === 'near' && !sold ? `about ${inInches}` : inInches;
  const length = sayLength(mm, units, rounding);
  return sold || rounding !== 'near' ? `${length} (${inInches})` : length;
}

/** A rounded account of something needed and something there, which adds up: there = needed + spare. */
export interface Account {
  readonly needed: string;
  readonly available: string;
  /** `12 cm to spare`, `less than 1 cm to spare`, `25 cm missing`: never more to spare, never less missing than there is. */
  readonly spare: string;
}

/** needed, available and spare in mm as words. Rounded towards caution, and so that the three add up. */
export function sayAccount(span: Span, units: SentenceUnits): Account {
  const step = STEP[units];
  const needed = roundTo(span.needed, step, 'up');
  const missing = span.spare < 0 ? Math.max(step, roundTo(-span.spare, step, 'up')) : 0;
  const spare = missing > 0 ? -missing : roundTo(span.spare, step, 'down');
  return {
    needed: write(needed, units),
    available: write(Math.max(0, needed + spare), units),
    spare: missing > 0 ? `${write(missing, units)} missing` : saySpare(spare, units),
  };
}

function saySpare(spare: number, units: SentenceUnits): string {
  return spare === 0 ? `less than ${leastLength(units)} to spare` : `${write(spare, units)} to spare`;
}

/** Shares in per cent that add up to 100: open rounded down, blocked rounded up, cramped what is left. */
export interface SharePercents {
  readonly open: string;
  readonly cramped: string;
  readonly blocked: string;
}

/**
 * Shares as words that do not contradict the verdict: a sample may have missed the few shots that are not open, so `all` and
 * `none` are said only where the verdict bears them out.
 */
export function sayShares(shares: Shares, verdict: Verdict): SharePercents {
  const open = Math.floor(shares.open * 100 + NOISE);
  const blocked = Math.ceil(shares.blocked * 100 - NOISE);
  const cramped = Math.max(0, 100 - open - blocked);
  return {
    open: percent(open, shares.open > 0, verdict === 'clear'),
    cramped: percent(cramped, shares.cramped > 0 || verdict === 'tight', true),
    blocked: percent(blocked, shares.blocked > 0 || verdict === 'partial', true),
  };
}

function percent(whole: number, some: boolean, canBeAll: boolean): string {
  if (whole <= 0) return some ? 'under 1%' : 'none';
  if (whole < 100) return `${whole}%`;
  return canBeAll ? 'all' : 'over 99%';
}

/** A share of something unwanted in per cent, rounded up. */
export function sayPercentUp(share: number): string {
  const percent = Math.ceil(share * 100 - NOISE);
  return percent <= 0 ? (share > 0 ? 'under 1%' : '0%') : `${Math.min(100, percent)}%`;
}

/** `1 shot`, `2 shots`. */
export function count(n: number, one: string, many = `${one}s`): string {
  return `${n}${NO_BREAK}${n === 1 ? one : many}`;
}

/** `A, B and C`. */
export function joinWords(words: readonly string[], last = 'and'): string {
  const end = words.at(-1);
  if (end === undefined) return 'nothing';
  return words.length === 1 ? end : `${words.slice(0, -1).join(', ')} ${last} ${end}`;
}

/** A turn in degrees to a tenth. */
export function sayDegrees(degrees: number): string {
  const rounded = roundTo(degrees, 0.1, 'near');
  return count(Number(rounded.toFixed(1)), 'degree');
}

/**
 * A name from the input, fit to print: control characters, which could move a terminal's cursor, and direction marks, which
 * could reorder a line, become spaces.
 */
export function plainName(name: string): string {
  return name.replace(/[\p{Cc}\u00a0\u200e\u200f\u2028-\u202e\u2066-\u2069]+/gu, ' ').trim();
}

const DIRECTIONS = [
  'on the right',
  'at the upper right',
  'at the top',
  'at the upper left',
  'on the left',
  'at the lower left',
  'at the bottom',
  'at the lower right',
] as const;

const CUSHION_TURN = { endA: 0, sideA: 90, endB: 180, sideB: 270 } as const;

/** Where a cushion lies on the plan, x to the right and y up: `end cushion on the right`. */
export function sayCushion(cushion: Cushion, turn: number): string {
  const eighth = Math.round((turn + CUSHION_TURN[cushion]) / 45);
  const where = DIRECTIONS[((eighth % 8) + 8) % 8];
  return `${cushion.startsWith('end') ? 'end' : 'side'} cushion ${where}`;
}
