/**
 * Other engines' Math: the functions whose last bit no standard fixes, each result moved by one unit in the last place up or
 * down or left alone, by seeded chance. What is exact by the standard (sqrt, abs, floor...) stays as it is, and so do results that
 * every engine gives exactly: 0, NaN, infinities, and whole numbers of at most 2^53 from hypot of one argument.
 */
const LOOSE = [
  'sin',
  'cos',
  'tan',
  'asin',
  'acos',
  'atan',
  'atan2',
  'hypot',
  'exp',
  'expm1',
  'log',
  'log1p',
  'log2',
  'log10',
  'pow',
  'sinh',
  'cosh',
  'tanh',
  'cbrt',
] as const;

const words = new BigInt64Array(1);
const double = new Float64Array(words.buffer);

/** The next double away from 0, or towards it. */
function moved(value: number, up: boolean): number {
  double[0] = value;
  words[0] += up ? 1n : -1n;
  return double[0];
}

/** Runs with a nudged Math, and gives the true one back whatever happens. */
export function withNudgedMath<T>(random: () => number, run: () => T): T {
  const kept = LOOSE.map((name) => [name, Math[name]] as const);
  const nudge = (value: number): number => {
    const chance = random();
    if (chance < 1 / 3 || value === 0 || !Number.isFinite(value)) return value;
    return moved(value, chance < 2 / 3);
  };
  try {
    for (const [name, original] of kept) {
      const nudged = (...values: number[]): number => nudge(Reflect.apply(original, Math, values));
      Reflect.set(Math, name, nudged);
    }
    return run();
  } finally {
    for (const [name, original] of kept) Reflect.set(Math, name, original);
  }
}
