import { InputError } from '../../input-error.js';
import type { LengthUnit } from '../../length/length.js';
import { ProblemList, readGuarded, readNumber, readObject, readWord } from '../../length/read-input.js';
import type { PlanTheme } from './theme.js';

export type SheetName = 'A4' | 'A3';
export type SheetOrientation = 'landscape' | 'portrait';

/** How a drawing is set out. Everything may be left out. */
export interface PlanOptions {
  /** Default: A4, or A3 where that takes 1:50 (or the next scale down) and A4 does not. */
  readonly sheet?: SheetName;
  /** Default: the way that takes the larger scale, landscape where both do. */
  readonly orientation?: SheetOrientation;
  /** 50 for 1:50. Default: the largest of the scales of ISO 5455 that the room goes on the sheet in. */
  readonly scale?: number;
  /** Unit of all lengths in the drawing; default `'mm'`. */
  readonly unit?: LengthUnit;
  /** Default `'auto'`: as the reader's screen is, light on paper. */
  readonly theme?: PlanTheme;
  /** Begins every id in the drawing, for pages that hold several: a letter, then letters, digits, `-` and `_`. Default `'elbowroom'`. */
  readonly id?: string;
}

/** Checked {@link PlanOptions}; null: to be chosen. */
export interface CheckedPlanOptions {
  readonly sheet: SheetName | null;
  readonly orientation: SheetOrientation | null;
  readonly scale: number | null;
  readonly unit: LengthUnit;
  readonly theme: PlanTheme;
  readonly id: string;
}

const KEYS = ['sheet', 'orientation', 'scale', 'unit', 'theme', 'id'] as const;

/** 1:1 to 1:10,000. */
const SCALE = { what: 'scale', min: 1, max: 10_000 } as const;

/** The options as they hold, or an {@link InputError} with every problem; paths begin with `options`. */
export function readPlanOptions(value: unknown): CheckedPlanOptions {
  const problems = new ProblemList();
  const read = readGuarded([value], problems, () => readFields(value, problems));
  if (read === null || problems.problems.length > 0) throw new InputError(problems.problems);
  return read;
}

function readFields(value: unknown, problems: ProblemList): CheckedPlanOptions {
  const fields = readObject(value, 'options', KEYS, problems);
  const word = <T extends string>(key: string, words: readonly T[]): T | null => {
    const given = fields?.get(key);
    return given === undefined ? null : readWord(given, `options.${key}`, words, problems);
  };
  const sheet = word('sheet', ['A4', 'A3']);
  const orientation = word('orientation', ['landscape', 'portrait']);
  const unit = word('unit', ['mm', 'cm', 'm', 'in', 'ftin']) ?? 'mm';
  const theme = word('theme', ['auto', 'light', 'dark']) ?? 'auto';
  const given = fields?.get('scale');
  const scale = given === undefined ? null : readNumber(given, 'options.scale', SCALE, '', problems);
  const id = readId(fields?.get('id'), problems) ?? 'elbowroom';
  return { sheet, orientation, scale, unit, theme, id };
}

function readId(value: unknown, problems: ProblemList): string | null {
  if (value === undefined) return null;
  if (typeof value === 'string' && /^[A-Za-z][\w-]{0,63}$/.test(value)) return value;
  return problems.add(
    'options.id',
    'bad-id',
    'An id is text of up to 64 characters: a letter, then letters, digits, "-" and "_".',
  );
}
