import type {
  DeliveryOutcome,
  DeliveryReport,
  HoldReport,
  MomentReport,
  PassageAnswer,
  PieceAnswer,
} from '../delivery/delivery-report.js';
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
import { count, joinWords, plainName, type SentenceUnits, sayLength } from './sentences.js';

const OUTCOME_WORDS: Readonly<Record<DeliveryOutcome, string>> = {
  passes: 'Goes in',
  blocked: 'Does not go in',
  undecided: 'Not shown either way',
};

/** What is carried, one piece a string: sizes and masses rounded up, the outcome, how it is held on the way. */
export function describePieces(report: DeliveryReport, units: SentenceUnits): readonly string[] {
  return report.pieces.map((piece) => {
    const { length, width, thickness } = piece.size;
    const size = [length, width, thickness].map((side) => sayFine(side, units, 'up')).join(' by ');
    const alike = piece.count > 1 ? `, ${piece.count} alike` : '';
    const sure = piece.certain || piece.outcome === 'undecided' ? '' : ', too close to be sure';
    return `${plainName(piece.name)}${alike}: ${size}${massWords(piece)}. ${OUTCOME_WORDS[piece.outcome]}${sure}.${planWords(piece)}`;
  });
}

function massWords({ mass, carriers, massPerCarrier }: PieceAnswer): string {
  const people = carriers === null ? '' : `, ${count(carriers, 'carrier')}`;
  if (mass === null) return `, weight not known${people}`;
  const share =
    carriers === null || carriers < 2 || massPerCarrier === null ? '' : ` at ${whole(massPerCarrier)} each`;
  return `, about ${whole(mass)}${people}${share}`;
}

function whole(kilograms: number): string {
  return `${Math.ceil(kilograms - 1e-9)}\u00a0kg`;
}

/** How the piece is held from passage to passage, for one that goes in and somewhere only just. */
function planWords({ outcome, passages }: PieceAnswer): string {
  const legs: { readonly held: string; readonly through: string[] }[] = [];
  for (const { hold, passage } of passages) {
    if (hold === null) return '';
    const held = holdWords(hold);
    const last = legs.at(-1);
    if (last?.held === held) last.through.push(plainName(passage));
    else legs.push({ held, through: [plainName(passage)] });
  }
  const [first] = legs;
  if (outcome !== 'passes' || first === undefined || passages.every(isEasy)) return '';
  if (legs.length === 1) return ` Held ${first.held}${passages.length > 1 ? ' all the way' : ''}.`;
  return ` Held, through ${legs.map(({ held, through }) => `${joinWords([...new Set(through)])}: ${held}`).join('; through ')}.`;
}

const BASE_WORDS: Readonly<Record<HoldReport['base'], string>> = {
  flat: 'flat',
  'on-edge': 'on edge',
  'on-end': 'on end',
};

/** `on edge`, `flat, leaned by about 20 degrees`, `on edge, tilted by about 33 degrees`. */
export function holdWords({ way, base, tilt }: HoldReport): string {
  return way === 'leaned' || way === 'tilted'
    ? `${BASE_WORDS[base]}, ${way} by ${aboutDegrees(tilt)}`
    : BASE_WORDS[way];
}

function aboutDegrees(degrees: number): string {
  const said = Math.round(degrees);
  return said < 1 ? `less than ${count(1, 'degree')}` : `about ${count(said, 'degree')}`;
}

/** A piece goes through easily when it does so for certain and with this much to spare, mm. */
const EASY = 50;

/** Places told one by one: a text of more is read by nobody. */
const MOST_PLACES = 20;

/** What does not go through, or not easily, one piece in one passage a string; everything else in one more. */
export function describePlaces(report: DeliveryReport, units: SentenceUnits): readonly string[] {
  const places = placesOf(report);
  // The tightest is told in full however easy it is.
  const hard = places.filter(({ answer }, i) => i === 0 || !isEasy(answer));
  const rest = places.filter(({ answer }, i) => i > 0 && isEasy(answer));
  const more = hard.length - MOST_PLACES;
  return [
    ...hard.slice(0, MOST_PLACES).map((place) => placeWords(place, units)),
    ...(more > 0
      ? [`${count(more, 'more case')} ${more === 1 ? 'is' : 'are'} blocked, open or tight as well.`]
      : []),
    ...restWords(rest, units),
  ];
}

function isEasy({ outcome, certain, spare }: PassageAnswer): boolean {
  return outcome === 'passes' && certain && spare.atLeast !== null && spare.atLeast >= EASY;
}

function restWords(rest: readonly Place[], units: SentenceUnits): readonly string[] {
  const [tightest] = rest;
  if (tightest === undefined) return [];
  const what = rest.length === 1 ? placeName(tightest) : 'Everything else';
  return [`${what} goes through with at least ${spareWords(tightest.answer, units)}.`];
}

