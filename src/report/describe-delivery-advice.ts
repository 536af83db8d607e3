import type { DeliveryAdvice, DeliveryOutcome, DeliveryReport } from '../delivery/delivery-report.js';
import { sayFine } from './describe-delivery-sizes.js';
import { count, joinWords, plainName, type SentenceUnits, sayLength } from './sentences.js';

interface Told {
  readonly advice: DeliveryAdvice;
  /** Every piece for which the very same is advised. */
  readonly pieces: readonly string[];
}

/** What would help, in the report's order, one advice a string; the same advice for several pieces is said once. */
export function describeWayAdvice(report: DeliveryReport, units: SentenceUnits): readonly string[] {
  const told = new Map<string, Told>();
  for (const advice of report.advice) {
    const { piece, ...same } = advice;
    const key = JSON.stringify(same);
    const pieces = told.get(key)?.pieces ?? [];
    told.set(key, { advice, pieces: piece === undefined ? pieces : [...pieces, plainName(piece)] });
  }
  return [...told.values()].map((one) => adviceWords(one, report, units));
}

const HOLD_WORDS = {
  flat: 'laid flat',
  'on-edge': 'carried on edge',
  'on-end': 'stood on end',
} as const;

function adviceWords({ advice, pieces }: Told, report: DeliveryReport, units: SentenceUnits): string {
  const place = passageName(advice, report);
  const what = pieces.length === 0 ? 'the piece' : joinWords([...new Set(pieces)]);
  const then = `That lets ${what} through.`;
  const { amount } = advice;
  switch (advice.kind) {
    case 'take-door-off': {
      const gain =
        amount === undefined ? '' : `: that gains ${sayFine(amount, units, 'down')} of clear width`;
      return `Take the door of ${place} off its hinges${gain}. ${then}`;
    }
    case 'other-pieces': {
      const set =
        advice.pieces === undefined ? 'another set of pieces' : `its ${plainName(advice.pieces)} set`;
      return `Ask for the table in ${set}. ${wholeWords(advice.outcome)}`;
    }
    case 'allow-hold': {
      const how =
        advice.hold !== undefined
          ? HOLD_WORDS[advice.hold]
          : advice.tilt === undefined
            ? 'held in other ways'
            : `tilted by up to ${count(Math.ceil(advice.tilt), 'degree')}`;
      return `If the maker agrees, have ${what} ${how} in ${place}. ${then}`;
    }
    case 'less-hand-room': {
      const kept =
        amount === undefined || amount <= 0
          ? `Leave no room for hands or packing in ${place}, if it can be held at all so`
          : `Make do with ${sayFine(amount, units, 'down')} for hands and packing on every side in ${place}`;
      return `${kept}. ${then}`;
    }
    case 'widen':
      return amount === undefined
        ? `A larger ${place} would help. ${then}`
        : `Every clear measure of ${place} would have to be ${sayLength(amount, units, 'up')} larger. ${then}`;
    case 'other-way':
      return `Look for a way round ${place}: nothing that was tried takes everything through it.${restWords(advice.outcome, report)}`;
    case 'measure-again':
      return `Measure ${place} again: readings that are off by their tolerance could ${mayWords(advice.outcome)} for ${what}.`;
  }
}

function passageName({ passage }: DeliveryAdvice, report: DeliveryReport): string {
  const name = passage === undefined ? undefined : report.pieces[0]?.passages[passage]?.passage;
  return name === undefined ? 'the way' : plainName(name);
}

function wholeWords(outcome: DeliveryOutcome): string {
  switch (outcome) {
    case 'passes':
      return 'Every piece of it goes in.';
    case 'blocked':
      return 'Not every piece of it goes in.';
    case 'undecided':
      return 'Whether every piece of it goes in is not shown.';
  }
}

function restWords(outcome: DeliveryOutcome, { pieces }: DeliveryReport): string {
  if (pieces.every(({ passages }) => passages.length < 2)) return '';
  switch (outcome) {
    case 'passes':
      return ' Everything goes through the rest of the way.';
    case 'blocked':
      return ' Elsewhere on the way something is blocked as well.';
    case 'undecided':
      return ' Elsewhere on the way something is not shown either way.';
  }
}

function mayWords(outcome: DeliveryOutcome): string {
  switch (outcome) {
    case 'passes':
      return 'turn the answer into a yes';
    case 'blocked':
      return 'turn the answer into a no';
    case 'undecided':
      return 'leave the answer open';
  }
}
