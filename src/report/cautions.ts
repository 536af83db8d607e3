import type { TableSpec } from '../equipment/equipment-types.js';
import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import type { FurnishingId } from '../equipment/furnishings-ids.js';
import { usualCarriers } from '../equipment/handling.js';
import type { Caution } from './fit-report.js';
import { FLOOR_LOADS, type FloorLoad, HEAVY_TABLE, tableLoad } from './floor-loads.js';
import { count, joinWords } from './sentences.js';

/** What the cautions need to know of the room. */
export interface CautionFacts {
  readonly doors: readonly { readonly name: string; readonly opens: 'in' | 'out' | 'slides' }[];
  /** Names of the things that hang over the floor, such as lamps and beams. */
  readonly overheadNames: readonly string[];
  /** False: no ceiling was given, so none was considered. */
  readonly ceilingKnown: boolean;
  /** True: the way in was checked as part of the same question. Default false. */
  readonly deliveryChecked?: boolean;
  /** The other pieces that were asked for, whether or not they have a place. Default none. */
  readonly pieces?: readonly PieceFacts[];
}

export type PieceFacts = Pick<FurnishingSpec, 'name' | 'kind' | 'mass' | 'stand'>;

/** Kinds that need a socket where they stand. */
const MACHINES: readonly FurnishingId[] = ['upright-cabinet', 'pinball', 'music-machine'];

const PRACTICE = 'common practice, no source';

/**
 * What geometry cannot answer and an adviser should say all the same: floor, lifting, light, escape, electrics, doors, the way in.
 * Loads are computed from the table's mass; the figures they are set beside carry their standing in words. No floor and no
 * lift is ever called anything but a question for those who can judge it.
 */
export function cautionsFor(table: TableSpec, facts: CautionFacts): readonly Caution[] {
  const pieces = facts.pieces ?? [];
  return [
    ...floorCautions(table),
    ...pieceLoads(pieces),
    lifting(table),
    ...pieceLifting(pieces),
    lamp(facts),
    ...doors(facts),
    escapeRoute(facts),
    electrics(pieces),
    ...delivery(facts),
  ];
}

function floorCautions(table: TableSpec): readonly Caution[] {
  const published: Caution = {
    code: 'floor-load',
    message: `Figures that building codes design floors for: ${FLOOR_LOADS.map(loadWords).join('; ')}.`,
    source:
      'as named; each figure is second-hand or from memory: look it up in the code that governs the building',
  };
  const limits: Caution = {
    code: 'floor-load',
    message:
      'Such figures are for a whole floor with its people and furniture, and a table stands on legs, so a lower figure ' +
      'here does not show that a floor can carry the table. Ask a structural engineer ' +
      (table.mass !== null && table.mass > HEAVY_TABLE
        ? 'about a table of this weight on anything but solid ground.'
        : 'where it is to stand on anything but solid ground: an upper floor, a timber floor, a balcony, a loft, a floor over a cellar, or one that sags.'),
    source: `EN 1991-1-1 6.1 leaves heavy equipment to be agreed case by case (second-hand); the rest: ${PRACTICE}`,
  };
  return [weight(table), published, limits];
}

function weight(table: TableSpec): Caution {
  if (table.mass === null) {
    return {
      code: 'floor-load',
      message:
        'How much this table weighs is not known here, so its load on the floor was not computed. Ask the maker, and set ' +
        'the weight of the whole table and that on each leg beside what the floor was built for.',
      source: PRACTICE,
    };
  }
  const { length, width } = table.outer;
  const load = tableLoad(table.mass, table.legs, length, width);
  const sentences = [
    `The table is taken to weigh about ${Math.ceil(table.mass)} kg, a load of about ${roundUp(load.total)} kN.`,
    `Spread over its outer rectangle that is about ${roundUp(load.pressure)} kN/m2 on average.`,
  ];
  if (load.perLeg === null) {
    sentences.push('How many legs share it is not known here; the load under each is what the floor feels.');
  } else {
    sentences.push(
      `Each of its ${table.legs} legs carries about ${roundUp(load.perLeg)} kN if they share it equally.`,
    );
  }
  if (load.perDiagonalLeg !== null) {
    sentences.push(
      `On a floor that is not quite flat two diagonal legs may carry nearly all of it: about ${roundUp(load.perDiagonalLeg)} kN each.`,
    );
  }
  sentences.push(
    'People who lean on the rail come on top, and the real table may weigh more: ask the maker.',
  );
  return {
    code: 'floor-load',
    message: sentences.join(' '),
    source: "computed from the table's mass, whose own source stands with the table",
  };
}

