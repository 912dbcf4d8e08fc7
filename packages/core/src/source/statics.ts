import { source } from './source.ts';

export const statics = source({
  id: 'statics',
  title: 'Statics of a rigid body with dry friction',
  how: 'from memory',
  note: 'Slip where the force along the surface passes friction times the force on it; tipping where the moment passes force times half the foot.',
});
