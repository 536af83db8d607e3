import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DeliveryAdvice, DeliveryOutcome, DeliveryReport } from '../../src/delivery/delivery-report.js';
import { parseLength } from '../../src/length/parse-length.js';
import { describeDelivery, describeWay } from '../../src/report/describe-delivery.js';
import type { SentenceUnits } from '../../src/report/sentences.js';
import { columnsOf } from '../../src/report/wrap.js';
import {
  anyDelivery,
  BLOCKED,
  CORNER,
  ON_EDGE,
  sampleDelivery,
  samplePassage,
  samplePiece,
  TILTED,
  UNDECIDED,
} from './sample-delivery.js';

/** Seed of every property here, so that each run is the same. */
const SEED = 20_261_142;
const UNITS: readonly SentenceUnits[] = ['mm', 'cm', 'ftin'];
const STEP: Readonly<Record<SentenceUnits, number>> = { mm: 1, cm: 10, ftin: 12.7 };

/** The text as one line, so that a search does not trip over line breaks. */
const flat = (text: string): string => text.replace(/\s+/g, ' ');
const told = (report: DeliveryReport, units: SentenceUnits = 'cm'): string =>
  flat(describeWay(report, { units }));
const block = (report: DeliveryReport, units: SentenceUnits, title: string): readonly string[] =>
  (describeDelivery(report, units).find((one) => one.title.includes(title))?.items ?? []).map(flat);

function holds(check: (report: DeliveryReport, units: SentenceUnits) => void): void {
  fc.assert(fc.property(anyDelivery, fc.constantFrom(...UNITS), check), { seed: SEED, numRuns: 300 });
}

const OPENINGS: Readonly<Record<DeliveryOutcome, RegExp>> = {
  passes: /^Yes(, as far as the measurements can tell)?: every piece goes in, /,
  blocked: /^No(, as far as the measurements can tell)?: for .* there is no way through, /,
  undecided: /^Not shown either way: for /,
};