function lifting(table: TableSpec): Caution {
  const weightWords =
    table.mass === null
      ? 'A table with a slate bed weighs hundreds of kilograms'
      : `This table is taken to weigh about ${Math.ceil(table.mass)} kg`;
  return {
    code: 'lifting',
    message:
      `${weightWords}, and single slates can weigh 100 to 200 kg. Have it carried, assembled and levelled by professional ` +
      'table fitters, and tell them about stairs, corners and floor coverings beforehand.',
    source: `slate weights derived from published sizes and density; ${PRACTICE}`,
  };
}

/** What the other pieces bring beside the table, as far as their masses are known. */
function pieceLoads(pieces: readonly PieceFacts[]): readonly Caution[] {
  const standing = pieces.filter(({ stand }) => stand !== 'hung' && stand !== 'over-table');
  if (standing.length === 0) return [];
  const weighed = standing.filter(({ mass }) => mass !== null);
  const unknown = namesOf(standing.filter(({ mass }) => mass === null));
  const total = weighed.reduce((sum, { mass }) => sum + (mass ?? 0), 0);
  const sentences: string[] = [];
  if (weighed.length > 0) {
    sentences.push(
      `On the same floor as the table stand ${joinWords(weighed.map(massWords))}: together about ${Math.ceil(total)} kg.`,
    );
  }
  if (unknown.length > 0) {
    sentences.push(
      `How much ${joinWords(unknown)} ${unknown.length === 1 ? 'weighs' : 'weigh'} is not known here.`,
    );
  }
  sentences.push(
    'All of it, and the people who use it, comes on top of what the table brings: tell whoever judges the floor.',
  );
  return [{ code: 'floor-load', message: sentences.join(' '), source: PRACTICE }];
}

/** Pieces that take more than one carrier, those of unknown mass among the machines, and what hangs on walls. */
function pieceLifting(pieces: readonly PieceFacts[]): readonly Caution[] {
  const heavy = pieces.filter(({ mass }) => mass !== null && usualCarriers(mass) > 1);
  const unknown = namesOf(
    pieces.filter(({ mass, kind }) => mass === null && MACHINES.some((machine) => machine === kind)),
  );
  const hung = namesOf(pieces.filter(({ stand }) => stand === 'hung'));
  const sentences: string[] = [];
  if (heavy.length > 0) {
    sentences.push(
      `Not for one person to carry: ${joinWords(heavy.map((piece) => `${massWords(piece)}, shared by ${count(usualCarriers(piece.mass ?? 0), 'carrier')} or more`))}.`,
    );
  }
  if (unknown.length > 0) {
    sentences.push(
      `How much ${joinWords(unknown)} ${unknown.length === 1 ? 'weighs' : 'weigh'} is not known here: find out before anybody lifts, and keep tall machines from tipping over.`,
    );
  }
  if (hung.length > 0) {
    sentences.push(
      `What the wall carries behind ${joinWords(hung)} was not looked at: choose the fixing by how the wall is built.`,
    );
  }
  return sentences.length === 0 ? [] : [{ code: 'lifting', message: sentences.join(' '), source: PRACTICE }];
}

function massWords({ name, mass }: PieceFacts): string {
  return `${name} (about ${Math.ceil(mass ?? 0)} kg)`;
}

function namesOf(pieces: readonly PieceFacts[]): readonly string[] {
  return pieces.map(({ name }) => name);
}

