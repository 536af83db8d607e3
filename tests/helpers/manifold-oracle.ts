/**
 * Passages as solids of manifold-3d, made from the frames told in passages.ts and from nothing else of src/: the air is put together and
 * taken out of a block, while src/delivery/solids.ts puts together what is left. Development only. Millimetres.
 */
import ManifoldModule, { type Manifold, type ManifoldToplevel, type Vec2, type Vec3 } from 'manifold-3d';
import type { Motion, MotionPose } from '../../src/delivery/motion.js';
import type { Passage, Space } from '../../src/delivery/passages.js';

/** Half the edge of the block, and how far endless air goes: out of the block. */
const BLOCK = 20_000;
const FAR = 40_000;

type Range = readonly [from: number, to: number];
type Height = (x: number, y: number) => number;

const limit = (value: number): number => Math.max(-FAR, Math.min(FAR, value));

export class ManifoldOracle {
  private constructor(private readonly library: ManifoldToplevel) {}

  static async load(): Promise<ManifoldOracle> {
    const library = await ManifoldModule();
    library.setup();
    return new ManifoldOracle(library);
  }

  /** Everything round the air of a passage. A well of no thickness is not in it. */
  passage(passage: Passage): Manifold {
    const block = this.library.Manifold.cube([2 * BLOCK, 2 * BLOCK, 2 * BLOCK], true);
    const parts = this.air(passage);
    const air = this.library.Manifold.union(parts);
    const solid = block.subtract(air);
    const status = solid.status();
    if (status !== 'NoError') throw new Error(`The solids of ${passage.kind} failed: ${status}`);
    for (const each of [block, air, ...parts]) each.delete();
    return solid;
  }

  /** The box at a pose, turned by the library's own rotations: about x, then y, then z. */
  box({ along, across, up }: Omit<Motion, 'poses'>, { x, y, z, heading, tilt, roll }: MotionPose): Manifold {
    const degrees = (radians: number): number => (radians * 180) / Math.PI;
    const upright = this.library.Manifold.cube([along, across, up], true);
    const turned = upright.rotate([degrees(roll), -degrees(tilt), degrees(heading)]);
    const placed = turned.translate([x, y, z]);
    upright.delete();
    turned.delete();
    return placed;
  }

  /** The distance of a box from the solid, 0 where they overlap, at most `search`; and the volume they share. */
  distance(solid: Manifold, box: Omit<Motion, 'poses'>, pose: MotionPose, search: number): number {
    const placed = this.box(box, pose);
    const gap = solid.minGap(placed, search);
    placed.delete();
    return gap;
  }

  /** The distance of everything between two poses, their hull, from the solid: of a box that is only shifted, all that it passes through. */
  sweptDistance(
    solid: Manifold,
    box: Omit<Motion, 'poses'>,
    from: MotionPose,
    to: MotionPose,
    search: number,
  ): number {
    const ends = [this.box(box, from), this.box(box, to)];
    const swept = this.library.Manifold.hull(ends);
    const gap = solid.minGap(swept, search);
    for (const each of [...ends, swept]) each.delete();
    return gap;
  }

  sharedVolume(solid: Manifold, box: Omit<Motion, 'poses'>, pose: MotionPose): number {
    const placed = this.box(box, pose);
    const shared = solid.intersect(placed);
    const volume = shared.volume();
    placed.delete();
    shared.delete();
    return volume;
  }

