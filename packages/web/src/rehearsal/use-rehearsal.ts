import { proxy, type Remote, wrap } from 'comlink';
import { useCallback, useEffect, useRef, useState } from 'react';
import { usePlantState, usePlantStore } from '../app/plant-context.tsx';
import type { RehearsalEngine } from '../engine/rehearsal/rehearsal-engine.ts';
import type { FileView, RehearsalChoices, RehearsalTyped, RehearsalView } from '../engine/rehearsal/rehearsal-views.ts';

interface Opened {
  readonly worker: Worker;
  readonly engine: Remote<RehearsalEngine>;
}

export interface RehearsalHand {
  readonly choices: RehearsalChoices | undefined | 'none';
  /** What is being done; nothing while nothing runs. */
  readonly doing: string | undefined;
  readonly ended: string | undefined;
  readonly made: RehearsalView | undefined;
  start(typed: RehearsalTyped): Promise<void>;
  cancel(): void;
  files(chain: number, ending: string): Promise<readonly FileView[]>;
}

/** A worker that rehearses at one point, as long as its view is open; cancelled, it is ended and another takes its place. */
export function useRehearsal(of: string): RehearsalHand {
  const store = usePlantStore();
  const { generation, showing } = usePlantState();
  const opened = useRef<Opened>(undefined);
  const [choices, setChoices] = useState<RehearsalHand['choices']>();
  const [doing, setDoing] = useState<string>();
  const [ended, setEnded] = useState<string>();
  const [made, setMade] = useState<RehearsalView>();
  const open = useCallback(async () => {
    const worker = new Worker(new URL('../engine/rehearsal/rehearsal-worker.ts', import.meta.url), { type: 'module' });
    const engine = wrap<RehearsalEngine>(worker);
    opened.current = { worker, engine };
    const { detector, ...shown } = showing;
    await engine.open({ ...store.disk, text: store.text }, detector === 'stated' ? shown : { ...shown, detector });
    return engine;
  }, [store, showing]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another text of the plant is a reason to begin anew
  useEffect(() => {
    let stale = false;
    void open().then(async (engine) => {
      const found = await engine.choices(of);
      if (!stale) setChoices(found ?? 'none');
    });
    return () => {
      stale = true;
      opened.current?.worker.terminate();
      setMade(undefined);
      setDoing(undefined);
    };
  }, [open, of, generation]);
  const start = async (typed: RehearsalTyped) => {
    const { engine, worker } = opened.current!;
    setDoing('beginning');
    setEnded(undefined);
    const tell = proxy((words: string) => {
      if (opened.current?.worker === worker) setDoing(words);
    });
    const answer = await engine.rehearse(typed, tell).catch((error: unknown) => ({ refused: String(error) }));
    if (opened.current?.worker !== worker) return;
    setDoing(undefined);
    if ('refused' in answer) setEnded(answer.refused);
    else {
      setMade(answer.made);
      setEnded('Rehearsed.');
    }
  };
  const cancel = () => {
    opened.current?.worker.terminate();
    setDoing(undefined);
    setMade(undefined);
    setEnded('Cancelled. Nothing was rehearsed.');
    void open();
  };
  const files = (chain: number, ending: string) => opened.current!.engine.files(chain, ending);
  return { choices, doing, ended, made, start, cancel, files };
}
