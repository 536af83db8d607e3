import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  assessFit,
  classifyShot,
  type FitReport,
  type ObstacleInput,
  type RoomInput,
} from '../../src/index.js';
import { SMALL_TABLE } from '../helpers/external-furnished.js';
import { alongAxis, loadSolids, sharedVolume, solidRoom, uprightBar } from '../helpers/external-solids.js';
import { between, type Random, random } from '../stroke/scenes.js';

/**
 * The certificate against solids: where a report says `clear`, no stroke of many random ones, a bar as thick as the margin over
 * the whole backswing, enters anything. tests/external/swept-cues.test.ts does so in a few furnished rooms, closer; here the
 * rooms are random, so that every way of proof has its turn: distances, raised cues, boxes of shots.
 */
const CUE = 1000;
const MARGIN = 20;
/** Rounding of solids, mm3. */
const NOTHING = 0.5;
const SHOTS = 40;

let solids: ManifoldToplevel;
beforeAll(async () => {
  solids = await loadSolids();
});

/** A room in which a table 1,830 x 915 mm is clear with a cue of 1 m, or just not: with low things, tall ones and a lamp. */
function randomRoom(next: Random): RoomInput {
  // Half of the field, R + s + L + a = 1,200 mm, and a little more or less.
  const spare = (): number => 1195 + (next() < 0.3 ? between(next, -40, 0) : between(next, 0, 700));
  const halfX = 915 - 28.6 + spare();
  const halfY = 457 - 28.6 + spare();
  const skew = next() < 0.3 ? between(next, 0, 200) : 0;
  const obstacles: ObstacleInput[] = [];
  const count = Math.floor(5 * next());
  for (let k = 0; k < count; k++) {
    const side = next() < 0.5 ? 1 : -1;
    const depth = between(next, 100, 500);
    const atEnd = next() < 0.5;
    const center = atEnd
      ? ([side * (halfX - depth / 2), between(next, -halfY, halfY)] as const)
      : ([between(next, -halfX, halfX), side * (halfY - depth / 2)] as const);
    const [length, width] = atEnd ? [depth, between(next, 200, 1200)] : [between(next, 200, 1200), depth];
    const heights = next();
    const name = `thing ${k + 1}`;
    // Below the cues, up to where some of them pass, hung above them, or up to the ceiling.
    if (heights < 0.4)
      obstacles.push({ name, footprint: { center, length, width }, to: between(next, 300, 800) });
    else if (heights < 0.7)
      obstacles.push({ name, footprint: { center, length, width }, to: between(next, 800, 900) });
    else if (heights < 0.9)
      obstacles.push({ name, footprint: { center, length, width }, from: between(next, 1000, 1500) });
    else obstacles.push({ name, footprint: { center, length, width } });
  }
  if (next() < 0.3)
    obstacles.push({
      name: 'lamp',
      footprint: { center: [0, 0], length: 900, width: 250 },
      from: between(next, 1000, 1300),
      to: 1900,
    });
  return {
    outline: [
      [-halfX - skew, -halfY],
      [halfX, -halfY],
      [halfX + skew, halfY],
      [-halfX, halfY],
    ],
    ceiling: between(next, 1500, 2600),
    obstacles,
    tolerance: 0,
  };
}

function expectFree(room: RoomInput, report: FitReport, next: Random): number {
  const { pose, table } = report;
  if (pose === null) throw new Error('No place, no shots.');
  const matter = solidRoom(solids, room);
  const radius = table.ballDiameter / 2;
  // A polygon in the bar's circle; what is left out is less than this.
  const upright = uprightBar(solids, radius + 150 + CUE, MARGIN - 0.05);
  let shots = 0;
  for (let k = 0; k < SHOTS; k++) {
    const across = [next() - 0.5, next() - 0.5];
    if (k % 2 === 0) across[k % 4 === 0 ? 0 : 1] = next() < 0.5 ? -0.5 : 0.5;
    const ball = {
      x: across[0] * (table.field.length - 2 * radius),
      y: across[1] * (table.field.width - 2 * radius),
    };
    // Square to the cushions now and then, where strokes reach farthest.
    const direction = k % 5 === 0 ? 90 * Math.floor(4 * next()) : 360 * next();
    const answer = classifyShot({ room, table: SMALL_TABLE, pose, cue: CUE, ball, direction });
    const where = JSON.stringify({ room, pose, ball, direction, answer });
    expect(answer.class, where).toBe('open');
    const turn = (pose.turn * Math.PI) / 180;
    const theta = ((answer.elevation ?? 90) * Math.PI) / 180;
    const swept = alongAxis(upright, {
      x: pose.x + ball.x * Math.cos(turn) - ball.y * Math.sin(turn),
      y: pose.y + ball.x * Math.sin(turn) + ball.y * Math.cos(turn),
      z: table.bedHeight + radius + (0.35 * radius) / Math.cos(theta),
      heading: turn + (direction * Math.PI) / 180,
      elevation: theta,
    });
    expect(sharedVolume(swept, matter), where).toBeLessThan(NOTHING);
    swept.delete();
    shots++;
  }
  upright.delete();
  matter.delete();
  return shots;
}

describe('the certificate', () => {
  it('holds: in random rooms that are clear no random shot enters a solid, whatever the proof', () => {
    const next = random(20_251_209);
    const proofs = new Map<string, number>();
    let shots = 0;
    for (let k = 0; k < 250; k++) {
      const room = randomRoom(next);
      const given = next() < 0.5 ? { pose: { x: 0, y: 0 } } : {};
      const report = assessFit({
        room,
        table: SMALL_TABLE,
        cues: [CUE],
        search: { maxBoxes: 3000 },
        ...given,
      });
      const [{ verdict, proof }] = report.cues;
      proofs.set(`${verdict} by ${proof}`, (proofs.get(`${verdict} by ${proof}`) ?? 0) + 1);
      if (verdict === 'clear') shots += expectFree(room, report, next);
    }
    expect(shots).toBeGreaterThan(3000);
    // Both ways to a clear verdict had their turn.
    expect(proofs.get('clear by distance')).toBeGreaterThan(30);
    expect(proofs.get('clear by boxes')).toBeGreaterThan(4);
  });
});
