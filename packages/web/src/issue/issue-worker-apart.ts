import { type Remote, wrap } from 'comlink';
import type { IssueEngine } from '../engine/issue/issue-engine.ts';
import type { PlantStore } from '../engine/plant-store.ts';

/** Asks what takes long in a worker of its own; `stop` ends it at once, and the answer is then never given. */
export function issueWorkerApart<T>(store: PlantStore, ask: (engine: Remote<IssueEngine>) => Promise<T>) {
  const worker = new Worker(new URL('../engine/issue/issue-worker.ts', import.meta.url), { type: 'module' });
  const engine = wrap<IssueEngine>(worker);
  const answer = (async () => {
    try {
      const { detector, ...showing } = store.snapshot().showing;
      await engine.open({ ...store.disk, text: store.text }, showing);
      return await ask(engine);
    } finally {
      worker.terminate();
    }
  })();
  return { answer, stop: () => worker.terminate() };
}
