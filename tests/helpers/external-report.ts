import type { FitReport } from '../../src/report/fit-report.js';

/** Rounding allowed in sums and comparisons of millimetres and shares. */
const ROUNDING = 1e-6;

/** Every way in which a report contradicts itself, as sentences; empty for a good one. */
export function contradictions(report: FitReport): string[] {
  const found: string[] = [];
  const expect = (holds: boolean, what: string): void => {
    if (!holds) found.push(what);
  };
  for (const path of notPlain(report, 'report')) found.push(`${path} is no plain finite value`);
  const { clearance, cues, verdict, certain, pose, limits, gaps } = report;
  expect(clearance.value >= 0, 'the clearance is negative');
  expect(clearance.value <= clearance.upperBound + ROUNDING, 'the clearance exceeds its bound');
  expect(
    clearance.longestCue <= clearance.longestCueUpperBound + ROUNDING,
    'the longest cue exceeds its bound',
  );
  expect(cues.length > 0 && cues[0].verdict === verdict, "the verdict is not the wanted cue's");
  expect(cues.length > 0 && cues[0].certain === certain, "the certainty is not the wanted cue's");
  for (const cue of cues) {
    const { open, cramped, blocked } = cue.shares;
    const name = `cue ${cue.name}`;
    expect(Math.abs(open + cramped + blocked - 1) < ROUNDING, `${name}: the shares do not add up to 1`);
    expect(Math.min(open, cramped, blocked) >= 0, `${name}: a share is negative`);
    expect(cue.shareError >= 0 && cue.shareError <= 1, `${name}: the share error is no share`);
    switch (cue.verdict) {
      case 'clear':
        expect(open === 1 && cue.shareError === 0, `${name}: clear with shots that are not open`);
        expect(cue.proof === 'distance' || cue.proof === 'boxes', `${name}: clear without a proof`);
        break;
      case 'tight':
        expect(blocked === 0, `${name}: tight with blocked shots`);
        expect(cramped > 0 || cue.proof === 'resolution', `${name}: tight without a cramped shot`);
        break;
      case 'partial':
        expect(blocked > 0 || cue.proof === 'resolution', `${name}: partial without a blocked shot`);
        break;
      case 'none':
        expect(open === 0 && cramped === 0, `${name}: shots on a table that cannot stand`);
        expect(cue.proof === 'standing', `${name}: none, but not because it cannot stand`);
        break;
    }
    if (cue.proof === 'resolution') expect(!cue.certain, `${name}: certain below the resolution`);
    const steepest = cue.steepestElevation;
    expect(
      (steepest === null) === (open + cramped === 0),
      `${name}: steepest elevation without a playable shot`,
    );
    if (steepest !== null) expect(steepest >= 0 && steepest < 90, `${name}: steepest elevation ${steepest}`);
  }
  if (verdict !== 'none') {
    expect(pose !== null, 'a verdict without a place');
    expect(gaps.length === 4, 'not four gaps');
  }
  if (pose !== null) expect(pose.turn >= 0 && pose.turn < 180, `a turn of ${pose.turn} degrees`);
  for (const span of [report.spans.along, report.spans.across]) {
    expect(Math.abs(span.available - span.needed - span.spare) < ROUNDING, 'a span does not add up');
  }
  for (const gap of gaps) expect(gap.distance >= 0 && gap.to !== '', `gap ${gap.cushion} to nothing`);
  for (const limit of limits) {
    const { name, distance, needed, spare, share } = limit;
    expect(share >= 0 && share <= 1 + ROUNDING, `limit ${name}: share ${share}`);
    if (distance !== null && needed !== null && spare !== null) {
      // At distance 0 things may overlap, and the spare then says by how much.
      const off = spare - (distance - needed);
      expect(off < ROUNDING && (off > -ROUNDING || distance === 0), `limit ${name} does not add up`);
    }
  }
  return found;
}

/** Paths of what JSON cannot carry: numbers that are not finite, functions, undefined. */
function notPlain(value: unknown, path: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} (${value})`];
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return [];
  if (typeof value !== 'object') return [path];
  return Object.entries(value).flatMap(([key, inner]) => notPlain(inner, `${path}.${key}`));
}
