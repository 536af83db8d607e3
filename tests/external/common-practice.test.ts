import { describe, expect, it } from 'vitest';
import {
  assessFit,
  classifyShot,
  formatLength,
  parseLength,
  type RoomInput,
  type StrokeInput,
  type TableInput,
} from '../../src/index.js';
import { emptyRoom } from '../helpers/external-rooms.js';

/** What people in the trade say, common practice, no source: put to the model and either upheld or shown with its conditions. */

/** 6 x 3 ft to play on, with rails of 12 cm; heights, ball and cue by default. */
const SIX_FOOT: TableInput = {
  field: { length: '183 cm', width: '91 cm' },
  outer: { length: '207 cm', width: '115 cm' },
};
const RADIUS = 57.15 / 2;

describe('short cues', () => {
  it.each([
    ['57 in', 145],
    ['48 in', 122],
    ['36 in', 91],
  ])('%s are %i cm to the nearest centimetre', (inches, centimetres) => {
    expect(Math.round(parseLength(inches) / 10)).toBe(centimetres);
    expect(formatLength(parseLength(inches), 'cm', { decimals: 0 })).toBe(`${centimetres} cm`);
  });
});

describe('a 183 x 91 cm field and a 122 cm cue', () => {
  const noStroke = { backswing: 0, shortBackswing: 0, margin: 0 };
  const ask = (length: string, width: string) =>
    assessFit({ room: emptyRoom(length, width), table: SIX_FOOT, cues: ['122 cm'], stroke: noStroke });

  it('want 427 x 335 cm without backswing or margin', () => {
    const { spans } = ask('5 m', '4 m');
    expect(spans.along.needed).toBeCloseTo(4270, 9);
    expect(spans.across.needed).toBeCloseTo(3350, 9);
  });

  it('go into 450 x 350 cm, for sure', () => {
    const report = ask('450 cm', '350 cm');
    expect(report.verdict).toBe('clear');
    expect(report.certain).toBe(true);
    expect(report.cues[0].proof).toBe('distance');
    // The narrower side governs: (350 - 91) / 2 cm.
    expect(report.clearance.longestCue).toBeCloseTo(1295, 6);
  });

  it('go into 427 x 335 cm to the hair, which a tape cannot tell', () => {
    const report = ask('427 cm', '335 cm');
    expect(report.verdict).toBe('clear');
    expect(report.certain).toBe(false);
  });

  it('do not go into 426 x 334 cm by distance', () => {
    const report = ask('426 cm', '334 cm');
    expect(report.cues[0].proof).not.toBe('distance');
    expect(report.clearance.longestCueUpperBound).toBeLessThan(1220);
    expect(report.spans.along.spare).toBeCloseTo(-10, 9);
    expect(report.spans.across.spare).toBeCloseTo(-10, 9);
  });

  it('want 34 cm more each way with the default stroke: 15 cm of backswing and 2 cm of margin at each end', () => {
    const { spans } = assessFit({ room: emptyRoom('5 m', '4 m'), table: SIX_FOOT, cues: ['122 cm'] });
    expect(spans.along.needed).toBeCloseTo(4270 + 340, 9);
    expect(spans.across.needed).toBeCloseTo(3350 + 340, 9);
  });
});

describe('a cushion 125 cm off the wall, ball frozen on it, played square off it', () => {
  /** The head cushion's nose is 125 cm from the left wall; all other walls are far. */
  const room = emptyRoom('8 m', '6 m');
  const pose = { x: 1250 + 1830 / 2, y: 3000 };
  const frozen = (cue: string, stroke: Partial<StrokeInput> = {}) =>
    classifyShot({
      room,
      table: SIX_FOOT,
      pose,
      cue,
      stroke,
      ball: { x: -1830 / 2 + RADIUS, y: 0 },
      direction: 180,
    });

  it('a 145 cm cue does not go', () => {
    const shot = frozen('145 cm');
    expect(shot.class).toBe('blocked');
    expect(shot.elevation).toBeNull();
    expect(shot.meets).toEqual(['wall 4']);
    // Not for want of floor.
    expect(shot.canStand).toBe(true);
  });

  it('a 122 cm cue goes with a short backswing and the cue raised', () => {
    const shot = frozen('122 cm');
    expect(shot.class).toBe('cramped');
    expect(shot.meets).toEqual(['wall 4']);
    // ell cos(theta) = room to the grown wall: acos((1250 + R - 20) / (R + 45 + 1220)), by hand.
    const least = (Math.acos((1250 + RADIUS - 20) / (RADIUS + 45 + 1220)) * 180) / Math.PI;
    expect(least).toBeGreaterThan(13);
    expect(shot.elevation).toBeCloseTo(least, 9);
    expect(shot.elevation).toBeGreaterThan(shot.railElevation ?? 90);
  });

  it.each([40, 45, 50])(
    'so does it with %i mm of backswing, each as its own full stroke barred by the wall',
    (swing) => {
      // Asked as the full backswing the same stroke is not open, since theta_rail alone does not bring the butt off the wall.
      const shot = frozen('122 cm', { backswing: swing, shortBackswing: swing });
      expect(shot.class).toBe('cramped');
      const least = (Math.acos((1250 + RADIUS - 20) / (RADIUS + swing + 1220)) * 180) / Math.PI;
      expect(shot.elevation).toBeCloseTo(least, 9);
      expect(least).toBeLessThan(20);
    },
  );

  it('takes at most 90 mm of backswing at 20 degrees, and none at all level', () => {
    expect(frozen('122 cm', { backswing: 90, shortBackswing: 90 }).class).toBe('cramped');
    expect(frozen('122 cm', { backswing: 91, shortBackswing: 91 }).class).toBe('blocked');
    // Open strokes are played at theta_rail: 125 - 122 cm leave 1 cm besides the margin, and the raised cue a little more.
    const open = frozen('122 cm', { backswing: 10, shortBackswing: 10 });
    expect(open.class).toBe('open');
    expect(open.elevation).toBe(open.railElevation);
    expect(open.elevation).toBeGreaterThan(0);
  });

  it('leaves a ball in the middle of the table alone', () => {
    const shot = classifyShot({
      room,
      table: SIX_FOOT,
      pose,
      cue: '145 cm',
      stroke: {},
      ball: { x: 0, y: 0 },
      direction: 180,
    });
    expect(shot.class).toBe('open');
  });
});

