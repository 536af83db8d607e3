import {
  type ShotTally,
  type StandingRoom,
  type StrokeCue,
  type StrokeScene,
  shotShares,
  standingRoom,
} from 'elbowroom/stroke';
import { MODEST_PLANS, type SamplePlan } from './frame-budget.js';

/** What is asked of the worker. `place` changes with the room, the table or its pose: then the floor to stand on is found anew. */
export interface RefineJob {
  readonly id: number;
  readonly place: number;
  readonly strokes: StrokeScene;
  readonly cue: StrokeCue;
}

/** One step finer: shots tried so far of all that are to be tried, and what they came to. */
export interface RefineStep {
  readonly id: number;
  readonly plan: SamplePlan;
  readonly done: number;
  readonly total: number;
  readonly tally: ShotTally;
}

/** Lets other work, such as the next question, go first. */
export type Pause = () => Promise<void>;

/** Tries more and more shots, pausing between the steps; ends when `goOn` says so. */
export async function refineInSteps(
  job: RefineJob,
  standing: StandingRoom,
  plans: readonly SamplePlan[],
  pause: Pause,
  goOn: () => boolean,
  tell: (step: RefineStep) => void,
): Promise<void> {
  const total = plans.reduce((sum, { shots }) => sum + shots, 0);
  let done = 0;
  for (const plan of plans) {
    await pause();
    if (!goOn()) return;
    const tally = sampleShots(job.strokes, standing, job.cue, plan);
    done += tally.shots;
    tell({ id: job.id, plan, done, total, tally });
  }
}

export function sampleShots(
  strokes: StrokeScene,
  standing: StandingRoom,
  cue: StrokeCue,
  { shots, columns, rows }: SamplePlan,
): ShotTally {
  return shotShares(strokes, standing, [cue], { shots, grid: { columns, rows } });
}

/** Does the finer reckoning, in a worker where the page has one, else in idle time and not as fine. */
export class Refiner {
  readonly #worker: Worker | null;
  readonly #tell: (step: RefineStep) => void;
  #id = 0;
  #running = false;
  #standing: { readonly place: number; readonly room: StandingRoom } | null = null;

  constructor(startWorker: (() => Worker) | null, tell: (step: RefineStep) => void) {
    this.#tell = (step) => {
      if (step.id === this.#id) tell(step);
    };
    this.#worker = startWorker?.() ?? null;
    this.#worker?.addEventListener('message', (event: MessageEvent<RefineStep>) => this.#tell(event.data));
  }

  start(place: number, strokes: StrokeScene, cue: StrokeCue): void {
    this.#id++;
    this.#running = true;
    const job: RefineJob = { id: this.#id, place, strokes, cue };
    if (this.#worker !== null) {
      this.#worker.postMessage(job);
      return;
    }
    if (this.#standing?.place !== place) this.#standing = { place, room: standingRoom(strokes) };
    const { id } = job;
    void refineInSteps(job, this.#standing.room, MODEST_PLANS, idle, () => this.#id === id, this.#tell);
  }

  /** Whatever is still being reckoned is of no interest any more. */
  stop(): void {
    if (!this.#running) return;
    this.#running = false;
    this.#id++;
    this.#worker?.postMessage(null);
  }
}

function idle(): Promise<void> {
  return new Promise((resolve) => {
    if ('requestIdleCallback' in window) window.requestIdleCallback(() => resolve(), { timeout: 500 });
    else setTimeout(resolve, 30);
  });
}
