import { describe, expect, it } from 'vitest';
import { codesOf, OUTLINE, read, sceneOf } from './read.js';

/** `wall 1: 1`, ... by name, whatever the order. */
function byName(value: unknown): Record<string, number> {
  const { wallNames, wallTolerances } = sceneOf(value);
  return Object.fromEntries(wallNames.map((name, i) => [name, wallTolerances?.[i] ?? Number.NaN]));
}

describe('tolerances of walls', () => {
  it('stay with their walls, whichever way the corners run', () => {
    expect(byName({ outline: OUTLINE, wallTolerances: [1, '2 mm', 3, 4] })).toEqual({
      'wall 1': 1,
      'wall 2': 2,
      'wall 3': 3,
      'wall 4': 4,
    });
    const clockwise = [OUTLINE[0], OUTLINE[3], OUTLINE[2], OUTLINE[1]];
    const { outline, wallTolerances } = sceneOf({ outline: clockwise, wallTolerances: [1, 2, 3, 4] });
    expect(outline).toEqual(OUTLINE);
    // The caller's wall 1 runs up the left side, wall 4 along the bottom.
    expect(wallTolerances).toEqual([4, 3, 2, 1]);
  });

  it('are the greatest of the walls that make one straight wall', () => {
    const corners = [
      [0, 0],
      [2000, 0],
      [3000, 0],
      [5000, 0],
      [5000, 4000],
      [0, 4000],
      [0, 1000],
    ] as const;
    const expected = { 'wall 1': 9, 'wall 4': 4, 'wall 5': 5, 'wall 6': 8 };
    expect(byName({ outline: corners, wallTolerances: [2, 9, 3, 4, 5, 6, 8] })).toEqual(expected);
    const turned = [...corners.slice(2), ...corners.slice(0, 2)];
    expect(Object.values(byName({ outline: turned, wallTolerances: [3, 4, 5, 6, 8, 2, 9] })).sort()).toEqual(
      Object.values(expected).sort(),
    );
    const backwards = [...corners].reverse();
    expect(
      Object.values(byName({ outline: backwards, wallTolerances: [6, 5, 4, 3, 9, 2, 8] })).sort(),
    ).toEqual(Object.values(expected).sort());
  });

  it('may leave out the wall without length that closes the list', () => {
    const closed = [...OUTLINE, OUTLINE[0]];
    const expected = { 'wall 1': 1, 'wall 2': 2, 'wall 3': 3, 'wall 4': 4 };
    expect(byName({ outline: closed, wallTolerances: [1, 2, 3, 4] })).toEqual(expected);
    expect(byName({ outline: closed, wallTolerances: [1, 2, 3, 4, 0] })).toEqual(expected);
  });

  it('are said not to hold for the rest', () => {
    const { assumptions } = read({ outline: OUTLINE, wallTolerances: [1, 1, 1, 1] });
    expect(assumptions).toContain('Measurements other than walls are taken to be within 10 mm (default).');
  });

  it('are refused where they are wrong, with their paths', () => {
    const codes = (wallTolerances: unknown) => codesOf({ outline: OUTLINE, wallTolerances });
    expect(codes([1, 2, 3])).toEqual(['wall-tolerances-count @ room.wallTolerances']);
    expect(codes([1, 2, 3, 4, 5])).toEqual(['wall-tolerances-count @ room.wallTolerances']);
    expect(codes([1, -2, 3, 'x'])).toEqual([
      'implausible-length @ room.wallTolerances[1]',
      expect.stringMatching(/ @ room\.wallTolerances\[3\]$/),
    ]);
    expect(codes(5)).toEqual(['not-a-list @ room.wallTolerances']);
    expect(codes([1, 2, 3, 10n])).toEqual(['not-a-length @ room.wallTolerances[3]']);
    expect(codesOf({ outline: [1n, 2n, 3n], wallTolerances: [1, 2] })).toContain(
      'wall-tolerances-count @ room.wallTolerances',
    );
  });
});
