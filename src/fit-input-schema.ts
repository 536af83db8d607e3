import { arrangementDefinitions } from './arrangement-schema.js';
import { deliveryDefinitions } from './delivery-schema.js';
import { DEFAULTS } from './equipment/defaults.js';
import { LIMITS } from './equipment/limits.js';
import type { JsonSchema } from './json-schema.js';
import { tapeDefinitions } from './tape-survey-schema.js';

/**
 * JSON Schema (draft 2020-12) of {@link FitInput}, for forms, editors and services that take a question as JSON. Plain data;
 * every default in it is the one that is used.
 *
 * It describes the shape: names of properties, types, words, how many corners at least. What the values say, such as whether
 * text is a length, an outline crosses itself or a table stands under its rails, is for {@link checkFitInput}, which refuses
 * all that this schema refuses. `search.onProgress` and `arrangement.onProgress` are functions and so are not in it.
 */
// A call, marked as pure, because bundlers keep an object that reads from another one even where nobody uses it.
export const fitInputSchema: JsonSchema = /* @__PURE__ */ describeFitInput();

function describeFitInput(): JsonSchema {
  const { stroke, table, cue, room, search } = DEFAULTS;
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:elbowroom:fit-input:1',
    title: 'FitInput',
    description:
      'One question: does this table go into this room, and can people play on it there? Lengths are millimetres as numbers, or text with its unit; angles are degrees, anticlockwise; x runs to the right and y up. As a program the library also takes search.onProgress and arrangement.onProgress, functions, which JSON cannot hold.',
    type: 'object',
    properties: {
      room: {
        description: 'By its corners, or by tape readings.',
        anyOf: [{ $ref: '#/$defs/room' }, { $ref: '#/$defs/tapedRoom' }],
      },
      table: {
        description: 'An id of the catalogue of tables, or measurements.',
        anyOf: [{ type: 'string', minLength: 1, examples: ['pool-9ft'] }, { $ref: '#/$defs/table' }],
      },
      cues: {
        description:
          'Cues by length or with diameters, the wanted one first. Default: the usual cue of the game.',
        type: 'array',
        items: { anyOf: [{ $ref: '#/$defs/length' }, { $ref: '#/$defs/cue' }] },
        minItems: 1,
        maxItems: LIMITS.cue.count,
        examples: [['57 in', '48 in']],
      },
      pose: { $ref: '#/$defs/pose' },
      stroke: { $ref: '#/$defs/stroke' },
      search: { $ref: '#/$defs/search' },
      detail: {
        description: "'shots' adds the map of shares over the field.",
        enum: ['verdict', 'shots'],
        default: 'verdict',
      },
      delivery: { $ref: '#/$defs/delivery' },
      furnishings: { $ref: '#/$defs/furnishings' },
      arrangement: { $ref: '#/$defs/arrangement' },
    },
    required: ['room', 'table'],
    dependentRequired: { arrangement: ['furnishings'] },
    additionalProperties: false,
    $defs: {
      length: {
        description:
          'A length: millimetres as a number, or text with its unit (mm, cm, m, in, ft), parts from large to small.',
        anyOf: [{ type: 'number' }, { type: 'string', minLength: 1 }],
        examples: [1830, '183 cm', '4.5 m', '57 in', '11\' 8 1/2"', '12ft 6in'],
      },
      name: { description: 'Text that is not blank.', type: 'string', pattern: '\\S' },
      point: {
        description: 'A point of the plan: [x, y].',
        type: 'array',
        prefixItems: [{ $ref: '#/$defs/length' }, { $ref: '#/$defs/length' }],
        minItems: 2,
        items: false,
      },
      spacePoint: {
        description: 'A point of a ceiling: [x, y, z], z being its height above the floor.',
        type: 'array',
        prefixItems: [{ $ref: '#/$defs/length' }, { $ref: '#/$defs/length' }, { $ref: '#/$defs/length' }],
        minItems: 3,
        items: false,
      },
      corners: {
        description: 'Corners in order, in either direction, closed or not.',
        type: 'array',
        items: { $ref: '#/$defs/point' },
        minItems: 3,
      },
      footprint: {
        description: 'Corners in order, or a rectangle or circle by its centre.',
        anyOf: [
          { $ref: '#/$defs/corners' },
          {
            description: 'A rectangle.',
            type: 'object',
            properties: {
              center: { $ref: '#/$defs/point' },
              length: { $ref: '#/$defs/length' },
              width: { $ref: '#/$defs/length' },
              turn: {
                description: 'Angle of the length from +x, degrees, anticlockwise.',
                type: 'number',
                default: 0,
              },
            },
            required: ['center', 'length', 'width'],
            additionalProperties: false,
          },
          {
            description: 'A circle.',
            type: 'object',
            properties: { center: { $ref: '#/$defs/point' }, diameter: { $ref: '#/$defs/length' } },
            required: ['center', 'diameter'],
            additionalProperties: false,
          },
        ],
      },
      room: {
        description: 'The room as it was measured.',
        type: 'object',
        properties: {
          outline: {
            description:
              'The inside faces of the walls, corner by corner, in either direction, closed or not.',
            $ref: '#/$defs/corners',
          },
          ceiling: {
            description:
              'Height of a flat ceiling, or its sloping faces by three points each, of which the lowest governs at each place. Default: no ceiling is considered.',
            anyOf: [
              { $ref: '#/$defs/length' },
              {
                type: 'array',
                items: { type: 'array', items: { $ref: '#/$defs/spacePoint' }, minItems: 3, maxItems: 3 },
                minItems: 1,
              },
            ],
          },
          obstacles: {
            description: 'Whatever stands, hangs or juts out in the room.',
            type: 'array',
            items: { $ref: '#/$defs/obstacle' },
          },
          doors: { type: 'array', items: { $ref: '#/$defs/door' } },
          tolerance: {
            description: 'How far off any of these measurements may be, mm.',
            $ref: '#/$defs/length',
            default: room.tolerance,
          },
          wallTolerances: {
            description:
              'How far off each wall may be, square to itself, in the order of the corners that the walls start from: replaces the tolerance for the walls.',
            type: 'array',
            items: { $ref: '#/$defs/length' },
            minItems: 3,
          },
        },
        required: ['outline'],
        additionalProperties: false,
      },
      ...tapeDefinitions(),
      ...deliveryDefinitions(),
      ...arrangementDefinitions(),
      obstacle: {
        description: 'A vertical prism between two heights.',
        type: 'object',
        properties: {
          name: { description: 'What the answer calls it.', $ref: '#/$defs/name' },
          footprint: { $ref: '#/$defs/footprint' },
          from: { description: 'Underside above the floor, mm.', $ref: '#/$defs/length', default: 0 },
          to: { description: 'Top above the floor. Default: up to the ceiling.', $ref: '#/$defs/length' },
          movable: { description: 'Whether advice may suggest moving it.', type: 'boolean', default: false },
        },
        required: ['name', 'footprint'],
        additionalProperties: false,
      },
      door: {
        description:
          'A door in a wall, seen from the room. A leaf that opens in needs its swing free of furniture and tables; a cue may cross it.',
        type: 'object',
        properties: {
          name: { $ref: '#/$defs/name' },
          hinge: {
            description: 'Where the leaf is hung, on a wall. For a sliding door: the end it slides to.',
            $ref: '#/$defs/point',
          },
          latch: { description: 'Where the leaf closes, on the same wall.', $ref: '#/$defs/point' },
          opens: { enum: ['in', 'out', 'slides'] },
        },
        required: ['hinge', 'latch', 'opens'],
        additionalProperties: false,
      },
      size: {
        type: 'object',
        properties: { length: { $ref: '#/$defs/length' }, width: { $ref: '#/$defs/length' } },
        required: ['length', 'width'],
        additionalProperties: false,
      },
      table: {
        description: 'A table by its measurements.',
        type: 'object',
        properties: {
          name: { $ref: '#/$defs/name' },
          game: { $ref: '#/$defs/name' },
          field: { description: 'Play field, nose to nose.', $ref: '#/$defs/size' },
          outer: { description: 'Outside of the rails.', $ref: '#/$defs/size' },
          bedHeight: { description: 'Floor to cloth, mm.', $ref: '#/$defs/length', default: table.bedHeight },
          noseHeight: {
            description: `Cushion nose above the cloth. Default: ${table.noseShare} of the ball's diameter, never above the rail.`,
            $ref: '#/$defs/length',
          },
          railHeight: {
            description: 'Top of the rail above the cloth, mm; by default never below the nose.',
            $ref: '#/$defs/length',
            default: table.railHeight,
          },
          ballDiameter: { description: 'mm.', $ref: '#/$defs/length', default: table.ballDiameter },
          mass: {
            description: 'Kilograms. Default: not known.',
            type: 'number',
            minimum: LIMITS.mass[0],
            maximum: LIMITS.mass[1],
          },
        },
        required: ['field', 'outer'],
        additionalProperties: false,
      },
      cue: {
        description: 'A cue with its diameters.',
        type: 'object',
        properties: {
          length: { $ref: '#/$defs/length' },
          tipDiameter: {
            description: 'mm; by default never more than the butt.',
            $ref: '#/$defs/length',
            default: 2 * cue.tipRadius,
          },
          buttDiameter: {
            description: 'mm; by default never less than the tip.',
            $ref: '#/$defs/length',
            default: 2 * cue.buttRadius,
          },
        },
        required: ['length'],
        additionalProperties: false,
      },
      pose: {
        description:
          'Where the table stands: the centre of its play field and the angle of its long axis from +x. Leave it out to have the best place found.',
        type: 'object',
        properties: {
          x: { $ref: '#/$defs/length' },
          y: { $ref: '#/$defs/length' },
          turn: { description: 'Degrees, anticlockwise.', type: 'number', default: 0 },
        },
        required: ['x', 'y'],
        additionalProperties: false,
      },
      stroke: {
        description: 'How a stroke is played. Each field is a modelling choice with a default.',
        type: 'object',
        properties: {
          backswing: {
            description: 'Full backswing, mm.',
            $ref: '#/$defs/length',
            default: stroke.backswing,
          },
          shortBackswing: {
            description:
              'Short backswing, for a ball in a tight place, mm; by default never more than the full one.',
            $ref: '#/$defs/length',
            default: stroke.shortBackswing,
          },
          margin: {
            description: "Kept between the cue's axis and anything it must not touch, mm.",
            $ref: '#/$defs/length',
            default: stroke.margin,
          },
          tipOffset: {
            description: `Highest the axis passes over the ball's centre. Default: ${stroke.tipOffsetShare} of the ball's radius.`,
            $ref: '#/$defs/length',
          },
          maxElevation: {
            description: 'Steepest elevation that still counts as an ordinary stroke, degrees.',
            type: 'number',
            exclusiveMinimum: 0,
            maximum: LIMITS.stroke.maxElevation,
            default: stroke.maxElevation,
          },
        },
        additionalProperties: false,
      },
      search: {
        description: 'How the best place is looked for.',
        type: 'object',
        properties: {
          turns: {
            description: `'square': only turns parallel to a wall. 'any': every turn; one off square is taken only where it changes the verdict or gains more than ${search.offSquareGain} mm.`,
            enum: ['square', 'any'],
            default: 'any',
          },
          gap: {
            description: 'How close the clearance found must come to the proved upper bound, mm.',
            $ref: '#/$defs/length',
            default: search.gap,
          },
          maxBoxes: {
            description: 'Most boxes of poses to look at. The bounds stay valid when it is reached.',
            type: 'number',
            minimum: 1,
            default: search.maxBoxes,
          },
        },
        additionalProperties: false,
      },
    },
  } as const;
}
