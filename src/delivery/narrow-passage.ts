import type { Level, Passage, Space } from './passages.js';

/**
 * The passage with every clear measure smaller by delta mm (larger for a negative delta) and every wall's depth greater by it: the
 * worst that an error of delta in each reading can do. Angles, pitches, rises, wells and climbs stay. A measure may go below 0: nothing
 * passes there. Whatever passes in `narrowPassage(p, d)` passes in `narrowPassage(p, e)` for every e <= d.
 */
export function narrowPassage(passage: Passage, delta: number): Passage {
  switch (passage.kind) {
    case 'doorway':
    case 'opening':
      return {
        ...passage,
        width: passage.width - delta,
        height: passage.height - delta,
        depth: Math.max(0, passage.depth + delta),
        before: narrowSpace(passage.before, delta),
        after: narrowSpace(passage.after, delta),
      };
    case 'corridor':
      return { ...passage, width: passage.width - delta, height: passage.height - delta };
    case 'corner':
      return {
        ...passage,
        width: passage.width - delta,
        height: passage.height - delta,
        widthAfter: passage.widthAfter - delta,
        heightAfter: passage.heightAfter - delta,
      };
    case 'stair':
      return {
        ...passage,
        width: passage.width - delta,
        headroom: passage.headroom - delta,
        bottom: narrowLevel(passage.bottom, delta),
        top: narrowLevel(passage.top, delta),
      };
    case 'quarter-landing':
    case 'half-landing':
      return {
        ...passage,
        width: passage.width - delta,
        widthAfter: passage.widthAfter - delta,
        headroom: passage.headroom - delta,
        depth: passage.depth - delta,
        breadth: passage.breadth - delta,
      };
    case 'winder':
      return { ...passage, width: passage.width - delta, headroom: passage.headroom - delta };
    case 'lift':
      return {
        ...passage,
        width: passage.width - delta,
        depth: passage.depth - delta,
        height: passage.height - delta,
        door: {
          width: passage.door.width - delta,
          height: passage.door.height - delta,
          depth: Math.max(0, passage.door.depth + delta),
        },
        before: narrowSpace(passage.before, delta),
      };
  }
}

function narrowSpace(space: Space, delta: number): Space {
  return {
    depth: space.depth - delta,
    left: space.left - delta,
    right: space.right - delta,
    height: space.height - delta,
  };
}

function narrowLevel(level: Level, delta: number): Level {
  return { depth: level.depth - delta, height: level.height - delta };
}
