import { type Arrivals, arrivalsAt, firstPartingGaps, goTogether, type WayLayout } from './free-way-field.js';
import type { Gap } from './free-way-gaps.js';
import { distanceToWayEdge, nearestWayEdge, WAY_SLACK, type WayPlan } from './free-way-plan.js';
import type { Line, WayTarget } from './free-way-target.js';
import type { Point } from './types.js';

/** A wall, by its place in the outline, or a blocked ring, by its place in the list. */
export interface WayThing {
  readonly kind: 'wall' | 'ring';
  readonly index: number;
}

/** The widest way between two targets. */
export interface WidestWay {
  /** mm; up to the cap. */
  readonly width: number;
  /** Where it is narrowest; null where nothing is known to hold it up to the cap. */
  readonly narrowest: {
    readonly at: Point;
    /** One thing or two; of a pocket within one thing the same only once. */
    readonly between: readonly WayThing[];
  } | null;
}

/** Where no gap decides, as where a zone holds no wider disc, the widest way is told to this, mm. */
const WIDEST_STEP = 0.5;

/** Just more than a gap is wide: beyond doubt too much for it. */
const BEYOND = 3 * WAY_SLACK;

/** Looks for the widest ways between targets of one layout, and keeps what it has seen. */
export class WidestWays {
  private readonly arrivals = new Map<number, Arrivals>();
  private readonly parting = new Map<number, readonly (Gap | null)[]>();

  constructor(
    private readonly layout: WayLayout,
    private readonly targets: readonly WayTarget[],
    private readonly pairs: readonly (readonly [number, number])[],
  ) {}

  at(width: number): Arrivals {
    const known = this.arrivals.get(width);
    if (known !== undefined) return known;
    const arrivals = arrivalsAt(this.layout, this.targets, width);
    this.arrivals.set(width, arrivals);
    return arrivals;
  }

  goes(pair: number, width: number): boolean {
    return goTogether(this.at(width), ...this.pairs[pair]);
  }

  /**
   * The widest way between a pair of targets that is no narrower than `least` and no wider than `most`, which is at most the layout's; null:
   * none is as wide as `least`. Its width is that of a gap where a gap holds it; else it is there, and one {@link WIDEST_STEP} wider is not.
   */
  widest(pair: number, least: number, most: number): WidestWay | null {
    if (!this.goes(pair, least)) return null;
    if (this.goes(pair, most)) return { width: most, narrowest: null };
    let low = least;
    let high = most;
    for (;;) {
      // A gap that parts all places of the way at `low` is the one that holds it unless others hold it first, or it has others beyond.
      const gap = this.firstGap(pair, low);
      if (gap !== null && gap.length >= low && gap.length < high) {
        if (this.goes(pair, gap.length)) {
          low = gap.length;
          const beyond = gap.length + BEYOND;
          if (beyond >= high || !this.goes(pair, beyond)) return { width: low, narrowest: this.placeOf(gap) };
          low = beyond;
        } else high = gap.length;
      }
      if (high - low <= WIDEST_STEP) return { width: low, narrowest: this.narrowEnd(pair, low) };
      const middle = (low + high) / 2;
      if (this.goes(pair, middle)) low = middle;
      else high = middle;
    }
  }

  private firstGap(pair: number, width: number): Gap | null {
    let gaps = this.parting.get(width);
    if (gaps === undefined) {
      gaps = firstPartingGaps(this.layout, this.targets, this.pairs, width);
      this.parting.set(width, gaps);
    }
    return gaps[pair];
  }

  private placeOf({ edgeA, edgeB, ax, ay, bx, by }: Gap): WidestWay['narrowest'] {
    const { plan } = this.layout;
    const things = [thingOf(plan, edgeA), thingOf(plan, edgeB)].sort(compareThings);
    const between = sameThing(things[0], things[1]) ? [things[0]] : things;
    return { at: [(ax + bx) / 2, (ay + by) / 2], between };
  }

  /** Where a way of the given width has least room at its ends, and what is nearest there on either hand. */
  private narrowEnd(pair: number, width: number): WidestWay['narrowest'] {
    const { plan } = this.layout;
    const { of, labels, stretches } = this.at(width);
    const [a, b] = this.pairs[pair];
    const shared = new Set(of[a].map((k) => labels[k]));
    const meeting = new Set(of[b].map((k) => labels[k]).filter((label) => shared.has(label)));
    const ends = [a, b].map((target) =>
      roomiest(
        plan,
        of[target].filter((k) => meeting.has(labels[k])).map((k) => stretches[k]),
      ),
    );
    const end = ends[0].room <= ends[1].room ? ends[0] : ends[1];
    const [x, y] = end.at;
    const near = nearestWayEdge(plan, x, y);
    const first = thingOf(plan, near);
    const second = nearestWayEdge(plan, x, y, (i) => !sameThing(thingOf(plan, i), first));
    const between = [first];
    if (second >= 0 && distanceToWayEdge(plan, second, x, y) <= end.room + WIDEST_STEP)
      between.push(thingOf(plan, second));
    return { at: end.at, between: between.sort(compareThings) };
  }
}

/** The middle of the stretches that has most room round it. */
function roomiest(plan: WayPlan, stretches: readonly Line[]): { readonly at: Point; readonly room: number } {
  let best: { at: Point; room: number } = { at: [0, 0], room: -Infinity };
  for (const [ax, ay, bx, by] of stretches) {
    const at: Point = [(ax + bx) / 2, (ay + by) / 2];
    const room = distanceToWayEdge(plan, nearestWayEdge(plan, ...at), ...at);
    if (room > best.room) best = { at, room };
  }
  return best;
}

function thingOf({ ringOf }: WayPlan, edge: number): WayThing {
  const ring = ringOf[edge];
  return ring === 0 ? { kind: 'wall', index: edge } : { kind: 'ring', index: ring - 1 };
}

function sameThing(a: WayThing, b: WayThing): boolean {
  return a.kind === b.kind && a.index === b.index;
}

/** Walls before rings, each in order. */
function compareThings(a: WayThing, b: WayThing): number {
  if (a.kind !== b.kind) return a.kind === 'wall' ? -1 : 1;
  return a.index - b.index;
}
