/**
 * Plane geometry in the slowest and plainest form, for second opinions. Shares no code with src or with other tests.
 * Coordinates in mm, angles in radians.
 */
export type Spot = readonly [x: number, y: number];
export type Corners = readonly Spot[];

/** Corners of a rectangle by its centre, the angle of its length, and its sides. */
export function rectangleAt(x: number, y: number, angle: number, length: number, width: number): Corners {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return [
    [-0.5, -0.5],
    [0.5, -0.5],
    [0.5, 0.5],
    [-0.5, 0.5],
  ].map(([a, b]): Spot => [x + a * length * c - b * width * s, y + a * length * s + b * width * c]);
}

/** Is the spot inside? By counting crossings of the ray to the right; on the boundary it may say either. */
export function inside(ring: Corners, [x, y]: Spot): boolean {
  let odd = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[j];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) odd = !odd;
  }
  return odd;
}

/** Distance of a spot to the piece of straight line from a to b. */
export function spotToPiece([x, y]: Spot, [ax, ay]: Spot, [bx, by]: Spot): number {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / square;
  const share = Math.max(0, Math.min(1, along));
  const offX = x - (ax + share * dx);
  const offY = y - (ay + share * dy);
  return Math.sqrt(offX * offX + offY * offY);
}

/** Distance of a spot to the boundary of a ring. */
export function spotToBoundary(spot: Spot, ring: Corners): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ring.length; i++) {
    least = Math.min(least, spotToPiece(spot, ring[i], ring[(i + 1) % ring.length]));
  }
  return least;
}

/** How far a spot is outside a ring; 0 inside. */
export function spotToRing(spot: Spot, ring: Corners): number {
  return inside(ring, spot) ? 0 : spotToBoundary(spot, ring);
}

/** How far inside a ring a spot is; negative outside. */
export function depthIn(ring: Corners, spot: Spot): number {
  const away = spotToBoundary(spot, ring);
  return inside(ring, spot) ? away : -away;
}

function crosses(a: Spot, b: Spot, p: Spot, q: Spot): boolean {
  const side = (s: Spot, t: Spot, r: Spot): number =>
    (t[0] - s[0]) * (r[1] - s[1]) - (t[1] - s[1]) * (r[0] - s[0]);
  return side(a, b, p) * side(a, b, q) < 0 && side(p, q, a) * side(p, q, b) < 0;
}

/** Distance between two boundaries; 0 where they cross. */
export function boundaryGap(first: Corners, second: Corners): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < first.length; i++) {
    const a = first[i];
    const b = first[(i + 1) % first.length];
    for (let j = 0; j < second.length; j++) {
      const p = second[j];
      const q = second[(j + 1) % second.length];
      if (crosses(a, b, p, q)) return 0;
      least = Math.min(
        least,
        spotToPiece(a, p, q),
        spotToPiece(b, p, q),
        spotToPiece(p, a, b),
        spotToPiece(q, a, b),
      );
    }
  }
  return least;
}

/**
 * Distance of a convex shape to the walls around it and to rings it must keep off; 0 or less where it touches, overlaps or
 * lies outside. Less than 0: by how much at least one corner is in the way (a rough measure for climbing out).
 */
export function room(shape: Corners, outline: Corners, rings: readonly Corners[]): number {
  let wrong = 0;
  for (const corner of shape) wrong = Math.max(wrong, -depthIn(outline, corner));
  for (const corner of outline)
    if (inside(shape, corner)) wrong = Math.max(wrong, spotToBoundary(corner, shape));
  for (const ring of rings) {
    for (const corner of shape)
      if (inside(ring, corner)) wrong = Math.max(wrong, spotToBoundary(corner, ring));
    for (const corner of ring)
      if (inside(shape, corner)) wrong = Math.max(wrong, spotToBoundary(corner, shape));
  }
  if (wrong > 0) return -wrong;
  let least = boundaryGap(shape, outline);
  for (const ring of rings) least = Math.min(least, boundaryGap(shape, ring));
  return least;
}
