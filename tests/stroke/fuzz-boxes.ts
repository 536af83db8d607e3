import type { TableSpec } from '../../src/equipment/equipment-types.js';
import type { Point, Ring } from '../../src/geometry/types.js';
import type { SceneCeilingFace, SceneObstacle } from '../../src/room/scene.js';
import type { ShotBox } from '../../src/stroke/box-bounds.js';
import { BoxJudge, EVERY_FACT } from '../../src/stroke/box-judge.js';
import { StrokeClassifier } from '../../src/stroke/classify-traced.js';
import { prepareStrokes } from '../../src/stroke/prepare-strokes.js';
import { ALL_OPEN, ALL_PLAYABLE, NONE_OPEN, NONE_PLAYABLE, statusOf } from '../../src/stroke/shot-box.js';
import { standingRoom } from '../../src/stroke/standing.js';
import type { StrokeCue } from '../../src/stroke/stroke-scene.js';
import type { StrokeSettings } from '../../src/stroke/stroke-settings.js';
import { ShotTrace } from '../../src/stroke/trace-shot.js';
import {
  between,
  box,
  moved,
  obstacle,
  type Random,
  random,
  randomConvex,
  randomScene,
  room,
  STROKE,
  TABLE,
} from './scenes.js';
import { Oracle, type OracleShot } from './shot-oracle.js';

/**
 * Every status that boxStatus certifies is held against shots in the box: their exact class, and for a few of them the class that
 * points along the cue give (shot-oracle.ts). Scenes in which most shots fail, several things along a ray, shelves, slopes, pillars, long
 * cues, low theta_max, hardly any floor. At full size: `npx tsx tests/stroke/fuzz-boxes.ts [scenes] [seed]`, one line of counts for every 500 scenes.
 */
export interface FuzzSize {
  readonly seed: number;
  readonly scenes: number;
  readonly boxes: number;
  readonly shots: number;
  /** One shot in this many is held against the slow oracle as well. */
  readonly slowOneIn: number;
}

export interface FuzzCounts {
  boxes: number;
  allOpen: number;
  allPlayable: number;
  noneOpen: number;
  nonePlayable: number;
  undecided: number;
  /** Exact classes that a status was held against, and how many were against it; */
  shots: number;
  violations: number;
  /** the same for the slow oracle; */
  slowShots: number;
  slowViolations: number;
  /** and the first few, to look into. */
  readonly examples: string[];
}

/** A room like a star: corners jut in and out, walls may be short and slanted. The table stands free in its middle. */
function starRoom(next: Random): Ring {
  const corners = 5 + Math.floor(14 * next());
  const points: Point[] = [];
  for (let i = 0; i < corners; i++) {
    const angle = ((i + 0.7 * next()) * 2 * Math.PI) / corners;
    const toRim = 1 / Math.max(Math.abs(Math.cos(angle)) / 1330, Math.abs(Math.sin(angle)) / 780);
    const distance = 1.25 * toRim + between(next, 20, 1700);
    points.push([distance * Math.cos(angle), distance * Math.sin(angle)]);
  }
  return points;
}

