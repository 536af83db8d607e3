import { DEFAULTS } from './equipment/defaults.js';
import { PASSAGE_LIMITS } from './equipment/passage-limits.js';
import type { JsonSchema } from './json-schema.js';

/**
 * JSON Schema (draft 2020-12) of {@link DeliveryInput}, for forms, editors and services that take the way in as JSON. Plain data;
 * every default in it is the one that is used.
 *
 * It describes the shape. Whether text is a length, a landing holds its flights or a table has the set of pieces that is named is for
 * the check, which refuses all that this schema refuses.
 */
// A call, marked as pure, because bundlers keep an object that reads from another one even where nobody uses it.
export const deliverySchema: JsonSchema = /* @__PURE__ */ standAlone();

function standAlone(): JsonSchema {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:elbowroom:delivery-input:1',
    title: 'DeliveryInput',
    $ref: '#/$defs/delivery',
    $defs: {
      length: {
        description:
          'A length: millimetres as a number, or text with its unit (mm, cm, m, in, ft), parts from large to small.',
        anyOf: [{ type: 'number' }, { type: 'string', minLength: 1 }],
        examples: [830, '83 cm', '1.2 m', '32 in', '6ft 8in'],
      },
      name: { description: 'Text that is not blank.', type: 'string', pattern: '\\S' },
      ...deliveryDefinitions(),
    },
  };
}

/**
 * The definitions of the way in, to stand among the `$defs` of a schema that has `length` and `name` of its own; `delivery` is the whole.
 */
export function deliveryDefinitions(): Readonly<Record<string, JsonSchema>> {
  const { handRoom, tolerance, maxBoxes } = DEFAULTS.delivery;
  const { count } = PASSAGE_LIMITS;
  return {
    delivery: {
      description: 'The way in: passages in the order walked, and what is carried through them.',
      type: 'object',
      properties: {
        route: {
          description: 'The passages in the order walked.',
          type: 'array',
          items: { $ref: '#/$defs/passage' },
          minItems: 1,
          maxItems: count.passages,
        },
        pieces: {
          description:
            "The name of one of the table's usual sets of pieces, or pieces. Default: its most usual set.",
          anyOf: [
            {
              type: 'string',
              minLength: 1,
              examples: ['one-piece', 'three-piece', 'five-piece', 'assembled'],
            },
            { type: 'array', items: { $ref: '#/$defs/piece' }, minItems: 1, maxItems: count.pieces },
          ],
        },
        handRoom: measured('Room for hands and packing on every side of every piece, mm.', handRoom),
        tolerance: measured('How far off any measurement of the way may be, mm.', tolerance),
        detail: {
          description: "'motions' adds the motion that proves each piece that passes.",
          enum: ['answer', 'motions'],
          default: 'answer',
        },
        maxBoxes: {
          description:
            'Most boxes of poses to look at for one piece in one passage where no closed form decides.',
          ...within(PASSAGE_LIMITS.maxBoxes),
          default: maxBoxes,
        },
      },
      required: ['route'],
      additionalProperties: false,
    },
    piece: pieceSchema(),
    passage: {
      description: 'One passage, told apart by its kind.',
      anyOf: Object.keys(passageSchemas()).map((name) => ({ $ref: `#/$defs/${name}` })),
    },
    ...passageSchemas(),
    space: {
      description: 'What lies on one side of an opening. Left out where there is room enough.',
      type: 'object',
      properties: {
        depth: measured('Free floor square off the wall, from its face to what stands opposite.'),
        left: measured(
          "Free floor along the wall, from the opening's edge, to the left of somebody who walks through. Default: without end.",
        ),
        right: measured('The same to the right.'),
        height: measured('Floor to ceiling. Default: as high as is needed.'),
      },
      required: ['depth'],
      additionalProperties: false,
    },
    level: {
      description: 'A level floor at the foot or the head of a flight. Left out where there is room enough.',
      type: 'object',
      properties: {
        depth: measured('Along the way one walks, from the step to what stands opposite.'),
        height: measured('Floor to ceiling. Default: as high as is needed.'),
      },
      required: ['depth'],
      additionalProperties: false,
    },
  };
}

function pieceSchema(): JsonSchema {
  const { piece } = PASSAGE_LIMITS;
  return {
    description: 'One thing that is carried. Its three measures may come in any order.',
    type: 'object',
    properties: {
      name: { $ref: '#/$defs/name' },
      length: { $ref: '#/$defs/length' },
      width: { $ref: '#/$defs/length' },
      thickness: { $ref: '#/$defs/length' },
      count: { description: 'How many alike.', ...within(piece.count, 'integer'), default: 1 },
      mass: { description: 'Kilograms, each. Default: not known.', ...within(piece.mass) },
      carriers: {
        description: 'How many people carry one. Default: from the mass.',
        ...within(piece.carriers, 'integer'),
      },
      held: {
        description: 'Ways of holding it level. Default: every way.',
        type: 'array',
        items: { enum: ['flat', 'on-edge', 'on-end'] },
        minItems: 1,
        uniqueItems: true,
      },
      tilt: {
        description: 'How far it may be tilted out of any of those ways, degrees.',
        ...within(piece.tilt),
        default: DEFAULTS.delivery.tilt,
      },
    },
    required: ['name', 'length', 'width', 'thickness'],
    additionalProperties: false,
  };
}

