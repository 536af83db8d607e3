import { InputError } from '../../src/input-error.js';

/**
 * What keeps a value from being plain JSON data, in words, or null: numbers are finite and not -0, nothing is undefined, lists
 * have no holes, objects no class. Such a value comes back the same from a trip through JSON.
 */
export function notPlain(value: unknown, path = ''): string | null {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return null;
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) return `${path} is ${value}`;
    return Object.is(value, -0) ? `${path} is -0` : null;
  }
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i++) {
      const wrong = Object.hasOwn(value, i) ? notPlain(value[i], `${path}[${i}]`) : `${path}[${i}] is a hole`;
      if (wrong !== null) return wrong;
    }
    return null;
  }
  if (typeof value !== 'object') return `${path} is of type ${typeof value}`;
  const proto: unknown = Object.getPrototypeOf(value);
  if (proto !== Object.prototype) return `${path} is an instance of a class`;
  for (const [key, item] of Object.entries(value)) {
    const wrong = notPlain(item, path === '' ? key : `${path}.${key}`);
    if (wrong !== null) return wrong;
  }
  return null;
}

/** Throws when the value is not plain JSON data. */
export function insistPlain(value: unknown): void {
  const wrong = notPlain(value);
  if (wrong !== null) throw new Error(`Not plain JSON: ${wrong}`);
}

/** Like {@link insistPlain} for what lives inside the library: Infinity stands for "nothing limits", NaN for nothing at all. */
export function insistNumbers(value: unknown, path = 'result'): void {
  if (typeof value === 'number') {
    if (Number.isNaN(value)) throw new Error(`${path} is NaN`);
  } else if (ArrayBuffer.isView(value) && value instanceof Float64Array) {
    for (const [i, item] of value.entries()) insistNumbers(item, `${path}[${i}]`);
  } else if (Array.isArray(value)) {
    for (const [i, item] of value.entries()) insistNumbers(item, `${path}[${i}]`);
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, item] of Object.entries(value)) insistNumbers(item, `${path}.${key}`);
  }
}

/** Text of a drawing or a letter: no NaN, no Infinity, no undefined and no object in it. */
export function insistWords(text: string): void {
  const odd = /\b(NaN|-?Infinity|undefined)\b|\[object/.exec(text);
  if (odd !== null) {
    throw new Error(
      `"${odd[0]}" in the text: ...${text.slice(Math.max(0, odd.index - 60), odd.index + 60)}...`,
    );
  }
}

/** The longest that one problem's path or message may be: some lines. A stranger's own words in it are cut. */
const LONGEST_WORDS = 1500;
/** The most that all of them may be together: one a corner is fine, and so is one a property. */
const MOST_PROBLEMS = 25_000;

/** Problems as they should be: at least one, each with its words, none of them endless. */
export function insistProblems(problems: readonly unknown[]): void {
  if (problems.length === 0) throw new Error('An error of no problem.');
  if (problems.length > MOST_PROBLEMS) throw new Error(`${problems.length} problems.`);
  for (const problem of problems) {
    insistPlain(problem);
    const { path, code, message } = Object(problem);
    if (typeof path !== 'string' || typeof code !== 'string' || typeof message !== 'string')
      throw new Error(`Not a problem: ${JSON.stringify(problem)}`);
    if (!/^[a-z-]+$/.test(code)) throw new Error(`Not a code: ${code}`);
    if (message.length < 10 || message.length > LONGEST_WORDS || path.length > LONGEST_WORDS)
      throw new Error(`Path of ${path.length}, message of ${message.length}: ${message.slice(0, 200)}`);
    insistWords(message.replace(/"[^"]*"/g, '').replace(/is (NaN|-?Infinity)|got (NaN|-?Infinity)/g, ''));
  }
}

/** Runs what may refuse its input by an {@link InputError}: its answer, or null where it did. Any other error goes on. */
export function answerOrRefusal<T>(run: () => T): T | null {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    insistProblems(error.problems);
    return null;
  }
}

/** Own names of the prototypes that a hostile input might add to. */
export function prototypesAsTheyAre(): string {
  return [Object.prototype, Array.prototype, Function.prototype, String.prototype, Number.prototype]
    .map((proto) => Reflect.ownKeys(proto).map(String).join())
    .join('|');
}
