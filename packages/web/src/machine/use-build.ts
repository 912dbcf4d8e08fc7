import { usePlantStore } from '../app/plant-context.tsx';
import type { BuildingAsked } from '../engine/machine/building-views.ts';
import { refusalWords } from './refusal-words.ts';

/** Builds something onto the plant, or takes it away, as one step to undo. Resolves to why it cannot be done. */
export function useBuild(): (asked: BuildingAsked) => Promise<string | undefined> {
  const store = usePlantStore();
  return async (asked) => {
    const built = await store.engine.built(asked);
    if ('refused' in built) return built.refused;
    const refused = await store.act(built.label, built.edits);
    return refused && refusalWords(refused);
  };
}
