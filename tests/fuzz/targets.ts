import type { Target } from './target.js';
import { FRONT } from './targets-front.js';
import { PARTS } from './targets-parts.js';

/** Every way to try an exported function. */
export const TARGETS: readonly Target[] = [...FRONT, ...PARTS];

const ALL = TARGETS.reduce((sum, { weight }) => sum + weight, 0);

/** Its part of so many runs in all, at least one. */
export function runsOf({ weight }: Target, all: number): number {
  return Math.max(1, Math.round((weight / ALL) * all));
}
