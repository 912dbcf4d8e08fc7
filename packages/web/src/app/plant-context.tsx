import { createContext, type ReactNode, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import type { PlantState, PlantStore } from '../engine/plant-store.ts';

const Context = createContext<PlantStore | undefined>(undefined);

export function PlantProvider({ store, children }: { readonly store: PlantStore; readonly children: ReactNode }) {
  return <Context.Provider value={store}>{children}</Context.Provider>;
}

export function usePlantStore(): PlantStore {
  const store = useContext(Context);
  if (store === undefined) throw new Error('a view stands inside the provider of its plant');
  return store;
}

export function usePlantState(): PlantState {
  const store = usePlantStore();
  return useSyncExternalStore(store.subscribe, store.snapshot);
}

/** Changes once every machine is read, and once every machine is worked out: what was answered before then may lack some. */
export function useFarAlong(): string {
  const { plant } = usePlantState();
  if (plant === undefined) return 'nothing';
  const { read, done, of } = plant.progress;
  return done >= of ? 'all worked out' : read >= of ? 'all read' : 'some read';
}

/** What the engine answers to a question, asked again whenever the plant or the question changed; the last answer stays until then. */
export function useAnswer<T>(ask: (store: PlantStore) => Promise<T>, key: string): T | undefined {
  const store = usePlantStore();
  const { generation } = usePlantState();
  const [held, setHeld] = useState<{ readonly key: string; readonly answer: T }>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for everything the question is made of
  useEffect(() => {
    let stale = false;
    void ask(store).then((answer) => {
      if (!stale) setHeld({ key, answer });
    });
    return () => {
      stale = true;
    };
  }, [store, generation, key]);
  return held?.key === key ? held.answer : undefined;
}
