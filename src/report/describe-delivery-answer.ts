import type { DeliveryReport } from '../delivery/delivery-report.js';
import {
  blockedWords,
  enoughWords,
  missingWords,
  type Place,
  placeName,
  placesOf,
  spareWords,
} from './describe-delivery-places.js';
import { sayFine } from './describe-delivery-sizes.js';
import { count, joinWords, plainName, type SentenceUnits } from './sentences.js';

/** The answer, how sure it is and how it is known: one sentence a string. */
export function describeWayAnswer(report: DeliveryReport, units: SentenceUnits): readonly string[] {
  const places = placesOf(report);
  const [worst] = places;
  if (worst === undefined) return ['Nothing was checked: no passage or no piece was given.'];
  return [
    ...answer(report, worst, places, units),
    ...certainty(report, places),
    ...proof(report, worst, places),
  ];
}

function answer(
  { outcome, certain, handRoom }: DeliveryReport,
  worst: Place,
  places: readonly Place[],
  units: SentenceUnits,
): readonly string[] {
  const measured = certain ? '' : ', as far as the measurements can tell';
  const others = places.filter(({ answer: other }) => other.outcome === outcome).length - 1;
  const label = placeName(worst);
  switch (outcome) {
    case 'passes': {
      const spare = spareWords(worst.answer, units);
      const tightest =
        spare === '' ? '' : ` It is tightest for ${label}, with ${spare} in every clear measure.`;
      return [`Yes${measured}: every piece goes in, ${handRoomWords(handRoom, units)}.${tightest}`];
    }
    case 'blocked':
      return [
        `No${measured}: for ${label} there is no way through, ${blockedWords(worst.answer)}, ${missingWords(worst.answer, units)} in every clear measure.${othersWords(others)}`,
      ];
    case 'undecided':
      return [
        `Not shown either way: for ${label} neither a way through was found nor was every way ruled out${enoughWords(worst.answer, units)}.${othersWords(others)}`,
      ];
  }
}

function othersWords(others: number): string {
  return others <= 0 ? '' : ` There ${others === 1 ? 'is' : 'are'} ${count(others, 'more such case')}.`;
}

function handRoomWords(handRoom: number, units: SentenceUnits): string {
  return handRoom > 0
    ? `with ${sayFine(handRoom, units, 'down')} for hands and packing on every side`
    : 'with no room for hands or packing counted';
}

function certainty({ outcome, certain }: DeliveryReport, places: readonly Place[]): readonly string[] {
  if (certain) return ['It stays so even if every measurement is off by as much as its tolerance.'];
  if (outcome === 'undecided') return [];
  const close = places.filter(({ answer: a }) => a.outcome === outcome && !a.certain);
  const names = [...new Set(close.map(({ answer: a }) => plainName(a.passage)))];
  const which = names.length === 0 ? 'the way' : joinWords(names);
  return [
    `It is close: measurements that are off by no more than their tolerance could change the answer. Measure ${which} again.`,
  ];
}

/** How the answer is known. The word "proved" belongs to motions that were replayed and to bounds. */
function proof(
  { outcome, certain }: DeliveryReport,
  worst: Place,
  places: readonly Place[],
): readonly string[] {
  const start = certain ? 'This is proved' : 'For the measurements exactly as given this is proved';
  if (outcome === 'blocked') {
    const all = worst.answer.anyMotion ? 'every motion whatever' : 'every motion in those ways of holding it';
    return [`${start} by a bound that takes in ${all}.`];
  }
  if (outcome === 'undecided' || places.some(({ answer: a }) => a.replayed === null)) return [];
  return [
    `${start}: for each piece and each passage a motion was found, and it was replayed from its start to its end without touching anything.`,
  ];
}
