import type { Point, Ring } from '../../src/geometry/types.js';

/** Two corridors round a corner: `a` wide along +x, `b` wide along the direction g from the origin, both `length` long on the outer walls. */
export function bentCorridor(a: number, b: number, g: number, length: number): Ring {
  const [c, s] = [Math.cos(g), Math.sin(g)];
  const inner: Point = [(b + a * c) / s, a];
  const along = inner[0] * c + inner[1] * s;
  return [
    [0, 0],
    [length, 0],
    [length, a],
    inner,
    [inner[0] + (length - along) * c, inner[1] + (length - along) * s],
    [length * c, length * s],
  ];
}

/** The L: the same at a right angle, its corners exact. */
export function rightCorridor(a: number, b: number, length: number): Ring {
  return [
    [0, 0],
    [length, 0],
    [length, a],
    [b, a],
    [b, length],
    [0, length],
  ];
}

/**
 * The widest rectangle of length l that can be turned round a right corner of corridors a and b: min over t in [0, pi / 2] of
 * a sin t + b cos t - l sin t cos t (its long side's ends on the outer walls, the inner corner on the other long side), by a fine
 * grid and golden section.
 */
export function cornerWidth(l: number, a: number, b: number): number {
  return leastOf((t) => a * Math.sin(t) + b * Math.cos(t) - l * Math.sin(t) * Math.cos(t), Math.PI / 2);
}

/**
 * The same for outer walls at an angle g >= 90 degrees: min over t in [0, pi - g] of (Ix - p) sin t + a cos t, p = l sin(g + t) / sin g,
 * I the inner corner (algorithms.md 5.2).
 */
export function bentWidth(l: number, a: number, b: number, g: number): number {
  const ix = (b + a * Math.cos(g)) / Math.sin(g);
  return leastOf(
    (t) => (ix - (l * Math.sin(g + t)) / Math.sin(g)) * Math.sin(t) + a * Math.cos(t),
    Math.PI - g,
  );
}

function leastOf(f: (t: number) => number, to: number): number {
  const count = 2000;
  let best = 0;
  for (let i = 0; i <= count; i++) if (f((i * to) / count) < f((best * to) / count)) best = i;
  let [low, high] = [(Math.max(0, best - 1) * to) / count, (Math.min(count, best + 1) * to) / count];
  for (let i = 0; i < 100; i++) {
    const [p, q] = [low + (high - low) * 0.382, low + (high - low) * 0.618];
    if (f(p) < f(q)) high = q;
    else low = p;
  }
  return f((low + high) / 2);
}
