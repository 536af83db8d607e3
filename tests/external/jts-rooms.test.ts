import { describe, expect, it } from 'vitest';
import { assessFit, type FitReport } from '../../src/index.js';
import { FURNISHED_ROOMS, SMALL_TABLE } from '../helpers/external-furnished.js';
import { checkedRoom, plainRoom } from '../helpers/external-rooms.js';
import * as jts from '../helpers/jsts.js';
import { openRooms } from '../helpers/open-rooms.js';
import { type Corners, rectangleAt } from './slow/plane.js';
import { highestAxis, type SlowRoom, tallThings, usualCue, usualStroke } from './slow/scene.js';

/**
 * JTS, through its JavaScript port, as a judge of where a table was put: the distance of the ball positions to walls and tall things is the reported
 * clearance, the table stands on free floor, and offsets of the walls by the clearance just hold the ball positions.
 */
interface Case {
  readonly name: string;
  readonly report: FitReport;
  readonly room: SlowRoom;
  /** What a round thing may lack of clearance, mm: the library takes a polygon around it, up to 1 mm larger; here it is one in it. */
  readonly round: number;
}

const furnished = FURNISHED_ROOMS.filter(({ room }) => typeof room.ceiling === 'number').flatMap(
  ({ name, room }) =>
    [SMALL_TABLE, 'pool-7ft-bar', 'pool-9ft'].map((table): Case => {
      const report = assessFit({ room, table, cues: ['57 in'] });
      const round = (room.obstacles ?? []).some(({ footprint }) => 'diameter' in footprint) ? 1 : 0;
      return { name: `${name}, ${report.table.name}`, report, round, room: plainRoom(name, room).slow };
    }),
);

const real = openRooms
  .filter((room, i) => i % 9 === 4 || room.obst !== undefined || room.holes !== undefined)
  .map((open): Case => {
    const { input, slow, id } = checkedRoom(open, 'pool-7ft-bar');
    const report = assessFit({ room: input, table: 'pool-7ft-bar', cues: [1448] });
    return { name: id, report, round: 0, room: slow };
  });

const cases = [...furnished, ...real].filter(({ report: { verdict } }) => verdict !== 'none');

function placed({ report: { pose } }: Case, length: number, width: number): Corners {
  if (pose === null) throw new Error('Only cases with a place.');
  return rectangleAt(pose.x, pose.y, (pose.turn * Math.PI) / 180, length, width);
}

function tallOf({ report, room }: Case): readonly Corners[] {
  const { table, cues } = report;
  return tallThings(room, table, usualStroke(table.ballDiameter), usualCue(cues[0].length));
}

describe('JTS on the places that were chosen', () => {
  it('has enough of them', () => {
    expect(cases.length).toBeGreaterThan(50);
  });

  it.each(cases)('measures the clearance: $name', (asked) => {
    const { report, room } = asked;
    const { field, ballDiameter } = report.table;
    const q = jts.polygon(placed(asked, field.length - ballDiameter, field.width - ballDiameter));
    const floor = jts.polygon(room.outline);
    const walls = room.outline.map((a, i) => jts.segment(a, room.outline[(i + 1) % room.outline.length]));
    const tall = tallOf(asked).map((ring) => jts.polygon(ring));
    const least = Math.min(...[...walls, ...tall].map((thing) => jts.distance(q, thing)));
    const low =
      room.ceiling < highestAxis(report.table, usualStroke(ballDiameter), usualCue(report.cues[0].length));
    const free = !low && jts.covers(floor, q);
    const { value } = report.clearance;
    const expected = free ? least : 0;
    const rounding = 1e-6 * Math.max(1, expected);
    expect(value).toBeLessThanOrEqual(expected + rounding);
    expect(value).toBeGreaterThanOrEqual(expected - asked.round - rounding);
    if (value < 2) return;

    // Offsets: chords lie up to 0.13 mm off their arcs at 1.7 m with 64 to the quarter.
    expect(jts.covers(jts.buffer(floor, -(value - 1), 64), q)).toBe(true);
    const keptByWalls = jts.covers(jts.buffer(floor, -(value + 1 + asked.round), 64), q);
    const keptByThings = tall.every(
      (ring) => !jts.intersects(jts.buffer(ring, value + 1 + asked.round, 64), q),
    );
    expect(keptByWalls && keptByThings).toBe(false);
  });

  it.each(cases)('finds the table on free floor: $name', (asked) => {
    const { report, room } = asked;
    const { outer, bedHeight, railHeight } = report.table;
    // Touching is allowed, and rounding with it.
    const frame = jts.polygon(placed(asked, outer.length - 1e-4, outer.width - 1e-4));
    expect(jts.covers(jts.polygon(room.outline), frame)).toBe(true);
    const standing = room.things
      .filter((thing) => thing.from < bedHeight + railHeight)
      .map((thing) => thing.ring);
    for (const ring of [...standing, ...room.swings]) {
      expect(jts.intersects(jts.polygon(ring), frame)).toBe(false);
    }
  });
});
