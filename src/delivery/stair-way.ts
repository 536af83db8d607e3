import { slopeHeight } from './stair-bounds.js';
import { lowerSpare, type StairPlane } from './stair-cells.js';
import { nearestTilt, type StairFamily, type TiltRange } from './stair-holds.js';
import { type FreeHeight, profileSpare, type Slab, type StairProfile } from './stair-profile.js';

/** A place and a tilt in the upright plane of a stair. */
export interface TiltPlace {
  readonly tilt: number;
  readonly x: number;
}

/** A way through a stair: straight lines in the plane of tilts and places. */
export interface StairWay {
  /** No pose of it has less spare than this. */
  readonly spare: number;
  readonly places: readonly TiltPlace[];
}

/** Parts of a turn. */
const PARTS = 32;
/** mm: how closely the least spare along a turn is narrowed down. */
const CLOSE = 0.05;

/**
 * The best of the plain ways through a stair: turned at the foot from one tilt to another with a corner on both floors at once, led up the
 * flight, turned at the head under both ceilings. Where the level ways and the flight are long enough and the ceilings meet
 * at the steps, no way is better than the best of these (see stair.ts); elsewhere it is one that holds.
 */
export function plainStairWay(plane: StairPlane, family: StairFamily): StairWay | null {
  const { profile, pitch } = plane;
  const tilts = candidateTilts(family.ranges, pitch);
  const turns = new StairTurns(plane, family);
  // On the flight and on the levels a tilt has no more room than this, whatever the turns.
  const room = (tilt: number): number => profile.headroom - slopeHeight(family.along, family.up, pitch, tilt);
  const below = (tilt: number): number =>
    profile.bottomHeight - slopeHeight(family.along, family.up, 0, tilt);
  const above = (tilt: number): number => profile.topHeight - slopeHeight(family.along, family.up, 0, tilt);
  let best: TiltPlace[] | null = null;
  let most = Number.NEGATIVE_INFINITY;
  for (const flight of [...tilts].sort((a, b) => room(b) - room(a))) {
    if (room(flight) <= most) break;
    const levels = tilts.filter((level) => isOneTurn(family.ranges, level, flight));
    let foot: Turn | null = null;
    for (const level of levels) {
      if (below(level) > Math.max(most, foot?.spare ?? most)) foot = better(foot, turns.foot(level, flight));
    }
    if (foot === null || foot.spare <= most) continue;
    let head: Turn | null = plane.endless ? turns.away(flight) : null;
    for (const level of plane.endless ? [] : levels) {
      for (const ceiling of turns.ceilings()) {
        if (above(level) > Math.max(most, head?.spare ?? most)) {
          head = better(head, turns.head(flight, level, ceiling));
        }
      }
    }
    if (head === null) continue;
    const between = turns.slide(foot.places[foot.places.length - 1], head.places[0]);
    const spare = Math.min(foot.spare, head.spare, between);
    if (spare <= most) continue;
    most = spare;
    best = [...foot.places, ...head.places];
  }
  return best === null ? null : { spare: turns.certain(best), places: best };
}

interface Turn {
  readonly spare: number;
  readonly places: readonly TiltPlace[];
}

function better(known: Turn | null, turn: Turn): Turn {
  return known === null || turn.spare > known.spare ? turn : known;
}

/** Level, upright, along the flight, square to it, and where one of these is not allowed, what is nearest. */
function candidateTilts(ranges: readonly TiltRange[], pitch: number): number[] {
  const quarter = Math.PI / 2;
  const wanted = [0, pitch, quarter, -quarter, pitch - quarter].map((tilt) => nearestTilt(ranges, tilt));
  return [...new Set(wanted)];
}

