import type { Placement } from '../geometry/types.js';
import type { ArrangeQuestion, Layout } from './arrange-question.js';
import type { ArrangementValue } from './arrangement-report.js';
import { assignPieces, type Chosen, soloOrder } from './assign-pieces.js';
import { fillPool } from './fill-pool.js';
import { type LayoutJudge, layoutJudge } from './layout-value.js';
import { packPieces } from './pack-pieces.js';
import { refineChoice } from './refine-choice.js';
import { type SearchRoom, searchRoom } from './search-room.js';
import { type TableScore, tableScore, tableStarts } from './table-starts.js';
import { Weigher } from './weigher.js';

/** Of the effort: one start in so many layouts, at most so many. */
const PER_START = 20;
const MOST_STARTS = 24;
/** Starts that are improved. */
const CLIMBED = 3;
const CLIMB_ROUNDS = 4;
/** Steps of the table, mm. */
const MOVE = { first: 200, last: 12 } as const;
/** Partial choices that are looked at to get all pieces in, per layout of the effort, at most in all. */
const PACK = { each: 100, most: 200_000 } as const;
/** A gain in the value that is worth going on for. */
const GAIN = 1e-6;

export interface FoundLayout extends Layout {
  readonly value: ArrangementValue;
}

export interface LayoutSearch {
  readonly room: SearchRoom;
  readonly best: FoundLayout;
  readonly layouts: number;
  readonly stopped: boolean;
}

/** The table at one place and the choice for it. */
interface State {
  readonly weigher: Weigher;
  readonly chosen: Chosen;
}

/** Looks for the layout with the greatest value. */
export function searchLayouts(question: ArrangeQuestion): LayoutSearch {
  return new Search(question).run();
}

class Search {
  readonly #room: SearchRoom;
  readonly #judge: LayoutJudge;
  readonly #score: TableScore;
  readonly #effort: number;
  #best: FoundLayout | null = null;
  #layouts = 0;
  #stopped = false;

  constructor(readonly question: ArrangeQuestion) {
    this.#room = searchRoom(question);
    this.#judge = layoutJudge(question);
    this.#score = tableScore(this.#room);
    this.#effort = question.arrangement.effort;
  }

  run(): LayoutSearch {
    const { start } = this.question;
    if (start !== undefined) this.#weigh(start);
    fillPool(this.#room);
    const most = Math.max(1, Math.min(MOST_STARTS, Math.round(this.#effort / PER_START)));
    const states: State[] = [];
    for (const pose of tableStarts(this.#room, most)) {
      if (this.#over()) break;
      states.push(this.#settle(new Weigher(this.#room, pose), null));
    }
    states.sort((a, b) => b.chosen.value - a.chosen.value);
    for (const state of states.slice(0, CLIMBED)) this.#climb(state);
    const best = this.#best ?? this.#weigh({ tablePose: this.question.pose, poses: this.#givenPoses() });
    return { room: this.#room, best, layouts: this.#layouts, stopped: this.#stopped };
  }

  /** The best choice with the table where the weigher has it. */
  #settle(weigher: Weigher, from: Chosen | null): State {
    let chosen = assignPieces(weigher, from === null ? null : from.choice, true);
    const missing = chosen.choice.filter((k) => k < 0).length;
    if (missing > 0 && from === null) {
      const nodes = Math.min(PACK.most, PACK.each * this.#effort);
      const packed = packPieces(weigher, soloOrder(weigher), chosen.choice.length - missing, nodes);
      if (packed !== null) {
        const other = assignPieces(weigher, packed, true);
        if (other.value > chosen.value) chosen = other;
      }
    }
    const state = { weigher, chosen };
    this.#weigh(this.#layoutOf(state));
    return state;
  }

  #climb(from: State): void {
    let state = from;
    for (let round = 0; round < CLIMB_ROUNDS && !this.#over(); round++) {
      const before = state.chosen.value;
      state = this.#moveTable(state);
      if (this.#over()) return;
      refineChoice(state.weigher, state.chosen.choice);
      state = this.#settle(state.weigher, state.chosen);
      if (state.chosen.value <= before + GAIN) return;
    }
  }

  /** Moves the table by itself, the pieces staying, as long as that gains. */
  #moveTable(from: State): State {
    const { pose } = from.weigher;
    if (pose === null || this.question.pose !== null) return from;
    let state = from;
    let at = pose;
    for (let step: number = MOVE.first; step >= MOVE.last; ) {
      let next: State | null = null;
      let nextPose = at;
      for (let side = 0; side < 4; side++) {
        const direction = at.angle + (side * Math.PI) / 2;
        const moved = {
          ...at,
          x: at.x + step * Math.cos(direction),
          y: at.y + step * Math.sin(direction),
        };
        const found = this.#estimate(moved, state.chosen);
        if (found !== null && found.chosen.value > (next ?? state).chosen.value + GAIN) {
          next = found;
          nextPose = moved;
        }
      }
      if (next === null) step /= 2;
      else {
        state = next;
        at = nextPose;
      }
    }
    return state;
  }

  /** The same choice with the table elsewhere; null where the table or a piece cannot stand then. */
  #estimate(pose: Placement, { choice }: Chosen): State | null {
    if (this.#score(pose) === Number.NEGATIVE_INFINITY) return null;
    const weigher = new Weigher(this.#room, pose);
    if (!choice.every((k) => k < 0 || weigher.allows(k))) return null;
    weigher.load(choice.filter((k) => k >= 0));
    return { weigher, chosen: { choice, value: weigher.weigh() } };
  }

  #layoutOf({ weigher, chosen }: State): Layout {
    const { movable, pool } = this.#room;
    const poses = this.#givenPoses();
    for (const piece of this.#room.lamps) poses[piece] = weigher.pose;
    chosen.choice.forEach((k, i) => {
      if (k >= 0) poses[movable[i]] = pool.list[k].placed.pose;
    });
    return { tablePose: weigher.pose, poses };
  }

  #givenPoses(): (Placement | null)[] {
    return this.question.arrangement.pieces.map(({ pose }) => pose);
  }

  #weigh(layout: Layout): FoundLayout {
    const value = this.#judge(layout);
    this.#layouts++;
    const found = { ...layout, value };
    const best = this.#best;
    if (
      best === null ||
      value.value > best.value.value ||
      (value.value === best.value.value && there(layout) > there(best))
    )
      this.#best = found;
    const { onProgress } = this.question.arrangement;
    if (onProgress !== null && this.#best !== null) {
      const { value: v, poses } = this.#best;
      const go = onProgress({
        value: v.value,
        upperBound: v.upperBound,
        placed: poses.filter((p) => p !== null).length,
        layouts: this.#layouts,
      });
      if (go === false) this.#stopped = true;
    }
    return found;
  }

  #over(): boolean {
    if (this.#stopped || this.#layouts >= this.#effort) return true;
    // Nothing is left to gain.
    return this.#best !== null && this.#best.value.value > this.#best.value.upperBound - GAIN;
  }
}

function there({ poses }: Layout): number {
  return poses.filter((pose) => pose !== null).length;
}
