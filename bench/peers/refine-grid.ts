import type { Placement, Ring } from '../../src/geometry/types.js';

/** Does a pose have more clearance than `beat`? Its clearance if so, else null. */
export type Score = (pose: Placement, beat: number) => number | null;

export interface GridResult {
  readonly value: number;
  /** Poses that were scored. */
  readonly poses: number;
  /** Spacing of the first grid, mm. */
  readonly spacing: number;
}

const FIRST_SPACING = 400;
const TURN_STEPS = 12;
/** Poses of the first grid that are followed up. */
const FOLLOWED = 12;
const LAST_STEP = 0.2;
const RADIANS_PER_MM = 1 / 1300;

/**
 * A grid over the room and 12 turns, whose best poses are followed up on grids of 27 neighbours with ever smaller steps. Proves
 * nothing; so that it may be compared at all, the first grid is made denser until the result reaches `wanted`.
 */
export function refineGrid(outline: Ring, score: Score, wanted: number): GridResult {
  for (let spacing = FIRST_SPACING; ; spacing /= 2) {
    const result = onePass(outline, score, spacing);
    if (result.value >= wanted || spacing < 20) return result;
  }
}

function onePass(outline: Ring, score: Score, spacing: number): GridResult {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  let poses = 0;
  const tops: { pose: Placement; value: number }[] = [];
  for (let x = Math.min(...xs) + spacing / 2; x < Math.max(...xs); x += spacing) {
    for (let y = Math.min(...ys) + spacing / 2; y < Math.max(...ys); y += spacing) {
      for (let k = 0; k < TURN_STEPS; k++) {
        const pose = { x, y, angle: (k * Math.PI) / TURN_STEPS };
        poses++;
        // Only what beats the last of the best is worth an exact value.
        const value = score(pose, tops.length < FOLLOWED ? 0 : tops[FOLLOWED - 1].value);
        if (value === null) continue;
        tops.push({ pose, value });
        tops.sort((a, b) => b.value - a.value);
        tops.length = Math.min(tops.length, FOLLOWED);
      }
    }
  }
  let value = 0;
  for (const top of tops) {
    let best = top;
    for (let step = spacing / 2; step > LAST_STEP; ) {
      const from = best;
      for (const dx of [-step, 0, step]) {
        for (const dy of [-step, 0, step]) {
          for (const turn of [-step, 0, step]) {
            const { x, y, angle } = from.pose;
            const pose = { x: x + dx, y: y + dy, angle: angle + turn * RADIANS_PER_MM };
            poses++;
            const better = score(pose, best.value);
            if (better !== null) best = { pose, value: better };
          }
        }
      }
      if (best === from) step /= 2;
    }
    value = Math.max(value, best.value);
  }
  return { value, poses, spacing };
}