  private air(passage: Passage): Manifold[] {
    switch (passage.kind) {
      case 'doorway':
      case 'opening': {
        const { width, height, depth, sill, before, after } = passage;
        const out = passage.kind === 'opening' ? -FAR : 0;
        return [
          this.block([-width / 2, width / 2], [0, depth], [sill, sill + height]),
          this.space(before, width, 0, -1, out),
          this.space(after, width, depth, 1, 0),
        ];
      }
      case 'corridor':
        return [this.block([-FAR, FAR], [0, passage.width], [0, passage.height])];
      case 'corner': {
        const { width, height, widthAfter, heightAfter, angle } = passage;
        const within = (strip: readonly Vec2[], top: number): Manifold => {
          const cone = this.prism(sector(angle), top);
          const long = this.prism(strip, top);
          const cut = cone.intersect(long);
          cone.delete();
          long.delete();
          return cut;
        };
        const e2 = (t: number, right: number): Vec2 => [
          t * Math.cos(angle) + right * Math.sin(angle),
          t * Math.sin(angle) - right * Math.cos(angle),
        ];
        const first: Vec2[] = [
          [-FAR, 0],
          [FAR, 0],
          [FAR, width],
          [-FAR, width],
        ];
        const second: Vec2[] = [e2(-FAR, 0), e2(-FAR, widthAfter), e2(FAR, widthAfter), e2(FAR, 0)];
        const [low, high] = [height, heightAfter].map(limit).sort((p, q) => p - q);
        const a = within(first, height);
        const b = within(second, heightAfter);
        // Above the lower ceiling nothing is open where both run.
        const tallA = within(first, high + 1);
        const tallB = within(second, high + 1);
        const both = tallA.intersect(tallB);
        const attic = both.trimByPlane([0, 0, 1], low);
        const air = [a.subtract(attic), b.subtract(attic)];
        for (const each of [a, b, tallA, tallB, both, attic]) each.delete();
        return air;
      }
      case 'stair': {
        const { width, pitch, headroom, run, bottom, top } = passage;
        const rise = (x: number): number => x * Math.tan(pitch);
        const parts = [
          this.tilted(
            [-bottom.depth, 0],
            [0, width],
            () => 0,
            () => bottom.height,
          ),
          this.tilted([0, run], [0, width], rise, (x) => rise(x) + headroom),
        ];
        if (run < FAR) {
          parts.push(
            this.tilted(
              [run, run + top.depth],
              [0, width],
              () => rise(run),
              () => rise(run) + top.height,
            ),
          );
        }
        return parts;
      }
      case 'quarter-landing': {
        const { width, widthAfter, headroom, depth, breadth } = passage;
        const tan = Math.tan(passage.pitch);
        return [
          this.over([0, width], [-FAR, 0], (_, y) => y * tan, headroom),
          this.over([0, breadth], [0, depth], () => 0, headroom),
          this.over([breadth, FAR], [depth - widthAfter, depth], (x) => (x - breadth) * tan, headroom),
        ];
      }
      case 'half-landing': {
        const { width, widthAfter, headroom, depth, well } = passage;
        const tan = Math.tan(passage.pitch);
        return [
          this.over([0, width], [-FAR, 0], (_, y) => y * tan, headroom),
          this.over([0, width + well + widthAfter], [0, depth], () => 0, headroom),
          this.over([width + well, width + well + widthAfter], [-FAR, 0], (_, y) => -y * tan, headroom),
        ];
      }
      case 'winder': {
        const { width, headroom, climb } = passage;
        const tan = Math.tan(passage.pitch);
        return [
          this.over([0, width], [-FAR, 0], (_, y) => y * tan, headroom),
          this.block([0, width], [0, width], [climb, headroom]),
          this.over([width, FAR], [0, width], (x) => climb + (x - width) * tan, headroom),
        ];
      }
      case 'lift': {
        const { width, depth, height, door, before } = passage;
        return [
          this.space(before, door.width, 0, -1, 0),
          this.block([-door.width / 2, door.width / 2], [0, door.depth], [0, door.height]),
          this.block([-width / 2, width / 2], [door.depth, door.depth + depth], [0, height]),
        ];
      }
    }
  }

  private space(
    { depth, left, right, height }: Space,
    width: number,
    face: number,
    side: 1 | -1,
    floor: number,
  ): Manifold {
    const ys: Range = side > 0 ? [face, face + depth] : [face - depth, face];
    return this.block([-(width / 2 + left), width / 2 + right], ys, [floor, height]);
  }

  private block(xs: Range, ys: Range, zs: Range): Manifold {
    return this.tilted(
      xs,
      ys,
      () => limit(zs[0]),
      () => limit(zs[1]),
    );
  }

  private over(xs: Range, ys: Range, floor: Height, headroom: number): Manifold {
    return this.tilted(xs, ys, floor, (x, y) => floor(x, y) + headroom);
  }

  /** The hull of what lies between a flat floor and a flat ceiling, however they slope. */
  private tilted(xs: Range, ys: Range, floor: Height, ceiling: Height): Manifold {
    const [x0, x1] = xs.map(limit);
    const [y0, y1] = ys.map(limit);
    if (!(x0 < x1 && y0 < y1)) return this.library.Manifold.union([]);
    const points: Vec3[] = [x0, x1].flatMap((x) =>
      [y0, y1].flatMap((y): Vec3[] => {
        const top = ceiling(x, y);
        return [
          [x, y, floor(x, y)],
          [x, y, Number.isFinite(top) ? top : FAR],
        ];
      }),
    );
    return this.library.Manifold.hull(points);
  }

  private prism(ring: readonly Vec2[], height: number): Manifold {
    const top = limit(height);
    return this.library.Manifold.hull(
      ring.flatMap(([x, y]): Vec3[] => [
        [x, y, 0],
        [x, y, top],
      ]),
    );
  }
}

/** The cone between the directions 0 and `angle`. */
function sector(angle: number): Vec2[] {
  const rim = [0, 1, 2, 3, 4, 5, 6].map((k): Vec2 => {
    const t = (k * angle) / 6;
    return [2 * FAR * Math.cos(t), 2 * FAR * Math.sin(t)];
  });
  return [[0, 0], ...rim];
}
