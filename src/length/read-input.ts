import type { InputProblem } from '../input-error.js';
import { tryParseLength } from './parse-length.js';

/** Collects every problem of an input while it is read; readers return null for what could not be read. */
export class ProblemList {
  readonly problems: InputProblem[] = [];

  add(path: string, code: string, message: string): null {
    this.problems.push({ path, code, message });
    return null;
  }
}

/** Limits of a number or length, in the words of the message. */
export interface ReadLimits {
  /** Least value allowed, inclusive. */
  readonly min?: number;
  /** Greatest value allowed, inclusive. */
  readonly max?: number;
  /** What it is, for the message: `'cue length'`. */
  readonly what: string;
}

/** A path one step deeper: `at('room', 'doors')`, `at('room.doors', 2)`. */
export function at(path: string, key: string | number): string {
  if (typeof key === 'number') return `${path}[${key}]`;
  return path === '' ? key : `${path}.${key}`;
}

/**
 * The own data properties of a plain object, or null with a problem. Refuses arrays, class instances, accessors (a getter
 * could change its answer between the check and the use) and properties that nobody reads, which are mostly misspelt.
 */
export function readObject(
  value: unknown,
  path: string,
  known: readonly string[],
  problems: ProblemList,
): ReadonlyMap<string, unknown> | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return problems.add(
      path,
      'not-an-object',
      `Expected an object with ${listWords(known)}, got ${describeValue(value)}.`,
    );
  }
  const proto: unknown = Object.getPrototypeOf(value);
  if (proto !== Object.prototype && proto !== null) {
    return problems.add(path, 'not-plain-data', 'Expected plain data, got an instance of a class.');
  }
  const out = new Map<string, unknown>();
  let unknown = 0;
  for (const [key, descriptor] of Object.entries(Object.getOwnPropertyDescriptors(value))) {
    if (!known.includes(key)) {
      unknown++;
      if (unknown > UNKNOWN_TOLD) continue;
      const word = shortened(key);
      problems.add(
        at(path, word),
        'unknown-property',
        `There is no property "${word}" here; the known ones are ${listWords(known)}.`,
      );
    } else if (!('value' in descriptor)) {
      problems.add(at(path, key), 'not-plain-data', `"${key}" is computed by a getter; give plain data.`);
    } else if (descriptor.value !== undefined) {
      out.set(key, descriptor.value);
    }
  }
  if (unknown > UNKNOWN_TOLD) {
    const more = unknown - UNKNOWN_TOLD;
    problems.add(path, 'unknown-property', `There are ${more} more properties here that are not known.`);
  }
  return out;
}

/** Properties that nobody knows are told one by one up to so many: more come from no slip. */
const UNKNOWN_TOLD = 20;