function placeWords(place: Place, units: SentenceUnits): string {
  const { answer } = place;
  const said = [`${placeName(place)}: ${outcomeWords(answer, units)}.`];
  if (answer.outcome === 'blocked' && answer.hold !== null) {
    said.push(`Least is missing when it is held ${holdWords(answer.hold)}.`);
  }
  const moment = answer.narrowest === null ? '' : momentWords(answer.kind, answer.hold, answer.narrowest);
  if (moment !== '') said.push(`${answer.outcome === 'passes' ? 'Tightest' : 'It sticks'} ${moment}.`);
  if (answer.withoutHandRoom) said.push('The bare piece would go through, with no room left for hands.');
  if (!answer.certain && answer.outcome !== 'undecided') {
    said.push(
      `Measure ${plainName(answer.passage)} again: readings off by no more than their tolerance could change this.`,
    );
  }
  return said.join(' ');
}

function outcomeWords(answer: PassageAnswer, units: SentenceUnits): string {
  switch (answer.outcome) {
    case 'passes': {
      const held = answer.hold === null ? '' : ` held ${holdWords(answer.hold)}`;
      const spare = spareWords(answer, units);
      return `goes through${held}${spare === '' ? '' : `, ${spare}`}`;
    }
    case 'blocked':
      return `no way through, ${blockedWords(answer)}, ${missingWords(answer, units)}`;
    case 'undecided':
      return `neither a way through was found nor was every way ruled out${enoughWords(answer, units)}`;
  }
}

/** When it is tightest, in words for whoever carries; empty where there is nothing to tell. */
function momentWords(kind: PassageAnswer['kind'], hold: HoldReport | null, moment: MomentReport): string {
  switch (kind) {
    case 'corridor':
      return '';
    case 'corner':
      return words(angleWords(hold, moment, 0, 'the first corridor'), rollWords(moment));
    case 'doorway':
    case 'opening':
    case 'lift': {
      const what = kind === 'opening' ? 'the opening' : 'the doorway';
      const middle = moment.y < 0 ? `its middle is still before ${what}` : `its middle has reached ${what}`;
      const angle = angleWords(hold, moment, 90, 'the way straight through');
      return words(`when ${middle}`, angle, rollWords(moment));
    }
    case 'stair': {
      const where = moment.x < 0 ? 'at the foot of the flight' : 'on the flight or at its head';
      const slope = Math.abs(moment.tilt);
      return words(where, slope < 0.5 ? '' : `its upper end raised by ${aboutDegrees(slope)}`);
    }
    case 'quarter-landing':
    case 'half-landing':
    case 'winder':
      return angleWords(hold, moment, 90, 'the flight below');
  }
}

function words(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(', ');
}

/** How the longer side of what it covers in plan lies to a line of the passage; empty where it is not known which side that is. */
function angleWords(
  hold: HoldReport | null,
  { heading }: MomentReport,
  reference: number,
  line: string,
): string {
  if (hold === null) return '';
  const longSide = hold.planLength >= hold.planWidth ? heading : heading + 90;
  const turned = (((longSide - reference) % 180) + 180) % 180;
  const angle = Math.min(turned, 180 - turned);
  if (angle < 0.5) return `with its longer side along ${line}`;
  if (angle > 89.5) return `with its longer side square across ${line}`;
  return `with its longer side in plan at ${aboutDegrees(angle)} to ${line}`;
}

function rollWords({ roll }: MomentReport): string {
  const turned = ((roll % 90) + 90) % 90;
  return turned < 0.5 || turned > 89.5 ? '' : `rolled by ${aboutDegrees(turned)} about its length`;
}

/** Changes of hold told one by one; the rest need less. */
const MOST_CHANGES = 4;

/** Where a piece has to be held differently from one passage to the next, and the room in which any such turn can be made, rounded up. */
export function describeHoldChanges(report: DeliveryReport, units: SentenceUnits): readonly string[] {
  const changes = report.pieces
    .flatMap((piece) => piece.holdChanges.map((change) => ({ piece, ...change })))
    .filter(({ piece, after }) => [after, after + 1].every((i) => piece.passages[i]?.outcome === 'passes'))
    .sort((p, q) => q.needsFloor - p.needsFloor);
  const told = changes.slice(0, MOST_CHANGES).map(({ piece, after, from, to, needsFloor, needsHeight }) => {
    const [before, next] = [after, after + 1].map((i) => plainName(piece.passages[i]?.passage ?? ''));
    return `${plainName(piece.name)}, between ${before} and ${next}: from ${holdWords(from)} to ${holdWords(to)}. A free circle of ${sayLength(needsFloor, units, 'up')} on the floor and ${sayLength(needsHeight, units, 'up')} of free height are enough.`;
  });
  const more = changes.slice(MOST_CHANGES);
  if (more.length === 0) return told;
  const height = sayLength(Math.max(...more.map(({ needsHeight }) => needsHeight)), units, 'up');
  const floor = sayLength(Math.max(...more.map(({ needsFloor }) => needsFloor)), units, 'up');
  return [
    ...told,
    `${count(more.length, 'more change')}: a circle of ${floor} and ${height} of height are enough for each.`,
  ];
}
