import fc from 'fast-check';

/** One way to try one exported function. */
export interface Target {
  /** Entry point and export: `index/assessFit`. */
  readonly of: readonly string[];
  readonly name: string;
  /** Its part of all runs; cheap ones have more. */
  readonly weight: number;
  /** Asserts the property with so many runs; throws with the shrunk counterexample and how to repeat it. */
  readonly run: (how: { readonly seed: number; readonly numRuns: number; readonly path?: string }) => void;
}

/** `of`: the exports that it tries, as `entry/name`. `what`: how it does, where one export is tried in several ways. */
export function target<T>(
  of: string | readonly string[],
  what: string,
  weight: number,
  arbitrary: fc.Arbitrary<T>,
  check: (value: T) => void,
): Target {
  const all = typeof of === 'string' ? [of] : of;
  return {
    of: all,
    name: `${all[0]}: ${what}`,
    weight,
    run: (how) => fc.assert(fc.property(arbitrary, check), how),
  };
}
