import type { Placement } from '../geometry/types.js';
import { findPlace } from '../placement/find-place.js';
import type { Scene } from '../room/scene.js';
import type { Arranged, ArrangeQuestion, Layout } from './arrange-question.js';
import type { ArrangementAdvice, ArrangementValue } from './arrangement-report.js';
import type { CheckedArrangement } from './checked-arrangement.js';
import { furnishedScene } from './furnished-scene.js';
import { fullTurn, layoutProblems, placesOf } from './report-arrangement.js';

/** Each search for advice weighs this share of the layouts that the first one did. */
const EFFORT_SHARE = 0.1;
/** Shares of doors that pieces can be reached from differ by more than this, or by rounding. */
const SAME_CREDIT = 1e-6;
/** Advice has to gain at least this share of open shots, a better verdict, or a piece more. */
const LEAST_GAIN = 0.01;

/** How the wanted cue fares. */
export interface LayoutVerdict {
  readonly verdict: ArrangementAdvice['verdict'];
  /** Share of open shots, 0..1. */
  readonly open: number;
}

export interface ArrangementAdviceQuestion extends Omit<ArrangeQuestion, 'start'> {
  /** The layout that was found. */
  readonly arranged: Arranged;
  /** The wanted cue's verdict there. */
  readonly now: LayoutVerdict;
  /** The search: with `start`, what it finds has at least the value of that. */
  readonly arrange: (question: ArrangeQuestion) => Arranged;
  /** The wanted cue's verdict with the table at a pose in a room; `none` where it cannot stand there. Not called without a table. */
  readonly judge: (scene: Scene, pose: Placement) => LayoutVerdict;
}

/**
 * Which piece to leave out, or to shift from its given pose, for a better verdict, more open shots, or a place for more pieces. Each was
 * computed: the whole room was searched again without the piece, or with it free to go anywhere, and the layout that was found judged;
 * whatever else has no given pose may have moved in it. What the search misses is not told, so a gain is never more than there is, and may be
 * less. Advice never costs the verdict, open shots beyond the least gain, another piece its place, or the pieces the clear ways that the search
 * counts. The most useful first: by verdict, then by the pieces that find a place, then by the gain.
 *
 * None where the verdict is clear and every piece has a place with nothing wrong there. Else there is one search for each piece that has a
 * place, and another for each given one of them: at most 24 of a tenth of the effort, with one verdict each, or two where the old layout
 * without the piece is judged as well.
 */
export function adviseArrangement(question: ArrangementAdviceQuestion): readonly ArrangementAdvice[] {
  const { arrangement, arranged, now } = question;
  const fits = fitting(question, arrangement, arranged);
  if (now.verdict === 'clear' && fits.every((fit) => fit)) return [];
  const advice: ArrangementAdvice[] = [];
  arrangement.pieces.forEach((piece, i) => {
    if (arranged.poses[i] === null) return;
    if (piece.pose !== null) {
      const shifted = afterShift(question, fits, i, piece.pose);
      if (shifted !== null) advice.push(shifted);
    }
    const left = afterLeavingOut(question, fits, i);
    if (left !== null) advice.push(left);
  });
  return advice.sort(
    (a, b) => rank(a.verdict) - rank(b.verdict) || b.places.length - a.places.length || b.gain - a.gain,
  );
}

/** Where everything stands after a change, and who has a place with nothing wrong there. */
interface Changed {
  readonly layout: Layout;
  readonly fits: readonly boolean[];
  readonly judged: LayoutVerdict;
  /** Pieces by the share of the doors that a clear way leads from, as the search counts them. */
  readonly credit: number;
}

function afterLeavingOut(
  question: ArrangementAdviceQuestion,
  fits: readonly boolean[],
  i: number,
): ArrangementAdvice | null {
  const { arrangement, arranged } = question;
  const others = <T>(list: readonly T[]): readonly T[] => list.filter((_, k) => k !== i);
  const pieces = others(arrangement.pieces);
  const fitsNow = others(fits);
  const start: Layout = { tablePose: arranged.tablePose, poses: others(arranged.poses) };
  const without = { ...arrangement, pieces };
  const again = pieces.length > 0 ? searched(question, without, start) : null;
  // Taking a piece out narrows no way: the others keep at least what they had.
  const credit = creditOf(arranged.value, arrangement.pieces.length) - 1;
  const candidates = [
    changed(question, without, start, credit),
    again === null
      ? changed(question, without, tableAlone(question), credit)
      : changed(question, without, again, creditOf(again.value, pieces.length)),
  ];
  const best = bestOf(question, fitsNow, credit, candidates);
  if (best === null) return null;
  const places = placesGained(pieces, fitsNow, best.fits);
  return {
    kind: 'leave-out',
    piece: arrangement.pieces[i].name,
    verdict: best.judged.verdict,
    gain: best.judged.open - question.now.open,
    places,
  };
}