function lamp(facts: CautionFacts): Caution {
  const sentences = [
    'A lamp over the table hangs at least 1.016 m (40 in) above the cloth if it can be moved aside and at least 1.65 m (65 in) ' +
      'if it is fixed, by the world pool rules; German snooker rules ask for at least 0.80 m.',
  ];
  const hung = (facts.pieces ?? []).filter(({ stand }) => stand === 'over-table').map(({ name }) => name);
  const overhead = [...new Set([...facts.overheadNames, ...hung])];
  if (overhead.length > 0) {
    sentences.push(`Given as hanging overhead and counted as such: ${overhead.join(', ')}.`);
  } else {
    sentences.push('No lamp was given, so none was counted: a low one can meet a raised cue.');
  }
  if (hung.length > 0) {
    sentences.push(
      `How ${joinWords(hung)} can be fixed was not looked at: it hangs over people, so have whoever fixes it find out what the ceiling behind its lining carries.`,
    );
  }
  if (!facts.ceilingKnown) sentences.push('No ceiling was given, so none was counted either.');
  return {
    code: 'lamp',
    message: sentences.join(' '),
    source: 'WPA Recommended Equipment Specifications, s. 15; DBU Materialnormen Snooker, s. 3.1',
  };
}

function doors(facts: CautionFacts): readonly Caution[] {
  if (facts.doors.length === 0) {
    return [
      {
        code: 'door',
        message:
          'No door was given. Every door that opens into the room needs its swing free of the table, and a door that opens suddenly ' +
          'can meet a cue or a player.',
        source: PRACTICE,
      },
    ];
  }
  return facts.doors
    .filter((door) => door.opens === 'in')
    .map((door) => ({
      code: 'door',
      message:
        `The swing of ${door.name} was kept free of the table, but a cue may cross it: somebody who opens it during a stroke can ` +
        'meet the cue or the player. Agree on a knock, or hang the door so that it opens out.',
      source: PRACTICE,
    }));
}

function escapeRoute(facts: CautionFacts): Caution {
  const which =
    facts.doors.length === 0
      ? 'the doors'
      : facts.doors.length === 1
        ? 'the door'
        : `each of the ${facts.doors.length} doors`;
  const others = (facts.pieces ?? []).length > 0;
  return {
    code: 'escape-route',
    message:
      `Keep a way past the table ${others ? 'and the other pieces ' : ''}to ${which} and out of the room. How wide it must be is set by local codes, which differ by country, by use and by the ` +
      `number of people; this was not checked here.${others ? ' The clear ways between the pieces are floor to walk along and no escape routes.' : ''}`,
    source: 'local building and fire codes govern',
  };
}

function electrics(pieces: readonly PieceFacts[]): Caution {
  const machines = namesOf(pieces.filter(({ kind }) => MACHINES.some((machine) => machine === kind)));
  const sockets =
    machines.length === 0
      ? ''
      : ` So ${machines.length === 1 ? 'does' : 'do'} ${joinWords(machines)}: ask whether the circuit takes all of them at once, and how they are cut off when nobody plays.`;
  return {
    code: 'electrics',
    message:
      `A lamp over the table needs a feed in the ceiling, and some tables need a socket.${sockets} Leave ${sockets === '' ? 'both' : 'all of it'} to an electrician, and keep ` +
      'cables off the floor where players walk.',
    source: PRACTICE,
  };
}

function delivery(facts: CautionFacts): readonly Caution[] {
  if (facts.deliveryChecked === true) return [];
  return [
    {
      code: 'delivery',
      message:
        'Whether the table can be brought in was not checked here. Measure every doorway, corner, stair and landing on the way; it is mostly the largest slate or ' +
        'the frame that decides, not the assembled table.',
      source: PRACTICE,
    },
  ];
}

function loadWords(load: FloorLoad): string {
  const point = load.point === null ? '' : ` and ${range(load.point)} kN on a point`;
  const note = load.note === '' ? '' : `, ${load.note}`;
  return `${load.name}: ${range(load.area)} kN/m2${point} (${load.standing}${note})`;
}

function range([least, greatest]: readonly [number, number]): string {
  return least === greatest ? String(least) : `${least} to ${greatest}`;
}

/** Two significant figures, rounded up: a load is never said smaller than it is. */
function roundUp(value: number): string {
  if (value <= 0) return '0';
  const digits = Math.max(0, 1 - Math.floor(Math.log10(value)));
  const step = 10 ** digits;
  return (Math.ceil(value * step - 1e-9) / step).toFixed(digits);
}