/** Text of a stranger's, short enough for a line of a message. */
function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}...` : text;
}

/** The items of a plain array without holes and getters, or null with a problem. */
export function readArray(
  value: unknown,
  path: string,
  what: string,
  problems: ProblemList,
): readonly unknown[] | null {
  if (!Array.isArray(value)) {
    return problems.add(path, 'not-a-list', `Expected a list of ${what}, got ${describeValue(value)}.`);
  }
  const items: unknown[] = [];
  for (let i = 0; i < value.length; i++) {
    const descriptor = Object.getOwnPropertyDescriptor(value, i);
    if (descriptor === undefined)
      return problems.add(at(path, i), 'missing-item', `Item ${i + 1} of this list is missing.`);
    if (!('value' in descriptor))
      return problems.add(
        at(path, i),
        'not-plain-data',
        `Item ${i + 1} of this list is computed by a getter; give plain data.`,
      );
    items.push(descriptor.value);
  }
  return items;
}

/**
 * Reads a stranger's values. Where that throws because one of them does when it is looked at (a proxy may), it is a problem of
 * the input like any other, and the answer is null. Every other error is ours and goes on.
 */
export function readGuarded<T>(
  values: readonly unknown[],
  problems: ProblemList,
  read: () => T | null,
): T | null {
  try {
    return read();
  } catch (error) {
    if (canBeLookedAt(values)) throw error;
    return problems.add(
      '',
      'not-plain-data',
      'Reading the input threw an error of its own, as a proxy or a getter may; give plain data.',
    );
  }
}

/** Whether nothing in the values throws, or computes an item of a list, when it is looked at. */
function canBeLookedAt(values: readonly unknown[]): boolean {
  const waiting = [...values];
  const seen = new Set<unknown>();
  while (waiting.length > 0) {
    const value = waiting.pop();
    if (typeof value !== 'object' || value === null || seen.has(value)) continue;
    seen.add(value);
    try {
      const list = Array.isArray(value);
      Object.getPrototypeOf(value);
      for (const descriptor of Object.values(Object.getOwnPropertyDescriptors(value))) {
        if ('value' in descriptor) waiting.push(descriptor.value);
        else if (list) return false;
      }
    } catch {
      return false;
    }
  }
  return true;
}

/** A length in mm (number, or text with its unit), or null with a problem. */
export function readLength(
  value: unknown,
  path: string,
  limits: ReadLimits,
  problems: ProblemList,
): number | null {
  let mm: number;
  if (typeof value === 'number') {
    if (!Number.isFinite(value))
      return problems.add(
        path,
        'not-a-number',
        `The ${limits.what} is ${value}; give a number of millimetres.`,
      );
    mm = value;
  } else if (typeof value === 'string') {
    const parsed = tryParseLength(value);
    if (!parsed.ok)
      return problems.add(path, parsed.code, `The ${limits.what} cannot be read: ${parsed.message}`);
    mm = parsed.mm;
  } else {
    return problems.add(
      path,
      'not-a-length',
      `Expected the ${limits.what} as a number of millimetres or as text with its unit, got ${describeValue(value)}.`,
    );
  }
  return within(mm, path, limits, ' mm', problems);
}

/** A finite number, or null with a problem. */
export function readNumber(
  value: unknown,
  path: string,
  limits: ReadLimits,
  unit: string,
  problems: ProblemList,
): number | null {
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    return problems.add(
      path,
      'not-a-number',
      `Expected the ${limits.what} as a number, got ${describeValue(value)}.`,
    );
  }
  return within(value, path, limits, unit, problems);
}

/** One of a closed set of words, or null with a problem. */
export function readWord<T extends string>(
  value: unknown,
  path: string,
  words: readonly T[],
  problems: ProblemList,
): T | null {
  for (const word of words) if (value === word) return word;
  return problems.add(
    path,
    'unknown-word',
    `Expected one of ${words.map((w) => `"${w}"`).join(', ')}, got ${describeValue(value)}.`,
  );
}

/** A name: text of 1 to 200 characters, or null with a problem. */
export function readName(value: unknown, path: string, what: string, problems: ProblemList): string | null {
  if (typeof value !== 'string')
    return problems.add(path, 'not-text', `Expected the ${what} as text, got ${describeValue(value)}.`);
  const text = value.trim();
  if (text === '') return problems.add(path, 'empty-name', `The ${what} is empty.`);
  if (text.length > 200)
    return problems.add(path, 'name-too-long', `The ${what} has ${text.length} characters; 200 are enough.`);
  return text;
}

/** A value in few words, for messages: never longer than a line. */
export function describeValue(value: unknown): string {
  if (value === null) return 'null';
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'string') return `"${shortened(value)}"`;
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (typeof value === 'bigint') return shortened(String(value));
  return typeof value === 'object' ? 'an object' : `a ${typeof value}`;
}

/** `"a", "b" and "c"`. */
export function listWords(words: readonly string[]): string {
  const quoted = words.map((w) => `"${w}"`);
  const last = quoted.pop();
  if (last === undefined) return 'nothing';
  return quoted.length === 0 ? last : `${quoted.join(', ')} and ${last}`;
}

function within(
  value: number,
  path: string,
  limits: ReadLimits,
  unit: string,
  problems: ProblemList,
): number | null {
  const { min, max, what } = limits;
  if (min !== undefined && value < min)
    return problems.add(
      path,
      'too-small',
      `The ${what} is ${value}${unit}; it must be at least ${min}${unit}.`,
    );
  if (max !== undefined && value > max)
    return problems.add(
      path,
      'too-large',
      `The ${what} is ${value}${unit}; it must be at most ${max}${unit}.`,
    );
  return value;
}