/** Whether one can be tilted from one to the other, by no more than a quarter turn, without leaving what is allowed. */
function isOneTurn(ranges: readonly TiltRange[], a: number, b: number): boolean {
  const from = Math.min(a, b);
  const to = Math.max(a, b);
  if (to - from > Math.PI / 2 + 1e-9) return false;
  return ranges.some((range) => {
    if (range.to - range.from >= Math.PI - 1e-9) return true;
    const shift = Math.PI * Math.ceil((range.from - from - 1e-9) / Math.PI);
    return to + shift <= range.to + 1e-9;
  });
}

class StairTurns {
  private readonly slab: Slab;
  private readonly reach: number;
  private readonly scratch: FreeHeight = { lo: 0, hi: 0, walls: 0 };

  constructor(
    private readonly plane: StairPlane,
    family: StairFamily,
  ) {
    this.slab = { halfAlong: family.along / 2, halfUp: family.up / 2 };
    this.reach = Math.hypot(this.slab.halfAlong, this.slab.halfUp);
  }

  /** From the level at the foot to the flight. */
  foot(level: number, flight: number): Turn {
    const turn = this.arc(level, flight, (tilt) => this.footPlace(tilt));
    const first = turn[0].x;
    const half = this.halfPlan(level);
    const start =
      this.plane.profile.bottomDepth === Number.POSITIVE_INFINITY
        ? Math.min(first, -half - 1)
        : Math.min(0, first);
    const places = start < first ? [{ tilt: level, x: start }, ...turn] : turn;
    return { spare: this.coarse(places), places };
  }

  /** From the flight to the level at the head, the upper ceiling taken as no higher than `ceiling`. */
  head(flight: number, level: number, ceiling: number): Turn {
    const turn = this.arc(flight, level, (tilt) => this.headPlace(tilt, ceiling));
    const last = turn[turn.length - 1].x;
    const { run, topDepth } = this.plane.profile;
    const end = topDepth === Number.POSITIVE_INFINITY ? run + this.halfPlan(level) + 1 : run;
    const places = end > last ? [...turn, { tilt: level, x: end }] : turn;
    return { spare: this.coarse(places), places };
  }

  /** On an endless flight: wholly on it. */
  away(flight: number): Turn {
    const places = [{ tilt: flight, x: this.reach + 1 }];
    return { spare: Number.POSITIVE_INFINITY, places };
  }

  /** Heights of the upper ceiling worth trying: its own, and lower ones where it is higher than the flight's. */
  ceilings(): number[] {
    const { headroom, topHeight } = this.plane.profile;
    if (topHeight <= headroom) return [topHeight];
    const higher = [headroom, headroom + this.reach / 4].filter((height) => height < topHeight);
    return topHeight === Number.POSITIVE_INFINITY ? higher : [...higher, topHeight];
  }

  /** Touches the lower floor and the flight. */
  private footPlace(tilt: number): number {
    const { floor, slope } = this.supports(tilt);
    return (slope - floor) / this.plane.profile.tan;
  }

  /** Touches the ceilings of the flight and of the upper level. */
  private headPlace(tilt: number, ceiling: number): number {
    const { tan, run, headroom } = this.plane.profile;
    const { top, slopeTop } = this.supports(tilt);
    return (run * tan + ceiling - top + slopeTop - headroom) / tan;
  }

  /** Least and greatest z, and z - x tan pitch, of the slab about its centre. */
  private supports(tilt: number): { floor: number; slope: number; top: number; slopeTop: number } {
    const { tan } = this.plane.profile;
    const { halfAlong, halfUp } = this.slab;
    const c = Math.cos(tilt);
    const s = Math.sin(tilt);
    const top = halfAlong * Math.abs(s) + halfUp * Math.abs(c);
    const slopeTop = halfAlong * Math.abs(s - tan * c) + halfUp * Math.abs(c + tan * s);
    return { floor: -top, slope: -slopeTop, top, slopeTop };
  }

  private halfPlan(tilt: number): number {
    return this.slab.halfAlong * Math.abs(Math.cos(tilt)) + this.slab.halfUp * Math.abs(Math.sin(tilt));
  }

