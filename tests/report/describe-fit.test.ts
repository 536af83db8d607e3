import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../../src/length/parse-length.js';
import { describeFit } from '../../src/report/describe-fit.js';
import type { FitReport, Verdict } from '../../src/report/fit-report.js';
import type { SentenceUnits } from '../../src/report/sentences.js';
import { columnsOf } from '../../src/report/wrap.js';
import { BLOCKED, sampleDelivery, samplePassage, samplePiece, UNDECIDED } from './sample-delivery.js';
import { anyReport, SAMPLE_CUE, SAMPLE_TABLE, sampleReport } from './sample-report.js';

/** Seed of every property here, so that each run is the same. */
const SEED = 20_261_125;
const UNITS: readonly SentenceUnits[] = ['mm', 'cm', 'ftin'];
const STEP: Readonly<Record<SentenceUnits, number>> = { mm: 1, cm: 10, ftin: 12.7 };

/** The text as one line, so that a search does not trip over line breaks. */
const flat = (text: string): string => text.replace(/\s+/g, ' ');
const told = (report: FitReport, units?: SentenceUnits): string =>
  flat(describeFit(report, units === undefined ? {} : { units }));

function holds(check: (report: FitReport, units: SentenceUnits) => void): void {
  fc.assert(fc.property(anyReport, fc.constantFrom(...UNITS), check), { seed: SEED, numRuns: 120 });
}

const OPENINGS: Readonly<Record<Verdict, RegExp>> = {
  clear: /^Yes(, as far as the measurements can tell)?: /,
  tight: /^Yes, but tight(, as far as the measurements can tell)?: /,
  partial: /^Partly(, as far as the measurements can tell)?: /,
  none: /^No(, as far as the measurements can tell)?: /,
};

