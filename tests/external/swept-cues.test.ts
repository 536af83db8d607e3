import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  assessFit,
  classifyShot,
  type FitReport,
  type RoomInput,
  type ShotAnswer,
  type TableInput,
} from '../../src/index.js';
import { FURNISHED_ROOMS, SMALL_TABLE } from '../helpers/external-furnished.js';
import { seeded } from '../helpers/external-random.js';
import { alongAxis, loadSolids, sharedVolume, solidRoom, uprightBar } from '../helpers/external-solids.js';

/**
 * Whole scenes against manifold-3d, a library of solids that knows nothing of plans and closed forms: for random shots at the place that a report
 * chose, the volume that the cue sweeps meets nothing where the library says that it does not, and meets something at every
 * elevation where it says that it does. Shots by seeded chance.
 */
const CUES = ['58 in', '52 in', '48 in', '42 in', '36 in'] as const;
const MARGIN = 20;
/** A margin under a slope is kept straight up, so square to the slope it is less: by the cosine of 34 degrees in the loft. */
const MARGIN_UNDER_SLOPE = 16;
/** Rounding of solids, mm3. */
const NOTHING = 0.5;
const radians = (degrees: number): number => (degrees * Math.PI) / 180;

interface Scene {
  readonly name: string;
  readonly room: RoomInput;
  readonly table: string | TableInput;
  readonly report: FitReport;
}

interface Shot {
  readonly x: number;
  readonly y: number;
  /** Degrees from the table's long axis. */
  readonly direction: number;
}

let solids: ManifoldToplevel;
const bars = new Map<string, Manifold>();
beforeAll(async () => {
  solids = await loadSolids();
});

const scenes = FURNISHED_ROOMS.flatMap(({ name, room }) =>
  [SMALL_TABLE, 'pool-7ft-bar'].map((table): Scene => {
    const report = assessFit({ room, table, cues: CUES });
    return { name: `${name}, ${report.table.name}`, room, table, report };
  }),
);

/** Half of them with the ball frozen on a cushion, where strokes reach farthest. */
function randomShots(report: FitReport, count: number, seed: number): Shot[] {
  const next = seeded(seed);
  const { field, ballDiameter } = report.table;
  return Array.from({ length: count }, (_, i) => {
    const across = [next() - 0.5, next() - 0.5];
    if (i % 2 === 0) across[i % 4 === 0 ? 0 : 1] = next() < 0.5 ? -0.5 : 0.5;
    return {
      x: across[0] * (field.length - ballDiameter),
      y: across[1] * (field.width - ballDiameter),
      direction: 360 * next(),
    };
  });
}

function ask({ room, table, report }: Scene, cue: string, { x, y, direction }: Shot): ShotAnswer {
  const { pose } = report;
  if (pose === null) throw new Error('No place, no shots.');
  return classifyShot({ room, table, pose, cue, ball: { x, y }, direction });
}

/** The bar of the given radius that the stroke sweeps at an elevation in degrees; `more` is added to its length. */
function bar(
  { report }: Scene,
  shot: Shot,
  elevation: number,
  behind: number,
  radius: number,
  more = 0,
): Manifold {
  const { pose, table } = report;
  if (pose === null) throw new Error('No place, no shots.');
  const ballRadius = table.ballDiameter / 2;
  const turn = radians(pose.turn);
  const theta = radians(elevation);
  return alongAxis(upright(ballRadius + behind + more, radius), {
    x: pose.x + shot.x * Math.cos(turn) - shot.y * Math.sin(turn),
    y: pose.y + shot.x * Math.sin(turn) + shot.y * Math.cos(turn),
    // z(0) = bedHeight + R + b / cos(theta), with b = 0.35 R.
    z: table.bedHeight + ballRadius + (0.35 * ballRadius) / Math.cos(theta),
    heading: turn + radians(shot.direction),
    elevation: theta,
  });
}

/** Few bars serve all shots. */
function upright(length: number, radius: number): Manifold {
  const key = `${length} ${radius}`;
  const bar = bars.get(key) ?? uprightBar(solids, length, radius);
  bars.set(key, bar);
  return bar;
}

describe('shots in furnished rooms against solids', () => {
  it('has scenes of every verdict but none', () => {
    const verdicts = new Set(scenes.flatMap(({ report }) => report.cues.map((cue) => cue.verdict)));
    expect([...verdicts].sort()).toEqual(['clear', 'partial', 'tight']);
  });

  it.each(scenes)('where it is clear no stroke touches anything: $name', (scene) => {
    const { room, report } = scene;
    const matter = solidRoom(solids, room);
    const radius = (typeof room.ceiling === 'number' ? MARGIN : MARGIN_UNDER_SLOPE) - 0.05;
    report.cues.forEach((cue, i) => {
      if (cue.verdict !== 'clear') return;
      for (const shot of randomShots(report, 120, 71 + i)) {
        const answer = ask(scene, cue.name, shot);
        expect(answer.class).toBe('open');
        const swept = bar(scene, shot, answer.elevation ?? 90, 150 + cue.length, radius);
        expect(sharedVolume(swept, matter), `${cue.name} at ${JSON.stringify(shot)}`).toBeLessThan(NOTHING);
        swept.delete();
      }
    });
    matter.delete();
  });

  it.each(scenes)('elsewhere each shot is what its solid says: $name', (scene) => {
    const { room, report } = scene;
    const matter = solidRoom(solids, room);
    const radius = (typeof room.ceiling === 'number' ? MARGIN : MARGIN_UNDER_SLOPE) - 0.05;
    report.cues.forEach((cue, i) => {
      if (cue.verdict === 'clear') return;
      for (const shot of randomShots(report, 60, 171 + i)) {
        const answer = ask(scene, cue.name, shot);
        const where = `${cue.name} at ${JSON.stringify(shot)}: ${JSON.stringify(answer)}`;
        if (answer.elevation !== null) {
          const open = answer.elevation === answer.railElevation && answer.class !== 'cramped';
          const swing = open && answer.meets.every((name) => name === 'standing room') ? 150 : 45;
          const swept = bar(scene, shot, answer.elevation, swing + cue.length, radius);
          expect(sharedVolume(swept, matter), where).toBeLessThan(NOTHING);
          swept.delete();
          continue;
        }
        // No elevation will do: a bar that is fatter and longer than the grown footprints are far meets something at each.
        const least = answer.railElevation ?? 90;
        for (let k = 0; k <= 4; k++) {
          const elevation = least + ((20 - least) * k) / 4;
          if (elevation > 20) break;
          const fat = bar(scene, shot, elevation, 45 + cue.length, 1.5 * MARGIN, 1.5 * MARGIN);
          expect(sharedVolume(fat, matter), `${where}, ${elevation} degrees`).toBeGreaterThan(0);
          fat.delete();
        }
      }
    });
    matter.delete();
  });
});
