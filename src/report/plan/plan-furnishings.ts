import type { ArrangementReport, PieceReport, SharedZone } from '../../arrangement/arrangement-report.js';
import { zoneName } from '../../arrangement/layout-rules.js';
import { pointInRing } from '../../geometry/predicates.js';
import type { Scene, SceneObstacle } from '../../room/scene.js';
import { hasFront } from '../describe-furnishings-places.js';
import { joinWords } from '../sentences.js';
import { type Box, cornersOf } from './boxes.js';
import { readable } from './dimension.js';
import type { Draft } from './draft.js';
import type { Candidate } from './label-placer.js';
import { textBox } from './pen.js';
import type { PlanThing } from './plan-obstacles.js';
import { type PaperPoint, plainText } from './svg.js';
import { LINE, type Paint } from './theme.js';
import { edgesOf } from './view.js';
import { WORDS } from './words.js';

/** The mark of a front, a triangle on the middle of that side, mm on paper. */
const FRONT = { height: 1.7, half: 1.1 } as const;

/** What the name of a zone may cost at most, in mm of line covered; dearer ones are left out, since the report has them. */
const MOST_COST = 8;

/** Outline of a use zone: the long-dashed double-dotted thin line of ISO 128-2 (05.1), which frames areas. */
const ZONE_LINE = { stroke: 'zone', width: LINE.thin, dashes: 'doubleChain' } as const;

/** A piece that has a place. */
export type StandingPiece = PieceReport & { readonly pose: NonNullable<PieceReport['pose']> };

export function standingPieces(arrangement: ArrangementReport | undefined): readonly StandingPiece[] {
  return (arrangement?.pieces ?? []).flatMap((piece) =>
    piece.pose === null ? [] : [{ ...piece, pose: piece.pose }],
  );
}

/** The room with bodies and use zones among its things, by the names that gaps give them. */
export function withPieces(scene: Scene, pieces: readonly StandingPiece[]): Scene {
  const thing = ({ name, ring, from, to }: PlanThing): SceneObstacle => ({
    name,
    ring,
    parts: [ring],
    from,
    to,
    movable: true,
  });
  const more = pieces.flatMap((piece) => [
    thing(piece),
    ...piece.zones.map((zone) => thing({ ...zone, name: zoneName(piece.name, zone.name) })),
  ]);
  return more.length === 0 ? scene : { ...scene, obstacles: [...scene.obstacles, ...more] };
}

/** Use zones on the floor, below all else that stands there; those used by turns have another pattern. */
export function drawZones(
  { pen, view, placer, legend }: Draft,
  pieces: readonly StandingPiece[],
  sharing: readonly SharedZone[],
  clip: string,
): void {
  for (const piece of pieces) {
    for (const zone of piece.zones) {
      const shared = sharing.some((one) => one.piece === piece.name && one.zone === zone.name);
      const paint: Paint = { ...ZONE_LINE, fill: { pattern: shared ? 'zone-shared' : 'zone' } };
      const ring = view.ring(zone.ring);
      pen.group(
        shared ? 'zone-shared' : 'zone',
        () => pen.polygon(ring, paint),
        ` clip-path="url(#${clip})"`,
      );
      placer.avoid(edgesOf(ring), 0.7);
      legend.explain(shared ? WORDS.zoneShared : WORDS.zone, 'area', paint);
    }
  }
}

/** A mark at the front of each piece that has one. It stands on the front side, so that it shows at thin pieces too. */
export function drawFronts(draft: Draft, pieces: readonly StandingPiece[], clip: string): void {
  const { pen, view, placer, legend } = draft;
  for (const piece of pieces) {
    if (!hasFront(piece)) continue;
    const { x, y, turn } = piece.pose;
    const angle = (turn * Math.PI) / 180;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const front = Math.max(...piece.ring.map(([px, py]) => cos * (py - y) - sin * (px - x)));
    const at = (u: number, v: number): PaperPoint =>
      view.at([x + cos * u - sin * (front + v), y + sin * u + cos * (front + v)]);
    const half = FRONT.half * view.scale;
    const mark = [at(-half, 0), at(half, 0), at(0, FRONT.height * view.scale)];
    pen.group('front', () => pen.polygon(mark, { fill: 'ink' }), ` clip-path="url(#${clip})"`);
    placer.avoid(edgesOf(mark), 3);
    legend.explain(WORDS.front, 'front', { fill: 'ink' });
  }
}

