import { DEFAULTS } from '../equipment/defaults.js';
import { LAMP_OVER_BED } from '../equipment/furnishings-room.js';
import { writeMm } from '../equipment/read-plausible.js';
import { listNames } from '../room/names.js';
import type { ReadPiece } from './read-furnishing.js';

/** Adds what was assumed of pieces: one sentence for each of a kind with its source, and one for each default of the others. */
export function noteDefaults(pieces: readonly ReadPiece[], assumptions: string[]): void {
  for (const read of pieces) {
    const { piece, usual } = read;
    const taken = takenFromKind(read);
    if (usual === null || taken.length === 0) continue;
    assumptions.push(`"${piece.name}" has the usual ${list(taken)} of its kind (default). ${usual.source}`);
  }
  const note = (which: (read: ReadPiece) => boolean, one: string, several: string): void => {
    const names = pieces.filter(which).map(({ piece }) => piece.name);
    if (names.length > 0) assumptions.push(`${listNames(names)} ${names.length === 1 ? one : several}`);
  };
  const over = ({ piece }: ReadPiece): boolean => piece.stand === 'over-table';
  const own = (read: ReadPiece, key: string): boolean => read.usual === null && !read.given.has(key);
  const aloft = `above the bed (default).`;
  note(
    (read) => over(read) && !read.given.has('from'),
    `hangs ${writeMm(LAMP_OVER_BED)} ${aloft}`,
    `hang ${writeMm(LAMP_OVER_BED)} ${aloft}`,
  );
  note((read) => own(read, 'stands'), 'stands free (default).', 'stand free (default).');
  const turned = (read: ReadPiece, turns: string): boolean =>
    own(read, 'turns') && !over(read) && read.piece.turns === turns;
  note(
    (read) => turned(read, 'back'),
    'has its back to the wall (default).',
    'have their backs to the wall (default).',
  );
  note(
    (read) => turned(read, 'square'),
    'stands square to the walls (default).',
    'stand square to the walls (default).',
  );
  note(
    (read) => own(read, 'zones') && !over(read),
    'is used without floor of its own: no use zone was given (default).',
    'are used without floor of their own: no use zones were given (default).',
  );
  const zones = `free up to ${writeMm(DEFAULTS.arrangement.zoneHeight)} and shared by turns with cues and other zones, where nothing else was said (default).`;
  note((read) => read.zonesByDefault, `has use zones ${zones}`, `have use zones ${zones}`);
  note(
    (read) => read.unturned,
    'stands with its length along x (default).',
    'stand with their lengths along x (default).',
  );
}

function takenFromKind({ usual, given, piece }: ReadPiece): string[] {
  if (usual === null) return [];
  const over = piece.stand === 'over-table';
  return [
    ...(given.has('footprint') ? [] : ['size']),
    ...(given.has('height') ? [] : ['height']),
    ...(given.has('from') || usual.from === 0 || over ? [] : ['underside']),
    ...(given.has('stands') ? [] : ['place']),
    ...(given.has('zones') || usual.zones.length === 0 || over ? [] : ['use zones']),
  ];
}

function list(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
