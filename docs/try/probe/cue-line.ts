import { crossings, type Point } from './plan-geometry.js';

/** A thing of the room in plan, with the heights between which it is there, mm. */
export interface Thing {
  readonly name: string;
  readonly ring: readonly Point[];
  readonly from: number;
  readonly to: number;
}

/** The cue's axis over one shot, in the room. */
export interface CueLine {
  readonly ball: Point;
  /** Unit vector from the ball to the butt. */
  readonly direction: Point;
  /** Radians. */
  readonly elevation: number;
  /** How far the axis reaches behind the ball along itself: R + s + L with the swing at hand. */
  readonly reach: number;
  /** The same with the full swing, level: as far as the open stroke can come. */
  readonly fullReach: number;
  /** Height of the axis over the ball, above the floor. */
  readonly height: number;
}

export interface Met {
  readonly name: string;
  /** Plan distance from the ball. */
  readonly at: number;
}

export interface LineFindings {
  /** The nearest thing ahead that the cue does not pass over or under, within sight of it; null where the room ends before. */
  readonly first: Met | null;
  /** What it passes over, under, or stops short of, though a level cue with the full swing would come to it. */
  readonly clears: readonly (Met & { readonly how: 'over' | 'under' | 'short' })[];
  /** What of `wanted` the line comes to, each once, the nearest first. */
  readonly met: readonly Met[];
}

/**
 * What lies along the cue's line, for the words and marks beside the library's answer: plain crossings of the axis, without the margin.
 * `wallNames[i]` is the wall from `outline[i]` on; `wanted` are names of what forbids the open stroke.
 */
export function alongCue(
  line: CueLine,
  outline: readonly Point[],
  wallNames: readonly string[],
  things: readonly Thing[],
  wanted: readonly string[],
): LineFindings {
  const { ball, direction, elevation, reach, fullReach, height } = line;
  const end = reach * Math.cos(elevation);
  const heightAt = (t: number): number => height + t * Math.tan(elevation);
  const clears: LineFindings['clears'][number][] = [];
  const ahead: Met[] = [];
  const met: Met[] = [];
  for (const thing of things) {
    const hits = crossings(ball, direction, thing.ring);
    const last = hits[hits.length - 1];
    if (hits[0] === undefined || last === undefined) continue;
    // An odd number of crossings: the ball's spot lies over or under the thing itself.
    const at = hits.length % 2 === 1 ? 0 : hits[0].at;
    if (wanted.includes(thing.name)) met.push({ name: thing.name, at });
    if (at >= fullReach) {
      ahead.push({ name: thing.name, at });
      continue;
    }
    const how =
      heightAt(at) >= thing.to
        ? 'over'
        : heightAt(Math.min(last.at, end)) <= thing.from
          ? 'under'
          : at >= end
            ? 'short'
            : null;
    if (how !== null) clears.push({ name: thing.name, at, how });
    if (how !== 'over' && how !== 'under') ahead.push({ name: thing.name, at });
  }
  const wall = crossings(ball, direction, outline)[0];
  const wallName = wall === undefined ? undefined : wallNames[wall.edge];
  if (wall !== undefined && wallName !== undefined) {
    const hit = { name: wallName, at: wall.at };
    ahead.push(hit);
    if (wanted.includes(wallName)) met.push(hit);
    if (wall.at >= end && wall.at < fullReach) clears.push({ ...hit, how: 'short' });
  }
  const nearest = (p: Met, q: Met): number => p.at - q.at;
  return { first: ahead.sort(nearest)[0] ?? null, clears: clears.sort(nearest), met: met.sort(nearest) };
}
