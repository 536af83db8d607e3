import type { CheckedArrangement, CheckedPiece } from '../../src/arrangement/checked-arrangement.js';
import { readArrangement } from '../../src/arrangement/read-furnishings.js';
import type { TableSpec } from '../../src/equipment/equipment-types.js';
import { TABLES } from '../../src/equipment/tables.js';
import type { InputProblem } from '../../src/input-error.js';
import { ProblemList } from '../../src/length/read-input.js';
import { readRoom } from '../../src/room/check-room.js';
import type { Scene } from '../../src/room/scene.js';

/** A room of 7 m by 6 m with a door and a post. */
export const SCENE: Scene = sceneOf();

function sceneOf(): Scene {
  const room = {
    outline: [
      [0, 0],
      [7000, 0],
      [7000, 6000],
      [0, 6000],
    ],
    obstacles: [{ name: 'post', footprint: { center: [6500, 3000], diameter: 120 } }],
    doors: [{ name: 'hall door', hinge: [0, 1000], latch: [0, 1900], opens: 'in' }],
  };
  const scene = readRoom(room, 'room', new ProblemList(), []);
  if (scene === null) throw new Error('The room of the test is bad.');
  return scene;
}

export interface Read {
  readonly checked: CheckedArrangement | null;
  readonly problems: readonly InputProblem[];
  readonly assumptions: readonly string[];
}

/** `furnishings`, and `arrangement` if there is any, as the door reads them. */
export function read(
  furnishings: unknown,
  arrangement?: unknown,
  scene: Scene | null = SCENE,
  table: TableSpec | null = TABLES['pool-9ft'],
): Read {
  const problems = new ProblemList();
  const assumptions: string[] = [];
  const checked = readArrangement(furnishings, arrangement, scene, table, problems, assumptions);
  return { checked, problems: problems.problems, assumptions };
}

/** The checked pieces of good input. */
export function piecesOf(furnishings: readonly unknown[], table?: TableSpec | null): readonly CheckedPiece[] {
  const { checked, problems } = read(furnishings, undefined, SCENE, table);
  if (checked === null) throw new Error(problems.map((p) => `${p.path}: ${p.message}`).join('\n'));
  return checked.pieces;
}

/** The checked piece of good input. */
export function pieceOf(furnishing: unknown, table?: TableSpec | null): CheckedPiece {
  const [piece] = piecesOf([furnishing], table);
  if (piece === undefined) throw new Error('No piece.');
  return piece;
}
