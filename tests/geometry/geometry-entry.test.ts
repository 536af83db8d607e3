import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import * as geometry from '../../src/geometry/index.js';

const ENTRY = join(resolve(dirname(fileURLToPath(import.meta.url)), '../..'), 'src/geometry/index.ts');

/** Declarations as a consumer gets them, by file. */
function declarations(): ReadonlyMap<string, string> {
  const program = ts.createProgram([ENTRY], {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    strict: true,
    esModuleInterop: true,
    skipLibCheck: true,
    types: [],
    declaration: true,
    emitDeclarationOnly: true,
  });
  const files = new Map<string, string>();
  program.emit(undefined, (path, text) => files.set(path, text));
  return files;
}

describe('elbowroom/geometry', () => {
  it('exports these names and no others', () => {
    // Names that programs outside rely on: add freely, take none away without a major version.
    expect(Object.keys(geometry).sort()).toEqual([
      'CIRCLE_EXCESS',
      'CIRCLE_SIDES',
      'REGION_GRID',
      'RegionError',
      'boundingBox',
      'centroid',
      'circleExcess',
      'circleRing',
      'clipToHalfPlane',
      'closestPoints',
      'convexParts',
      'distanceToSegment',
      'edgeArrays',
      'findSelfContacts',
      'freeFloor',
      'growParts',
      'growRing',
      'grownArea',
      'grownPerimeter',
      'intersect',
      'isSimple',
      'mirrored',
      'onSegment',
      'orientation',
      'perimeter',
      'pointInRing',
      'pointToRing',
      'reachInRoom',
      'rectangleRing',
      'regionArea',
      'reversed',
      'ringDirection',
      'ringToSegment',
      'rotated',
      'segmentContact',
      'segmentMeetsConvexInside',
      'segmentsCross',
      'segmentsMeet',
      'signedArea',
      'split',
      'subtract',
      'translated',
      'turnsOnlyLeft',
      'unite',
    ]);
  });

  it('does what its own example says', () => {
    const room = geometry.rectangleRing([2500, 2000], 5000, 4000);
    const table = geometry.rectangleRing([2500, 2000], 2540, 1270);
    expect(geometry.regionArea(geometry.freeFloor(room, [table])) / 1e6).toBe(16.7742);
    expect(geometry.reachInRoom(room, table, 1473, { arcs: 'circumscribed' }).outside).toHaveLength(4);
  });

  it('gives plain data', () => {
    const room = geometry.rectangleRing([2500, 2000], 5000, 4000, 0.3);
    const region = geometry.freeFloor(room, [geometry.circleRing([2500, 2000], 300)]);
    expect(JSON.parse(JSON.stringify(region))).toEqual(region);
  });

  it('keeps the types of its dependencies to itself', () => {
    // A type of @flatten-js/core in our declarations is an error in programs that check libraries (moduleResolution node16).
    const files = declarations();
    expect([...files.keys()].some((path) => path.endsWith('measure.d.ts'))).toBe(true);
    const leaks = [...files].filter(([, text]) =>
      /flatten-js|polygon-clipping|robust-predicates/.test(withoutComments(text)),
    );
    expect(leaks.map(([path]) => path)).toEqual([]);
  });
});

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '');
}