function passageSchemas(): Readonly<Record<string, JsonSchema>> {
  const { wallDepth, turn, winderSteps } = DEFAULTS.delivery;
  const width = measured('Clear width.');
  const height = measured('Clear height.');
  const headroom = measured('Upright, from the line of the nosings to what is overhead.');
  const depth = measured('How deep the opening is: wall and lining, mm.', wallDepth);
  const above = measured('Clear width of the flight above. Default: as the flight below.');
  const opening = { width, height, depth };
  const landing = { width, widthAfter: above, headroom, ...slope() };
  return {
    doorway: passage('doorway', 'A doorway, by its clear opening with the door open.', ['width', 'height'], {
      ...opening,
      leaf: measured('Thickness of the open leaf where it takes from the clear width. Default: none.'),
      before: { $ref: '#/$defs/space' },
      after: { $ref: '#/$defs/space' },
    }),
    corridor: passage('corridor', 'A straight corridor.', ['width', 'height'], { width, height }),
    corner: passage('corner', 'Two corridors that meet at an angle.', ['width', 'height'], {
      width,
      height,
      widthAfter: measured('Of the corridor that follows. Default: as the first.'),
      heightAfter: measured('Of the corridor that follows. Default: as the first.'),
      turn: {
        description: 'By how many degrees one turns in walking round it.',
        ...within(PASSAGE_LIMITS.turn),
        default: turn,
      },
    }),
    stair: sloping('stair', 'A straight flight.', {
      width,
      headroom,
      ...slope(),
      run: measured('Length of the flight in plan. Default: without end.'),
      bottom: { $ref: '#/$defs/level' },
      top: { $ref: '#/$defs/level' },
    }),
    'quarter-landing': sloping('quarter-landing', 'A landing on which a stair turns by 90 degrees.', {
      ...landing,
      depth: measured(
        'From the last step of the flight below to the wall opposite. Default: the width of the flight above.',
      ),
      breadth: measured(
        "Across the flight below, from its outer wall to the first step of the flight above. Default: that flight's width.",
      ),
    }),
    'half-landing': sloping('half-landing', 'A landing on which a stair turns back.', {
      ...landing,
      depth: measured(
        'From the last step of the flight below to the wall opposite. Default: the width of that flight.',
      ),
      well: measured('Between the two flights, mm.', 0),
    }),
    winder: sloping('winder', 'Steps that wind round a corner, by their narrowest section.', {
      width,
      headroom,
      ...slope(),
      climb: measured(`Height gained by the steps of the turn. Default: ${winderSteps} steps.`),
    }),
    lift: passage(
      'lift',
      'A lift car with its door in the middle of one side.',
      ['width', 'depth', 'height', 'door'],
      {
        width: measured('Inside, along the wall with the door.'),
        depth: measured('Inside, from the door to the back.'),
        height: measured('Inside.'),
        door: {
          description: 'The clear opening of its door.',
          type: 'object',
          properties: opening,
          required: ['width', 'height'],
          additionalProperties: false,
        },
        before: { $ref: '#/$defs/space' },
      },
    ),
    opening: passage(
      'opening',
      'A window or balcony door through which pieces are passed in from outside.',
      ['width', 'height'],
      {
        ...opening,
        sill: measured('Above the floor inside, mm.', 0),
        after: { $ref: '#/$defs/space' },
      },
    ),
  };
}

function slope(): Readonly<Record<string, JsonSchema>> {
  return {
    pitch: {
      description: 'How steep it is, degrees; or give the rise and the going of one step.',
      ...within(PASSAGE_LIMITS.pitch),
    },
    rise: measured('Of one step, with its going.'),
    going: measured('Of one step, from nosing to nosing in plan.'),
  };
}

function passage(
  kind: string,
  description: string,
  needs: readonly string[],
  properties: Readonly<Record<string, JsonSchema>>,
): JsonSchema {
  return {
    description,
    type: 'object',
    properties: {
      kind: { description: 'What kind of passage it is.', const: kind },
      name: {
        description: 'What the report calls it. Default: its kind and a number.',
        $ref: '#/$defs/name',
      },
      tolerance: measured('How far off its measurements may be. Default: that of the way.'),
      ...properties,
    },
    required: ['kind', ...needs],
    additionalProperties: false,
  };
}

/** A passage with a slope: its pitch, or rise and going, and never both. */
function sloping(
  kind: string,
  description: string,
  properties: Readonly<Record<string, JsonSchema>>,
): JsonSchema {
  return {
    ...passage(kind, description, ['width', 'headroom'], properties),
    oneOf: [
      { required: ['pitch'], properties: { pitch: true, rise: false, going: false } },
      { required: ['rise', 'going'], properties: { pitch: false, rise: true, going: true } },
    ],
  };
}

function measured(description: string, usual?: number): JsonSchema {
  const schema = { description, $ref: '#/$defs/length' };
  return usual === undefined ? schema : { ...schema, default: usual };
}

function within([minimum, maximum]: readonly [number, number], type: 'number' | 'integer' = 'number') {
  return { type, minimum, maximum } as const;
}
