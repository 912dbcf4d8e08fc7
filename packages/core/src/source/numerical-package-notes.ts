import { source } from './source.ts';

export const numericalPackageNotes = source({
  id: 'numerical-package-notes',
  title: 'Documentation of a general numerical package: bearing and gear examples',
  how: 'read',
  note: 'Inputs as printed; where outputs are not shown there they are computed here or from memory, and say so.',
});
