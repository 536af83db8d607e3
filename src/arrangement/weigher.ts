import { DEFAULTS } from '../equipment/defaults.js';
import type { Placement } from '../geometry/types.js';
import { PLAYABLE } from '../placement/share-score.js';
import { addBits, type Bits, countBits, emptyBits, hasBit, meets, setBit } from './bits.js';
import { apart, MOST_CANDIDATES } from './candidate-pool.js';
import { furnishedScene } from './furnished-scene.js';
import { flood, frameGoal, type GridWays, wayBlocked } from './grid-ways.js';
import { fitsBeside, fitsRoom, fitsTable, tableRing } from './layout-rules.js';
import { MOST_UNPROVED } from './layout-value.js';
import type { PlacedPiece } from './piece-place.js';
import { isFarOff, isPlain } from './plain-piece.js';
import { SAMPLE_SHOTS } from './play-sample.js';
import { hangLamps, type SearchRoom, tracesOf } from './search-room.js';
import { ShotField, type Spoiled } from './shot-field.js';
import { cueingShare, zonesShared } from './zone-estimate.js';

/** Shots that a candidate spoils, and whether it takes neither shots nor floor to stand on. */
interface Effect extends Spoiled {
  readonly harmless: boolean;
}

/**
 * What layouts are worth with the table at one place, estimated a thousand times faster than they are judged: shots that single pieces spoil are
 * put together, standing room and ways go by cells of the floor. Candidates are put in and taken out like a stack.
 */
export class Weigher {
  /** Candidates that keep off the table. */
  readonly allowed: Bits = emptyBits(MOST_CANDIDATES);
  readonly chosen: number[] = [];
  readonly #field: ShotField | null;
  readonly #open: Bits[] = [];
  readonly #playable: Bits[] = [];
  readonly #stand: Bits[] = [];
  readonly #noWay: Bits;
  /** Play of what is in, by level; and with each candidate alone. */
  readonly #plays: number[] = [];
  /** Whether distances prove that a candidate alone takes no shot; how many of what is in are not proved so, by level. */
  readonly #plain: (boolean | undefined)[] = [];
  readonly #shaky: number[] = [0];
  readonly #alone: (number | undefined)[] = [];
  /** Cells in which some player stands. */
  readonly #stances: Bits;
  /** Sums over the zones of the shares that lie in the cueing or on other zones, by level. */
  readonly #shared: number[] = [0];
  readonly #zones: number[] = [0];
  readonly #spoiled: (Effect | undefined)[] = [];
  readonly #cueShare: (number | undefined)[] = [];
  readonly #pairs = new Map<number, number>();
  #tested = 0;
  /** Pieces that never move at this place of the table: given ones and lamps. */
  readonly fixed: readonly PlacedPiece[];
  readonly #lamps: readonly PlacedPiece[];
  readonly #fixedGood: readonly boolean[];
  readonly #goodFixed: number;
  readonly #fixedGoals: readonly (Bits | null)[];
  readonly #home: Bits | null;
  readonly #doors: readonly Bits[];
  readonly #doorShare: number;

  constructor(
    readonly room: SearchRoom,
    readonly pose: Placement | null,
  ) {
    const { question, grid, ways, stand, shots, rules, given } = room;
    const { scene, table, stroke, cue } = question;
    const lamps = hangLamps(room, pose).map(({ placed }) => ({ placed, good: fitsRoom(rules, placed) }));
    const all = [...given, ...lamps];
    this.#lamps = lamps.map(({ placed }) => placed);
    this.fixed = all.map(({ placed }) => placed);
    this.#fixedGood = all.map(
      ({ placed, good }) =>
        good &&
        (table === null || pose === null || fitsTable(placed, table, pose)) &&
        this.fixed.every((other) => other === placed || fitsBeside(placed, other)),
    );
    this.#goodFixed = this.#fixedGood.filter((g) => g).length;
    const traces = this.fixed.map((placed) => tracesOf(grid, ways, placed));
    const noStand = emptyBits(grid.depth.length);
    const noWay = emptyBits(grid.depth.length);
    for (const trace of traces) {
      addBits(noStand, trace.stand);
      addBits(noWay, trace.way);
    }
    this.#fixedGoals = traces.map(({ goal }) => goal);
    this.#stand.push(noStand);
    let home: Bits | null = null;
    let field: ShotField | null = null;
    if (table !== null && pose !== null) {
      const frame = tableRing(table, pose);
      home = frameGoal(ways, frame);
      addBits(noWay, wayBlocked(ways, [frame]));
      field = new ShotField(
        furnishedScene(scene, this.fixed, table),
        table,
        stroke,
        cue,
        pose,
        shots,
        grid,
        stand,
      );
    }
    this.#home = home;
    this.#field = field;
    this.#noWay = noWay;
    this.#stances = emptyBits(grid.depth.length);
    if (field !== null) for (const cell of field.cells) setBit(this.#stances, cell);
    this.#open.push(emptyBits(SAMPLE_SHOTS));
    this.#playable.push(emptyBits(SAMPLE_SHOTS));
    const free = this.#freeWay();
    this.#doors = doorsTogether(ways, free, home);
    this.#doorShare = ways.doors.length === 0 ? 1 : this.#doors.length / ways.doors.length;
    this.fixed.forEach((piece, i) => {
      for (const zone of piece.zones) {
        this.#zones[0]++;
        this.#shared[0] += cueingShare(this.room, pose, zone);
      }
      for (let j = 0; j < i; j++) this.#shared[0] += zonesShared(piece, this.fixed[j]);
    });
    this.#plays.push(-1);
    if (!isPlain(this.room, this.pose, this.fixed)) this.#shaky[0] = 1;
  }

