import source from 'worker:reckon/worker.ts';
import type { Job, Reply } from './messages.js';

/** A worker from a program that the page carries with it: a page from the file system may load none. */
export function workerFrom(program: string): Worker {
  const url = URL.createObjectURL(new Blob([program], { type: 'text/javascript' }));
  const worker = new Worker(url);
  // The worker has its program once it runs, and a message comes after that.
  worker.addEventListener('message', () => URL.revokeObjectURL(url), { once: true });
  return worker;
}

/** Asks one question at a time. A new one ends the one before. */
export class Reckoner {
  #worker: Worker | null = null;
  #busy = false;
  #reply: (reply: Reply) => void = () => undefined;

  get busy(): boolean {
    return this.#busy;
  }

  ask(job: Job, reply: (reply: Reply) => void): void {
    this.stop();
    this.#reply = reply;
    this.#busy = true;
    try {
      this.#worker ??= this.#start();
      this.#worker.postMessage(job);
    } catch (error) {
      this.#take({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
  }

  /** Ends the question that is being reckoned, if there is one. */
  stop(): void {
    if (!this.#busy) return;
    this.#end();
  }

  #end(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#busy = false;
  }

  #start(): Worker {
    const worker = workerFrom(source);
    worker.addEventListener('message', ({ data }: MessageEvent<Reply>) => {
      if (worker === this.#worker) this.#take(data);
    });
    worker.addEventListener('error', ({ message }) => {
      if (worker !== this.#worker) return;
      const reply = this.#reply;
      this.#end();
      reply({ kind: 'failed', message });
    });
    return worker;
  }

  #take(reply: Reply): void {
    if (reply.kind !== 'step' && reply.kind !== 'row') this.#busy = false;
    this.#reply(reply);
  }
}