/** Nothing but trouble: many things one behind the other, at all heights. */
function crowdedScene(next: Random): ReturnType<typeof randomScene> {
  const obstacles: SceneObstacle[] = [];
  const count = 3 + Math.floor(8 * next());
  for (let k = 0; k < count; k++) {
    const angle = 2 * Math.PI * next();
    const radius = between(next, 10, 450);
    const distance = between(next, 0.7, 2.2) * 1400 + radius;
    const [cx, cy]: Point = [distance * Math.cos(angle), distance * Math.sin(angle)];
    const ring =
      next() < 0.5
        ? randomConvex(next, cx, cy, radius)
        : box(cx, cy, 2 * radius, between(next, 20, radius + 20), Math.PI * next());
    const kind = next();
    if (kind < 0.3) obstacles.push(obstacle(`piece ${k}`, ring, 0, between(next, 700, 1300)));
    else if (kind < 0.8)
      obstacles.push(obstacle(`shelf ${k}`, ring, between(next, 830, 1700), between(next, 1700, 2200)));
    else obstacles.push(obstacle(`pillar ${k}`, ring));
  }
  // An obstacle of two parts.
  const x = between(next, 1300, 1900) * (next() < 0.5 ? -1 : 1);
  const parts = [box(x, 0, 300, 900, 0.2), box(x + 60, 400, 900, 200, 0.2)];
  obstacles.push({
    name: 'corner seat',
    ring: parts[0],
    parts,
    from: next() < 0.3 ? 1000 : 0,
    to: between(next, 750, 1100),
    movable: false,
  });
  const ceiling: SceneCeilingFace[] = [];
  for (let k = Math.floor(3 * next()); k > 0; k--) {
    const slope = next() < 0.3 ? 0 : between(next, 0, 2.5);
    const angle = 2 * Math.PI * next();
    ceiling.push({
      name: `face ${k}`,
      height: between(next, 1000, 3000),
      slopeX: slope * Math.cos(angle),
      slopeY: slope * Math.sin(angle),
    });
  }
  const pose = { x: between(next, -500, 500), y: between(next, -500, 500), angle: Math.PI * next() };
  return { scene: moved(room(starRoom(next), obstacles, ceiling), pose), pose };
}

/** Stools under every cue, with pockets of floor between them: all depends on where one can stand. */
function clutteredScene(next: Random): ReturnType<typeof randomScene> {
  const obstacles: SceneObstacle[] = [];
  const spacing = between(next, 420, 760);
  for (let x = -2900; x <= 2900; x += spacing) {
    for (let y = -2350; y <= 2350; y += spacing) {
      const cx = x + between(next, -100, 100);
      const cy = y + between(next, -100, 100);
      const radius = between(next, 20, 130);
      if (Math.abs(cx) - radius < 1280 && Math.abs(cy) - radius < 720) continue;
      if (next() < 0.3) continue;
      obstacles.push(obstacle(`stool ${obstacles.length}`, randomConvex(next, cx, cy, radius), 0, 450));
    }
  }
  const pose = { x: 0, y: 0, angle: 0 };
  const outline = box(0, 0, between(next, 4600, 6500), between(next, 3600, 5400), between(next, -0.05, 0.05));
  return { scene: room(outline, obstacles), pose };
}

function randomStroke(next: Random): StrokeSettings {
  const steepest = [20, 20, 4, 8, 35, 60][Math.floor(6 * next())];
  return {
    ...STROKE,
    margin: next() < 0.8 ? 20 : between(next, 0, 60),
    tipOffset: next() < 0.8 ? 10 : between(next, 0, 15),
    maxElevation: (steepest * Math.PI) / 180,
  };
}

/** The same plan as TABLE's, with rails from lower than the ball's centre to high, and wide or narrow. */
function randomTable(next: Random): TableSpec {
  if (next() < 0.5) return TABLE;
  const noseHeight = between(next, 15, 45);
  const rail = between(next, 60, 250);
  return {
    ...TABLE,
    field: { length: TABLE.outer.length - 2 * rail, width: TABLE.outer.width - 2 * rail },
    noseHeight,
    railHeight: noseHeight + between(next, 0, 25),
    ballDiameter: between(next, 48, 70),
  };
}

function randomCue(next: Random): StrokeCue {
  if (next() < 0.4) return { length: 1448, tipRadius: 5, buttRadius: 15 };
  return {
    length: between(next, 500, 1900),
    tipRadius: between(next, 3, 7),
    buttRadius: between(next, 4, 22),
  };
}

/** From whole tables to hundredths of a millimetre; some with one or two sides of no length. Balls stay in Q. */
function randomBox(next: Random, qx: number, qy: number): ShotBox {
  const scale = 10 ** (-5 * next() ** 2);
  const size = (): number => (next() < 0.1 ? 0 : scale * next() ** 0.5);
  const halfU = qx * size();
  const halfV = qy * size();
  const at = (): number => (next() < 0.3 ? Math.sign(next() - 0.5) : between(next, -1, 1));
  return {
    u: (qx - halfU) * at(),
    v: (qy - halfV) * at(),
    phi: next() < 0.2 ? (Math.PI / 2) * Math.floor(4 * next()) : between(next, -4, 8),
    halfU,
    halfV,
    halfPhi: 1.3 * size(),
  };
}