function afterShift(
  question: ArrangementAdviceQuestion,
  fits: readonly boolean[],
  i: number,
  given: Placement,
): ArrangementAdvice | null {
  const { arrangement, arranged } = question;
  const pieces = arrangement.pieces.map((piece, k) => (k === i ? { ...piece, pose: null } : piece));
  const free = { ...arrangement, pieces };
  const again = searched(question, free, arranged);
  const found = changed(question, free, again, creditOf(again.value, pieces.length));
  const pose = found.layout.poses[i];
  if (pose === null || pose === undefined || !found.fits[i]) return null;
  if (pose.x === given.x && pose.y === given.y && pose.angle === given.angle) return null;
  const best = bestOf(question, fits, creditOf(arranged.value, pieces.length), [found]);
  if (best === null) return null;
  return {
    kind: 'shift',
    piece: arrangement.pieces[i].name,
    pose: { x: pose.x, y: pose.y, turn: fullTurn(pose.angle) },
    amount: Math.hypot(pose.x - given.x, pose.y - given.y),
    verdict: best.judged.verdict,
    gain: best.judged.open - question.now.open,
    places: placesGained(pieces, fits, best.fits),
  };
}

function searched(
  question: ArrangementAdviceQuestion,
  arrangement: CheckedArrangement,
  start: Layout,
): Arranged {
  const { scene, table, stroke, cue, pose, search } = question;
  const effort = Math.max(1, Math.round(arrangement.effort * EFFORT_SHARE));
  return question.arrange({
    scene,
    table,
    stroke,
    cue,
    pose,
    search,
    arrangement: { ...arrangement, effort, onProgress: null },
    start,
  });
}

/** The table at its own best place in the bare room. */
function tableAlone({ scene, table, stroke, cue, pose, search }: ArrangementAdviceQuestion): Layout {
  const tablePose =
    table === null || pose !== null ? pose : findPlace({ scene, table, stroke, cues: [cue], search }).pose;
  return { tablePose, poses: [] };
}

function changed(
  question: ArrangementAdviceQuestion,
  arrangement: CheckedArrangement,
  layout: Layout,
  credit: number,
): Changed {
  const fits = fitting(question, arrangement, layout);
  return { layout, fits, judged: judgedAt(question, arrangement, layout), credit };
}

function creditOf({ placed }: ArrangementValue, pieces: number): number {
  return placed * pieces;
}

function judgedAt(
  { scene, table, judge }: ArrangementAdviceQuestion,
  { pieces }: CheckedArrangement,
  layout: Layout,
): LayoutVerdict {
  if (table === null || layout.tablePose === null) return { verdict: 'none', open: 0 };
  const placed = placesOf(pieces, layout).filter((place) => place !== null);
  return judge(furnishedScene(scene, placed, table), layout.tablePose);
}

/** Which pieces have a place with nothing wrong there. */
function fitting(
  { scene, table }: ArrangementAdviceQuestion,
  arrangement: CheckedArrangement,
  layout: Layout,
): readonly boolean[] {
  const problems = layoutProblems({ scene, table, arrangement }, layout);
  return layout.poses.map((pose, i) => pose !== null && problems[i].length === 0);
}

/** The best of what was found that is a gain and costs nothing; null: none is. */
function bestOf(
  { now }: ArrangementAdviceQuestion,
  fits: readonly boolean[],
  credit: number,
  candidates: readonly Changed[],
): Changed | null {
  const count = (list: readonly boolean[]): number => list.filter((fit) => fit).length;
  const good = candidates.filter((then) => {
    const { verdict, open } = then.judged;
    if (rank(verdict) > rank(now.verdict) || open < now.open - LEAST_GAIN) return false;
    if (then.credit < credit - SAME_CREDIT) return false;
    if (fits.some((fit, i) => fit && !then.fits[i])) return false;
    return (
      rank(verdict) < rank(now.verdict) || open >= now.open + LEAST_GAIN || count(then.fits) > count(fits)
    );
  });
  good.sort(
    (a, b) =>
      rank(a.judged.verdict) - rank(b.judged.verdict) ||
      count(b.fits) - count(a.fits) ||
      b.judged.open - a.judged.open,
  );
  return good[0] ?? null;
}

function placesGained(
  pieces: readonly { readonly name: string }[],
  before: readonly boolean[],
  after: readonly boolean[],
): readonly string[] {
  return pieces.filter((_, i) => !before[i] && after[i]).map(({ name }) => name);
}

function rank(verdict: ArrangementAdvice['verdict']): number {
  return ['clear', 'tight', 'partial', 'none'].indexOf(verdict);
}
