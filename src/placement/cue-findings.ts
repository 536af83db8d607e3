import { StrokeClassifier } from '../stroke/classify-traced.js';
import type { ShotProof } from '../stroke/prove-shots.js';
import type { ShotSpot } from '../stroke/shot-shares.js';
import type { StandingRoom } from '../stroke/standing-room.js';
import type { ShotCode, StrokeCue, StrokeScene } from '../stroke/stroke-scene.js';
import { ShotTrace } from '../stroke/trace-shot.js';

/** What was found of all shots with one cue. */
export interface CueFindings {
  readonly open: number;
  readonly cramped: number;
  readonly blocked: number;
  /** Each share is within this of the true one; 0 where proved. */
  readonly error: number;
  /** Radians; null where no shot can be played. */
  readonly steepest: number | null;
  /** A shot that refutes the next better verdict and that the sample missed; null where there is none or it was not needed. */
  readonly counterexample: ShotSpot | null;
}

/** Classes of some shots in a scene. */
export function classes(
  scene: StrokeScene,
  standing: StandingRoom,
  cue: StrokeCue,
  shots: readonly ShotSpot[],
): readonly ShotCode[] {
  const classifier = new StrokeClassifier(scene, cue);
  const trace = new ShotTrace(scene, classifier.ell);
  return shots.map(({ x, y, phi }) => {
    trace.follow(x, y, Math.cos(phi), Math.sin(phi));
    return classifier.classify(trace, standing);
  });
}

/** The shot that a refutation found; null for other outcomes. */
export function spotOf({ shot }: ShotProof): ShotSpot | null {
  return shot === undefined ? null : { x: shot.u, y: shot.v, phi: shot.phi };
}

/** Findings with a proof's counterexample counted in as one more shot: the sample missed something rare. */
export function withRare(
  found: CueFindings,
  kind: 'cramped' | 'blocked',
  shots: number,
  counterexample: ShotSpot | null,
): CueFindings {
  const rest = shots / (shots + 1);
  const rare = (is: boolean): number => (is ? 1 - rest : 0);
  return {
    ...found,
    open: found.open * rest,
    cramped: found.cramped * rest + rare(kind === 'cramped'),
    blocked: found.blocked * rest + rare(kind === 'blocked'),
    counterexample,
  };
}
