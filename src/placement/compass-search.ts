import { SAME_SHARE } from '../geometry/steady.js';
import type { Placement } from '../geometry/types.js';

/**
 * Climbs from a pose by trying steps along the table's own axes, halving the step when none helps. Deterministic: the
 * first of equal neighbours wins, and a step counts only where it gains more than rounding. `score` is -Infinity where the table cannot stand.
 */
export function compassSearch(
  start: Placement,
  score: (pose: Placement) => number,
  options: { readonly step: number; readonly stop: number; readonly most: number },
): { readonly pose: Placement; readonly score: number } {
  let pose = start;
  let best = score(start);
  let used = 1;
  const ux = Math.cos(start.angle);
  const uy = Math.sin(start.angle);
  for (let step = options.step; step >= options.stop && used < options.most; ) {
    let next: Placement | null = null;
    for (const [du, dv] of COMPASS) {
      if (used >= options.most) break;
      const trial = {
        x: pose.x + step * (du * ux - dv * uy),
        y: pose.y + step * (du * uy + dv * ux),
        angle: pose.angle,
      };
      const found = score(trial);
      used++;
      if (found > best + SAME_SHARE) {
        best = found;
        next = trial;
      }
    }
    if (next === null) step /= 2;
    else pose = next;
  }
  return { pose, score: best };
}

const COMPASS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;
