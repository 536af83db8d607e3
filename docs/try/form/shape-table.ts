import { getAt, isObject, type Json, type Path, setAt } from '../document/json.js';
import type { Strings } from '../strings.js';
import { field, length, list } from './make-parts.js';
import type { ChoicePart, Option, Part, Section } from './parts.js';

/** What the form offers to choose from, with lengths as text. */
export interface Catalogues {
  readonly tables: readonly CatalogueTable[];
  /** Names that are lengths as well: `58 in`. */
  readonly cues: readonly string[];
  readonly pieces: readonly { readonly kind: string; readonly name: string }[];
}

export interface CatalogueTable {
  readonly id: string;
  readonly name: string;
  readonly game: string;
  /** The play field as one says it, */
  readonly about: readonly [length: string, width: string];
  /** and both sizes exactly. */
  readonly field: readonly [length: string, width: string];
  readonly outer: readonly [length: string, width: string];
}

const TABLE: Path = ['table'];
const OWN = 'own';

export function tableSection(input: Json, strings: Strings, { tables }: Catalogues): Section {
  const words = strings.table;
  const table = getAt(input, TABLE);
  const known = tables.find(({ id }) => id === table);
  const own = isObject(table);
  const options: Option[] = tables.map(({ id, name, game, about: [along, across] }) => ({
    value: id,
    label: words.option(name, along, across),
    group: game,
  }));
  if (typeof table === 'string' && known === undefined) options.unshift({ value: table, label: table });
  const choice: ChoicePart = {
    part: 'choice',
    path: TABLE,
    id: 'table',
    label: words.table,
    value: own ? OWN : typeof table === 'string' ? table : '',
    options: [...options, { value: OWN, label: words.own, group: words.ownGroup }],
    radios: false,
    showsValue: !own,
    ...(known === undefined ? {} : { note: words.field(...known.about) }),
    choose: (state, value) => ({
      ...state,
      input: setAt(state.input, TABLE, value === OWN ? measured(known) : value),
    }),
  };
  return {
    id: 'table',
    heading: words.heading,
    notes: [],
    parts: own ? [choice, ...ownParts(strings)] : [choice],
    folded: false,
  };
}

/** One's own table begins with the measurements of the one before it. */
function measured(table: CatalogueTable | undefined): Json {
  const [along, across] = table?.field ?? ['', ''];
  const [outerAlong, outerAcross] = table?.outer ?? ['', ''];
  return {
    field: { length: along, width: across },
    outer: { length: outerAlong, width: outerAcross },
  };
}

function ownParts(strings: Strings): Part[] {
  const words = strings.table;
  const optional = { optional: true };
  return [
    field('text', [...TABLE, 'name'], words.name, { ...optional, width: 'long' }),
    length([...TABLE, 'field', 'length'], words.fieldLength),
    length([...TABLE, 'field', 'width'], words.fieldWidth),
    length([...TABLE, 'outer', 'length'], words.outerLength),
    length([...TABLE, 'outer', 'width'], words.outerWidth),
    length([...TABLE, 'bedHeight'], words.bedHeight, optional),
    length([...TABLE, 'noseHeight'], words.noseHeight, optional),
    length([...TABLE, 'railHeight'], words.railHeight, optional),
    length([...TABLE, 'ballDiameter'], words.ballDiameter, optional),
    field('number', [...TABLE, 'mass'], words.mass, optional),
  ];
}

export function cueSection(input: Json, strings: Strings, { cues }: Catalogues): Section {
  const words = strings.cues;
  const options = cues.map((name) => ({ value: name, label: name }));
  const entries = list(input, ['cues'], {
    heading: '',
    name: (i) => words.item(i + 1),
    row: (at, row) => [
      length(isObject(row) ? [...at, 'length'] : at, words.length, { options, own: strings.form.own }),
    ],
    add: [{ label: words.add, item: cues[0] ?? '' }],
    columns: true,
    ordered: true,
    optional: true,
  });
  return { id: 'cues', heading: words.heading, notes: [words.note], parts: [entries], folded: false };
}
