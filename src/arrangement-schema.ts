import { DEFAULTS } from './equipment/defaults.js';
import { FURNISHING_LIMITS } from './equipment/furnishing-limits.js';
import { FURNISHING_IDS } from './equipment/furnishings-ids.js';
import type { JsonSchema } from './json-schema.js';

/**
 * The definitions of other pieces in the room and of how they are arranged, to stand among the `$defs` of a schema that has `length`, `name`
 * and `corners` of its own: `furnishings`, a list, and `arrangement`.
 *
 * They describe the shape. Whether a name is taken, a lamp hangs over the rails or a pose lies in the room is for the check, which refuses
 * all that they refuse.
 */
export function arrangementDefinitions(): Readonly<Record<string, JsonSchema>> {
  const { way, effort } = DEFAULTS.arrangement;
  const { count } = FURNISHING_LIMITS;
  return {
    furnishings: {
      description: 'Other pieces that are to stand in the room, beside the table.',
      type: 'array',
      items: { $ref: '#/$defs/furnishing' },
      maxItems: count.pieces,
      examples: [[{ kind: 'darts' }, { kind: 'sofa', footprint: { length: '180 cm', width: '85 cm' } }]],
    },
    furnishing: furnishing(),
    pieceFootprint: {
      description:
        "Seen from above, in the piece's own frame: its length along its back and its width from back to front; a diameter; or its corners, the back towards -y and the front towards +y.",
      anyOf: [
        { type: 'array', $ref: '#/$defs/corners', maxItems: count.corners },
        {
          description: 'A rectangle.',
          type: 'object',
          properties: { length: { $ref: '#/$defs/length' }, width: { $ref: '#/$defs/length' } },
          required: ['length', 'width'],
          additionalProperties: false,
        },
        {
          description: 'A circle.',
          type: 'object',
          properties: { diameter: { $ref: '#/$defs/length' } },
          required: ['diameter'],
          additionalProperties: false,
        },
      ],
    },
    piecePose: {
      description:
        'Where a piece stands: the middle of its bounding rectangle and the turn of its length from +x. Leave it out to have a place found.',
      type: 'object',
      properties: {
        x: { $ref: '#/$defs/length' },
        y: { $ref: '#/$defs/length' },
        turn: { description: 'Degrees, anticlockwise.', ...TURN, default: 0 },
      },
      required: ['x', 'y'],
      additionalProperties: false,
    },
    useZone: useZone(),
    arrangement: {
      description: 'How the pieces are arranged.',
      type: 'object',
      properties: {
        way: {
          description: 'Width of the clear way from each door to each piece and to the table, mm.',
          $ref: '#/$defs/length',
          default: way,
        },
        effort: {
          description: 'How long to look, in layouts of the whole room that are weighed.',
          ...within('integer', FURNISHING_LIMITS.effort),
          default: effort,
        },
      },
      additionalProperties: false,
    },
  };
}

const TURN = { type: 'number', minimum: -360, maximum: 360 } as const;

function furnishing(): JsonSchema {
  const { count, mass } = FURNISHING_LIMITS;
  return {
    description:
      'A piece, by its kind or by its measurements, or by a kind with some measurements of its own.',
    type: 'object',
    properties: {
      kind: {
        description: 'An id of the catalogue: what is left out is taken from there.',
        enum: [...FURNISHING_IDS],
      },
      name: {
        description: "What the answer calls it. Default: the kind's name, numbered where there are several.",
        $ref: '#/$defs/name',
      },
      footprint: { $ref: '#/$defs/pieceFootprint' },
      height: { description: 'From its underside to its top.', $ref: '#/$defs/length' },
      from: {
        description:
          'Underside above the floor. Default: the floor, the usual one of the kind, or a height over the bed for what hangs over the table.',
        $ref: '#/$defs/length',
      },
      mass: { description: 'Kilograms. Default: not known.', ...within('number', mass) },
      stands: {
        description:
          "Where it may stand: at a wall, in a corner, free on the floor, hung on a wall, or over the table. Default: what is usual for the kind, or 'free'.",
        enum: ['wall', 'corner', 'free', 'hung', 'over-table'],
      },
      turns: {
        description:
          "Which way round: its back to the wall, any side along a wall, every turn, or the turns that are allowed, degrees. Default: what is usual for the kind, 'back' at a wall and 'square' elsewhere.",
        anyOf: [
          { enum: ['back', 'square', 'any'] },
          { type: 'array', items: TURN, minItems: 1, maxItems: count.turns },
        ],
      },
      zones: {
        description: 'Floor that people need to use it; replaces all zones of the kind.',
        type: 'array',
        items: { $ref: '#/$defs/useZone' },
        maxItems: count.zones,
      },
      pose: { $ref: '#/$defs/piecePose' },
    },
    anyOf: [
      { required: ['kind'], properties: { kind: true } },
      { required: ['footprint', 'height'], properties: { footprint: true, height: true } },
    ],
    additionalProperties: false,
  };
}

function useZone(): JsonSchema {
  const side = (where: string): JsonSchema => ({
    description: `How far it reaches ${where}, mm.`,
    $ref: '#/$defs/length',
    default: 0,
  });
  return {
    description:
      "Floor that people need in front of or round a piece: the footprint's bounding rectangle, let out on one side at least.",
    type: 'object',
    properties: {
      name: { description: "Default: 'use', numbered.", $ref: '#/$defs/name' },
      front: side('in front of the piece'),
      back: side('behind the piece'),
      left: side('to the left, seen from the front'),
      right: side('to the right, seen from the front'),
      from: {
        description: 'Height above the floor from which it is to be free, mm.',
        $ref: '#/$defs/length',
        default: 0,
      },
      to: {
        description: 'Height above the floor up to which it is to be free, mm.',
        $ref: '#/$defs/length',
        default: DEFAULTS.arrangement.zoneHeight,
      },
      shares: {
        description:
          'With what it may be shared, by turns: cues and players of the table, and zones of other pieces that may be shared too.',
        type: 'array',
        items: { enum: ['cueing', 'zones'] },
        uniqueItems: true,
        default: ['cueing', 'zones'],
      },
      offDoors: {
        description: 'Whether it keeps off the swings of doors and off doorways.',
        type: 'boolean',
        default: false,
      },
    },
    minProperties: 1,
    additionalProperties: false,
  };
}

function within(type: 'number' | 'integer', [minimum, maximum]: readonly [number, number]) {
  return { type, minimum, maximum } as const;
}
