import { getAt, isList, isObject, type Json, type Path, setAt } from '../document/json.js';
import type { Strings } from '../strings.js';
import { field, length, list, point, words as wordsField } from './make-parts.js';
import type { ChoicePart, Part, Section } from './parts.js';
import { isTaped } from './shape-room.js';

export function obstacleSection(input: Json, strings: Strings): Section {
  const words = strings.obstacles;
  const obstacles = list(input, ['room', 'obstacles'], {
    heading: '',
    name: (i) => words.item(i + 1),
    row: (at, row) => [
      field('text', [...at, 'name'], words.name, { width: 'long' }),
      ...footprintParts(input, [...at, 'footprint'], strings),
      length([...at, 'from'], words.from, { optional: true }),
      length([...at, 'to'], words.to, { optional: true }),
      ...(isObject(row) ? [field('flag', [...at, 'movable'], words.movable, { optional: true })] : []),
    ],
    add: [
      { label: words.add, item: { name: words.newName, footprint: emptyFootprint('rectangle', undefined) } },
    ],
    columns: false,
    ordered: false,
    optional: true,
  });
  return { id: 'obstacles', heading: words.heading, notes: [], parts: [obstacles], folded: false };
}

type Shape = 'rectangle' | 'circle' | 'polygon';

function shapeOf(footprint: Json | undefined): Shape {
  if (isList(footprint)) return 'polygon';
  return isObject(footprint) && Object.hasOwn(footprint, 'diameter') ? 'circle' : 'rectangle';
}

/** Another shape begins where the one before it had its middle. */
function emptyFootprint(shape: string, before: Json | undefined): Json {
  const center = getAt(before ?? null, ['center']) ?? ['', ''];
  if (shape === 'polygon')
    return [
      ['', ''],
      ['', ''],
      ['', ''],
    ];
  return shape === 'circle' ? { center, diameter: '' } : { center, length: '', width: '' };
}

function footprintParts(input: Json, path: Path, strings: Strings): Part[] {
  const words = strings.obstacles;
  const shape = shapeOf(getAt(input, path));
  const choice: ChoicePart = {
    part: 'choice',
    path,
    id: 'shape',
    label: words.shape,
    value: shape,
    options: [
      { value: 'rectangle', label: words.rectangle },
      { value: 'circle', label: words.circle },
      { value: 'polygon', label: words.polygon },
    ],
    radios: false,
    showsValue: false,
    choose: (state, value) => ({
      ...state,
      input: setAt(state.input, path, emptyFootprint(value, getAt(state.input, path))),
    }),
  };
  if (shape === 'polygon') {
    const corners = list(input, path, {
      heading: words.corners,
      name: (i) => strings.room.corner(i + 1),
      row: (at) => point(at, strings.room.x, strings.room.y),
      add: [{ label: strings.room.addCorner, item: ['', ''] }],
      columns: true,
      ordered: true,
      optional: false,
    });
    return [choice, corners];
  }
  const middle = point([...path, 'center'], words.centreX, words.centreY);
  if (shape === 'circle') return [choice, ...middle, length([...path, 'diameter'], words.diameter)];
  return [
    choice,
    ...middle,
    length([...path, 'length'], words.length, { width: 'short' }),
    length([...path, 'width'], words.width, { width: 'short' }),
    field('number', [...path, 'turn'], words.turn, { optional: true, width: 'short' }),
  ];
}

export function doorSection(input: Json, strings: Strings): Section {
  const words = strings.doors;
  const byPoints = { hinge: ['', ''], latch: ['', ''], opens: 'in' };
  const alongWall = { wall: 'A', start: '', width: '', hinge: 'start', opens: 'in' };
  const doors = list(input, ['room', 'doors'], {
    heading: '',
    name: (i) => words.item(i + 1),
    row: (at, row) => [
      field('text', [...at, 'name'], words.name, { optional: true, width: 'long' }),
      ...(isObject(row) && Object.hasOwn(row, 'wall')
        ? wallDoorParts(at, strings)
        : [
            ...point([...at, 'hinge'], words.hingeX, words.hingeY),
            ...point([...at, 'latch'], words.latchX, words.latchY),
          ]),
      wordsField([...at, 'opens'], words.opens, { in: words.in, out: words.out, slides: words.slides }),
    ],
    add: isTaped(input)
      ? [{ label: words.addWall, item: alongWall }]
      : [{ label: words.add, item: byPoints }],
    columns: false,
    ordered: false,
    optional: true,
  });
  return { id: 'doors', heading: words.heading, notes: [], parts: [doors], folded: false };
}

function wallDoorParts(at: Path, strings: Strings): Part[] {
  const words = strings.doors;
  return [
    field('text', [...at, 'wall'], words.wall, { width: 'short' }),
    length([...at, 'start'], words.start),
    length([...at, 'width'], words.width),
    wordsField([...at, 'hinge'], words.hinge, words.ends),
  ];
}
