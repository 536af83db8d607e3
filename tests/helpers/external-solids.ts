/**
 * A third opinion in three dimensions: manifold-3d, a library of solids. Rooms become the solid of everything that is not air, and a
 * stroke the solid that its cue sweeps. Development only. Millimetres.
 */
import ManifoldModule, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import type { RoomInput, TableSpec } from '../../src/index.js';
import type { Corners } from '../external/slow/plane.js';
import { footprintRing, plain, plainRing } from './external-plain.js';

const FAR = 4000;
/** Height of what goes up to the ceiling, mm. */
const TOP = 6000;

export async function loadSolids(): Promise<ManifoldToplevel> {
  const module = await ManifoldModule();
  module.setup();
  return module;
}

/** Everything that is not air, out to a good way round the room. Only rooms in plain millimetres. A circle becomes a polygon in it, so solids are never larger than the true ones. */
export function solidRoom({ CrossSection, Manifold }: ManifoldToplevel, room: RoomInput): Manifold {
  const outline = plainRing(room.outline);
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const low: [number, number] = [Math.min(...xs) - FAR, Math.min(...ys) - FAR];
  const block = CrossSection.square([
    Math.max(...xs) + FAR - low[0],
    Math.max(...ys) + FAR - low[1],
  ]).translate(low);
  const walls = block.subtract(section(CrossSection, outline)).extrude(TOP);
  const things = (room.obstacles ?? []).map(({ footprint, from = 0, to = TOP }) => {
    const bottom = plain(from);
    return section(CrossSection, footprintRing(footprint))
      .extrude(plain(to) - bottom)
      .translate([0, 0, bottom]);
  });
  const faces: Manifold[] = [];
  if (typeof room.ceiling === 'number') {
    faces.push(block.extrude(1000).translate([0, 0, room.ceiling]));
  } else if (Array.isArray(room.ceiling)) {
    for (const face of room.ceiling) {
      // What lies above the face: a block that is cut by its plane.
      const [p, q, r] = face.map((spot: readonly unknown[]) => spot.map(plain));
      const u = q.map((value: number, i: number) => value - p[i]);
      const v = r.map((value: number, i: number) => value - p[i]);
      const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
      const up = n[2] < 0 ? n.map((value) => -value) : n;
      const size = Math.hypot(up[0], up[1], up[2]);
      const unit: [number, number, number] = [up[0] / size, up[1] / size, up[2] / size];
      const offset = unit[0] * p[0] + unit[1] * p[1] + unit[2] * p[2];
      faces.push(block.extrude(TOP).trimByPlane(unit, offset));
    }
  }
  return Manifold.union([walls, ...things, ...faces]);
}

export interface SweptStroke {
  /** Ball centre in the room and height of the axis there. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Direction to the butt in plan, and elevation, radians. */
  readonly heading: number;
  readonly elevation: number;
}

/**
 * A round bar with a ball at its far end, upright with its foot at the origin: a prism of 16 sides and a polyhedron inside the
 * true ones.
 */
export function uprightBar({ Manifold }: ManifoldToplevel, length: number, radius: number): Manifold {
  const prism = Manifold.cylinder(length, radius, radius, 16);
  const ball = Manifold.sphere(radius, 32);
  const end = ball.translate([0, 0, length]);
  const bar = prism.add(end);
  for (const part of [prism, ball, end]) part.delete();
  return bar;
}

/** The upright bar laid along the axis of a stroke. */
export function alongAxis(upright: Manifold, { x, y, z, heading, elevation }: SweptStroke): Manifold {
  const cos = Math.cos(elevation);
  const sin = Math.sin(elevation);
  const cosH = Math.cos(heading);
  const sinH = Math.sin(heading);
  // Columns: where the upright bar's x, y and z go, and its foot.
  return upright.transform([
    ...[-sinH, cosH, 0, 0],
    ...[-sin * cosH, -sin * sinH, cos, 0],
    ...[cos * cosH, cos * sinH, sin, 0],
    ...[x, y, z, 1],
  ] as const);
}

/** A cue alone, upright with its tip at the origin: a cone of 48 sides in the true one. */
export function uprightCue(
  { Manifold }: ManifoldToplevel,
  length: number,
  tip: number,
  butt: number,
): Manifold {
  return Manifold.cylinder(length, tip, butt, 48);
}

/** The rails of a table at the origin: from the nose up to the crest in 50 mm, then flat to the rim; all lower by `drop`. */
export function solidRails(
  { CrossSection, Manifold }: ManifoldToplevel,
  table: TableSpec,
  drop: number,
): Manifold {
  const { field, outer, bedHeight } = table;
  const nose = bedHeight + table.noseHeight - drop;
  const top = bedHeight + table.railHeight - drop;
  const depth = 50;
  const flat = CrossSection.square([outer.length, outer.width], true)
    .subtract(CrossSection.square([field.length + 2 * depth, field.width + 2 * depth], true))
    .extrude(top - bedHeight)
    .translate([0, 0, bedHeight]);
  // One cushion: a prism between its nose and its crest, mitred at the corners.
  const cushion = (along: number, out: number, place: (u: number, v: number) => [number, number]): Manifold =>
    Manifold.hull(
      [-1, 1].flatMap((side) => [
        [...place(side * along, out), bedHeight] as const,
        [...place(side * along, out), nose] as const,
        [...place(side * (along + depth), out + depth), bedHeight] as const,
        [...place(side * (along + depth), out + depth), top] as const,
      ]),
    );
  const halfX = field.length / 2;
  const halfY = field.width / 2;
  return Manifold.union([
    flat,
    cushion(halfX, halfY, (u, v) => [u, v]),
    cushion(halfX, halfY, (u, v) => [u, -v]),
    cushion(halfY, halfX, (u, v) => [v, u]),
    cushion(halfY, halfX, (u, v) => [-v, u]),
  ]);
}

/** Volume that two solids share, mm3. */
export function sharedVolume(a: Manifold, b: Manifold): number {
  const shared = a.intersect(b);
  const volume = shared.volume();
  shared.delete();
  return volume;
}

function section(CrossSection: ManifoldToplevel['CrossSection'], ring: Corners) {
  return CrossSection.ofPolygons([ring.map(([x, y]): [number, number] => [x, y])], 'EvenOdd');
}
