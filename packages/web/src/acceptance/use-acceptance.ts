import { proxy, type Remote, wrap } from 'comlink';
import { useCallback, useEffect, useRef, useState } from 'react';
import { usePlantState, usePlantStore } from '../app/plant-context.tsx';
import type { AcceptanceEngine } from '../engine/acceptance/acceptance-engine.ts';
import type {
  AcceptanceChoices,
  AcceptanceView,
  FileFound,
  RecordingTyped,
} from '../engine/acceptance/acceptance-views.ts';

/** A worker that accepts from chosen files, as long as its view is open. */
export function useAcceptance() {
  const store = usePlantStore();
  const { generation, showing } = usePlantState();
  const opened = useRef<{ readonly worker: Worker; readonly engine: Remote<AcceptanceEngine> }>(undefined);
  const chosen = useRef<readonly File[]>([]);
  const [choices, setChoices] = useState<AcceptanceChoices>();
  const [files, setFiles] = useState<readonly FileFound[]>([]);
  const [doing, setDoing] = useState<string>();
  const [ended, setEnded] = useState<string>();
  const [accepted, setAccepted] = useState<AcceptanceView>();
  const open = useCallback(async () => {
    const worker = new Worker(new URL('../engine/acceptance/acceptance-worker.ts', import.meta.url), {
      type: 'module',
    });
    const engine = wrap<AcceptanceEngine>(worker);
    opened.current = { worker, engine };
    const { detector, ...shown } = showing;
    const found = await engine.open(
      { path: store.disk.path, catalogues: store.disk.catalogues, text: store.text },
      detector === 'stated' ? shown : { ...shown, detector },
    );
    setChoices(found);
    if (chosen.current.length > 0) setFiles(await engine.look(chosen.current));
  }, [store, showing]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another text of the plant is a reason to begin anew
  useEffect(() => {
    void open();
    return () => {
      opened.current?.worker.terminate();
      setDoing(undefined);
      setAccepted(undefined);
    };
  }, [open, generation]);
  const add = async (more: readonly File[]) => {
    chosen.current = [...chosen.current, ...more];
    setAccepted(undefined);
    setFiles(await opened.current!.engine.look(more));
  };
  const forget = async () => {
    chosen.current = [];
    setFiles([]);
    setAccepted(undefined);
    setEnded(undefined);
    await opened.current!.engine.forget();
  };
  const accept = async (typed: readonly RecordingTyped[] | undefined, date: string) => {
    const { worker, engine } = opened.current!;
    setDoing('beginning');
    setEnded(undefined);
    setAccepted(undefined);
    const tell = proxy((words: string) => {
      if (opened.current?.worker === worker) setDoing(words);
    });
    const answer = await engine.accept(typed, date, tell).catch((error: unknown) => ({ refused: String(error) }));
    if (opened.current?.worker !== worker) return;
    setDoing(undefined);
    if ('refused' in answer) setEnded(answer.refused);
    else {
      setAccepted(answer.accepted);
      setEnded('Measured and compared.');
    }
  };
  const cancel = () => {
    opened.current?.worker.terminate();
    setDoing(undefined);
    setEnded('Cancelled.');
    void open();
  };
  return { choices, files, doing, ended, accepted, add, forget, accept, cancel };
}