  private arc(from: number, to: number, place: (tilt: number) => number): TiltPlace[] {
    const count = from === to ? 0 : PARTS;
    return Array.from({ length: count + 1 }, (_, i) => {
      // The ends are those tilts exactly: slides are told by equal ones.
      const tilt = i === count ? to : from + ((to - from) * i) / count;
      return { tilt, x: place(tilt) };
    });
  }

  private at({ tilt, x }: TiltPlace): number {
    return profileSpare(this.plane.profile, this.slab, 0, x, tilt, this.scratch);
  }

  private coarse(places: readonly TiltPlace[]): number {
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < places.length; i++) {
      least = Math.min(least, this.at(places[i]));
      if (i > 0 && places[i].tilt === places[i - 1].tilt) {
        least = Math.min(least, this.slide(places[i - 1], places[i]));
      }
    }
    return least;
  }

  /** Least spare on the way from one place to another at one tilt: exact, for it is concave between the breaks. */
  slide(from: TiltPlace, to: TiltPlace): number {
    let least = Math.min(this.at(from), this.at(to));
    for (const x of slideBreaks(this.plane.profile, this.slab, from, to)) {
      least = Math.min(least, this.at({ tilt: from.tilt, x }));
    }
    return least;
  }

  /** No pose of the way has less spare than this: at most CLOSE below the least found. */
  certain(places: readonly TiltPlace[]): number {
    let least = Number.POSITIVE_INFINITY;
    for (const place of places) least = Math.min(least, this.at(place));
    for (let i = 1; i < places.length; i++) {
      const [a, b] = [places[i - 1], places[i]];
      if (a.tilt === b.tilt) least = Math.min(least, this.slide(a, b));
    }
    for (let i = 1; i < places.length; i++) {
      if (places[i - 1].tilt !== places[i].tilt) least = this.narrow(places[i - 1], places[i], least, 0);
    }
    return least - CLOSE;
  }

  /** The least of `least` and what is found between a and b, nothing there being less than the result - CLOSE. */
  private narrow(a: TiltPlace, b: TiltPlace, least: number, depth: number): number {
    const cell = {
      tilt: (a.tilt + b.tilt) / 2,
      x: (a.x + b.x) / 2,
      halfTilt: Math.abs(a.tilt - b.tilt) / 2,
      halfX: Math.abs(a.x - b.x) / 2,
    };
    const surely = lowerSpare(this.plane.profile, this.slab, this.reach, cell, this.scratch);
    if (surely >= least - CLOSE) return least;
    // A jump of the ceiling that is met in the middle of a turn: what is left is what is sure.
    if (depth > 24) return surely + CLOSE;
    const mid = { tilt: cell.tilt, x: cell.x };
    const found = Math.min(least, this.at(mid));
    return this.narrow(mid, b, this.narrow(a, mid, found, depth + 1), depth + 1);
  }
}

/** Places strictly between, a hair to either side of where a corner of the slab passes a break of the floor or the ceiling. */
export function slideBreaks(
  profile: StairProfile,
  { halfAlong, halfUp }: Slab,
  from: TiltPlace,
  to: TiltPlace,
): number[] {
  const hair = 1e-7;
  const c = Math.cos(from.tilt);
  const s = Math.sin(from.tilt);
  const first = Math.min(from.x, to.x);
  const last = Math.max(from.x, to.x);
  const breaks: number[] = [];
  for (const q of [0, profile.run]) {
    for (let k = 0; k < 4; k++) {
      const x = q - (k & 1 ? 1 : -1) * halfAlong * c - (k & 2 ? 1 : -1) * halfUp * s;
      if (x - hair > first && x + hair < last) breaks.push(x - hair, x + hair);
    }
  }
  breaks.sort((p, q) => p - q);
  return from.x <= to.x ? breaks : breaks.reverse();
}
