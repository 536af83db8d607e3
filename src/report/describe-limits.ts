import { VERDICT_WORDS } from './describe-answer.js';
import { sayRepeats } from './describe-survey.js';
import type { Advice, FitReport, Limit, Verdict } from './fit-report.js';
import {
  joinWords,
  plainName,
  type SentenceUnits,
  sayAccount,
  sayAtLeastOne,
  sayCue,
  sayCushion,
  sayLength,
  sayPercentUp,
} from './sentences.js';

/** What holds the verdict back, in the report's order (nearest first), one thing a string. */
export function describeLimits(report: FitReport, units: SentenceUnits): readonly string[] {
  const none = report.verdict === 'none';
  return report.limits.map((limit) => (none ? overlapWords(limit, units) : limitWords(limit, units)));
}

const KIND_WORDS: Readonly<Record<Limit['kind'], string>> = {
  wall: 'in the way of cues',
  obstacle: 'in the way of cues',
  ceiling: 'too low for a raised cue',
  standing: 'missing for the player',
  door: 'its swing has to stay free of the table',
  reserved: 'floor that another piece needs in use',
  rail: 'asks for a raised cue',
  room: 'too small for the table',
};

/** What leaves a table no place; how far it would overlap where that is known. */
function overlapWords(limit: Limit, units: SentenceUnits): string {
  const again = limit.measureAgain
    ? ` Measure it again: the answer hangs on it.${sayRepeats(limit, units)}`
    : '';
  const name = plainName(limit.name);
  if (limit.spare !== null) {
    const overlap =
      limit.spare < 0 ? `would overlap it by ${sayAtLeastOne(-limit.spare, units)}` : 'would touch it';
    return `${name}: the table ${overlap}.${again}`;
  }
  const why = limit.kind === 'room' ? 'too small for the table' : 'in the way of the table';
  return `${name}: ${why}.${again}`;
}

function limitWords(limit: Limit, units: SentenceUnits): string {
  const said = [`${plainName(limit.name)}: ${KIND_WORDS[limit.kind]}`];
  if (limit.distance !== null && limit.needed !== null && limit.spare !== null) {
    const account = sayAccount(
      { needed: limit.needed, available: limit.distance, spare: limit.spare },
      units,
    );
    said.push(
      `, about ${account.available} from the nearest place of a ball's centre, ${account.needed} needed, ${account.spare}`,
    );
  }
  if (limit.share > 0)
    said.push(`; it keeps about ${sayPercentUp(limit.share)} of all shots from being open`);
  said.push('.');
  if (limit.measureAgain) {
    const at = limit.witness?.[1];
    const where =
      at === undefined ? '' : ` near x = ${sayLength(at[0], units)}, y = ${sayLength(at[1], units)}`;
    said.push(` Measure it again${where}: the answer hangs on it.${sayRepeats(limit, units)}`);
  }
  return said.join('');
}

/** What would help, each with the gain it was computed to bring, one advice a string. */
export function describeAdvice(report: FitReport, units: SentenceUnits): readonly string[] {
  return report.advice.map(
    (advice) => `${deed(advice, report, units)}. ${outcomeWords(advice, report.verdict)}`,
  );
}

function deed(advice: Advice, report: FitReport, units: SentenceUnits): string {
  const { amount } = advice;
  switch (advice.kind) {
    case 'shorter-cue':
      return amount === undefined ? 'Take a shorter cue' : `Take a shorter cue of ${sayCue(amount, units)}`;
    case 'shorter-cue-at': {
      const cue = amount === undefined ? 'a shorter cue' : `a shorter cue of ${sayCue(amount, units)}`;
      const at =
        advice.cushion === undefined
          ? 'tight places'
          : `balls near the ${sayCushion(advice.cushion, report.pose?.turn ?? 0)}`;
      return `Keep ${cue} at hand for ${at}`;
    }
    case 'move-obstacle': {
      const what = advice.obstacle === undefined ? 'what stands in the way' : plainName(advice.obstacle);
      return amount === undefined
        ? `Take away ${what}`
        : `Move ${what} by at least ${sayLength(amount, units, 'up')}`;
    }
    case 'smaller-table':
      return advice.table === undefined
        ? 'Take a smaller table'
        : `Take a smaller table: ${plainName(advice.table)}`;
    case 'longer-room': {
      const { along, across } = advice;
      const said: string[] = [];
      if (along !== undefined) said.push(`${sayLength(along, units, 'up')} more along the table`);
      if (across !== undefined) said.push(`${sayLength(across, units, 'up')} more across it`);
      return said.length === 0 ? 'A larger room would help' : `A larger room would help: ${joinWords(said)}`;
    }
  }
}

/** What an advice brings, beside the verdict as it is: `That makes it tight (...), with about 12 more shots open in every 100.` */
export function outcomeWords(
  advice: { readonly verdict: Verdict; readonly gain: number },
  now: Verdict,
): string {
  const verdict =
    advice.verdict === now
      ? `The answer stays ${advice.verdict}`
      : `That makes it ${VERDICT_WORDS[advice.verdict]}`;
  const gain = Math.floor(advice.gain * 100 + 1e-6);
  if (gain >= 1) {
    return `${verdict}, with about ${gain} more ${gain === 1 ? 'shot' : 'shots'} open in every 100.`;
  }
  return advice.gain > 0 ? `${verdict}, with fewer than 1 more shot open in every 100.` : `${verdict}.`;
}
