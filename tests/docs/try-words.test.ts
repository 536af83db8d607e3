import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sentenceBlocks } from '../../docs/try/answer/sentence-blocks.js';
import { pathText } from '../../docs/try/document/json.js';
import { placeProblems } from '../../docs/try/document/place-problems.js';
import { START } from '../../docs/try/document/start.js';
import { allParts, formShape } from '../../docs/try/form/form-shape.js';
import { ENGLISH } from '../../docs/try/strings.js';
import { assessFit } from '../../src/assess-fit.js';
import { checkFitInput } from '../../src/check-fit-input.js';
import { describeFit } from '../../src/report/describe-fit.js';
import { CATALOGUES } from './try-inputs.js';

const garden = JSON.parse(
  readFileSync(new URL('../../docs/examples/garden-room.json', import.meta.url), 'utf8'),
);

describe('the sentences in blocks', () => {
  const text = describeFit(assessFit({ ...garden, detail: 'shots' }));
  const blocks = sentenceBlocks(text);

  it('hold every word of the text, in order', () => {
    const words = (part: string): string[] => part.split(/\s+/).filter((word) => word !== '' && word !== '-');
    const said = blocks.flatMap(({ title, paragraphs, figures, items }) =>
      words([title ?? '', ...paragraphs, ...figures, ...items].join(' ')),
    );
    expect(said).toEqual(words(text));
  });

  it('are an answer without a title, then titled lists', () => {
    const [answer, ...rest] = blocks;
    expect(answer?.title).toBeNull();
    expect(answer?.paragraphs).toHaveLength(1);
    expect(rest.map(({ title }) => title)).toContain('Where it stands');
    const map = rest.find(({ figures }) => figures.length > 0);
    expect(map?.figures).toHaveLength(12);
    expect(new Set(map?.figures.map((line) => line.length))).toEqual(new Set([24]));
  });
});

describe('problems at their places', () => {
  const placesOf = (input: typeof START) =>
    allParts(formShape(input, ENGLISH, CATALOGUES)).flatMap((part) => {
      if (part.part === 'group') return [];
      const own = { path: pathText(part.path), control: part.part !== 'list' };
      const rows =
        part.part === 'list' ? part.rows.map(({ path }) => ({ path: pathText(path), control: false })) : [];
      return [own, ...rows];
    });

  /** Where a problem with this path is told. */
  const told = (input: typeof START, path: string): string | undefined => {
    const places = placesOf(input);
    const [placed] = placeProblems([{ path, message: '' }], places);
    return places[placed?.place ?? -1]?.path;
  };

  it('are told at the very control, else at the row or list around, else at the first control within', () => {
    expect(told(START, 'room.outline[2][1]')).toBe('room.outline[2][1]');
    expect(told(START, 'room.outline[2]')).toBe('room.outline[2]');
    expect(told(START, 'room.outline')).toBe('room.outline');
    expect(told(START, 'room.obstacles[0].footprint')).toBe('room.obstacles[0].footprint');
    expect(told(START, 'room.obstacles[0].name.nothing')).toBe('room.obstacles[0].name');
    expect(told(START, 'cues[1]')).toBe('cues[1]');
    expect(told(START, 'table')).toBe('table');
    expect(told(START, 'room.wallTolerances[3]')).toBe('room');
    expect(told(START, 'pose')).toBe('pose.x');
    expect(told(START, 'stroke')).toBe('stroke.backswing');
    expect(told(START, 'delivery.route[0]')).toBeUndefined();
    expect(told(START, '')).toBeUndefined();
  });

  it('finds a place for everything that can be wrong with what the form shows', () => {
    const broken = {
      room: {
        outline: [['x', 'y'], ['1 m', ''], 'corner', ['2 m', '2 m']],
        ceiling: [[['x', '', '']]],
        obstacles: [
          { name: '', footprint: { center: ['', ''], length: 'q', width: '1 m', turn: 'a' }, to: '!' },
          7,
        ],
        doors: [{ hinge: ['', '1 m'], latch: [], opens: 'up' }],
        tolerance: 'none',
      },
      table: 'billiards',
      cues: ['', { length: 'long' }],
      stroke: { backswing: 'far' },
      furnishings: [
        { kind: 'harp' },
        { footprint: { length: '', width: '1 m' }, height: 'x', pose: { x: '1 m' } },
      ],
    };
    const problems = checkFitInput(broken);
    expect(problems.length).toBeGreaterThan(15);
    const lost = placeProblems(problems, placesOf(broken)).filter(({ place }) => place < 0);
    expect(lost.map(({ problem }) => problem)).toEqual([]);
  });
});
