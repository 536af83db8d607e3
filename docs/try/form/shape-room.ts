import { getAt, isList, isObject, type Json, type Path, removeAt, setAt } from '../document/json.js';
import { START_OUTLINE, START_TAPE } from '../document/start.js';
import type { Strings } from '../strings.js';
import { field, length, list, point } from './make-parts.js';
import type { ChoicePart, FormState, ListPart, Part, Section } from './parts.js';
import { tapeParts } from './shape-tape.js';

const ROOM: Path = ['room'];
/** What each way of writing the room down has for itself; the rest is kept when the way changes. */
const OWN = ['outline', 'wallTolerances', 'tape', 'doors'] as const;

export function isTaped(input: Json): boolean {
  const room = getAt(input, ROOM);
  return isObject(room) && Object.hasOwn(room, 'tape');
}

export function roomSection(input: Json, strings: Strings): Section {
  const words = strings.room;
  const taped = isTaped(input);
  const way: ChoicePart = {
    part: 'choice',
    path: ROOM,
    id: 'way',
    label: words.way,
    value: taped ? 'tape' : 'corners',
    options: [
      { value: 'corners', label: words.byCorners },
      { value: 'tape', label: words.byTape },
    ],
    radios: true,
    showsValue: false,
    choose: (state, value) => changeWay(state, value === 'tape'),
  };
  const corners = list(input, [...ROOM, 'outline'], {
    heading: words.corners,
    name: (i) => words.corner(i + 1),
    row: (path) => point(path, words.x, words.y),
    add: [{ label: words.addCorner, item: ['', ''] }],
    columns: true,
    ordered: true,
    optional: false,
  });
  return {
    id: 'room',
    heading: words.heading,
    notes: [strings.form.lengths, taped ? strings.form.tapePlan : strings.form.plan],
    parts: [
      way,
      ...(taped ? tapeParts(input, [...ROOM, 'tape'], strings) : [corners]),
      ...ceilingParts(input, taped, strings),
      length([...ROOM, 'tolerance'], words.tolerance, { optional: true }),
    ],
    folded: false,
  };
}

function changeWay({ input, otherRoom }: FormState, taped: boolean): FormState {
  if (taped === isTaped(input)) return { input, otherRoom };
  const room = getAt(input, ROOM);
  const entries = Object.entries(isObject(room) ? room : {});
  const isOwn = (key: string): boolean => OWN.some((own) => own === key);
  const before = Object.fromEntries(entries.filter(([key]) => isOwn(key)));
  const shared = Object.fromEntries(entries.filter(([key]) => !isOwn(key)));
  const own = isObject(otherRoom) ? otherRoom : taped ? { tape: START_TAPE } : { outline: START_OUTLINE };
  return { input: setAt(input, ROOM, { ...own, ...shared }), otherRoom: before };
}

function ceilingParts(input: Json, taped: boolean, strings: Strings): Part[] {
  const words = strings.room;
  const path = [...ROOM, 'ceiling'];
  const ceiling = getAt(input, path);
  const value = ceiling === undefined ? 'none' : isList(ceiling) ? 'faces' : 'flat';
  const choice: ChoicePart = {
    part: 'choice',
    path,
    id: 'ceiling',
    label: words.ceiling,
    value,
    options: [
      { value: 'none', label: taped ? words.heightsCeiling : words.noCeiling },
      { value: 'flat', label: words.flat },
      { value: 'faces', label: words.sloping },
    ],
    radios: false,
    showsValue: false,
    choose: (state, chosen) => ({
      ...state,
      input:
        chosen === 'none'
          ? removeAt(state.input, path)
          : setAt(state.input, path, chosen === 'faces' ? [emptyFace()] : ''),
    }),
  };
  if (value === 'none') return [choice];
  return value === 'flat'
    ? [choice, length(path, words.ceilingHeight)]
    : [choice, faces(input, path, strings)];
}

function faces(input: Json, path: Path, strings: Strings): ListPart {
  const words = strings.room;
  return list(input, path, {
    heading: words.faces,
    name: (i) => words.face(i + 1),
    row: (at) =>
      [0, 1, 2].map((i) => ({
        part: 'group',
        heading: words.point(i + 1),
        parts: [
          ...point([...at, i], words.x, words.y),
          field('length', [...at, i, 2], words.z, { width: 'short' }),
        ],
      })),
    add: [{ label: words.addFace, item: emptyFace() }],
    columns: false,
    ordered: false,
    optional: true,
  });
}

function emptyFace(): Json {
  return [
    ['', '', ''],
    ['', '', ''],
    ['', '', ''],
  ];
}
