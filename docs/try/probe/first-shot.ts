import type { BallArea, Shot } from './shot.js';

interface Gap {
  readonly cushion: 'endA' | 'sideA' | 'endB' | 'sideB';
  readonly distance: number;
}

const OUTWARDS = { endA: [1, 0], sideA: [0, 1], endB: [-1, 0], sideB: [0, -1] } as const;

/** The shot that is shown first: a ball frozen to the cushion behind which there is least room, played square off it. */
export function firstShot(gaps: readonly Gap[], { halfX, halfY }: BallArea): Shot {
  const [first, ...rest] = gaps;
  if (first === undefined) return { x: 0, y: 0, direction: 0 };
  const { cushion } = rest.reduce((least, gap) => (gap.distance < least.distance ? gap : least), first);
  const [x, y] = OUTWARDS[cushion];
  const direction = { endA: 0, sideA: 90, endB: 180, sideB: 270 }[cushion];
  return { x: x * halfX, y: y * halfY, direction };
}
