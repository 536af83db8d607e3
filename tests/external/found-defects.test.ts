import { describe, expect, it } from 'vitest';
import { assessFit } from '../../src/index.js';
import { checkedRoom } from '../helpers/external-rooms.js';
import { openRooms } from '../helpers/open-rooms.js';

/** Disagreements that the outside checks came across, each by itself. */

function realRoom(id: string) {
  const room = openRooms.find((known) => known.id === id);
  if (room === undefined) throw new Error(`There is no room ${id}.`);
  return checkedRoom(room, 'pool-7ft-bar').input;
}

describe('a real room with two doors that open in (ro0041)', () => {
  // The search takes an overlap of 1e-6 mm for touching; the judge measured 1.0000001e-6 mm there and found no place to stand.
  // A plain search finds places where the table stands free by more than that, such as this one.
  const room = realRoom('ro0041');

  it('lets a 7 ft table stand at a place found by a plain search', () => {
    const pose = { x: 1141.4, y: 649.6, turn: 0 };
    expect(assessFit({ room, table: 'pool-7ft-bar', cues: [1448], pose }).verdict).toBe('partial');
  });

  it('has a place for a 7 ft table', () => {
    const report = assessFit({ room, table: 'pool-7ft-bar', cues: [1448] });
    expect(report.verdict).toBe('partial');
  });
});
