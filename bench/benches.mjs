/** Every bench, by the name under which its results lie. */
export const benches = {
  trial: () => import('./trial.mjs'),
  screen: () => import('./screen.mjs'),
  table: () => import('./table.mjs'),
  documents: () => import('./documents.mjs'),
  standardise: () => import('./standardise.mjs'),
};
