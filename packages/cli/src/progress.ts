import { Worker } from 'node:worker_threads';

/**
 * A line on standard error that says what is being done once a step has lasted a second. It runs in a thread of its
 * own, since a long computation leaves this one no time to speak.
 */
export interface Progress {
  step(what: string): void;
  end(): Promise<void>;
}

export const noProgress: Progress = { step: () => undefined, end: async () => undefined };

export function progressLine(): Progress {
  let worker: Worker | undefined;
  return {
    step: (what) => {
      worker ??= started();
      worker.postMessage(what);
    },
    end: async () => {
      if (worker === undefined) return;
      const ended = new Promise((resolve) => worker?.once('exit', resolve));
      worker.postMessage(null);
      await ended;
    },
  };
}

function started(): Worker {
  const worker = new Worker(new URL('./progress-worker.js', import.meta.url));
  worker.unref();
  return worker;
}