describe('describeWay', () => {
  it('opens with the answer', () => {
    holds((report, units) => {
      const text = told(report, units);
      if (report.pieces.every(({ passages }) => passages.length === 0)) {
        expect(text).toMatch(/^Nothing was checked: /);
        return;
      }
      expect(text).toMatch(OPENINGS[report.outcome]);
      const [opening = ''] = block(report, units, 'The way in');
      if (report.outcome !== 'undecided') {
        expect(opening.includes('as far as the measurements can tell')).toBe(!report.certain);
      }
    });
  });

  it('has no line over 80 columns, no trailing space and ends with one line break', () => {
    holds((report, units) => {
      const text = describeWay(report, { units });
      for (const line of text.split('\n')) {
        expect(columnsOf(line)).toBeLessThanOrEqual(80);
        expect(line).not.toMatch(/\s$/);
      }
      expect(text).toMatch(/[^\n]\n$/);
    });
  });

  it('never sounds like a surety or an advertisement, and prints no number that is not one', () => {
    holds((report, units) => {
      const text = told(report, units);
      expect(text).not.toMatch(/\b(safe(ly|ty)?|guarantee\w*|optimal\w*|perfect\w*|best)\b/i);
      expect(text).not.toMatch(/undefined|null|NaN|Infinity|-0\b|\b0 (degrees|kg)| {2}|\(\)/);
    });
  });

  it('names every piece, and every passage that something does not pass or not easily', () => {
    holds((report, units) => {
      const carried = block(report, units, 'what is carried');
      expect(carried).toHaveLength(report.pieces.length);
      const places = block(report, units, 'where it is tightest');
      report.pieces.forEach((piece, i) => {
        expect(carried[i]?.startsWith(piece.name)).toBe(true);
        for (const { passage, outcome, certain, spare } of piece.passages) {
          if (outcome === 'passes' && certain && (spare.atLeast ?? 0) >= 50) continue;
          expect(places.some((item) => item.startsWith(`${piece.name} (${passage}): `))).toBe(true);
        }
      });
    });
  });

  it('never turns a miss into a fit: no blocked piece has anything to spare, and none lacks nothing', () => {
    holds((report, units) => {
      const places = block(report, units, 'where it is tightest');
      for (const { name, passages } of report.pieces) {
        for (const { passage, outcome, spare } of passages) {
          const own = places.filter((item) => item.startsWith(`${name} (${passage}): `));
          const items = own.filter((item) =>
            outcome === 'blocked' ? / missing/.test(item) : !/ missing/.test(item),
          );
          if (outcome === 'passes') {
            const [item] = own;
            const said = /, (less than )?([^,]+?) to spare\./.exec(item ?? '');
            if (own.length !== 1 || said === null || spare.atLeast === null) continue;
            const amount = said[1] === undefined ? parseLength(said[2] ?? '') : 0;
            expect(amount).toBeLessThanOrEqual(spare.atLeast + 0.06);
            expect(amount).toBeGreaterThan(spare.atLeast - STEP[units] - 0.06);
            continue;
          }
          expect(items.length).toBeGreaterThan(0);
          for (const item of items) {
            expect(item).not.toMatch(/to spare|goes through/);
            // Two pieces or passages of one name: which of them is meant cannot be told from the text.
            if (own.length > 1 || outcome !== 'blocked') continue;
            const [, low, high] =
              /(?:between|at least) (.+?)(?: and (.+?))? missing/.exec(item) ??
              /, ()(?:up to )?([^,]+?) missing/.exec(item) ??
              [];
            const lacks = -(spare.atMost ?? 0);
            const needs = spare.atLeast === null ? null : -spare.atLeast;
            if (low !== undefined && low !== '') expect(parseLength(low)).toBeLessThanOrEqual(lacks + 0.06);
            if (high === undefined || needs === null) continue;
            if (high === 'something') {
              // Not even known to the nearest step, and nobody widens a passage by what is known to be enough.
              expect(needs).toBeGreaterThan(300);
              continue;
            }
            expect(parseLength(high)).toBeGreaterThanOrEqual(needs - 0.06);
            expect(parseLength(high)).toBeGreaterThanOrEqual(STEP[units] - 0.06);
            expect(parseLength(high)).toBeLessThan(Math.max(needs, 0.01) + STEP[units] + 0.06);
          }
        }
      }
    });
  });

  it('rounds what is to spare down and sizes, masses and the room for a change of hold up', () => {
    holds((report, units) => {
      const carried = block(report, units, 'what is carried');
      report.pieces.forEach(({ size, mass, name }, i) => {
        const item = carried[i] ?? '';
        const said = item.slice(name.length).match(/: (.+?) by (.+?) by (.+?), /);
        [size.length, size.width, size.thickness].forEach((side, k) => {
          expect(parseLength(said?.[k + 1] ?? '')).toBeGreaterThanOrEqual(side - 0.06);
        });
        const kilograms = Number(/about (\d+) kg/.exec(item)?.[1] ?? Number.NaN);
        if (mass === null) expect(item).toContain('weight not known');
        else expect(kilograms).toBeGreaterThanOrEqual(mass - 1e-6);
      });
      const changes = block(report, units, 'where the hold changes');
      const needs = report.pieces
        .flatMap(({ passages, holdChanges }) =>
          holdChanges.filter(({ after }) =>
            [after, after + 1].every((k) => passages[k]?.outcome === 'passes'),
          ),
        )
        .sort((p, q) => q.needsFloor - p.needsFloor);
      expect(changes).toHaveLength(Math.min(5, needs.length));
      needs.forEach(({ needsFloor, needsHeight }, i) => {
        const item = changes[Math.min(i, 4)] ?? '';
        const said = /circle of (.+?) (?:on the floor )?and (.+?) of (?:free )?height/.exec(item);
        expect(parseLength(said?.[1] ?? '')).toBeGreaterThanOrEqual(needsFloor - 0.06);
        expect(parseLength(said?.[2] ?? '')).toBeGreaterThanOrEqual(needsHeight - 0.06);
      });
      const rest = block(report, units, 'where it is tightest').at(-1) ?? '';
      const least = / goes through with at least (.+?) to spare\.$/.exec(rest)?.[1];
      if (least === undefined) return;
      const easy = report.pieces
        .flatMap(({ passages }) => passages)
        .filter(
          ({ outcome, certain, spare }) => outcome === 'passes' && certain && (spare.atLeast ?? 0) >= 50,
        )
        .map(({ spare }) => spare.atLeast ?? 0);
      expect(parseLength(least)).toBeGreaterThan(0);
      expect(easy.filter((spare) => spare < parseLength(least) - 0.06).length).toBeLessThanOrEqual(1);
    });
  });

  it('leaves no advice, caution or assumption out', () => {
    holds((report, units) => {
      const text = told(report, units);
      const different = new Set(report.advice.map(({ piece: _, ...rest }) => JSON.stringify(rest)));
      expect(block(report, units, 'what would help')).toHaveLength(different.size);
      for (const { message, source } of report.cautions) {
        expect(text).toContain(`${message} (Source: ${source}.)`);
      }
      for (const assumption of report.assumptions) expect(text).toContain(assumption);
    });
  });

  it('says proved of motions that were replayed and of bounds, and of nothing else', () => {
    holds((report, units) => {
      const bare = { ...report, cautions: [], assumptions: [], advice: [] };
      const some = report.pieces.some(({ passages }) => passages.length > 0);
      expect(/\bproved\b/.test(told(bare, units))).toBe(some && report.outcome !== 'undecided');
    });
    const unproved = sampleDelivery([samplePiece([{ ...CORNER, replayed: null }])]);
    expect(told(unproved)).not.toContain('proved');
  });

  it('sums up a way on which everything passes easily in one line besides the tightest', () => {
    const door = samplePassage();
    const hall = samplePassage({ passage: 'hall', kind: 'corridor', spare: { atLeast: 268, atMost: 268 } });
    const report = sampleDelivery([samplePiece([door, hall]), samplePiece([door, door], { name: 'leg' })]);
    expect(block(report, 'cm', 'where it is tightest')).toEqual([
      'slate (hall): goes through held on edge, 26 cm to spare.',
      'Everything else goes through with at least 41 cm to spare.',
    ]);
  });

  it('counts what would make too long a text', () => {
    const route = Array.from({ length: 27 }, (_, i) => ({ ...BLOCKED, passage: `corner ${i + 1}` }));
    const items = block(sampleDelivery([samplePiece([samplePassage(), ...route])]), 'cm', 'tightest');
    expect(items).toHaveLength(22);
    expect(items.slice(-2)).toEqual([
      '7 more cases are blocked, open or tight as well.',
      'slate (front door) goes through with at least 41 cm to spare.',
    ]);
  });

  it('tells how a piece is held from passage to passage', () => {
    const corner = { ...CORNER, spare: { atLeast: 43.7, atMost: 43.8 } };
    const report = sampleDelivery([
      samplePiece([samplePassage(), samplePassage({ passage: 'hall', kind: 'corridor' }), corner]),
    ]);
    expect(told(report)).toContain(
      'Held, through front door and hall: on edge; through corner at the stairs: on edge, tilted by about 33 degrees.',
    );
    const close = samplePassage({ spare: { atLeast: 20, atMost: 20.1 } });
    expect(told(sampleDelivery([samplePiece([close])]))).toContain('Goes in. Held on edge.');
    // Where nothing is close, carriers need not be told.
    expect(told(sampleDelivery([samplePiece([samplePassage()])]))).not.toContain('Held on edge.');
  });

  it('says what the bound of a blocked piece holds for', () => {
    const report = (anyMotion: boolean): string =>
      told(sampleDelivery([samplePiece([{ ...BLOCKED, anyMotion }])]));
    expect(report(true)).toMatch(
      /^No: for slate \(corner at the stairs\) there is no way through, however it is held or turned, 4 cm missing in every clear measure\./,
    );
    expect(report(true)).toContain('proved by a bound that takes in every motion whatever');
    expect(report(false)).toMatch(/in any of the ways in which it may be held, 4 cm missing/);
    expect(report(false)).toContain('every motion in those ways of holding it');
  });

  it('sends back to the tape by name where the answer is close', () => {
    const close = { ...CORNER, certain: false, spare: { atLeast: 4, atMost: 4.1 } };
    const report = sampleDelivery([samplePiece([samplePassage(), close])]);
    expect(told(report)).toMatch(/^Yes, as far as the measurements can tell: /);
    expect(told(report)).toContain('Measure corner at the stairs again.');
    expect(told(report)).toContain('less than 1 cm to spare');
    expect(told(report)).toContain('For the measurements exactly as given this is proved');
  });

  it('says of an undecided piece what it would pass with', () => {
    const report = sampleDelivery([samplePiece([UNDECIDED])]);
    expect(told(report)).toMatch(
      /neither a way through was found nor was every way ruled out; with 3 cm more in every clear measure it would go through\./,
    );
    const unknown = { ...UNDECIDED, spare: { atLeast: null, atMost: null } };
    expect(told(sampleDelivery([samplePiece([unknown])]))).not.toContain('with 3 cm more');
  });

  it('says that the bare piece would go through', () => {
    const text = told(sampleDelivery([samplePiece([{ ...BLOCKED, withoutHandRoom: true }])]));
    expect(text).toContain('The bare piece would go through, with no room left for hands.');
  });

  it('tells the tightest moment of each kind of passage as a carrier sees it', () => {
    const moment = { x: -10, y: -10, z: 500, heading: 41, tilt: 0, roll: 0 };
    const at = (parts: Parameters<typeof samplePassage>[0]): string =>
      told(sampleDelivery([samplePiece([samplePassage({ narrowest: moment, ...parts })])]));
    expect(at({ kind: 'corner' })).toContain('at about 41 degrees to the first corridor');
    expect(at({ kind: 'corner', narrowest: { ...moment, heading: 221 } })).toContain('about 41 degrees');
    // Held crosswise its longer side in plan lies across its heading.
    expect(at({ kind: 'corner', hold: { ...ON_EDGE, planLength: 90, planWidth: 1500 } })).toContain(
      'about 49 degrees to the first corridor',
    );
    expect(at({ kind: 'corner', narrowest: { ...moment, heading: 180 } })).toContain(
      'with its longer side along the first corridor',
    );
    expect(at({ kind: 'doorway' })).toContain(
      'when its middle is still before the doorway, with its longer side in plan at about 49 degrees to the way straight through',
    );
    expect(at({ kind: 'opening', narrowest: { ...moment, y: 1, heading: 90, roll: 12 } })).toContain(
      'when its middle has reached the opening, with its longer side along the way straight through, rolled by about 12 degrees about its length',
    );
    expect(at({ kind: 'stair', narrowest: { ...moment, tilt: 38.2 } })).toContain(
      'Tightest at the foot of the flight, its upper end raised by about 38 degrees.',
    );
    expect(at({ kind: 'winder' })).toContain('about 49 degrees to the flight below');
    expect(at({ kind: 'corridor' })).not.toContain('Tightest');
    expect(at({ kind: 'corner', hold: null })).not.toContain('Tightest');
  });

  it('says where the hold changes and what room is enough for it', () => {
    const change = { after: 0, from: ON_EDGE, to: TILTED, needsHeight: 1701.2, needsFloor: 1502 };
    const way = [samplePassage(), CORNER];
    expect(told(sampleDelivery([samplePiece(way, { holdChanges: [change] })]))).toContain(
      'slate, between front door and corner at the stairs: from on edge to on edge, tilted by about 33 degrees. A free circle of 151 cm on the floor and 171 cm of free height are enough.',
    );
    // Towards a passage that it does not pass there is nothing to change to.
    const stopped = samplePiece([samplePassage(), BLOCKED], { holdChanges: [change] });
    expect(told(sampleDelivery([stopped]))).not.toContain('free circle');
  });

  it('words each kind of advice, once for all pieces that it helps', () => {
    const way = samplePiece([samplePassage({ ...BLOCKED, passage: 'front door' }), BLOCKED]);
    const said = (...advice: DeliveryAdvice[]): readonly string[] =>
      block(sampleDelivery([way], { advice }), 'cm', 'what would help');
    expect(
      said(
        { kind: 'take-door-off', passage: 0, piece: 'slate', amount: 44, outcome: 'passes' },
        { kind: 'take-door-off', passage: 0, piece: 'frame', amount: 44, outcome: 'passes' },
      ),
    ).toEqual([
      'Take the door of front door off its hinges: that gains 4.4 cm of clear width. That lets slate and frame through.',
    ]);
    expect(
      said(
        { kind: 'allow-hold', passage: 1, piece: 'slate', hold: 'on-end', outcome: 'passes' },
        { kind: 'allow-hold', passage: 1, piece: 'slate', tilt: 58, outcome: 'passes' },
        { kind: 'less-hand-room', passage: 1, piece: 'slate', amount: 18, outcome: 'passes' },
        { kind: 'less-hand-room', passage: 1, piece: 'slate', amount: 0, outcome: 'passes' },
        { kind: 'other-pieces', pieces: 'five-piece', outcome: 'passes' },
        { kind: 'widen', passage: 1, piece: 'slate', amount: 36.1, outcome: 'passes' },
        { kind: 'other-way', passage: 1, outcome: 'blocked' },
        { kind: 'measure-again', passage: 0, piece: 'slate', outcome: 'passes' },
        { kind: 'measure-again', passage: 0, piece: 'slate', outcome: 'blocked' },
      ),
    ).toEqual([
      'If the maker agrees, have slate stood on end in corner at the stairs. That lets slate through.',
      'If the maker agrees, have slate tilted by up to 58 degrees in corner at the stairs. That lets slate through.',
      'Make do with 1.8 cm for hands and packing on every side in corner at the stairs. That lets slate through.',
      'Leave no room for hands or packing in corner at the stairs, if it can be held at all so. That lets slate through.',
      'Ask for the table in its five-piece set. Every piece of it goes in.',
      'Every clear measure of corner at the stairs would have to be 4 cm larger. That lets slate through.',
      'Look for a way round corner at the stairs: nothing that was tried takes everything through it. Elsewhere on the way something is blocked as well.',
      'Measure front door again: readings that are off by their tolerance could turn the answer into a yes for slate.',
      'Measure front door again: readings that are off by their tolerance could turn the answer into a no for slate.',
    ]);
  });

  it('lets no name of the input move the cursor or reorder the line', () => {
    const name = 'a\u001b[2Jb\r\nc\u202ed\u0007';
    const text = describeWay(
      sampleDelivery([samplePiece([samplePassage({ passage: name })], { name })], {
        pieceSet: name,
        advice: [{ kind: 'other-way', passage: 0, piece: name, outcome: 'passes' }],
      }),
    );
    for (const letter of text) {
      const code = letter.codePointAt(0) ?? 0;
      expect(code === 10 || (code >= 32 && code !== 127 && (code < 0x80 || code > 0x9f))).toBe(true);
      expect(code).not.toBe(0x202e);
    }
  });

  it('wraps names without a space and names in wide letters', () => {
    for (const name of ['x'.repeat(200), '卓'.repeat(200), 'e\u0301'.repeat(200)]) {
      const report = sampleDelivery([samplePiece([samplePassage({ passage: name })], { name })]);
      for (const line of describeWay(report).split('\n')) expect(columnsOf(line)).toBeLessThanOrEqual(80);
    }
  });
});
