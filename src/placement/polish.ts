import { viewEdge } from '../geometry/rectangle-distance.js';
import { type BoxBounds, boundBox } from './box-bounds.js';
import { type BoxLp, solveBoxLp } from './box-lp.js';
import { setPoseBox } from './pose-box.js';
import { type FoundPose, type PoseProbe, probePose } from './pose-probe.js';
import { edgeOf, isObjective, type SearchScene } from './search-scene.js';

const MOST_STEPS = 12;
/** First half width of the trust box: a share of Q's half length, at least this many mm. */
const FIRST_SHARE = 0.1;
const FIRST_LEAST = 50;
/** A step that gains more than this share of what the program foretold was a good one. */
const GOOD_SHARE = 0.25;
/** What the trust box grows or shrinks by after a good step, a fair one, and one that gained nothing. */
const TRUST = { good: 1.5, fair: 0.6, none: 0.3 } as const;
/** The polish ends when the trust box is this small, mm. */
const FINISHED = 1e-3;
/** Edges further from the start than this many first steps are left out; the end is checked against all of them. */
const SIGHT = 30;

/**
 * Climbs from a pose by linear programs in a trust box that grows where they foretell well and shrinks where they do not. Never
 * returns a pose with less clearance than it was given.
 */
export function polish(
  scene: SearchScene,
  bounds: BoxBounds,
  lp: BoxLp,
  probe: PoseProbe,
  start: FoundPose,
  turning: boolean,
  reserve: number,
): FoundPose {
  const first = Math.max(FIRST_LEAST, FIRST_SHARE * scene.play.halfLength);
  const list = inSight(scene, probe, start.value, SIGHT * first);
  let { x, y, angle, value } = start;
  let trust = first;
  for (let step = 0; step < MOST_STEPS && trust > FINISHED; step++) {
    setPoseBox(bounds.box, x, y, angle, trust, trust, turning ? trust / scene.play.radius : 0);
    const bound = boundBox(
      bounds,
      list,
      list.length,
      Number.POSITIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
      reserve,
    );
    if (bound === Number.NEGATIVE_INFINITY) break;
    solveBoxLp(lp, bounds.rows, Number.NEGATIVE_INFINITY);
    if (lp.bound === Number.NEGATIVE_INFINITY) break;
    const nextX = x + lp.s0 * trust;
    const nextY = y + lp.s1 * trust;
    const nextAngle = angle + lp.s2 * bounds.box.turn;
    const next = probePose(probe, list, list.length, nextX, nextY, nextAngle, value);
    if (next > value) {
      trust *= next - value > GOOD_SHARE * (lp.t - value) ? TRUST.good : TRUST.fair;
      x = nextX;
      y = nextY;
      angle = nextAngle;
      value = next;
    } else {
      trust *= TRUST.none;
    }
  }
  const all = Uint32Array.from({ length: scene.looseCount }, (_, item) => item);
  const checked = probePose(probe, all, all.length, x, y, angle, start.value);
  return checked > start.value ? { x, y, angle, value: checked } : start;
}

/** Constraints that may bind within `sight` of the pose last probed. */
function inSight(scene: SearchScene, probe: PoseProbe, value: number, sight: number): Uint32Array {
  const { play, frame, view } = probe;
  frame.x = play.x;
  frame.y = play.y;
  frame.cos = play.cos;
  frame.sin = play.sin;
  const list: number[] = [];
  const count = value > scene.ample + sight ? scene.looseCount : scene.fullCount;
  for (let item = 0; item < count; item++) {
    const objective = isObjective(scene, item);
    viewEdge(view, objective ? play : frame, scene.obstacles.edges, edgeOf(scene, item));
    if (view.separation <= (objective ? value + sight : sight)) list.push(item);
  }
  return Uint32Array.from(list);
}
