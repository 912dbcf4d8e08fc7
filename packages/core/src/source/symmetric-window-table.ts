import { source } from './source.ts';

export const symmetricWindowTable = source({
  id: 'symmetric-window-table',
  title: 'window_analysis.csv of the open-source package scirs2-signal 0.3.4',
  how: 'read',
  note: 'Symmetric 64-point windows with a gain that is not divided by the length: shows what the definition changes, no reference.',
});