describe('describeFit', () => {
  it('says beside the verdict whether the table can be carried in, and tells the way further down', () => {
    const carried = (answer: Parameters<typeof samplePiece>[0][number]): string =>
      told({ ...sampleReport({ verdict: 'clear' }), delivery: sampleDelivery([samplePiece([answer])]) });
    expect(carried(samplePassage())).toMatch(
      /^Yes.* And its pieces can be carried in\. .*The way in - Yes: every piece goes in/,
    );
    expect(carried(BLOCKED)).toMatch(/^Yes.* But not all of its pieces can be carried in: see the way in\./);
    expect(carried(UNDECIDED)).toContain('is not shown either way: see the way in.');
    expect(told(sampleReport({ verdict: 'clear' }))).not.toContain('carried in');
  });

  it('opens with the verdict', () => {
    holds((report, units) => {
      expect(describeFit(report, { units })).toMatch(OPENINGS[report.verdict]);
      expect(/as far as the measurements can tell/.test(told(report, units))).toBe(!report.certain);
    });
  });

  it('has no line over 80 columns, no trailing space and ends with one line break', () => {
    holds((report, units) => {
      const text = describeFit(report, { units });
      for (const line of text.split('\n')) {
        expect(columnsOf(line)).toBeLessThanOrEqual(80);
        expect(line).not.toMatch(/\s$/);
      }
      expect(text).toMatch(/[^\n]\n$/);
    });
  });

  it('leaves nothing out: every limit, caution and assumption, and an advice a line', () => {
    holds((report, units) => {
      const text = told(report, units);
      for (const { name } of report.limits) expect(text).toContain(`- ${name}: `);
      for (const { code, message, source } of report.cautions) {
        expect(text.toLowerCase()).toContain(
          `- ${code.replaceAll('-', ' ')}: ${message} (source: ${source}.)`,
        );
      }
      for (const assumption of report.assumptions) expect(text).toContain(assumption);
      const advice = text.match(/(That makes it \w+ \(|The answer stays \w+)/g) ?? [];
      expect(advice).toHaveLength(report.advice.length);
    });
  });

  it('names what has to be measured again', () => {
    holds((report, units) => {
      const text = told(report, units);
      const again = report.limits.filter((limit) => limit.measureAgain);
      expect(text.includes('The answer hangs on')).toBe(again.length > 0);
      expect(text.match(/Measure it again/g) ?? []).toHaveLength(again.length);
      const unnamed = !report.certain && again.length === 0 && report.cues[0]?.proof !== 'resolution';
      expect(text.includes('Measure the room again.')).toBe(unnamed);
    });
  });

  it('says proved where the proof is one, and nowhere else', () => {
    holds((report, units) => {
      const proof = report.cues[0]?.proof;
      const text = told({ ...report, limits: [], advice: [], cautions: [], assumptions: [] }, units);
      const nowhere = /It is proved that no place in this room is clear for the [^.]* cue\./;
      const { clearNowhere } = report.clearance;
      expect(nowhere.test(text)).toBe(
        clearNowhere && (report.verdict === 'tight' || report.verdict === 'partial'),
      );
      const rest = text.replace(nowhere, '');
      expect(/\bproved\b/.test(rest)).toBe(['distance', 'raised', 'boxes', 'shot'].includes(proof));
    });
  });

  it('never sounds like a surety or an advertisement', () => {
    holds((report, units) => {
      expect(told(report, units)).not.toMatch(/\b(safe(ly)?|guarantee\w*|optimal\w*|perfect\w*|best)\b/i);
    });
  });

  it('prints no number that is not one', () => {
    holds((report, units) => {
      expect(told(report, units)).not.toMatch(/undefined|null|NaN|Infinity|-0\b/);
    });
  });

  it('rounds the tape-measure arithmetic towards caution, and so that it adds up', () => {
    holds((report, units) => {
      if (report.pose === null || report.verdict === 'none') return;
      const text = told(report, units);
      for (const [axis, span] of [
        ['Along', report.spans.along],
        ['Across', report.spans.across],
      ] as const) {
        const found = new RegExp(
          `${axis} the table: (.+?) needed, about (.+?) there, (less than )?(.+?) (to spare|missing)\\.`,
        ).exec(text);
        expect(found).not.toBeNull();
        const needed = parseLength(found?.[1] ?? '');
        const available = parseLength(found?.[2] ?? '');
        const less = found?.[3] !== undefined;
        const amount = parseLength(found?.[4] ?? '');
        const spare = found?.[5] === 'missing' ? -amount : less ? 0 : amount;
        const step = STEP[units];
        // The text carries tenths of a millimetre at most: half of one more is lost to it.
        const lost = 0.06;
        expect(found?.[5]).toBe(span.spare < 0 ? 'missing' : 'to spare');
        expect(spare).toBeLessThanOrEqual(span.spare + lost);
        expect(spare).toBeGreaterThan(span.spare - step - lost);
        expect(needed).toBeGreaterThanOrEqual(span.needed - lost);
        expect(needed).toBeLessThan(span.needed + step + lost);
        if (available > 0) expect(needed + spare).toBeCloseTo(available, 0);
        if (less) expect(amount).toBeCloseTo(step, 6);
      }
    });
  });

  it('rounds clearance, the longest cue and gaps down, and bounds up', () => {
    holds((report, units) => {
      if (report.pose === null || report.verdict === 'none') return;
      const text = told(report, units);
      const step = STEP[units];
      const below = (pattern: RegExp, exact: number): void => {
        const said = parseLength(pattern.exec(text)?.[1] ?? '');
        expect(said).toBeLessThanOrEqual(exact + 0.06);
        expect(said).toBeGreaterThan(exact - step - 0.06);
      };
      below(/Clearance: at least (.+?) from any/, report.clearance.value);
      if (report.clearance.longestCue > 0 && units !== 'ftin') {
        below(/whatever the shot, is (.+?) \(/, report.clearance.longestCue);
      }
      const bound = /No other place in this room has more clearance than (.+?)[,.] /.exec(`${text} `)?.[1];
      expect(bound === undefined).toBe(report.clearance.upperBound === report.clearance.value);
      if (bound !== undefined) {
        expect(parseLength(bound)).toBeGreaterThanOrEqual(report.clearance.upperBound - 0.06);
      }
    });
  });

  it('says the longest cue in inches that the trade sells, rounded down', () => {
    const report = sampleReport({
      clearance: {
        value: 1640,
        upperBound: 1640,
        longestCue: 1446,
        longestCueUpperBound: 1446,
        clearNowhere: false,
      },
    });
    expect(told(report, 'ftin')).toContain('whatever the shot, is 56 1/2 in.');
    expect(told(report, 'cm')).toContain('whatever the shot, is 144 cm (56 1/2 in).');
  });

  it('gives shares in per cent that add up to 100, open down and blocked up', () => {
    holds((report, units) => {
      if (report.verdict === 'none') return;
      const text = told(report, units);
      const said = [...text.matchAll(/Open (.+?), cramped (.+?), blocked (.+?)(?: \(estimates|\.)/g)];
      expect(said).toHaveLength(report.cues.length);
      report.cues.forEach((cue, i) => {
        const [open, cramped, blocked] = (said[i] ?? []).slice(1, 4).map(percent);
        if (open === undefined || cramped === undefined || blocked === undefined)
          throw new Error('shares missing');
        expect(open).toBeLessThanOrEqual(cue.shares.open * 100 + 1);
        expect(open).toBeGreaterThan(cue.shares.open * 100 - 1.001);
        expect(blocked).toBeLessThan(cue.shares.blocked * 100 + 1.001);
        if (blocked >= 1) expect(blocked).toBeGreaterThanOrEqual(cue.shares.blocked * 100 - 0.001);
        expect(Math.round(open + cramped + blocked)).toBeLessThanOrEqual(102);
      });
    });
  });

  it('never calls a share all or none that is not', () => {
    const shy = sampleReport({
      cues: [{ ...SAMPLE_CUE, verdict: 'partial', shares: { open: 0.99999, cramped: 0, blocked: 0.00001 } }],
    });
    expect(told(shy)).toContain('Open 99%, cramped none, blocked 1%');
    const faint = sampleReport({
      cues: [{ ...SAMPLE_CUE, shares: { open: 0.996, cramped: 0.004, blocked: 0 } }],
    });
    expect(told(faint)).toContain('Open 99%, cramped 1%, blocked none');
    // 0.58 * 100 is a little under 58 in doubles.
    const plain = sampleReport({
      cues: [{ ...SAMPLE_CUE, shares: { open: 0.58, cramped: 0.42, blocked: 0 } }],
    });
    expect(told(plain)).toContain('Open 58%, cramped 42%, blocked none');
  });

  it('explains the three classes once', () => {
    const text = told(sampleReport({ cues: [SAMPLE_CUE, { ...SAMPLE_CUE, length: 1219.2 }] }));
    expect(text.match(/Open: played with a full backswing/g)).toHaveLength(1);
    expect(text).toMatch(/Cramped: only with a short backswing or a raised cue\. Blocked: not at all/);
  });

  it('uses the singular for one', () => {
    const text = told(
      sampleReport({
        pose: { x: 0, y: 0, turn: 1 },
        advice: [{ kind: 'move-obstacle', obstacle: 'chair', amount: 95, verdict: 'tight', gain: 0.012 }],
      }),
    );
    expect(text).toContain('about 1 degree anticlockwise');
    expect(text).toContain(
      'Move chair by at least 10 cm. The answer stays tight, with about 1 more shot open',
    );
  });

  it('tells which cushion is meant from where it lies on the plan', () => {
    // endA looks along the long axis: up at a turn of 90 degrees; sideA is then to the left.
    const text = told(sampleReport());
    expect(text).toContain('Behind the end cushion at the top: 166 cm to wall 2.');
    expect(text).toContain('Behind the side cushion on the left: 160 cm to chimney breast.');
    const square = told(sampleReport({ pose: { x: 0, y: 0, turn: 0 } }));
    expect(square).toContain('Behind the end cushion on the right: 166 cm to wall 2.');
    expect(square).toContain('Behind the side cushion at the top: 160 cm to chimney breast.');
  });

  it('tells what a frozen ball allows at the worst spot of a cushion, where that is less than the wanted cue', () => {
    const spots = (pairs: [number, number][]): FitReport =>
      sampleReport({
        cushions: [
          { cushion: 'endA', spots: pairs.map(([open, cramped], i) => ({ at: i * 100, open, cramped })) },
        ],
      });
    const intro = 'For a ball frozen on the end cushion at the top, played square off it';
    expect(
      told(
        spots([
          [1320.8, 1425],
          [1600, 1700],
        ]),
      ),
    ).toContain(
      `${intro}: cues up to 132 cm (52 in) at the worst spot, or up to 142 cm (56 in) with a short backswing.`,
    );
    expect(told(spots([[0, 1100]]))).toContain(
      `${intro}: at the worst spot only a short backswing will do, with cues up to 110 cm (43 in).`,
    );
    expect(told(spots([[0, 0]]))).toContain(`${intro}: no cue will do at the worst spot.`);
    expect(told(spots([[1500, 1600]]))).not.toContain('frozen');
    expect(told(spots([]))).not.toContain('frozen');
  });

  it('says of a table that cannot stand no more than that, and why', () => {
    const none = sampleReport({
      verdict: 'none',
      pose: null,
      cues: [
        { ...SAMPLE_CUE, verdict: 'none', proof: 'standing', shares: { open: 0, cramped: 0, blocked: 1 } },
      ],
    });
    expect(told(none)).toMatch(/^No: the table, garden room table, cannot stand anywhere in this room\. /);
    expect(told(none)).not.toMatch(/Clearance|Behind the|Open none/);
    expect(told(none)).toContain(
      'Along the table: 548 cm needed, the room measures about 559 cm, 11 cm to spare.',
    );
    expect(told({ ...none, pose: { x: 0, y: 0, turn: 0 } })).toMatch(/cannot stand at the place given\. /);
    expect(told(none)).toContain('- chimney breast: ');
  });

  it('says of a table that overlaps something by how much, never by nothing', () => {
    const at = (spare: number): string =>
      told(
        sampleReport({
          verdict: 'none',
          limits: [
            {
              name: 'wall 2',
              kind: 'wall',
              distance: 0,
              needed: 0,
              spare,
              share: 1,
              witness: null,
              measureAgain: false,
            },
          ],
        }),
      );
    expect(at(-123)).toContain('What leaves it no place - wall 2: the table would overlap it by 13 cm.');
    expect(at(-1e-9)).toContain('would overlap it by 1 cm.');
    expect(at(0)).toContain('would touch it.');
  });

  it('lets no name of the input move the cursor or reorder the line', () => {
    const text = describeFit(
      sampleReport({ table: { ...SAMPLE_TABLE, name: 'a\u001b[2Jb\r\nc\u202ed\u0007' } }),
    );
    for (const letter of text) {
      const code = letter.codePointAt(0) ?? 0;
      expect(code === 10 || (code >= 32 && code !== 127 && (code < 0x80 || code > 0x9f))).toBe(true);
      expect(code).not.toBe(0x202e);
    }
  });

  it('wraps names without a space and names in wide letters', () => {
    for (const name of ['x'.repeat(200), '卓'.repeat(200), 'e\u0301'.repeat(200)]) {
      for (const line of describeFit(sampleReport({ table: { ...SAMPLE_TABLE, name } })).split('\n')) {
        expect(columnsOf(line)).toBeLessThanOrEqual(80);
      }
    }
  });

  it('draws the map of shots with the upper side of the field on top', () => {
    const text = describeFit(
      sampleReport({
        shots: {
          columns: 3,
          rows: 2,
          length: 2000,
          width: 1000,
          open: [0, 0.55, 1, 0.999, 0.1, 0.3],
          cramped: [0, 0, 0, 0, 0, 0],
          blocked: [1, 0.45, 0, 0.001, 0.9, 0.7],
          shots: 600,
        },
      }),
    );
    expect(text).toMatch(/^ {2}913\n {2}05\*$/m);
  });

  it('reads the report without changing it', () => {
    holds((report, units) => {
      const before = JSON.stringify(report);
      const first = describeFit(report, { units });
      expect(describeFit(report, { units })).toBe(first);
      expect(JSON.stringify(report)).toBe(before);
    });
  });
});

function percent(text: string): number {
  if (text === 'none') return 0;
  if (text === 'all') return 100;
  if (text === 'under 1%') return 1;
  if (text === 'over 99%') return 99;
  return Number(/^(\d+)%$/.exec(text)?.[1]);
}
