import { type Handling, handlingOf } from '../equipment/handling.js';
import type { DeliveryCaution } from './delivery-report.js';
import { type Passage, STAIR_KINDS } from './passages.js';

/** What the cautions need to know of the way and of what is carried. */
export interface DeliveryFacts {
  readonly route: readonly Pick<Passage, 'kind' | 'name'>[];
  readonly pieces: readonly {
    readonly name: string;
    /** Kilograms, each; null where not known. */
    readonly mass: number | null;
    /** Null: as many as is usual for the mass. */
    readonly carriers: number | null;
  }[];
}

interface Share extends Handling {
  readonly name: string;
  readonly mass: number;
}

// The table of cautions in report/ lies a floor above and cannot be used from here: this is the one table for the way in.

const PRACTICE = 'common practice, no source';

/**
 * What geometry cannot answer of a way in: who lifts how much, stairs, lifts, hoists, floors, the way out. Shares of a mass are rounded
 * up and guideline figures down. Nothing is ever called harmless, what stays below a guideline figure least of all.
 */
export function cautionsForDelivery(facts: DeliveryFacts): readonly DeliveryCaution[] {
  return [
    ...handling(facts),
    ...stairs(facts),
    ...lift(facts),
    ...hoist(facts),
    floorProtection(),
    escapeRoute(),
    fitters(),
  ];
}

function handling({ pieces }: DeliveryFacts): readonly DeliveryCaution[] {
  const shares = pieces
    .flatMap(({ name, mass, carriers }): Share[] =>
      mass === null ? [] : [{ name, mass, ...handlingOf(mass, carriers) }],
    )
    .sort((a, b) => b.massPerCarrier - a.massPerCarrier);
  const unknown = pieces.flatMap(({ name, mass }) => (mass === null ? [name] : []));
  return [
    ...(shares.length > 0 ? [sharing(shares)] : []),
    ...(unknown.length > 0 ? [weighing(unknown)] : []),
  ];
}

function sharing(shares: readonly Share[]): DeliveryCaution {
  const above = shares.filter(({ exceeded }) => exceeded.length > 0);
  // Where nothing is above a figure the heaviest share stands for the rest.
  const told = above.length > 0 ? above : shares.slice(0, 1);
  const parts = told.map(
    ({ name, mass, carriers, massPerCarrier }) =>
      `"${name}" ${Math.ceil(massPerCarrier)} kg (${Math.ceil(mass)} kg, ${carriers} ${carriers === 1 ? 'carrier' : 'carriers'})`,
  );
  const figures = above.flatMap(({ exceeded }) => exceeded.map(({ source }) => source));
  return {
    code: 'handling',
    message:
      `What each carrier takes if all take alike: ${once(parts).join('; ')}. ${aboveWords(above)} Such figures are for a firm grip close to the body on a ` +
      'level floor; reach, doorways, stairs and distance bring them down, carriers seldom take alike, and a share below a figure does not show that ' +
      'nobody will be hurt.',
    source: once(['shares computed from the masses, which are estimates unless weighed', ...figures]).join(
      '; ',
    ),
  };
}

/** Guideline by guideline: of which pieces each carrier takes more than it sets. */
function aboveWords(above: readonly Share[]): string {
  const groups = new Map<string, readonly string[]>();
  for (const { name, exceeded } of above) {
    for (const { name: figure, perCarrier } of exceeded) {
      const label = `${Math.floor(perCarrier * 10 + 1e-6) / 10} kg (${figure})`;
      groups.set(label, [...(groups.get(label) ?? []), name]);
    }
  }
  if (groups.size === 0) return 'No share is above the guideline figures looked at here.';
  return `Guideline figures for each carrier that this exceeds: ${[...groups].map(([label, names]) => `${label}, by ${quoted(names)}`).join('; ')}.`;
}

function quoted(names: readonly string[]): string {
  return once(names.map((name) => `"${name}"`)).join(', ');
}

