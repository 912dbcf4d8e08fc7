import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Solved, Task } from './solve.ts';

/** Beyond the time the task allows, how long the solver may take to notice, in seconds. */
const grace = 20;

/** Solves in a thread of its own, which ends with the answer, when it is cancelled, or when it overstays. */
export function solveAside(task: Task, cancelled?: AbortSignal): Promise<Solved> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(threadFile(), { workerData: task });
    const end = (settle: () => void) => {
      clearTimeout(timer);
      cancelled?.removeEventListener('abort', abort);
      void worker.terminate();
      settle();
    };
    const abort = () => end(() => reject(cancelled?.reason));
    const timer = setTimeout(() => end(() => resolve(nothing)), (task.seconds + grace) * 1000);
    cancelled?.addEventListener('abort', abort);
    worker.once('message', (solved: Solved) => end(() => resolve(solved)));
    worker.once('error', (error) => end(() => reject(error)));
  });
}

const nothing: Solved = {
  ended: 'no solution',
  values: {},
  cost: Number.POSITIVE_INFINITY,
  bound: Number.NEGATIVE_INFINITY,
  by: 'no solver: it did not answer in its time',
};

/** The built file, also where this one runs from its source. */
function threadFile(): string {
  const built = fileURLToPath(new URL('../dist/solver-thread.js', import.meta.url));
  return existsSync(built) ? built : fileURLToPath(new URL('./solver-thread.js', import.meta.url));
}
