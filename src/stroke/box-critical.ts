import type { EdgeArrays } from '../geometry/edge-arrays.js';
import { distanceToEdge } from '../geometry/shape-distance.js';
import type { StrokeScene } from './stroke-scene.js';

/** Where along each cushion a frozen ball is tried, as shares of half its length. */
const ALONG_CUSHION = [0, -1, 1, -0.5, 0.5] as const;

/**
 * Tries shots that are likely to be the worst of all, until `violates` is true of one, and tells whether it was: for every wall and
 * every side of every part within `reach` of Q the shortest way from Q to it, and balls frozen to the cushions, played square to
 * them.
 */
export function anyCriticalShot(
  scene: StrokeScene,
  reach: number,
  violates: (u: number, v: number, phi: number) => boolean,
): boolean {
  const { qx, qy, walls, parts } = scene;
  if (anyTowards(walls, qx, qy, reach, violates)) return true;
  if (anyTowards(parts.edges, qx, qy, reach, violates)) return true;
  for (const share of ALONG_CUSHION) {
    if (violates(qx, share * qy, 0) || violates(-qx, share * qy, Math.PI)) return true;
    if (violates(share * qx, qy, Math.PI / 2) || violates(share * qx, -qy, -Math.PI / 2)) return true;
  }
  return false;
}

/** The shortest way from Q to each edge: apart, a rectangle and a segment are nearest at a corner of one of them. */
function anyTowards(
  edges: EdgeArrays,
  qx: number,
  qy: number,
  reach: number,
  violates: (u: number, v: number, phi: number) => boolean,
): boolean {
  for (let i = 0; i < edges.count; i++) {
    let nearest = reach;
    let u = 0;
    let v = 0;
    let x = 0;
    let y = 0;
    for (let end = 0; end < 2; end++) {
      const cornerX = end === 0 ? edges.ax[i] : edges.bx[i];
      const cornerY = end === 0 ? edges.ay[i] : edges.by[i];
      const ballX = Math.min(qx, Math.max(-qx, cornerX));
      const ballY = Math.min(qy, Math.max(-qy, cornerY));
      const distance = Math.hypot(cornerX - ballX, cornerY - ballY);
      if (distance >= nearest) continue;
      nearest = distance;
      u = ballX;
      v = ballY;
      x = cornerX;
      y = cornerY;
    }
    for (let corner = 0; corner < 4; corner++) {
      const ballX = corner % 2 === 0 ? qx : -qx;
      const ballY = corner < 2 ? qy : -qy;
      const distance = distanceToEdge(edges, i, ballX, ballY);
      if (distance >= nearest) continue;
      const foot = edges.tx[i] * (ballX - edges.ax[i]) + edges.ty[i] * (ballY - edges.ay[i]);
      const along = Math.min(edges.length[i], Math.max(0, foot));
      nearest = distance;
      u = ballX;
      v = ballY;
      x = edges.ax[i] + along * edges.tx[i];
      y = edges.ay[i] + along * edges.ty[i];
    }
    if (nearest < reach && nearest > 0 && violates(u, v, Math.atan2(y - v, x - u))) return true;
  }
  return false;
}
