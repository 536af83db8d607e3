import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findJsonProblem } from '../../src/cli/json-problem.js';

const parses = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe('findJsonProblem', () => {
  it('agrees with JSON.parse on good texts and on texts with a letter changed', () => {
    const letters = [...'{}[]",:\\/tfn01-.eE+ \n\t\u0001\'#x'];
    fc.assert(
      fc.property(
        fc.json({ maxDepth: 4 }),
        fc.nat(),
        fc.constantFrom(...letters),
        fc.constantFrom('keep', 'insert', 'delete', 'replace'),
        (text, spot, letter, change) => {
          const at = spot % (text.length + 1);
          const changed =
            change === 'keep'
              ? text
              : text.slice(0, at) +
                (change === 'delete' ? '' : letter) +
                text.slice(change === 'insert' ? at : at + 1);
          const problem = findJsonProblem(changed);
          // The one thing refused that JSON.parse takes.
          if (problem !== null && /stands twice/.test(problem.message)) return;
          expect(problem === null).toBe(parses(changed));
        },
      ),
      { seed: 20_261_127, numRuns: 3000 },
    );
  });

  it.each([
    ['', 1, 1, /nothing/],
    ['{\n  "room": {,}\n}', 2, 12, /name is missing/],
    ['{"a": 1,}', 1, 9, /comma before this } is one too many/],
    ['[1, 2,\n]', 2, 1, /comma before this ] is one too many/],
    ['{"a": 1\n "b": 2}', 2, 2, /double quote|comma or } is missing/],
    ['{"a": [1 2]}', 1, 10, /comma or \] is missing before "2"/],
    ['{"a" 1}', 1, 6, /colon is missing/],
    ['{"a": "x}', 1, 7, /no closing double quote/],
    ['{"a": 57 in}', 1, 10, /comma or } is missing before "in"/],
    ['{"a": 57in}', 1, 7, /"57in" in double quotes/],
    ['{"a": "11\' 8 1/2""}', 1, 18, /inch mark/],
    ["{'a': 1}", 1, 2, /name in double quotes/],
    ['{"a": .5}', 1, 7, /not a number/],
    ['{"a": 01}', 1, 7, /not a number/],
    ['{"a": NaN}', 1, 7, /value is missing where "NaN"/],
    ['{"a": 1} // done', 1, 10, /complete before this/],
    ['{"a": /* x */ 1}', 1, 7, /no comments/],
    ['{"a": {"b": [1]', 1, 16, /\{ in line 1, column 7 has no \}/],
    ['{"a": 1, "b": 2, "a": 3}', 1, 18, /"a" stands twice/],
    ['{"a": "\\q"}', 1, 8, /backslash/],
    ['"\t"', 1, 2, /control character/],
    ['{}\r\n\r\n{}', 3, 1, /complete before this/],
  ] as const)('finds the place in %j', (text, line, column, message) => {
    const problem = findJsonProblem(text);
    expect(problem?.message).toMatch(message);
    expect(problem).toMatchObject({ line, column });
  });

  it('neither overflows nor hangs on deep nesting', () => {
    expect(findJsonProblem('['.repeat(100_000))?.message).toMatch(/nested deeper/);
    expect(findJsonProblem('{"a":'.repeat(100_000))?.message).toMatch(/nested deeper/);
  });
});
