import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ArrangementReport, ClearWay, PieceProblem } from '../../src/arrangement/arrangement-report.js';
import { besideProblems, fitsTable, roomProblems, roomRules } from '../../src/arrangement/layout-rules.js';
import { checkRoom } from '../../src/check-fit-input.js';
import { FURNISHINGS } from '../../src/equipment/furnishings.js';
import { usualCarriers } from '../../src/equipment/handling.js';
import { parseLength } from '../../src/length/parse-length.js';
import { type CautionFacts, cautionsFor, type PieceFacts } from '../../src/report/cautions.js';
import { describeFit } from '../../src/report/describe-fit.js';
import { describeFurnishings } from '../../src/report/describe-furnishings.js';
import { problemWords } from '../../src/report/describe-furnishings-problems.js';
import type { SentenceUnits } from '../../src/report/sentences.js';
import { columnsOf } from '../../src/report/wrap.js';
import { anyArrangement, crowdedSample, smallSample, turnedSample } from './sample-arrangement.js';
import { SAMPLE_TABLE, sampleReport } from './sample-report.js';

/** Seed of every property here, so that each run is the same. */
const SEED = 20_270_305;
const UNITS: readonly SentenceUnits[] = ['mm', 'cm', 'ftin'];
const STEP: Readonly<Record<SentenceUnits, number>> = { mm: 1, cm: 10, ftin: 12.7 };
/** The text carries tenths of a millimetre at most: half of one more is lost to it. */
const LOST = 0.06;

const SAMPLES = { crowded: crowdedSample(), small: smallSample(), turned: turnedSample() } as const;

/** The text as one line, so that a search does not trip over line breaks. */
const flat = (text: string): string => text.replace(/\s+/g, ' ');
const told = (arrangement: ArrangementReport, units: SentenceUnits = 'cm'): string =>
  flat(describeFit(sampleReport({ arrangement }), { units }));
const block = (arrangement: ArrangementReport, units: SentenceUnits, title: string): readonly string[] =>
  (
    describeFurnishings(arrangement, 'tight', units).find((one) => one.title.endsWith(title))?.items ?? []
  ).map(flat);

function holds(check: (arrangement: ArrangementReport, units: SentenceUnits) => void): void {
  fc.assert(fc.property(anyArrangement, fc.constantFrom(...UNITS), check), { seed: SEED, numRuns: 120 });
}

