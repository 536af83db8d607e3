import { DEFAULTS } from './equipment/defaults.js';
import type { JsonSchema } from './json-schema.js';
import { TAPE_LIMITS } from './room/tape-limits.js';

/** The part of the schema that is about rooms by tape readings: definitions to be put beside the others. */
export function tapeDefinitions(): Readonly<Record<string, JsonSchema>> {
  const { survey, room } = DEFAULTS;
  const { count, corner, cornerDeviation } = TAPE_LIMITS;
  const reading = { $ref: '#/$defs/reading' } as const;
  const name = { $ref: '#/$defs/name' } as const;
  const means = ['tape', 'laser', 'estimate'] as const;
  return {
    tapedRoom: {
      description:
        'A room by tape readings instead of coordinates. What stands in it is placed in the plan that they make: the first corner at [0, 0], the first wall along +y where the walk is clockwise, along +x where it is not.',
      type: 'object',
      properties: {
        tape: { $ref: '#/$defs/survey' },
        ceiling: {
          description:
            'As of a room by its corners. Default: flat, at the least of the heights that were read; without any, no ceiling is considered.',
          $ref: '#/$defs/room/properties/ceiling',
        },
        obstacles: {
          description: 'Whatever stands, hangs or juts out in the room.',
          type: 'array',
          items: { $ref: '#/$defs/obstacle' },
        },
        doors: {
          description: 'By points of the plan, or along a wall.',
          type: 'array',
          items: { anyOf: [{ $ref: '#/$defs/door' }, { $ref: '#/$defs/wallDoor' }] },
        },
        tolerance: {
          description: 'How far off measurements other than walls may be, mm.',
          $ref: '#/$defs/length',
          default: room.tolerance,
        },
      },
      required: ['tape'],
      additionalProperties: false,
    },
    wallDoor: {
      description: 'A door by where it is along a wall.',
      type: 'object',
      properties: {
        name,
        wall: { description: 'The corner from which the wall starts, in the order of the walk.', ...name },
        start: { description: 'From that corner to the opening.', $ref: '#/$defs/length' },
        width: { description: 'Width of the opening.', $ref: '#/$defs/length' },
        hinge: {
          description:
            'The end at which the leaf is hung, in the order of the walk; of a sliding door the end it slides to.',
          enum: ['start', 'end'],
        },
        opens: { enum: ['in', 'out', 'slides'] },
      },
      required: ['wall', 'start', 'width', 'hinge', 'opens'],
      additionalProperties: false,
    },
    reading: {
      description: 'A distance that was read, once or several times.',
      anyOf: [
        { $ref: '#/$defs/length' },
        {
          type: 'object',
          properties: {
            length: {
              description: 'The reading, or all of them.',
              anyOf: [
                { $ref: '#/$defs/length' },
                {
                  type: 'array',
                  items: { $ref: '#/$defs/length' },
                  minItems: 1,
                  maxItems: count.repeats,
                },
              ],
            },
            by: { description: 'Default: as the survey says.', enum: means },
            deviation: {
              description: 'Standard deviation of one reading. Default: the usual one of its means.',
              $ref: '#/$defs/length',
            },
          },
          required: ['length'],
          additionalProperties: false,
        },
      ],
    },
    survey: {
      description: 'Walls in order, with their lengths and corners, and whatever else was read.',
      type: 'object',
      properties: {
        walls: {
          type: 'array',
          items: {
            type: 'object',
            properties: {
              from: {
                description: 'Name of the corner it starts from. Default: A, B, ... in order.',
                ...name,
              },
              length: reading,
              corner: {
                description:
                  'The corner at its far end as the room sees it: internal (90 degrees), external (270, it juts into the room), or degrees of floor.',
                anyOf: [
                  { enum: ['internal', 'external'] },
                  { type: 'number', minimum: corner[0], maximum: corner[1] },
                ],
                default: 'internal',
              },
              cornerDeviation: {
                description: 'How sure the corner is that angle: standard deviation, degrees.',
                type: 'number',
                minimum: cornerDeviation[0],
                maximum: cornerDeviation[1],
                default: survey.squareDeviation,
              },
            },
            required: ['length'],
            additionalProperties: false,
          },
          minItems: 3,
          maxItems: count.walls,
        },
        walk: {
          description: 'clockwise: facing a wall from inside, the next one is to the right.',
          enum: ['clockwise', 'anticlockwise'],
          default: 'clockwise',
        },
        diagonals: {
          description: 'Distances between two corners.',
          type: 'array',
          items: {
            type: 'object',
            properties: { from: name, to: name, length: reading },
            required: ['from', 'to', 'length'],
            additionalProperties: false,
          },
          maxItems: count.distances,
        },
        angles: {
          description:
            'Corners by three distances: a mark on the wall that ends there, one on the wall that starts there, and across between them.',
          type: 'array',
          items: {
            type: 'object',
            properties: { corner: name, before: reading, after: reading, across: reading },
            required: ['corner', 'before', 'after', 'across'],
            additionalProperties: false,
          },
          maxItems: count.angles,
        },
        offsets: {
          description: 'Alcoves, chimney breasts and bays that break a wall which was measured as one.',
          type: 'array',
          items: {
            type: 'object',
            properties: {
              kind: { enum: ['alcove', 'breast', 'bay'] },
              name,
              wall: { description: 'Corner from which the wall starts.', ...name },
              start: { description: "From the wall's start to where it begins.", ...reading },
              width: reading,
              depth: reading,
              front: { description: "Length of a bay's front. Default: as wide as the bay.", ...reading },
              rest: { description: "From where it ends to the wall's end: a check.", ...reading },
            },
            required: ['kind', 'wall', 'start', 'width', 'depth'],
            additionalProperties: false,
          },
          maxItems: count.offsets,
        },
        heights: {
          description: 'Heights of the ceiling that were read; the least counts.',
          type: 'array',
          items: reading,
          maxItems: count.heights,
        },
        by: {
          description: 'With what everything was read that says nothing else.',
          enum: means,
          default: 'tape',
        },
        tapeClass: {
          description: 'Accuracy class of the tape by Directive 2014/32/EU, Annex X.',
          enum: ['I', 'II', 'III'],
          default: survey.tapeClass,
        },
      },
      required: ['walls'],
      additionalProperties: false,
    },
  } as const;
}