function scaled(tried: ShotBox, by: number): ShotBox {
  const { halfU, halfV, halfPhi } = tried;
  return { ...tried, halfU: by * halfU, halfV: by * halfV, halfPhi: by * halfPhi };
}

/**
 * The box shrunk about its centre until a bit that it lacks is just certified: where a bound that is a little too bold shows
 * first. The box itself where that does not come about.
 */
function justCertified(tried: ShotBox, next: Random, statusAt: (b: ShotBox) => number): ShotBox {
  const gained = statusAt(scaled(tried, 0.001)) & ~statusAt(tried);
  const bits = [ALL_OPEN, ALL_PLAYABLE, NONE_OPEN, NONE_PLAYABLE].filter((bit) => (gained & bit) !== 0);
  if (bits.length === 0) return tried;
  const bit = bits[Math.floor(bits.length * next())];
  let low = 0.001;
  let high = 1;
  for (let k = 0; k < 20; k++) {
    const middle = (low + high) / 2;
    if ((statusAt(scaled(tried, middle)) & bit) !== 0) low = middle;
    else high = middle;
  }
  return scaled(tried, low);
}

/** Does a class contradict a status? */
function contradicts(status: number, code: number): boolean {
  return (
    ((status & ALL_OPEN) !== 0 && code !== 0) ||
    ((status & ALL_PLAYABLE) !== 0 && code === 2) ||
    ((status & NONE_OPEN) !== 0 && code === 0) ||
    ((status & NONE_PLAYABLE) !== 0 && code !== 2)
  );
}

/** Elevations of the oracle, radians apart; the butt moves by 1 mm from one to the next. */
const ELEVATION_STEP = 1 / 1800;
/** More than the oracle's steps along the cue and in elevation can miss, mm. */
const EASE = 3;
const STANDING_GAP = 8;

/**
 * Is the shot open, and playable, for a judge that is kinder (ease > 0) or stricter (ease < 0) than the model by more than its
 * steps? A kind judge never calls a good shot bad, a strict one never a bad shot good.
 */
function slowJudgement(shot: OracleShot, ease: number): { open: boolean; playable: boolean } {
  const oracle = new Oracle(shot);
  const { stroke } = shot;
  const standing = oracle.standingSlack(STANDING_GAP);
  if (ease > 0 ? standing < -2 * STANDING_GAP : standing < 0) return { open: false, playable: false };
  const rail = oracle.railElevation();
  if (rail > stroke.maxElevation + (ease > 0 ? 1e-6 : -1e-6)) return { open: false, playable: false };
  const open = oracle.free(rail, stroke.backswing, ease);
  let playable = open;
  for (let theta = rail; !playable && theta <= stroke.maxElevation; theta += ELEVATION_STEP) {
    playable = oracle.free(theta, stroke.shortBackswing, ease);
  }
  playable ||= oracle.free(Math.max(rail, stroke.maxElevation), stroke.shortBackswing, ease);
  return { open, playable };
}

function slowlyContradicts(status: number, shot: OracleShot): boolean {
  if ((status & (ALL_OPEN | ALL_PLAYABLE)) !== 0) {
    const kind = slowJudgement(shot, EASE);
    if ((status & ALL_OPEN) !== 0 && !kind.open) return true;
    if ((status & ALL_PLAYABLE) !== 0 && !kind.playable) return true;
  }
  if ((status & (NONE_OPEN | NONE_PLAYABLE)) !== 0) {
    const strict = slowJudgement(shot, -EASE);
    if ((status & NONE_OPEN) !== 0 && strict.open) return true;
    if ((status & NONE_PLAYABLE) !== 0 && strict.playable) return true;
  }
  return false;
}