  /** Takes in the candidates that the pool has got since. */
  update(): void {
    const { pool } = this.room;
    for (; this.#tested < pool.list.length; this.#tested++) {
      if (this.allows(this.#tested)) setBit(this.allowed, this.#tested);
    }
  }

  /** Whether candidate k keeps off the table, and off what hangs over it. */
  allows(k: number): boolean {
    const { table } = this.room.question;
    const { placed } = this.room.pool.list[k];
    if (table !== null && this.pose !== null && !fitsTable(placed, table, this.pose)) return false;
    return this.#lamps.every((lamp) => fitsBeside(placed, lamp));
  }

  push(k: number): void {
    const level = this.chosen.length;
    const { stand } = this.room.traces(k);
    if (this.#field !== null) {
      const { open, playable, harmless } = this.#spoiledBy(k, this.#field);
      this.#open[level + 1] = joined(this.#open[level], open, this.#open[level + 1]);
      this.#playable[level + 1] = joined(this.#playable[level], playable, this.#playable[level + 1]);
      this.#stand[level + 1] = joined(this.#stand[level], stand, this.#stand[level + 1]);
      this.#plays[level + 1] = harmless ? this.#plays[level] : -1;
    }
    const { placed } = this.room.pool.list[k];
    this.#plain[k] ??=
      this.#shaky[0] === 0 &&
      (isFarOff(this.room, this.pose, this.room.traces(k).solids) || isPlain(this.room, this.pose, [placed]));
    this.#shaky[level + 1] = this.#shaky[level] + (this.#plain[k] ? 0 : 1);
    let shared = this.#shared[level] + this.#cueShareOf(k);
    for (const j of this.chosen) shared += this.#pairShare(k, j);
    for (const f of this.fixed) shared += zonesShared(placed, f);
    this.#shared[level + 1] = shared;
    this.#zones[level + 1] = this.#zones[level] + placed.zones.length;
    this.chosen.push(k);
  }

  pop(): void {
    this.chosen.pop();
  }

  /** Puts in all of these, in place of what is in. */
  load(chosen: readonly number[]): void {
    this.chosen.length = 0;
    for (const k of chosen) this.push(k);
  }

  /** What a piece that has a place counts for. */
  worthOfPiece(): number {
    return DEFAULTS.arrangement.weights.placed * this.#share(1);
  }

  /** Estimated value of what is in, if every way is clear: an upper bound of {@link weigh}. */
  score(): number {
    const { weights } = DEFAULTS.arrangement;
    const good = this.#goodFixed + this.chosen.length;
    return weights.placed * this.#share(good) + weights.play * this.play() + weights.apart * this.#apart();
  }

  /** The same with ways: pieces that are not reached do not count, nor does anything where the table or a door is cut off. */
  weigh(): number {
    const { weights } = DEFAULTS.arrangement;
    const { ways, pool, traces } = this.room;
    const start = this.#doors.length > 0 ? this.#doors[0] : this.#home;
    if (start === null || pool.kinds.length + this.fixed.length === 0) return this.score();
    const seen = flood(ways, this.#freeWay(), start);
    const cut =
      (this.#home !== null && !meets(this.#home, seen)) || this.#doors.some((door) => !meets(door, seen));
    if (cut) return weights.apart * this.#apart();
    let good = 0;
    this.#fixedGoals.forEach((goal, i) => {
      if (this.#fixedGood[i] && (goal === null || meets(goal, seen))) good++;
    });
    for (const k of this.chosen) {
      const { goal } = traces(k);
      if (goal === null || meets(goal, seen)) good++;
    }
    return weights.placed * this.#share(good) + weights.play * this.play() + weights.apart * this.#apart();
  }

  /** open + 0.9 cramped of what is in, by the share of the doors that lead to the table. */
  play(): number {
    const field = this.#field;
    if (field === null) return 0;
    const level = this.chosen.length;
    if (this.#plays[level] < 0) this.#plays[level] = this.#count(field, level);
    const most = this.#shaky[level] > 0 ? MOST_UNPROVED * this.#doorShare : this.#doorShare;
    return Math.min(most, this.#plays[level]);
  }

  /** The play with candidate k as the only one: no layout with it has more. */
  playAlone(k: number): number {
    const known = this.#alone[k];
    if (known !== undefined) return known;
    const chosen = this.chosen.slice();
    this.load([k]);
    const play = this.play();
    this.load(chosen);
    this.#alone[k] = play;
    return play;
  }

  /** No layout of what is in and so many pieces more is worth more than this. */
  boundWithout(more: number): number {
    const { weights } = DEFAULTS.arrangement;
    const good = this.#goodFixed + this.chosen.length + more;
    return weights.placed * this.#share(good) + weights.play * this.play() + weights.apart;
  }

  /** No layout of what is in and candidate k, with ways or without, is worth more than this. */
  boundWith(k: number): number {
    const { weights } = DEFAULTS.arrangement;
    const level = this.chosen.length;
    const zones = this.#zones[level] + this.room.pool.list[k].placed.zones.length;
    const shared = this.#shared[level] + this.#cueShareOf(k);
    const apartMost = zones === 0 ? 1 : 1 - Math.min(1, shared / zones);
    return (
      weights.placed * this.#share(this.#goodFixed + level + 1) +
      weights.play * Math.min(this.play(), this.playAlone(k)) +
      weights.apart * apartMost
    );
  }

  #count(field: ShotField, level: number): number {
    const lostOpen = this.#open[level];
    const lostPlayable = this.#playable[level];
    const stand = this.#stand[level];
    let score = 0;
    for (let w = 0; w < lostOpen.length; w++) {
      const open = field.open[w] & ~lostOpen[w];
      const playable = (field.playable[w] & ~lostPlayable[w]) | open;
      for (let rest = playable; rest !== 0; rest &= rest - 1) {
        const bit = rest & -rest;
        const k = 32 * w + 31 - Math.clz32(bit);
        const end = field.first[k + 1];
        for (let c = field.first[k]; c < end; c++) {
          if (hasBit(stand, field.cells[c])) continue;
          score += (open & bit) !== 0 ? 1 : PLAYABLE;
          break;
        }
      }
    }
    return (this.#doorShare * score) / SAMPLE_SHOTS;
  }

  #share(good: number): number {
    return good / Math.max(1, this.room.question.arrangement.pieces.length);
  }

  #apart(): number {
    const level = this.chosen.length;
    return this.#zones[level] === 0 ? 1 : 1 - Math.min(1, this.#shared[level] / this.#zones[level]);
  }

  #freeWay(): Bits {
    const free = this.room.ways.free.slice();
    const block = (blocked: Bits): void => {
      for (let w = 0; w < free.length; w++) free[w] &= ~blocked[w];
    };
    block(this.#noWay);
    for (const k of this.chosen) block(this.room.traces(k).way);
    return free;
  }

  #spoiledBy(k: number, field: ShotField): Effect {
    const known = this.#spoiled[k];
    if (known !== undefined) return known;
    const { solids, stand } = this.room.traces(k);
    const { open, playable } = field.spoiled(solids);
    const harmless = countBits(open) === 0 && countBits(playable) === 0 && !meets(stand, this.#stances);
    const effect = { open, playable, harmless };
    this.#spoiled[k] = effect;
    return effect;
  }

  #cueShareOf(k: number): number {
    const known = this.#cueShare[k];
    if (known !== undefined) return known;
    const { placed } = this.room.pool.list[k];
    let share = 0;
    for (const zone of placed.zones) share += cueingShare(this.room, this.pose, zone);
    this.#cueShare[k] = share;
    return share;
  }

  #pairShare(a: number, b: number): number {
    const { list } = this.room.pool;
    if (apart(list[a].box, list[b].box)) return 0;
    const key = a < b ? a * MOST_CANDIDATES + b : b * MOST_CANDIDATES + a;
    const known = this.#pairs.get(key);
    if (known !== undefined) return known;
    const share = zonesShared(list[a].placed, list[b].placed);
    this.#pairs.set(key, share);
    return share;
  }
}

function joined(a: Bits, b: Bits, into: Bits | undefined): Bits {
  const out = into ?? new Int32Array(a.length);
  for (let w = 0; w < a.length; w++) out[w] = a[w] | b[w];
  return out;
}

/** The most doors that lead to the table and, past it, to one another. */
function doorsTogether(ways: GridWays, free: Bits, target: Bits | null): readonly Bits[] {
  if (target === null) return ways.doors;
  let most: readonly Bits[] = [];
  for (const door of ways.doors) {
    const seen = flood(ways, free, door);
    if (!meets(seen, target)) continue;
    const group = ways.doors.filter((other) => meets(seen, other));
    if (group.length > most.length) most = group;
  }
  return most;
}
