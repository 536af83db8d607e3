import { cushionSpot, type SpotLengths } from './cushion-spot.js';
import type { CueResult, FitReport, Pose } from './fit-report.js';
import {
  plainName,
  type SentenceUnits,
  sayAccount,
  sayCue,
  sayCushion,
  sayDegrees,
  sayLength,
  sayPercentUp,
  sayShares,
} from './sentences.js';

/** Where the table stands and how much room it has: one idea a string. Empty for a table that does not stand. */
export function describePlace(report: FitReport, units: SentenceUnits): readonly string[] {
  const { pose, clearance } = report;
  if (pose === null || report.verdict === 'none') return [];
  const said = [
    `The centre of the play field is at x = ${sayLength(pose.x, units)}, y = ${sayLength(pose.y, units)} from the origin of the plan (x to the right, y up).`,
    turnWords(pose),
    `Clearance: at least ${sayLength(clearance.value, units, 'down')} from any place where a ball's centre can lie to the nearest wall or tall thing.`,
  ];
  const longest = clearance.longestCue;
  said.push(
    longest > 0
      ? `The longest cue that meets nothing at full backswing, whatever the shot, is ${sayCue(longest, units, 'down')}.`
      : 'There is no length of cue that meets nothing at full backswing, whatever the shot.',
  );
  const { upperBound, longestCueUpperBound } = clearance;
  if (upperBound > clearance.value && Number.isFinite(upperBound)) {
    const cue =
      longestCueUpperBound > 0
        ? `, so the longest such cue is at most ${sayCue(longestCueUpperBound, units, 'up')} anywhere in it`
        : '';
    said.push(
      `No other place in this room has more clearance than ${sayLength(upperBound, units, 'up')}${cue}.`,
    );
  }
  if (clearance.clearNowhere && report.verdict !== 'clear') {
    const wanted = report.cues[0];
    const cue = wanted === undefined ? 'the wanted cue' : `the ${sayCue(wanted.length, units)} cue`;
    said.push(`It is proved that no place in this room is clear for ${cue}.`);
  }
  return said;
}

function turnWords(pose: Pose): string {
  if (pose.turn === 0) return 'Its long side runs along x.';
  if (pose.turn === 90) return 'Its long side runs along y.';
  return `Its long side is turned about ${sayDegrees(pose.turn)} anticlockwise from the x direction.`;
}

/** The shares of each cue, one cue a string. */
export function describeCues(report: FitReport, units: SentenceUnits): readonly string[] {
  return report.verdict === 'none' ? [] : report.cues.map((cue) => cueWords(cue, units));
}

function cueWords(cue: CueResult, units: SentenceUnits): string {
  const { open, cramped, blocked } = sayShares(cue.shares, cue.verdict);
  const estimated =
    cue.shareError > 0 ? ` (estimates, each good to about ${sayPercentUp(cue.shareError)})` : '';
  const steepest =
    cue.steepestElevation === null || cue.steepestElevation <= 0
      ? ''
      : ` The steepest cue that a playable shot was found to need is raised about ${Math.ceil(cue.steepestElevation - 1e-9)} degrees.`;
  const sure = cue.certain ? '' : ', too close to be sure';
  return `${sayCue(cue.length, units)} cue: ${cue.verdict}${sure}. Open ${open}, cramped ${cramped}, blocked ${blocked}${estimated}.${steepest}`;
}

/** The tape-measure arithmetic along and across the table and the gap at each cushion. */
export function describeSpans(report: FitReport, units: SentenceUnits): readonly string[] {
  if (report.pose === null || report.verdict === 'none') return describeRoomSpans(report, units);
  const { turn } = report.pose;
  const said = [
    'Needed is the play field and twice the cue with its backswing and a margin; what is there is the play field and the gaps at both its ends.',
  ];
  for (const axis of ['along', 'across'] as const) {
    const { needed, available, spare } = sayAccount(report.spans[axis], units);
    said.push(
      `${axis === 'along' ? 'Along' : 'Across'} the table: ${needed} needed, about ${available} there, ${spare}.`,
    );
  }
  for (const gap of report.gaps) {
    const distance = sayLength(gap.distance, units, 'down');
    said.push(`Behind the ${sayCushion(gap.cushion, turn)}: ${distance} to ${plainName(gap.to)}.`);
  }
  if (report.gaps.some(({ to }) => /^wall \d+$/.test(to))) {
    said.push(
      'Walls are counted along the outline: wall 1 runs from its first corner to its second, and so on.',
    );
  }
  const wanted = report.cues[0]?.length ?? 0;
  for (const profile of report.cushions) {
    const worst = cushionSpot(profile);
    if (worst === null || worst.open >= wanted) continue;
    said.push(
      `For a ball frozen on the ${sayCushion(profile.cushion, turn)}, played square off it: ${spotWords(worst, units)}.`,
    );
  }
  return said;
}

/** Without a place there are no gaps: the extents of the whole room stand in for them. */
function describeRoomSpans(report: FitReport, units: SentenceUnits): readonly string[] {
  const said = (['along', 'across'] as const).map((axis) => {
    const { needed, available, spare } = sayAccount(report.spans[axis], units);
    return `${axis === 'along' ? 'Along' : 'Across'} the table: ${needed} needed, the room measures about ${available}, ${spare}.`;
  });
  const { length, width } = report.table.outer;
  return [
    `The table itself measures ${sayLength(length, units, 'up')} by ${sayLength(width, units, 'up')} over its rails.`,
    'Needed to play is the play field and twice the cue with its backswing and a margin; the room is measured along and across its longest wall, from end to end.',
    ...said,
  ];
}

function spotWords(spot: SpotLengths, units: SentenceUnits): string {
  const short = spot.cramped > 0 ? sayCue(spot.cramped, units, 'down') : null;
  if (spot.open > 0) {
    const full = sayCue(spot.open, units, 'down');
    return short === null || spot.cramped <= spot.open
      ? `cues up to ${full} at the worst spot`
      : `cues up to ${full} at the worst spot, or up to ${short} with a short backswing`;
  }
  return short === null
    ? 'no cue will do at the worst spot'
    : `at the worst spot only a short backswing will do, with cues up to ${short}`;
}
