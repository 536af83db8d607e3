import { type StandingRoom, standingRoom } from 'elbowroom/stroke';
import { FINE_PLANS } from './frame-budget.js';
import { type RefineJob, refineInSteps } from './refine.js';

/** The program of the worker: one file of its own, whose bundle the page starts. A job replaces the one before; null ends it. */

let wanted = 0;
let standing: { readonly place: number; readonly room: StandingRoom } | null = null;

self.addEventListener('message', ({ data: job }: MessageEvent<RefineJob | null>) => {
  wanted = job?.id ?? 0;
  if (job === null) return;
  if (standing?.place !== job.place) standing = { place: job.place, room: standingRoom(job.strokes) };
  void refineInSteps(
    job,
    standing.room,
    FINE_PLANS,
    // A message that has come meanwhile is taken first.
    () => new Promise((resolve) => setTimeout(resolve, 0)),
    () => wanted === job.id,
    (step) => self.postMessage(step),
  );
});
