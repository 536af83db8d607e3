import { describe, expect, it } from 'vitest';
import { frameOf, layoutFromFrame, questionInFrame } from '../../src/arrangement/canonical-frame.js';
import { fitsRoom, roomRules } from '../../src/arrangement/layout-rules.js';
import { placePiece } from '../../src/arrangement/piece-place.js';
import { seeded } from '../helpers/external-random.js';
import { mirroredRoom, movedRoom, questionOf, somePieces, someRoom } from './arrange-cases.js';

/** Steps to which coordinates are rounded in a frame, mm. */
const STEP = 1e-5;

const cases = Array.from({ length: 12 }, (_, i) => {
  const random = seeded((i + 1) * 15_485_863);
  const room = someRoom(random, [3600, 3200], [7500, 5600]);
  return { name: `room ${i + 1}`, room, furnishings: somePieces(random, 3), random };
});

describe('the frame that a room and its mirror image share', () => {
  it.each(cases)('makes one and the same room of all views of it: $name', ({ room, furnishings }) => {
    const framed = (view: typeof room) => {
      const question = questionOf({ room: view, furnishings });
      return questionInFrame(question, frameOf(question));
    };
    const { scene } = framed(room);
    const views = [
      mirroredRoom(room),
      movedRoom(room, 1, [300, -20]),
      movedRoom(mirroredRoom(room), 2, [0, 7]),
    ];
    for (const view of views) {
      const other = framed(view).scene;
      expect(other.outline).toEqual(scene.outline);
      expect(other.doors.map(({ hinge, latch }) => [hinge, latch])).toEqual(
        scene.doors.map(({ hinge, latch }) => [hinge, latch]),
      );
      expect(other.obstacles.map(({ ring }) => ring)).toEqual(scene.obstacles.map(({ ring }) => ring));
    }
  });

  it.each(cases)(
    'brings poses back to where they were, whether the room is mirrored or not: $name',
    (asked) => {
      const { room, furnishings, random } = asked;
      for (const view of [room, mirroredRoom(room), movedRoom(room, 3, [12.5, 900])]) {
        const pose = () => ({ x: random() * 4000, y: random() * 3000, angle: random() * 3 });
        const start = { tablePose: pose(), poses: furnishings.map(pose) };
        const question = { ...questionOf({ room: view, furnishings }), start };
        const frame = frameOf(question);
        const inside = questionInFrame(question, frame).start;
        if (inside === undefined) throw new Error('There is a start.');
        const back = layoutFromFrame(question, frame, inside);
        [back.tablePose, ...back.poses].forEach((p, i) => {
          const old = [start.tablePose, ...start.poses][i];
          expect(Math.hypot((p?.x ?? 0) - old.x, (p?.y ?? 0) - old.y)).toBeLessThan(2 * STEP);
          expect(Math.abs((p?.angle ?? 0) - old.angle)).toBeLessThan(1e-9);
        });
      }
    },
  );

  it.each(cases)('keeps what the room has to say about pieces: $name', ({ room, furnishings, random }) => {
    const poses = furnishings.map(() => ({
      x: random() * 5000,
      y: random() * 4000,
      angle: (Math.floor(random() * 4) * Math.PI) / 2,
    }));
    const question = { ...questionOf({ room, furnishings }), start: { tablePose: null, poses } };
    const framed = questionInFrame(question, frameOf(question));
    const says = ({ scene, arrangement, start }: typeof framed): readonly boolean[] =>
      arrangement.pieces.map((piece, i) => {
        const pose = start?.poses[i] ?? null;
        return pose !== null && fitsRoom(roomRules(scene, arrangement.way), placePiece(piece, pose));
      });
    expect(says(framed)).toEqual(says(question));
  });
});
