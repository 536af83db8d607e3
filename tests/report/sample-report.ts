import fc from 'fast-check';
import type { TableSpec } from '../../src/equipment/equipment-types.js';
import type {
  Advice,
  Caution,
  CueResult,
  Cushion,
  CushionProfile,
  FitReport,
  Gap,
  Limit,
  Pose,
  Shares,
  ShotMap,
  Span,
  Verdict,
} from '../../src/report/fit-report.js';

/** A table for hand-made reports; its figures are invented. */
export const SAMPLE_TABLE: TableSpec = {
  id: null,
  name: 'garden room table',
  game: 'pool',
  field: { length: 2235, width: 1118 },
  outer: { length: 2540, width: 1420 },
  bedHeight: 790,
  noseHeight: 36.3,
  railHeight: 42,
  ballDiameter: 57.15,
  usualCue: 1448,
  mass: 300,
  legs: 4,
  source: 'measured',
};

export const SAMPLE_CUE: CueResult = {
  name: '57 in',
  length: 1447.8,
  verdict: 'tight',
  certain: true,
  proof: 'boxes',
  shares: { open: 0.8312, cramped: 0.1688, blocked: 0 },
  shareError: 0.004,
  steepestElevation: 11.3,
};

/** A hand-made report whose numbers need not agree with each other; parts can be replaced. */
export function sampleReport(parts: Partial<FitReport> = {}): FitReport {
  return {
    schema: 'elbowroom/fit-report@1',
    verdict: 'tight',
    certain: true,
    table: SAMPLE_TABLE,
    pose: { x: 2450, y: 2904, turn: 90 },
    clearance: {
      value: 1633.4,
      upperBound: 1634.2,
      longestCue: 1434.8,
      longestCueUpperBound: 1435.6,
      clearNowhere: false,
    },
    cues: [SAMPLE_CUE],
    spans: {
      along: { needed: 5470.6, available: 5590.2, spare: 119.6 },
      across: { needed: 4353.6, available: 4340, spare: -13.6 },
    },
    gaps: [
      { cushion: 'endA', distance: 1668.9, to: 'wall 2' },
      { cushion: 'sideA', distance: 1604.2, to: 'chimney breast' },
    ],
    cushions: [],
    limits: [
      {
        name: 'chimney breast',
        kind: 'obstacle',
        distance: 1602.8,
        needed: 1616.4,
        spare: -13.6,
        share: 0.052,
        witness: [
          [2000, 3000],
          [1000, 3000],
        ],
        measureAgain: false,
      },
    ],
    advice: [{ kind: 'shorter-cue', amount: 1320.8, verdict: 'clear', gain: 0.1688 }],
    cautions: [{ code: 'lifting', message: 'The slates are heavy.', source: 'common practice, no source' }],
    assumptions: ['The full backswing is taken as 150 mm.'],
    ...parts,
  };
}

const length = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const cushion = fc.constantFrom<Cushion[]>('endA', 'sideA', 'endB', 'sideB');
const verdict = fc.constantFrom<Verdict[]>('clear', 'tight', 'partial', 'none');
// Words apart, so that wrapping cannot cut a name and the test can look for it.
const name = fc
  .array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 4 })
  .map((words) => words.join(' '));

const shares: fc.Arbitrary<Shares> = fc.tuple(share, share).map(([a, b]) => {
  const [low, high] = a < b ? [a, b] : [b, a];
  return { open: low, cramped: high - low, blocked: 1 - high };
});

const span: fc.Arbitrary<Span> = fc
  .tuple(length(1000, 9000), fc.oneof(length(-3000, 3000), length(-15, 15), fc.constant(0)))
  .map(([needed, spare]) => ({ needed, spare, available: needed + spare }));

const cueResult = (verdicts: fc.Arbitrary<Verdict>): fc.Arbitrary<CueResult> =>
  fc.record({
    name,
    length: length(700, 1700),
    verdict: verdicts,
    certain: fc.boolean(),
    proof: fc.constantFrom('distance', 'raised', 'boxes', 'shot', 'resolution', 'standing'),
    shares,
    shareError: fc.oneof(fc.constant(0), length(0, 0.05)),
    steepestElevation: fc.option(length(0, 20)),
  });

const gap: fc.Arbitrary<Gap> = fc.record({ cushion, distance: length(0, 4000), to: name });

