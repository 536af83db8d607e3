import { getAt, isObject, type Json, type Path, removeAt, setAt } from '../document/json.js';
import type { Strings } from '../strings.js';
import { field, length, list, words as wordsField } from './make-parts.js';
import type { ChoicePart, Part, Section } from './parts.js';
import type { Catalogues } from './shape-table.js';

export function strokeSection(input: Json, strings: Strings): Section {
  const words = strings.more;
  const optional = { optional: true };
  const parts: Part[] = [
    length(['stroke', 'backswing'], words.backswing, optional),
    length(['stroke', 'shortBackswing'], words.shortBackswing, optional),
    length(['stroke', 'margin'], words.margin, optional),
    field('number', ['stroke', 'maxElevation'], words.maxElevation, optional),
    {
      part: 'group',
      heading: words.pose,
      parts: [
        length(['pose', 'x'], words.poseX, optional),
        length(['pose', 'y'], words.poseY, optional),
        field('number', ['pose', 'turn'], words.poseTurn, optional),
      ],
    },
    wordsField(
      ['search', 'turns'],
      words.turns,
      { any: words.anyTurn, square: words.square },
      strings.form.unset,
    ),
  ];
  const used = ['stroke', 'pose', 'search'].some((key) => getAt(input, [key]) !== undefined);
  return { id: 'stroke', heading: words.stroke, notes: [words.strokeNote], parts, folded: !used };
}

const OWN = '';

export function furnishingSection(input: Json, strings: Strings, { pieces }: Catalogues): Section {
  const words = strings.more;
  const path = ['furnishings'];
  const entries = list(input, path, {
    heading: '',
    name: (i) => words.piece(i + 1),
    row: (at, row) => [
      kindChoice(at, row, strings, pieces),
      field('text', [...at, 'name'], words.pieceName, { optional: true, width: 'long' }),
      ...(isObject(row) && Object.hasOwn(row, 'kind') ? [] : measuredParts(at, strings)),
      length([...at, 'pose', 'x'], words.pieceX, { optional: true, width: 'short' }),
      length([...at, 'pose', 'y'], words.pieceY, { optional: true, width: 'short' }),
      field('number', [...at, 'pose', 'turn'], words.pieceTurn, { optional: true, width: 'short' }),
    ],
    add: [{ label: words.addPiece, item: { kind: pieces[0]?.kind ?? '' } }],
    columns: false,
    ordered: false,
    optional: true,
  });
  return {
    id: 'furnishings',
    heading: words.furnishings,
    notes: [words.furnishingsNote],
    parts: [entries],
    folded: getAt(input, path) === undefined,
  };
}

function kindChoice(at: Path, row: Json, strings: Strings, pieces: Catalogues['pieces']): ChoicePart {
  const words = strings.more;
  const kind = isObject(row) && typeof row.kind === 'string' ? row.kind : OWN;
  const options = pieces.map(({ kind: value, name }) => ({ value, label: name }));
  if (kind !== OWN && !options.some(({ value }) => value === kind))
    options.push({ value: kind, label: kind });
  return {
    part: 'choice',
    path: [...at, 'kind'],
    id: 'kind',
    label: words.kind,
    value: kind,
    options: [...options, { value: OWN, label: words.ownPiece }],
    radios: false,
    showsValue: true,
    choose: (state, value) => {
      const { input } = state;
      if (value !== OWN) return { ...state, input: setAt(input, [...at, 'kind'], value) };
      const bare = removeAt(input, [...at, 'kind']);
      const footprint = getAt(bare, [...at, 'footprint']) ?? { length: '', width: '' };
      return { ...state, input: setAt(bare, [...at, 'footprint'], footprint) };
    },
  };
}

function measuredParts(at: Path, strings: Strings): Part[] {
  const words = strings.more;
  return [
    length([...at, 'footprint', 'length'], words.pieceLength),
    length([...at, 'footprint', 'width'], words.pieceWidth),
    length([...at, 'height'], words.pieceHeight),
    wordsField([...at, 'stands'], words.stands, words.stand, strings.form.unset),
    length([...at, 'from'], words.pieceFrom, { optional: true }),
  ];
}
