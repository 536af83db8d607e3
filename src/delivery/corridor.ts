import type { Carried } from './carried.js';
import { type Crossing, noWay } from './crossing.js';
import { bestStraight, carverSpare } from './gate-section.js';
import { planLength } from './holds.js';
import type { MotionPose } from './motion.js';
import type { Corridor } from './passages.js';

/**
 * A box in a straight corridor, held at one tilt; exact both ways. Touching passes.
 *
 * A corridor is endless, so a box passes iff it fits between its walls, floor and ceiling in some way, and then it slides. In a held way the plan P(o) x across
 * takes no more width than min(P(o), across) at its best heading, and that is square to the walls.
 *
 * `atMostAnyMotion` is Carver's theorem for w x h in width x height, whatever the attitude: along a unit vector n = (x, y, z) in the box's own axes the box
 * is l|x| + w|y| + h|z| wide, which is at least w cos t + h sin t with sin t = |z|. For two such vectors at right angles sin^2 t1 + sin^2 t2 <= 1, so
 * t1 + t2 <= pi / 2, and unless one side alone takes w flat (then h fits the other) each of the two may be turned further, until t1 + t2 = pi / 2, where the
 * widths are those of the rectangle w x h turned by t1.
 */
export function crossCorridor(passage: Corridor, box: Carried): Crossing {
  const { width, height } = passage;
  const endless = Number.POSITIVE_INFINITY;
  const anyMotion = carverSpare(box.w, box.h, width, height);
  const way = bestStraight({ width, height, left: endless, right: endless, depth: endless }, box);
  if (way === null) {
    return noWay('closed-form', Number.NEGATIVE_INFINITY, anyMotion);
  }
  const { hold, sideways, spare } = way;
  const at = (x: number): MotionPose => ({
    x,
    y: width / 2,
    z: height / 2,
    heading: sideways ? Math.PI / 2 : 0,
    tilt: hold.tilt,
    roll: 0,
  });
  const wayLength = sideways ? hold.across : planLength(hold);
  const { along, across, up } = hold;
  return {
    atLeast: spare,
    atMost: spare,
    atMostAnyMotion: Math.max(anyMotion, spare),
    hold,
    motion: spare >= 0 ? { along, across, up, poses: [at(-wayLength), at(wayLength)] } : null,
    narrowest: at(0),
    method: 'closed-form',
  };
}
