import type { Placement } from '../geometry/types.js';
import type { Choice } from './assign-pieces.js';
import { wallPoses } from './fill-pool.js';
import { fitsBeside, fitsTable } from './layout-rules.js';
import { placePiece } from './piece-place.js';
import type { Weigher } from './weigher.js';

/** Steps to either side of where a piece stands, mm. */
const STEPS = [160, 80, 40, 20] as const;
/** A piece that costs less than this in the value where it stands is left there. */
const COSTS = 0.01;

/**
 * Adds candidates next to a choice, for the pieces in it that cost something where they stand: along the walls up to the table and the other
 * pieces, and a little to each side of where they are.
 */
export function refineChoice(weigher: Weigher, choice: Choice): void {
  const { room, pose: tablePose } = weigher;
  const { pool, kinds, question } = room;
  const { table } = question;
  choice.forEach((k, i) => {
    const others = choice.filter((c, j) => c >= 0 && j !== i);
    weigher.load(choice.filter((c) => c >= 0));
    const with_ = weigher.score();
    weigher.load(others);
    if (k >= 0 && weigher.boundWithout(1) - with_ < COSTS) return;
    const kind = kinds[i];
    const spec = pool.kinds[kind];
    const fits = (pose: Placement): boolean => {
      const placed = placePiece(spec, pose);
      return (
        pool.fits(placed) &&
        (table === null || tablePose === null || fitsTable(placed, table, tablePose)) &&
        others.every((c) => fitsBeside(placed, pool.list[c].placed))
      );
    };
    for (const pose of wallPoses(room, spec, fits)) pool.add(kind, pose);
    if (k < 0) return;
    const { pose } = pool.list[k].placed;
    for (const step of STEPS) {
      for (let side = 0; side < 4; side++) {
        const direction = pose.angle + (side * Math.PI) / 2;
        pool.add(kind, {
          ...pose,
          x: pose.x + step * Math.cos(direction),
          y: pose.y + step * Math.sin(direction),
        });
      }
    }
  });
}
