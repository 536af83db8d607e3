import { DEFAULTS } from '../equipment/defaults.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import { FURNISHING_LIMITS } from '../equipment/furnishing-limits.js';
import type { FurnishingSpec, Stand } from '../equipment/furnishing-types.js';
import { LAMP_OVER_BED } from '../equipment/furnishings-room.js';
import { usualTurns } from '../equipment/furnishings-zone.js';
import { readPlausible } from '../equipment/read-plausible.js';
import { at, type ProblemList, readName, readNumber, readObject, readWord } from '../length/read-input.js';
import type { NameBook } from '../room/names.js';
import type { Scene } from '../room/scene.js';
import type { CheckedPiece } from './checked-arrangement.js';
import { readKind } from './read-furnishing-kind.js';
import { checkPiecePlace, readPiecePose } from './read-furnishing-pose.js';
import { nearUsual, type PieceShape, readPieceShape, readZeroOr } from './read-furnishing-shape.js';
import { checkOverTable, readTurns } from './read-furnishing-stand.js';
import { readZones } from './read-furnishing-zones.js';

const MEASURES = ['footprint', 'height', 'from', 'mass', 'zones'] as const;
const KEYS = ['kind', 'name', ...MEASURES, 'stands', 'turns', 'pose'] as const;
const STANDS: readonly Stand[] = ['wall', 'corner', 'free', 'hung', 'over-table'];

type Key = (typeof KEYS)[number];

/** A checked piece, and what it was read from. */
export interface ReadPiece {
  /** Without a name of its own it has that of its kind, or none. */
  readonly piece: CheckedPiece;
  readonly usual: FurnishingSpec | null;
  readonly given: ReadonlySet<string>;
  /** Some of its zones are as they are by default. */
  readonly zonesByDefault: boolean;
  /** Its turn was left out of a pose that was given. */
  readonly unturned: boolean;
}

/** What the readers of one piece share. */
interface Reading {
  readonly fields: ReadonlyMap<string, unknown>;
  readonly path: string;
  /** What problems call it. */
  readonly owner: string;
  readonly usual: FurnishingSpec | null;
  readonly problems: ProblemList;
}

/** One piece, or null with problems. Its name is claimed if it has one. */
export function readFurnishing(
  value: unknown,
  path: string,
  index: number,
  scene: Scene | null,
  table: TableSpec | null,
  names: NameBook,
  problems: ProblemList,
): ReadPiece | null {
  const before = problems.problems.length;
  const fields = readObject(value, path, KEYS, problems);
  if (fields === null) return null;
  const usual = fields.has('kind') ? readKind(fields.get('kind'), at(path, 'kind'), problems) : null;
  const name = fields.has('name')
    ? readName(fields.get('name'), at(path, 'name'), "piece's name", problems)
    : null;
  if (name !== null) names.claim(name, `piece ${index + 1}`, at(path, 'name'), problems);
  const owner = name === null ? `piece ${index + 1}` : `"${name}"`;
  const reading = { fields, path, owner, usual, problems };

  const shape = readShape(reading);
  const height = readHeight(reading);
  const stands = fields.has('stands')
    ? readWord(fields.get('stands'), at(path, 'stands'), STANDS, problems)
    : undefined;
  const stand = stands ?? usual?.stand ?? 'free';
  const over = stand === 'over-table';
  const from = readUnderside(reading, stand, table);
  const ownTurns = usual !== null && usual.stand === stand ? usual.turns : usualTurns(stand);
  const turns = fields.has('turns')
    ? readTurns(fields.get('turns'), at(path, 'turns'), stand, owner, problems)
    : ownTurns;
  const mass = readMass(reading);
  const read = fields.has('zones')
    ? readZones(fields.get('zones'), at(path, 'zones'), owner, problems)
    : { zones: over ? [] : (usual?.zones ?? []), byDefault: false };
  const place = fields.has('pose')
    ? readPiecePose(fields.get('pose'), at(path, 'pose'), owner, problems)
    : null;
  if (over) {
    const zones = read !== null && read.zones.length > 0;
    const given = { pose: fields.has('pose'), turns: fields.has('turns'), zones };
    checkOverTable(given, from, table, path, owner, problems);
  }
  if (problems.problems.length > before) return null;
  if (shape === null || height === null || from === null || turns === null || read === null) return null;

  const piece: CheckedPiece = {
    kind: usual?.kind ?? null,
    name: name ?? usual?.name ?? '',
    ring: shape.ring,
    length: shape.length,
    width: shape.width,
    from,
    to: from + height,
    mass,
    stand,
    turns,
    zones: read.zones,
    source: sourceOf(reading),
    pose: place?.pose ?? null,
  };
  if (scene !== null && place !== null) {
    checkPiecePlace(piece, place.pose, at(path, 'pose'), owner, scene, problems);
    if (problems.problems.length > before) return null;
  }
  const given = new Set(fields.keys());
  return { piece, usual, given, zonesByDefault: read.byDefault, unturned: place?.unturned === true };
}

function readShape({ fields, path, owner, usual, problems }: Reading): PieceShape | null {
  if (fields.has('footprint')) {
    return readPieceShape(fields.get('footprint'), at(path, 'footprint'), owner, usual, problems);
  }
  // A kind that is not known is a problem already.
  if (usual !== null || fields.has('kind')) return usual;
  return problems.add(
    at(path, 'footprint'),
    'missing',
    `The footprint of ${owner} is missing: give its length and width, its diameter or its corners, or the kind of piece it is.`,
  );
}

/** From the underside to the top, mm. */
function readHeight({ fields, path, owner, usual, problems }: Reading): number | null {
  const own = usual === null ? null : usual.to - usual.from;
  if (fields.has('height')) {
    const limits = FURNISHING_LIMITS.height;
    const range = own === null ? limits : nearUsual(own, limits);
    return readPlausible(fields.get('height'), at(path, 'height'), `height of ${owner}`, range, problems);
  }
  if (own !== null || fields.has('kind')) return own;
  return problems.add(
    at(path, 'height'),
    'missing',
    `The height of ${owner} is missing: from its underside to its top.`,
  );
}

/** Above the floor, mm. */
function readUnderside(
  { fields, path, owner, usual, problems }: Reading,
  stand: Stand,
  table: TableSpec | null,
): number | null {
  if (fields.has('from')) {
    const what = `underside of ${owner}`;
    return readZeroOr(fields.get('from'), at(path, 'from'), what, FURNISHING_LIMITS.from, problems);
  }
  if (stand === 'over-table') return (table ?? DEFAULTS.table).bedHeight + LAMP_OVER_BED;
  const from = usual?.from ?? 0;
  // A kind that is not known may be one that hangs.
  if (stand !== 'hung' || from > 0 || (usual === null && fields.has('kind'))) return from;
  return problems.add(
    at(path, 'from'),
    'missing',
    `Say how high ${owner} hangs: "from" is its underside above the floor.`,
  );
}

function readMass({ fields, path, owner, usual, problems }: Reading): number | null {
  if (!fields.has('mass')) return usual?.mass ?? null;
  const [min, max] = FURNISHING_LIMITS.mass;
  const limits = { what: `mass of ${owner}`, min, max };
  return readNumber(fields.get('mass'), at(path, 'mass'), limits, ' kg', problems);
}

function sourceOf({ fields, usual }: Reading): string {
  if (usual === null)
    return 'Measurements given; whatever was not is the default (common practice, no source).';
  if (!MEASURES.some((key: Key) => fields.has(key))) return usual.source;
  return `Measurements given; whatever was not is usual for the kind. ${usual.source}`;
}
