/**
 * Nelder and Mead's simplex (1965, from memory), to look for a maximum where nothing is known but values. It proves nothing and
 * shares nothing with the library: what it finds must not beat a bound.
 */
export interface Found {
  readonly at: readonly number[];
  readonly value: number;
}

export function climb(
  value: (at: readonly number[]) => number,
  start: readonly number[],
  steps: readonly number[],
  rounds: number,
): Found {
  const rated = (at: readonly number[]): Found => ({ at, value: value(at) });
  let points = [start, ...steps.map((step, k) => start.map((x, i) => (i === k ? x + step : x)))].map(rated);
  for (let round = 0; round < rounds; round++) {
    points.sort((a, b) => b.value - a.value);
    const worst = points[points.length - 1];
    const others = points.slice(0, -1);
    const middle = start.map((_, i) => others.reduce((sum, { at }) => sum + at[i], 0) / others.length);
    /** From the middle, so many times as far as the worst point is, to the other side. */
    const beyond = (times: number): Found => rated(middle.map((m, i) => m + times * (m - worst.at[i])));
    const mirrored = beyond(1);
    let next: Found | null = mirrored;
    if (mirrored.value > points[0].value) {
      const farther = beyond(2);
      next = farther.value > mirrored.value ? farther : mirrored;
    } else if (mirrored.value <= others[others.length - 1].value) {
      const nearer = mirrored.value > worst.value ? beyond(0.5) : beyond(-0.5);
      next = nearer.value > Math.max(worst.value, mirrored.value) ? nearer : null;
    }
    const [best] = points;
    points =
      next === null
        ? [best, ...points.slice(1).map(({ at }) => rated(at.map((x, i) => (x + best.at[i]) / 2)))]
        : [...others, next];
  }
  return points.reduce((a, b) => (b.value > a.value ? b : a));
}