const profile: fc.Arbitrary<CushionProfile> = fc.record({
  cushion,
  spots: fc.array(fc.record({ at: length(-1800, 1800), open: length(0, 2000), cramped: length(0, 2000) }), {
    maxLength: 4,
  }),
});

const limit: fc.Arbitrary<Limit> = fc
  .tuple(
    name,
    fc.constantFrom<Limit['kind'][]>('wall', 'obstacle', 'ceiling', 'standing', 'door', 'rail', 'room'),
    fc.option(span),
    share,
    fc.boolean(),
    fc.boolean(),
  )
  .map(([limitName, kind, account, part, seen, measureAgain]) => ({
    name: limitName,
    kind,
    distance: account?.available ?? null,
    needed: account?.needed ?? null,
    spare: account?.spare ?? null,
    share: part,
    witness: seen
      ? [
          [1000, 2000],
          [1000, -500],
        ]
      : null,
    measureAgain,
  }));

const advice: fc.Arbitrary<Advice> = fc.record(
  {
    kind: fc.constantFrom('shorter-cue', 'shorter-cue-at', 'move-obstacle', 'smaller-table', 'longer-room'),
    verdict,
    gain: share,
    cushion,
    obstacle: name,
    table: name,
    amount: length(10, 1500),
    along: length(10, 1500),
    across: length(10, 1500),
  },
  { requiredKeys: ['kind', 'verdict', 'gain'] },
);

const caution: fc.Arbitrary<Caution> = fc.record({
  code: fc.constantFrom('floor-load', 'lifting', 'lamp', 'escape-route', 'electrics', 'delivery', 'door'),
  message: name.map((text) => `${text}.`),
  source: name,
});

const shotMap: fc.Arbitrary<ShotMap> = fc
  .record({ columns: fc.integer({ min: 1, max: 90 }), rows: fc.integer({ min: 1, max: 20 }), part: share })
  .map(({ columns, rows, part }) => ({
    columns,
    rows,
    length: 2000,
    width: 1000,
    open: Array.from({ length: columns * rows }, () => part),
    cramped: Array.from({ length: columns * rows }, () => 1 - part),
    blocked: Array.from({ length: columns * rows }, () => 0),
    shots: columns * rows,
  }));

/** Any report that the types allow, and a few that no assessment would give. */
export const anyReport: fc.Arbitrary<FitReport> = verdict.chain((wanted) =>
  fc
    .record({
      certain: fc.boolean(),
      pose: fc.option<Pose, null>(
        fc.record({
          x: length(-20_000, 20_000),
          y: length(-20_000, 20_000),
          turn: fc.oneof(
            fc.constantFrom(0, 90),
            fc.double({ min: 0, max: 180, noNaN: true, maxExcluded: true }),
          ),
        }),
      ),
      value: length(0, 4000),
      more: fc.constantFrom(0, 0.5, 800),
      nowhere: fc.boolean(),
      first: cueResult(fc.constant(wanted)),
      others: fc.array(cueResult(verdict), { maxLength: 3 }),
      along: span,
      across: span,
      gaps: fc.array(gap, { maxLength: 4 }),
      cushions: fc.array(profile, { maxLength: 4 }),
      limits: fc.array(limit, { maxLength: 5 }),
      shots: fc.option(shotMap),
      advice: fc.array(advice, { maxLength: 4 }),
      cautions: fc.array(caution, { maxLength: 5 }),
      assumptions: fc.array(name, { maxLength: 5 }),
    })
    .map((r) =>
      sampleReport({
        verdict: wanted,
        certain: r.certain,
        pose: wanted === 'none' ? r.pose : (r.pose ?? { x: 0, y: 0, turn: 0 }),
        clearance: {
          value: r.value,
          upperBound: r.value + r.more,
          longestCue: r.value - 200,
          longestCueUpperBound: r.value + r.more - 200,
          clearNowhere: r.nowhere,
        },
        cues: [{ ...r.first, certain: r.certain }, ...r.others],
        spans: { along: r.along, across: r.across },
        gaps: r.gaps,
        cushions: r.cushions,
        limits: r.limits,
        ...(r.shots === null ? {} : { shots: r.shots }),
        advice: r.advice,
        cautions: r.cautions,
        assumptions: r.assumptions,
      }),
    ),
);