export function fuzzBoxes(size: FuzzSize): FuzzCounts {
  const next = random(size.seed);
  const counts: FuzzCounts = {
    boxes: 0,
    allOpen: 0,
    allPlayable: 0,
    noneOpen: 0,
    nonePlayable: 0,
    undecided: 0,
    shots: 0,
    violations: 0,
    slowShots: 0,
    slowViolations: 0,
    examples: [],
  };
  for (let s = 0; s < size.scenes; s++) {
    const sort = next();
    const { scene, pose } =
      sort < 0.4 ? crowdedScene(next) : sort < 0.6 ? clutteredScene(next) : randomScene(next, 2 * sort - 0.6);
    const stroke = randomStroke(next);
    const cue = randomCue(next);
    const table = randomTable(next);
    const grow = next() < 0.7 ? 0 : between(next, -30, 30);
    // The slow oracle knows nothing of a tolerance. And under a face that falls so steeply that a cue could come free of it again at
    // a steeper elevation, the model forbids all that is steeper, and the oracle does not.
    const tooSteep = 1 / Math.tan(stroke.maxElevation);
    const comparable = grow === 0 && scene.ceiling.every((f) => Math.hypot(f.slopeX, f.slopeY) < tooSteep);
    const strokes = prepareStrokes(scene, table, pose, stroke, grow);
    const standing = standingRoom(strokes);
    const judge = new BoxJudge(strokes, standing, cue, 2);
    const all = judge.listAll();
    const classifier = new StrokeClassifier(strokes, cue);
    const trace = new ShotTrace(strokes, classifier.ell);
    const statusAt = (b: ShotBox): number => {
      judge.judge(b, EVERY_FACT, all, 1);
      return statusOf(judge.facts);
    };
    for (let b = 0; b < size.boxes; b++) {
      const any = randomBox(next, strokes.qx, strokes.qy);
      const tried = next() < 0.6 ? justCertified(any, next, statusAt) : any;
      const { u, v, phi, halfU, halfV, halfPhi } = tried;
      const status = statusAt(tried);
      counts.boxes++;
      if ((status & ALL_OPEN) !== 0) counts.allOpen++;
      if ((status & ALL_PLAYABLE) !== 0) counts.allPlayable++;
      if ((status & NONE_OPEN) !== 0) counts.noneOpen++;
      if ((status & NONE_PLAYABLE) !== 0) counts.nonePlayable++;
      if (status === 0) counts.undecided++;
      if (status === 0) continue;
      for (let k = 0; k < size.shots; k++) {
        const edge = next() < 0.4;
        const pick = (half: number): number =>
          edge ? half * Math.sign(next() - 0.5) : half * between(next, -1, 1);
        const x = u + pick(halfU);
        const y = v + pick(halfV);
        const direction = phi + pick(halfPhi);
        trace.follow(x, y, Math.cos(direction), Math.sin(direction));
        const code = classifier.classify(trace, standing);
        counts.shots++;
        const wrong = contradicts(status, code);
        let slowlyWrong = false;
        if (comparable && next() * size.slowOneIn < 1) {
          counts.slowShots++;
          slowlyWrong = slowlyContradicts(status, {
            scene,
            table,
            pose,
            stroke,
            cue,
            x,
            y,
            phi: direction,
          });
        }
        if (wrong) counts.violations++;
        if (slowlyWrong) counts.slowViolations++;
        if ((wrong || slowlyWrong) && counts.examples.length < 5) {
          const shot = JSON.stringify({ x, y, direction, code, status, wrong, slowlyWrong });
          counts.examples.push(`seed ${size.seed} scene ${s} box ${JSON.stringify(tried)} shot ${shot}`);
        }
      }
    }
  }
  return counts;
}

if (process.argv[1]?.endsWith('fuzz-boxes.ts')) {
  const scenes = Number(process.argv[2] ?? 10_000);
  const seed = Number(process.argv[3] ?? 1);
  const batch = 500;
  for (let k = 0; k * batch < scenes; k++) {
    console.log(fuzzBoxes({ seed: seed + k, scenes: batch, boxes: 200, shots: 12, slowOneIn: 2000 }));
  }
}
