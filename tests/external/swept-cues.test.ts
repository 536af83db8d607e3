import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  assessFit,
  classifyShot,
  type FitReport,
  type RoomInput,
  type ShotAnswer,
  TABLES,
  type TableInput,
  type TableSpec,
} from '../../src/index.js';
import { FURNISHED_ROOMS, SMALL_TABLE } from '../helpers/external-furnished.js';
import { seeded } from '../helpers/external-random.js';
import {
  alongAxis,
  loadSolids,
  sharedVolume,
  solidRails,
  solidRoom,
  uprightBar,
  uprightCue,
} from '../helpers/external-solids.js';
import { leaves } from './slow/scene.js';

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
function randomShots({ field, ballDiameter }: TableSpec, count: number, seed: number): Shot[] {
  const next = seeded(seed);
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
      for (const shot of randomShots(report.table, 80, 71 + i)) {
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
      for (const shot of randomShots(report.table, 60, 171 + i)) {
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

describe.each(['pool-7ft-bar', 'snooker-12ft', 'carom-match'] as const)(
  'the rails of %s as a solid',
  (id) => {
    const table = TABLES[id];
    const room: RoomInput = {
      outline: [
        [-6000, -6000],
        [6000, -6000],
        [6000, 6000],
        [-6000, 6000],
      ],
    };
    const length = 1448;

    /** What the cue shares with the rails somewhere on its way back from the ball. */
    function shared(rails: Manifold, cue: Manifold, { x, y, direction }: Shot, elevation: number): number {
      const theta = radians(elevation);
      const heading = radians(direction);
      const radius = table.ballDiameter / 2;
      return Math.max(
        ...[0, 50, 100, 150].map((drawn) => {
          const t = radius + drawn * Math.cos(theta);
          const laid = alongAxis(cue, {
            x: x + t * Math.cos(heading),
            y: y + t * Math.sin(heading),
            z: table.bedHeight + radius + (0.35 * radius) / Math.cos(theta) + t * Math.tan(theta),
            heading,
            elevation: theta,
          });
          const volume = sharedVolume(laid, rails);
          laid.delete();
          return volume;
        }),
      );
    }

    /**
     * The model looks at the cue in its own upright plane, at three points of the rail. Three things it leaves out, all at the end of
     * a full backswing or nearly along a cushion: a cue that runs nearly along a cushion is thick sideways as well, which takes up to
     * half a millimetre more; where the butt end, drawn back, comes to lie between nose and crest, the slope between them is not
     * looked at, which is up to their difference in height; and a butt that ends just short of the nose is round about its end.
     */
    it('are cleared at the rail elevation, to within 1 mm or where the butt ends over the slope, and touched half a degree below it', () => {
      const { field, noseHeight, railHeight, ballDiameter } = table;
      const rails = solidRails(solids, table, 0);
      const lower = solidRails(solids, table, 1);
      const lowerSlope = solidRails(solids, table, 1 + railHeight - noseHeight);
      const cue = uprightCue(solids, length, 5, 15);
      let ending = 0;
      for (const shot of randomShots(table, 120, 11)) {
        const { x, y, direction } = shot;
        const { railElevation } = classifyShot({
          room,
          table: id,
          pose: { x: 0, y: 0 },
          cue: length,
          ball: { x, y },
          direction,
        });
        const elevation = railElevation ?? 90;
        const toEdge = (depth: number): number =>
          leaves(
            field.length / 2 + depth,
            field.width / 2 + depth,
            x,
            y,
            Math.cos(radians(direction)),
            Math.sin(radians(direction)),
          );
        const ell = ballDiameter / 2 + 150 + length;
        const slope = toEdge(0) < ell && ell < toEdge(50);
        const atNose = Math.abs(toEdge(0) - ell) < 30;
        if (slope || atNose) ending++;
        if (atNose) continue;
        expect(shared(slope ? lowerSlope : lower, cue, shot, elevation), JSON.stringify(shot)).toBeLessThan(
          NOTHING,
        );
        if (elevation > 0.5) {
          expect(shared(rails, cue, shot, elevation - 0.5), JSON.stringify(shot)).toBeGreaterThan(0);
        }
      }
      expect(ending).toBeLessThan(12);
    });
  },
);