describe('furniture no higher than the rail', () => {
  const table: TableInput = { ...SIX_FOOT, bedHeight: 790, railHeight: 42 };
  const pose = { x: 4000, y: 3000 };
  const railTop = 832;
  /** A low thing along the whole long side at sideA, `away` from the rail and `deep`. */
  const withThing = (to: number, away: number, deep: number): RoomInput => ({
    ...emptyRoom('8 m', '6 m'),
    obstacles: [
      {
        name: 'bench',
        footprint: { center: [4000, 3000 + 575 + away + deep / 2], length: 2070, width: deep },
        to,
      },
    ],
  });
  const directions = Array.from({ length: 24 }, (_, i) => i * 15);
  const balls = [-880, -300, 0, 450, 880].flatMap((x) => [-420, -150, 0, 200, 420].map((y) => ({ x, y })));

  /** Every one of the shots with the thing and without. */
  function compare(room: RoomInput, stroke: Partial<StrokeInput>) {
    return balls.flatMap((ball) =>
      directions.map((direction) => {
        const asked = { table, pose, cue: '145 cm', stroke, ball, direction };
        return {
          ball,
          direction,
          bare: classifyShot({ ...asked, room: emptyRoom('8 m', '6 m') }),
          beside: classifyShot({ ...asked, room }),
        };
      }),
    );
  }

  it('is cued over where there is room to stand beside it: the same classes when it is lower by the margin', () => {
    const shots = compare(withThing(railTop - 20, 600, 300), {});
    const standing = shots.filter((shot) => shot.beside.canStand);
    // Some shots lose their floor, most keep it.
    expect(standing.length).toBeGreaterThan(shots.length / 2);
    for (const { bare, beside } of standing) {
      expect(beside.class).toBe(bare.class);
      expect(beside.elevation).toBe(bare.elevation);
    }
  });

  it('as high as the rail itself it is cued over by the hair without a margin', () => {
    for (const { bare, beside } of compare(withThing(railTop, 600, 300), { margin: 0 })) {
      if (beside.canStand) expect(beside.class).toBe(bare.class);
    }
  });

  it('as high as the rail itself, with the margin, it asks for no more than the cue raised a little', () => {
    // By hand, for a ball 1 m from that rim: the rail asks for 0.87 degrees, passing over at 1.44 m for 0.93.
    const shots = compare(withThing(railTop, 470, 300), {}).filter((shot) => shot.beside.canStand);
    expect(shots.some((shot) => shot.beside.class === 'cramped')).toBe(true);
    for (const { bare, beside } of shots) {
      if (bare.class !== 'blocked') expect(beside.class).not.toBe('blocked');
      expect((beside.elevation ?? 90) - (bare.elevation ?? 0)).toBeLessThan(5);
    }
  });

  it('takes only standing room: a low bench hard against the rail does', () => {
    // 50 cm deep and 45 cm high. From the far side the cue reaches 72 cm over the rail; the player would stand on the bench.
    const asked = { table, pose, cue: '145 cm', stroke: {}, ball: { x: 0, y: -400 }, direction: 90 };
    expect(classifyShot({ ...asked, room: emptyRoom('8 m', '6 m') }).class).toBe('open');
    const shot = classifyShot({ ...asked, room: withThing(450, 0, 500) });
    expect(shot.class).toBe('blocked');
    expect(shot.canStand).toBe(false);
    expect(shot.meets).toEqual(['standing room']);
    expect(shot.elevation).toBe(shot.railElevation);
    // A stool's width of it, 20 cm, is stood behind.
    expect(classifyShot({ ...asked, room: withThing(450, 0, 200) }).class).toBe('open');
  });

  it('leaves the clearance as it is', () => {
    const ask = (room: RoomInput) => assessFit({ room, table, cues: ['145 cm'], pose });
    const bare = ask(emptyRoom('8 m', '6 m'));
    expect(ask(withThing(railTop - 20, 0, 300)).clearance).toEqual(bare.clearance);
    expect(ask(withThing(railTop + 1, 0, 300)).clearance.value).toBeLessThan(bare.clearance.value);
  });
});