/** Names of use zones along their longer sides, for as many as find room inside. */
export function labelZones({ view, placer, labels }: Draft, pieces: readonly StandingPiece[]): void {
  for (const { zones, ring: body } of pieces) {
    const own = view.ring(body);
    for (const { name, ring } of zones) {
      const text = plainText(name);
      const box = textBox([text], 0, 0);
      const places = insideRectangle(view.ring(ring), box).filter((place) => keepsOff(place.box, own));
      const found = placer.place(places, MOST_COST);
      if (found === null) continue;
      labels.group('zone-text', () => {
        labels.blank({ ...found.box, width: box.width - 0.4, height: box.height - 0.6 });
        labels.textIn(found.box, [text]);
      });
    }
  }
}

/** Places along the longer sides of a rectangle on paper, none beyond its sides; the middle is the cheapest. */
function insideRectangle(
  ring: readonly PaperPoint[],
  { width, height }: Pick<Box, 'width' | 'height'>,
): readonly Candidate[] {
  if (ring.length !== 4) return [];
  const [a, b, c] = ring;
  const [ab, bc] = [Math.hypot(b[0] - a[0], b[1] - a[1]), Math.hypot(c[0] - b[0], c[1] - b[1])];
  const [from, to] = ab >= bc ? [a, b] : [b, c];
  const angle = readable(Math.atan2(to[1] - from[1], to[0] - from[0]));
  const along = (Math.max(ab, bc) - width) / 2;
  const across = (Math.min(ab, bc) - height) / 2;
  if (along < 0 || across < 0) return [];
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return SPREAD.flatMap((i) =>
    SPREAD.map((j): Candidate => {
      const x = (a[0] + c[0]) / 2 + i * along * cos - j * across * sin;
      const y = (a[1] + c[1]) / 2 + i * along * sin + j * across * cos;
      return { box: { x, y, width, height, angle }, cost: Math.hypot(i, j) };
    }),
  );
}

/** Whether the box lies off a body that its zone covers; what merely crosses the box costs as much as its edges do. */
function keepsOff(box: Box, body: readonly PaperPoint[]): boolean {
  return [...cornersOf(box), [box.x, box.y] as const].every(([x, y]) => pointInRing(body, x, y) < 0);
}

const SPREAD = [0, 0.4, -0.4, 0.8, -0.8] as const;

/** Notes in the key of what no line can show: pieces without a place, and pieces that do not fit where they stand. */
export function notePieces({ legend }: Draft, arrangement: ArrangementReport): void {
  const { pieces } = arrangement;
  const homeless = namesOf(pieces.filter(({ pose }) => pose === null));
  if (homeless !== '') legend.note(WORDS.homeless(homeless), null);
  const misfits = namesOf(pieces.filter(({ pose, fits }) => pose !== null && !fits));
  if (misfits !== '') legend.note(WORDS.misfits(misfits), null);
}

/** What readers that hear the drawing are told of the pieces. */
export function describePiecesDrawn({ pieces, ways }: ArrangementReport): string {
  return WORDS.piecesDescription(
    namesOf(pieces.filter(({ pose }) => pose !== null)),
    namesOf(pieces.filter(({ pose }) => pose === null)),
    ways.filter(({ found }) => found).length,
  );
}

function namesOf(pieces: readonly PieceReport[]): string {
  return pieces.length === 0 ? '' : joinWords(pieces.map(({ name }) => plainText(name)));
}