describe('the other pieces in sentences', () => {
  it('has no line over 80 columns, no trailing space, and the same text again', () => {
    holds((arrangement, units) => {
      const report = sampleReport({ arrangement });
      const text = describeFit(report, { units });
      for (const line of text.split('\n')) {
        expect(columnsOf(line)).toBeLessThanOrEqual(80);
        expect(line).not.toMatch(/\s$/);
      }
      expect(describeFit(report, { units })).toBe(text);
    });
  });

  it('prints no number that is not one, and never sounds like a surety', () => {
    holds((arrangement, units) => {
      const text = told(arrangement, units);
      expect(text).not.toMatch(/undefined|null|NaN|Infinity|-0\b/);
      expect(text).not.toMatch(/\b(safe(ly)?|guarantee\w*|optimal\w*|perfect\w*|best)\b/i);
    });
  });

  it('says nothing of other pieces where none were asked for', () => {
    expect(flat(describeFit(sampleReport()))).not.toMatch(/other piece/i);
  });

  it('opens with whether they have a place, and names those without', () => {
    holds((arrangement, units) => {
      const { pieces, ways } = arrangement;
      const [opening = ''] = describeFit(sampleReport({ arrangement }), { units }).split('\n\n');
      const text = flat(opening);
      const homeless = pieces.filter(({ pose }) => pose === null);
      const misfits = pieces.filter(({ pose, fits }) => pose !== null && !fits);
      expect(text.includes('No place was found')).toBe(homeless.length > 0);
      expect(text.includes('Something is wrong at the place of')).toBe(misfits.length > 0);
      expect(/(The other piece has|other pieces have) a place/.test(text)).toBe(
        homeless.length + misfits.length === 0,
      );
      if (homeless.length + misfits.length === 0) {
        expect(text.includes('not every clear way was found')).toBe(ways.some(({ found }) => !found));
      }
      if (homeless.length < pieces.length) {
        for (const { name } of [...homeless.slice(0, 6), ...misfits.slice(0, 6)])
          expect(text).toContain(name);
      }
    });
  });

  it('says of each piece where it stands or why it does not', () => {
    holds(({ pieces, ...rest }, units) => {
      const arrangement = { pieces, ...rest };
      const stand = block(arrangement, units, 'where they stand');
      const misfit = block(arrangement, units, 'what does not fit');
      const standing = pieces.filter(({ pose }) => pose !== null);
      expect(stand).toHaveLength(standing.length);
      standing.forEach(({ name, pose, given, gaps, zones, from }, i) => {
        expect(stand[i].startsWith(`${name}: `)).toBe(true);
        const at = /middle is at x = (.+?), y = (.+?)(,|;)/.exec(stand[i]);
        for (const [said, exact] of [
          [at?.[1], pose?.x],
          [at?.[2], pose?.y],
        ])
          expect(
            Math.abs(parseSigned(String(said)) - Number(exact)),
            `${said} for ${exact}`,
          ).toBeLessThanOrEqual(STEP[units] / 2 + LOST);
        expect(stand[i].endsWith('This place was given.')).toBe(given);
        expect(/above the floor/.test(stand[i])).toBe(from > 0);
        if (zones.length === 0 && from > 0) return;
        for (const { to } of gaps) expect(stand[i]).toContain(to);
      });
      const unfit = pieces.filter(({ fits }) => !fits);
      expect(misfit).toHaveLength(unfit.length);
      unfit.forEach(({ name, problems }, i) => {
        expect(misfit[i].startsWith(name)).toBe(true);
        for (const problem of problems) expect(misfit[i]).toContain(flat(problemWords(problem, units)));
      });
    });
  });

  it('rounds the room beside a piece down', () => {
    holds((arrangement, units) => {
      const stand = block(arrangement, units, 'where they stand');
      const standing = arrangement.pieces.filter(({ pose }) => pose !== null);
      standing.forEach(({ gaps, zones, from }, i) => {
        if (zones.length === 0 && from > 0) return;
        for (const [side, pattern] of [
          ['left', /(?:faces it,|and) (less than )?([^;]+?) to \S+ on the left/],
          [
            'right',
            /(?:faces it,(?!.* on the left)|on the left and) (less than )?([^;]+?) to \S+ on the right/,
          ],
          ['front', /in front of it, (less than )?([^;]+?) to /],
          ['back', /back ()([^;]+?) from /],
        ] as const) {
          const gap = gaps.find((one) => one.side === side);
          const found = pattern.exec(stand[i]);
          if (gap === undefined) continue;
          if (found === null) {
            expect(side).toBe('back');
            expect(stand[i]).toContain(`back at ${gap.to}`);
            expect(gap.distance).toBeLessThan(STEP[units]);
            continue;
          }
          const said = parseLength(found[2]);
          if (found[1] === 'less than ') {
            expect(gap.distance).toBeLessThan(said + LOST);
            continue;
          }
          expect(said).toBeLessThanOrEqual(gap.distance + LOST);
          expect(said).toBeGreaterThan(gap.distance - STEP[units] - LOST);
        }
      });
    });
  });

  it('has words for every problem, with and without what is known of it', () => {
    const codes: Readonly<Record<PieceProblem['code'], RegExp>> = {
      outside: /beyond wall 3 by 13 cm$/,
      overlap: /overlaps wall 3 by 13 cm$/,
      table: /overlaps the table by 13 cm$/,
      door: /swing of wall 3 .* by 13 cm$/,
      ceiling: /too high for wall 3 there by 13 cm$/,
      'no-wall': /13 cm off the wall/,
      turn: /turned as it may not be/,
      'zone-outside': /zone \(lane\) reaches beyond wall 3 by 13 cm$/,
      'zone-overlap': /wall 3 stands in its use zone \(lane\) by 13 cm$/,
      'zone-table': /the table stands in its use zone \(lane\) by 13 cm$/,
      'zone-door': /zone \(lane\) lies in the swing of wall 3 .* by 13 cm$/,
      'zone-ceiling': /zone \(lane\) has too little height under wall 3 by 13 cm$/,
      'zone-shared': /zone \(lane\) lies on floor that wall 3 needs in use, .* by 13 cm$/,
      'no-way': /no clear way leads to it from wall 3$/,
      'no-place': /went nowhere/,
    };
    const seen = new Set<string>();
    for (const code of Object.keys(codes).filter((key): key is PieceProblem['code'] => key in codes)) {
      const full = flat(problemWords({ code, with: 'wall 3', zone: 'lane', amount: 121 }, 'cm'));
      expect(full).toMatch(codes[code]);
      seen.add(full);
      const bare = flat(problemWords({ code, with: null, zone: null, amount: null }, 'cm'));
      expect(bare).not.toMatch(/null|undefined|\(|wall 3|cm/);
    }
    expect(seen.size).toBe(Object.keys(codes).length);
  });

  it('counts the ways, names the missing ones, and adds up what they lack', () => {
    holds((arrangement, units) => {
      const { ways } = arrangement;
      const items = block(arrangement, units, 'clear ways');
      const missing = ways.filter(({ found }) => !found);
      expect(items).toHaveLength(ways.length === 0 ? 0 : 1 + missing.length);
      if (ways.length === 0) return;
      const found = ways.length - missing.length;
      expect(items[0]).toMatch(
        ways.length === 1
          ? /^The clear way of /
          : found === 0
            ? new RegExp(`^None of the ${ways.length} clear ways `)
            : found === ways.length
              ? new RegExp(`^All ${ways.length} clear ways `)
              : new RegExp(`^${found} of the ${ways.length} clear ways `),
      );
      missing.forEach(({ from, to, width, widest, certain }, i) => {
        const item = items[i + 1];
        expect(item.startsWith(`From ${from} to ${to}: `)).toBe(true);
        expect(item.includes('that there is none is not shown either')).toBe(!certain);
        const wide = parseLength(/clear way of (.+?)( was|, nor|\.)/.exec(item)?.[1] ?? '');
        expect(wide).toBeGreaterThanOrEqual(width - LOST);
        const told = /takes about (.+?), (.+?) missing/.exec(item);
        expect(told === null).toBe(widest === null || widest >= width);
        if (told === null || widest === null) return;
        const [there, lacking] = [parseLength(told[1]), parseLength(told[2])];
        expect(lacking).toBeGreaterThanOrEqual(width - widest - LOST);
        expect(lacking).toBeLessThan(width - widest + STEP[units] + LOST);
        if (there > 0) expect(there + lacking).toBeCloseTo(wide, 0);
      });
      const tightest = tightestOf(ways);
      const spare = /leads from (.+?) to (.+?), with (less than )?(.+?) to spare/.exec(items[0]);
      const least = /(?:It|Each) is at least (.+?) wide\./.exec(items[0]);
      expect(spare === null).toBe(tightest === null || tightest.between.length === 0);
      expect(least === null).toBe(tightest === null || tightest.between.length > 0);
      if (tightest === null) return;
      const exact = (tightest.widest ?? 0) - tightest.width;
      if (least !== null) {
        const said = parseLength(least[1]);
        // Rounded with the needed width, which goes up by less than a step.
        expect(said).toBeLessThan((tightest.widest ?? 0) + STEP[units] + LOST);
        expect(said).toBeGreaterThan((tightest.widest ?? 0) - STEP[units] - LOST);
      }
      if (spare === null) return;
      expect([spare[1], spare[2]]).toEqual([tightest.from, tightest.to]);
      const said = spare[3] === undefined ? parseLength(spare[4]) : 0;
      expect(said).toBeLessThanOrEqual(exact + LOST);
      expect(said).toBeGreaterThan(exact - STEP[units] - LOST);
    });
  });

  it('calls no way an escape route', () => {
    const text = told(SAMPLES.crowded.arrangement);
    expect(text).toContain('It is no escape route: what those need is set by local codes');
    expect(text.match(/escape route/g)).toHaveLength(1);
  });

  it('says what is used by turns, a zone a line, shares rounded up', () => {
    holds((arrangement, units) => {
      const items = block(arrangement, units, 'used by turns');
      const zones = new Set(arrangement.sharing.map(({ piece, zone }) => `${piece} (${zone})`));
      expect(items).toHaveLength(zones.size);
      for (const { piece, zone, with: other, share } of arrangement.sharing) {
        const item = items.find((one) => one.startsWith(`${piece} (${zone}): `)) ?? '';
        const who = other === 'cueing' ? "the table's cues and players" : other;
        const shares = [
          ...item.matchAll(new RegExp(`with ${who} \\((?:(all)|about (?:under )?(\\d+)%) of it\\)`, 'g')),
        ];
        const near = shares.some(([, all, percent]) => {
          const said = all === undefined ? Number(percent) : 100;
          return said >= share * 100 - 1e-3 && said < share * 100 + 1.001;
        });
        expect(near, `${share} in ${item}`).toBe(true);
      }
    });
  });

  it('adds up floor and wall, and proves a lack but nothing else', () => {
    holds((arrangement, units) => {
      const items = block(arrangement, units, 'what the room holds');
      const { floor, wall } = arrangement.bounds;
      const lacks = floor.needed > floor.available || wall.needed > wall.available;
      expect(items.some((item) => item.includes('it is proved that not everything goes in'))).toBe(lacks);
      expect(items.join(' ').includes('does not prove that there is none')).toBe(
        !lacks && arrangement.pieces.some(({ pose }) => pose === null),
      );
      expect(items.join(' ')).toContain(`${arrangement.layouts} layout`);
      const said =
        /needs at least (.+?) of wall; about (.+?) are clear of doorways, (less than )?(.+?) (to spare|missing)/.exec(
          items.join(' '),
        );
      expect(said === null).toBe(wall.needed <= 0);
      if (said !== null) {
        const [needed, there, amount] = [said[1], said[2], said[4]].map((text) => parseLength(text));
        expect(needed).toBeGreaterThanOrEqual(wall.needed - LOST);
        expect(said[5]).toBe(wall.needed > wall.available ? 'missing' : 'to spare');
        if (said[5] === 'missing') expect(amount).toBeGreaterThanOrEqual(wall.needed - wall.available - LOST);
        else if (said[3] === undefined)
          expect(amount).toBeLessThanOrEqual(wall.available - wall.needed + LOST);
        const signed = said[5] === 'missing' ? -amount : said[3] === undefined ? amount : 0;
        if (there > 0) expect(needed + signed).toBeCloseTo(there, 0);
      }
      const area =
        /takes ([\d.]+) (m2|sq ft); the room has about ([\d.]+) \2 for it, (less than )?([\d.]+) \2 (to spare|missing)/.exec(
          items.join(' '),
        );
      expect(area === null).toBe(floor.needed <= 0);
      if (area === null) return;
      const unit = area[2] === 'm2' ? 1 : 0.3048 ** 2;
      const step = area[2] === 'm2' ? 0.1 : 1;
      const [needed, there, amount] = [area[1], area[3], area[5]].map(Number);
      expect(needed).toBeGreaterThanOrEqual(floor.needed / unit - 1e-6);
      expect(needed).toBeLessThan(floor.needed / unit + step + 1e-6);
      const signed = area[6] === 'missing' ? -amount : area[4] === undefined ? amount : 0;
      expect(signed).toBeLessThanOrEqual((floor.available - floor.needed) / unit + 1e-6);
      if (there > 0) expect(needed + signed).toBeCloseTo(there, 6);
    });
  });

  it('gives each advice with its gain and with who finds a place then', () => {
    holds((arrangement, units) => {
      const items = block(arrangement, units, 'what would help');
      expect(items).toHaveLength(arrangement.advice.length);
      arrangement.advice.forEach(({ kind, piece, verdict, gain, places }, i) => {
        expect(items[i]).toMatch(kind === 'leave-out' ? /^Leave out / : /^Shift /);
        expect(items[i]).toContain(piece);
        expect(items[i]).toContain(
          verdict === 'tight' ? 'The answer stays tight' : `That makes it ${verdict} (`,
        );
        const more = /about (\d+) more shots? open/.exec(items[i]);
        if (gain >= 0.011) expect(Number(more?.[1])).toBeLessThanOrEqual(gain * 100 + 1e-3);
        expect(items[i].includes('a place too')).toBe(places.length > 0);
        for (const name of places) expect(items[i]).toContain(name);
      });
    });
  });

  it('puts it in words that one can act on', () => {
    const text = told(SAMPLES.crowded.arrangement);
    expect(text).toContain(
      'darts board: back at wall 2; as one faces it, 577 cm to wall 3 on the left and 97 cm to wall 1 on the right; ' +
        'in front of it, 955 cm to wall 4. Its middle is at x = 958 cm, y = 120 cm, its underside 150 cm above the floor; ' +
        'it faces the left of the plan.',
    );
    expect(text).toContain('its length runs along x.');
    expect(told(SAMPLES.small.arrangement)).toContain(
      'sofa has no place. What held back the places that were tried, most often first: ' +
        'it overlaps the table; the table stands in its use zone (legs).',
    );
    expect(told(SAMPLES.turned.arrangement)).toContain('it faces the lower left of the plan.');
    expect(told(SAMPLES.turned.arrangement)).toContain('its length turned about 33 degrees anticlockwise');
  });
});

describe('the samples', () => {
  it('stand by the rules of the house wherever they say so', () => {
    for (const { input, report, placed, arrangement } of Object.values(SAMPLES)) {
      if (!('outline' in input.room)) throw new Error('a room by its corners');
      const rules = roomRules(checkRoom(input.room), 600);
      const good = placed.filter(
        ({ spec }) => arrangement.pieces.find(({ name }) => name === spec.name)?.fits === true,
      );
      expect(good.length).toBeGreaterThan(1);
      good.forEach((piece, i) => {
        expect(roomProblems(rules, piece), piece.spec.name).toEqual([]);
        for (const other of good.slice(i + 1))
          expect(besideProblems(piece, other), `${piece.spec.name} beside ${other.spec.name}`).toEqual([]);
        const { pose, table } = report;
        if (pose === null) throw new Error('no place');
        const at = { x: pose.x, y: pose.y, angle: (pose.turn * Math.PI) / 180 };
        expect(fitsTable(piece, table, at), piece.spec.name).toBe(true);
      });
    }
  });
});

describe('cautions about other pieces', () => {
  const pieces: readonly PieceFacts[] = [
    { ...FURNISHINGS.pinball, mass: 128.4 },
    { ...FURNISHINGS['music-machine'] },
    { ...FURNISHINGS.stool, mass: 9 },
    { ...FURNISHINGS.darts },
    { ...FURNISHINGS.lamp },
  ];
  const facts: CautionFacts = { doors: [], overheadNames: [], ceilingKnown: true };
  const said = (code: string, more: Partial<CautionFacts>): string =>
    cautionsFor(SAMPLE_TABLE, { ...facts, ...more })
      .filter((caution) => caution.code === code)
      .map(({ message }) => message)
      .join(' ');

  it('are as they were without any', () => {
    expect(cautionsFor(SAMPLE_TABLE, { ...facts, pieces: [] })).toEqual(cautionsFor(SAMPLE_TABLE, facts));
  });

  it('say what is heavy, what nobody weighed, and what hangs', () => {
    expect(said('floor-load', { pieces })).toContain(
      'pinball machine (about 129 kg) and stool (about 9 kg): together about 138 kg.',
    );
    expect(said('floor-load', { pieces })).toContain('How much music machine weighs is not known here.');
    expect(said('lifting', { pieces })).toContain(
      `pinball machine (about 129 kg), shared by ${usualCarriers(128.4)}\u00a0carriers or more.`,
    );
    expect(said('lifting', { pieces })).not.toContain('stool');
    expect(said('lifting', { pieces })).toContain(
      'What the wall carries behind darts board was not looked at',
    );
    expect(said('lamp', { pieces })).toContain(
      'Given as hanging overhead and counted as such: lamp over the table.',
    );
    expect(said('lamp', { pieces })).toContain('How lamp over the table can be fixed was not looked at');
    expect(said('electrics', { pieces })).toContain('So do pinball machine and music machine');
    expect(said('escape-route', { pieces })).toContain(
      'a way past the table and the other pieces to the doors',
    );
    expect(said('escape-route', { pieces })).toContain('floor to walk along and no escape routes');
  });

  it('never call anything safe', () => {
    for (const { message, source } of cautionsFor(SAMPLE_TABLE, { ...facts, pieces })) {
      expect(message).not.toMatch(/\bsafe|strong enough|will hold|can bear|no danger/i);
      expect(message).toMatch(/^[A-Z].*\.$/s);
      expect(message).not.toMatch(/undefined|null|NaN/);
      expect(source.length).toBeGreaterThan(5);
    }
  });
});

function tightestOf(ways: readonly ClearWay[]): ClearWay | null {
  const found = ways.filter(({ found: there, widest, width }) => there && widest !== null && widest >= width);
  const spare = ({ widest, width }: ClearWay): number => (widest ?? 0) - width;
  return found.length === 0 ? null : found.reduce((a, b) => (spare(b) < spare(a) ? b : a));
}

/** Lengths with a minus before them, as places left of the origin have. */
function parseSigned(text: string): number {
  return text.startsWith('-') ? -parseLength(text.slice(1)) : parseLength(text);
}
