import type { InputProblem } from '../../src/input-error.js';
import { ProblemList } from '../../src/length/read-input.js';
import { readRoom } from '../../src/room/check-room.js';
import type { Scene } from '../../src/room/scene.js';

export interface Read {
  readonly scene: Scene | null;
  readonly problems: readonly InputProblem[];
  readonly assumptions: readonly string[];
}

/** The room as it is read, at the path `room`. */
export function read(value: unknown): Read {
  const problems = new ProblemList();
  const assumptions: string[] = [];
  const scene = readRoom(value, 'room', problems, assumptions);
  return { scene, problems: problems.problems, assumptions };
}

/** The scene of a room that must be good. */
export function sceneOf(value: unknown): Scene {
  const { scene, problems } = read(value);
  if (scene === null) throw new Error(problems.map((p) => `${p.path} ${p.code}: ${p.message}`).join('\n'));
  return scene;
}

/** `code @ path` of each problem. */
export function codesOf(value: unknown): string[] {
  return read(value).problems.map((p) => `${p.code} @ ${p.path}`);
}

/** A room of 5 m by 4 m. */
export const OUTLINE = [
  [0, 0],
  [5000, 0],
  [5000, 4000],
  [0, 4000],
] as const;
