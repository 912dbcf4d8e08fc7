import { type Remote, wrap } from 'comlink';
import { useEffect, useState } from 'react';
import { usePlantState, usePlantStore } from '../app/plant-context.tsx';
import type { IssueEngine, IssueProof, ProofAsked } from '../engine/issue/issue-engine.ts';

/** The composed set of the plant as it stands, in a worker that lives as long as the view. */
export function useIssueProof(asked: ProofAsked) {
  const store = usePlantStore();
  const { generation, showing } = usePlantState();
  const [engine, setEngine] = useState<Remote<IssueEngine>>();
  const [proof, setProof] = useState<IssueProof>();
  const [failed, setFailed] = useState<string>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the generation stands for the text of the plant
  useEffect(() => {
    const worker = new Worker(new URL('../engine/issue/issue-worker.ts', import.meta.url), { type: 'module' });
    const opened = wrap<IssueEngine>(worker);
    const { detector, ...shown } = showing;
    opened.open({ ...store.disk, text: store.text }, shown).then(
      () => setEngine(() => opened),
      (error: unknown) => setFailed(String(error)),
    );
    return () => worker.terminate();
  }, [store, generation, showing]);
  const key = JSON.stringify(asked);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for everything that is asked
  useEffect(() => {
    let stale = false;
    engine?.proof(asked).then((answer) => {
      if (!stale) setProof(answer);
    });
    return () => {
      stale = true;
    };
  }, [engine, key]);
  return { engine, proof, failed };
}
