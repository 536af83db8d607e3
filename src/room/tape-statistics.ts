/**
 * The little of statistics that a survey needs: tails of the normal distribution and of chi-square, and a rule of integration.
 */

/** P(Z > z) for z >= 0, by the continued fraction or the series of the error function; relative error under 1e-13. */
export function normalTail(z: number): number {
  const half = (z * z) / 2;
  return z < 0 ? 1 - normalTail(-z) : gammaTail(0.5, half) / 2;
}

/** P(chi-square with so many degrees of freedom > value). */
export function chiSquareTail(value: number, degrees: number): number {
  return gammaTail(degrees / 2, value / 2);
}

/** Regularised upper incomplete gamma function Q(a, x); series below a + 1, Lentz's continued fraction above. */
function gammaTail(a: number, x: number): number {
  if (!(x > 0)) return 1;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n <= MOST_TERMS && term > sum * Number.EPSILON; n++) {
      term *= x / (a + n);
      sum += term;
    }
    return Math.max(0, 1 - front * sum);
  }
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n <= MOST_TERMS; n++) {
    const an = -n * (n - a);
    b += 2;
    d = 1 / nonZero(an * d + b);
    c = nonZero(b + an / c);
    const factor = d * c;
    h *= factor;
    if (Math.abs(factor - 1) < 2 * Number.EPSILON) break;
  }
  return front * h;
}

const MOST_TERMS = 100_000;
const TINY = 1e-300;

function nonZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}

/** log of the gamma function for positive half numbers and whole ones, which is all that is asked: Stirling's series above 10. */
function logGamma(a: number): number {
  let shift = 0;
  let z = a;
  while (z < 10) {
    shift += Math.log(z);
    z += 1;
  }
  const w = 1 / (z * z);
  const series = (1 / 12 - w * (1 / 360 - w * (1 / 1260 - w * (1 / 1680 - w / 1188)))) / z;
  return (z - 0.5) * Math.log(z) - z + Math.log(2 * Math.PI) / 2 + series - shift;
}

/** Nodes and weights of Gauss and Legendre's rule on [0, 1], by Newton's method on the Legendre polynomial. */
export function gaussRule(points: number): readonly (readonly [node: number, weight: number])[] {
  const rule: [number, number][] = [];
  for (let i = 0; i < points; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (points + 0.5));
    let slope = 1;
    for (let step = 0; step < 20; step++) {
      let [before, value] = [1, x];
      for (let k = 2; k <= points; k++) {
        [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
      }
      slope = (points * (x * value - before)) / (x * x - 1);
      const change = value / slope;
      x -= change;
      if (Math.abs(change) < Number.EPSILON) break;
    }
    rule.push([(1 + x) / 2, 1 / ((1 - x * x) * slope * slope)]);
  }
  return rule;
}