function weighing(names: readonly string[]): DeliveryCaution {
  return {
    code: 'handling',
    message:
      `Not known here is the weight of: ${quoted(names)}. Weigh it or ask the maker before anybody lifts, and count the carriers by that. Slates and ` +
      'frames weigh more than they look.',
    source: PRACTICE,
  };
}

function stairs({ route }: DeliveryFacts): readonly DeliveryCaution[] {
  const names = route.flatMap(({ kind, name }) => (STAIR_KINDS.includes(kind) ? [name] : []));
  if (names.length === 0) return [];
  return [
    {
      code: 'stairs',
      message:
        `On stairs (${quoted(names)}): those at the lower end take most of the weight and stand in its path if it slips. Put no more people below the load than ` +
        'must hold it there, let nobody stand or walk underneath or follow behind, let one person give the word, look at treads and handrails first, and ' +
        'agree where the load can be set down. Whether a stair carries the load and its carriers was not checked.',
      source: PRACTICE,
    },
  ];
}

function lift({ route, pieces }: DeliveryFacts): readonly DeliveryCaution[] {
  const names = route.flatMap(({ kind, name }) => (kind === 'lift' ? [name] : []));
  if (names.length === 0) return [];
  const heaviest = Math.max(0, ...pieces.map(({ mass }) => mass ?? 0));
  const weight =
    heaviest > 0 ? ` The heaviest piece of known weight is taken to weigh ${Math.ceil(heaviest)} kg.` : '';
  return [
    {
      code: 'lift',
      message:
        `Only the room inside was checked (${quoted(names)}), not what it carries. Read the rated load off the plate in the car and set the piece, its trolley and ` +
        `everybody who rides along beside it.${weight} Ask whoever runs the lift whether goods may ride in it at all, and how a load must stand: near a wall or on small wheels ` +
        'it bears otherwise than people do.',
      source: `the plate in the car and the operator govern; the rest: ${PRACTICE}`,
    },
  ];
}

function hoist({ route }: DeliveryFacts): readonly DeliveryCaution[] {
  const names = route.flatMap(({ kind, name }) => (kind === 'opening' ? [name] : []));
  if (names.length === 0) return [];
  return [
    {
      code: 'hoist',
      message:
        `How a piece comes up to the opening from outside (${quoted(names)}) was not checked. Where it has to be raised, that is work for a licensed lifting contractor with their own ` +
        'gear: never from a balcony rail or a window frame, with nobody underneath, not in wind, with the permits that street and neighbours ask for and by the codes that hold there.',
      source: `local codes and permits govern; the rest: ${PRACTICE}`,
    },
  ];
}

function floorProtection(): DeliveryCaution {
  return {
    code: 'floor-protection',
    message:
      'Cover floors, treads, door linings and corners on the way, and fix the covers so that nobody slips on them. A slate set down on one corner breaks tiles and itself. What floors on the ' +
      'way carry, a stack of slates above all, was not checked.',
    source: PRACTICE,
  };
}

function escapeRoute(): DeliveryCaution {
  return {
    code: 'escape-route',
    message:
      'While something large is carried through a corridor or up a stair nobody else gets out that way. Tell everybody in the building beforehand, keep another way out open where there is one, set ' +
      'nothing down on the way for longer than a rest, and hang every door again that was taken off.',
    source: 'local building and fire codes govern',
  };
}

function fitters(): DeliveryCaution {
  return {
    code: 'fitters',
    message:
      'Have slates and frames carried by professional table fitters: a slate breaks when it bends or is let down hard, and how it may be held is for them or the maker to say. Show them the passages with little room ' +
      'to spare. That a piece goes through says nothing about whether people can hold and see well enough to take it there.',
    source: PRACTICE,
  };
}

/** Each text once, in the order of its first place. */
function once(texts: readonly string[]): readonly string[] {
  return [...new Set(texts)];
}
