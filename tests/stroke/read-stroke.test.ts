import { describe, expect, it } from 'vitest';
import { DEFAULTS } from '../../src/equipment/defaults.js';
import type { InputProblem } from '../../src/input-error.js';
import { ProblemList } from '../../src/length/read-input.js';
import { readStroke } from '../../src/stroke/read-stroke.js';
import type { StrokeSettings } from '../../src/stroke/stroke-settings.js';

const R = 57.15 / 2;

function read(value: unknown): {
  stroke: StrokeSettings | null;
  problems: readonly InputProblem[];
  assumptions: string[];
} {
  const list = new ProblemList();
  const assumptions: string[] = [];
  const stroke = readStroke(value, 'stroke', R, list, assumptions);
  expect(stroke === null).toBe(list.problems.length > 0);
  return { stroke, problems: list.problems, assumptions };
}

describe('the settings of a stroke', () => {
  it('are the defaults, each said', () => {
    for (const nothing of [undefined, {}, { margin: undefined }]) {
      const { stroke, assumptions } = read(nothing);
      expect(stroke).toEqual({
        backswing: DEFAULTS.stroke.backswing,
        shortBackswing: DEFAULTS.stroke.shortBackswing,
        margin: DEFAULTS.stroke.margin,
        tipOffset: 0.35 * R,
        maxElevation: (DEFAULTS.stroke.maxElevation * Math.PI) / 180,
      });
      expect(assumptions).toEqual([
        'Backswing 150 mm (default).',
        'Short backswing 45 mm (default).',
        'Margin around the cue 20 mm (default).',
        "Tip at most 10 mm above the ball's centre (default).",
        'Cue raised at most 20 degrees (default).',
      ]);
    }
  });

  it('are read in mm and radians, and then nothing is assumed', () => {
    const { stroke, assumptions } = read({
      backswing: '8 in',
      shortBackswing: '5 cm',
      margin: 0,
      tipOffset: '1 cm',
      maxElevation: 30,
    });
    expect(stroke).toEqual({
      backswing: 203.2,
      shortBackswing: 50,
      margin: 0,
      tipOffset: 10,
      maxElevation: Math.PI / 6,
    });
    expect(assumptions).toEqual([]);
  });

  it('keep the default short backswing within the full one', () => {
    const { stroke, assumptions } = read({ backswing: 30 });
    expect(stroke?.shortBackswing).toBe(30);
    expect(assumptions).toContain('Short backswing 30 mm (default).');
  });

  it('reach their limits', () => {
    expect(
      read({ backswing: 1000, shortBackswing: 1000, margin: 300, tipOffset: R / 2, maxElevation: 60 })
        .problems,
    ).toEqual([]);
    expect(
      read({ backswing: 0, shortBackswing: 0, margin: 0, tipOffset: 0, maxElevation: 0.1 }).problems,
    ).toEqual([]);
  });

  it.each<[unknown, string, string, RegExp]>([
    ['gently', 'stroke', 'not-an-object', /"backswing"/],
    [null, 'stroke', 'not-an-object', /null/],
    [{ backSwing: 100 }, 'stroke.backSwing', 'unknown-property', /"backswing"/],
    [{ backswing: 1001 }, 'stroke.backswing', 'too-large', /at most 1000 mm/],
    [{ backswing: -1, shortBackswing: 0 }, 'stroke.backswing', 'too-small', /at least 0 mm/],
    [{ shortBackswing: 151 }, 'stroke.shortBackswing', 'short-backswing-too-long', /150 mm/],
    [{ shortBackswing: '6' }, 'stroke.shortBackswing', 'no-unit', /short backswing/],
    [{ margin: 301 }, 'stroke.margin', 'too-large', /margin/],
    [{ margin: '-1 mm' }, 'stroke.margin', 'too-small', /margin/],
    // The miscue limit, about half the radius: from memory.
    [{ tipOffset: R / 2 + 0.01 }, 'stroke.tipOffset', 'tip-offset-too-large', /14\.29 mm/],
    [{ tipOffset: -1 }, 'stroke.tipOffset', 'too-small', /tip offset/],
    [{ maxElevation: 0 }, 'stroke.maxElevation', 'too-small', /more than 0/],
    [{ maxElevation: -5 }, 'stroke.maxElevation', 'too-small', /more than 0/],
    [{ maxElevation: 61 }, 'stroke.maxElevation', 'too-large', /at most 60 degrees/],
    [{ maxElevation: '20' }, 'stroke.maxElevation', 'not-a-number', /greatest elevation/],
  ])('%j is refused', (value, path, code, words) => {
    const { problems, assumptions } = read(value);
    expect(problems).toEqual([{ path, code, message: expect.stringMatching(words) }]);
    expect(assumptions).toEqual([]);
  });
});
