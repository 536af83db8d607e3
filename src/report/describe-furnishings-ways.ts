import type { ClearWay, SharedZone } from '../arrangement/arrangement-report.js';
import {
  count,
  joinWords,
  plainName,
  type SentenceUnits,
  sayAccount,
  sayLength,
  sayPercentUp,
} from './sentences.js';

/** What a clear way is, and what it is not. */
export const WAY_WORDS: string =
  'A clear way is floor that nothing stands on, to walk along in the width asked for. It is no escape route: what those need is set by local codes, which were not looked at here.';

/** How many of the clear ways there are, the tightest of them, and each that is missing. Room is rounded down, what is missing up. */
export function describeWays(ways: readonly ClearWay[], units: SentenceUnits): readonly string[] {
  const [first] = ways;
  if (first === undefined) return [];
  const found = ways.filter((way) => way.found);
  return [
    `${countWords(found.length, ways.length, units, first.width)}${tightestWords(found, units)}`,
    ...ways.filter((way) => !way.found).map((way) => missingWords(way, units)),
  ];
}

function countWords(found: number, all: number, units: SentenceUnits, width: number): string {
  const wide = sayLength(width, units, 'up');
  if (found === 0)
    return all === 1
      ? `The clear way of ${wide} was not found.`
      : `None of the ${all} clear ways of ${wide} was found.`;
  if (all === 1) return `The clear way of ${wide} is there.`;
  return found === all
    ? `All ${count(all, 'clear way')} of ${wide} are there.`
    : `${found} of the ${count(all, 'clear way')} of ${wide} ${found === 1 ? 'is' : 'are'} there.`;
}

function tightestWords(found: readonly ClearWay[], units: SentenceUnits): string {
  let tightest: ClearWay | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const way of found) {
    if (way.widest === null || way.widest - way.width >= least) continue;
    tightest = way;
    least = way.widest - way.width;
  }
  if (tightest === null || least < 0) return '';
  const { available, spare } = sayAccount(
    { needed: tightest.width, available: tightest.width + least, spare: least },
    units,
  );
  // Nothing holds it: it may be wider than was looked for.
  if (tightest.between.length === 0)
    return found.length === 1 ? ` It is at least ${available} wide.` : ` Each is at least ${available} wide.`;
  const subject = found.length === 1 ? 'It leads' : 'The tightest of them leads';
  return ` ${subject} from ${plainName(tightest.from)} to ${plainName(tightest.to)}, with ${spare}${betweenWords(tightest)}.`;
}

function missingWords(way: ClearWay, units: SentenceUnits): string {
  const { from, to, width, widest, certain } = way;
  const ends = `From ${plainName(from)} to ${plainName(to)}`;
  const wide = sayLength(width, units, 'up');
  const short = widest === null ? 0 : width - widest;
  const account =
    widest === null || short <= 0
      ? null
      : sayAccount({ needed: width, available: widest, spare: -short }, units);
  const narrower =
    account === null || widest === null
      ? ''
      : ` The widest that was found takes about ${account.available}, ${account.spare}${betweenWords(way)}.`;
  const none = widest === null ? ', nor a narrower one' : '';
  if (certain) return `${ends}: there is no clear way of ${wide}${none}.${narrower}`;
  return `${ends}: no clear way of ${wide} was found${none}; that there is none is not shown either.${narrower}`;
}

function betweenWords({ between }: ClearWay): string {
  const names = [...new Set(between.map(plainName))];
  if (names.length === 0) return '';
  return names.length === 1 ? ` at ${names[0]}` : ` between ${joinWords(names)}`;
}

/** Which use zones are used by turns, and with whom; one zone a string. Shares are rounded up. */
export function describeSharing(sharing: readonly SharedZone[]): readonly string[] {
  const zones = new Map<string, SharedZone[]>();
  for (const shared of sharing) {
    const key = JSON.stringify([shared.piece, shared.zone]);
    zones.set(key, [...(zones.get(key) ?? []), shared]);
  }
  return [...zones.values()].map((list) => {
    const [{ piece, zone }] = list;
    const partners = list.map(({ with: other, share }) => {
      const who = other === 'cueing' ? "the table's cues and players" : plainName(other);
      return `with ${who} (${share >= 1 ? 'all' : `about ${sayPercentUp(share)}`} of it)`;
    });
    return `${plainName(piece)} (${plainName(zone)}): ${joinWords(partners)}.`;
  });
}
