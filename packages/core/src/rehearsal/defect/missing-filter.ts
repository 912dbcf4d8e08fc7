import { defectKind } from './defect-kind.ts';

/** What lies above half the rate folds down into the record. */
export const missingFilter = defectKind({
  kind: 'missing-filter',
  name: 'No filter before the converter',
  sized: 'of no meaning',
  quantity: 'ratio',
  usual: 1,
  change: () => ({ withoutFilter: true }),
});
