import { source } from './source.ts';

export const bearingExercise = source({
  id: 'bearing-exercise',
  title: 'Student solution, University of Hertfordshire, module 7ENT1081',
  how: 'read',
  note: '27 elements of 20 mm on a pitch circle of 99 mm: a row that does not fit on its circle; used as a doubtful input.',
});
