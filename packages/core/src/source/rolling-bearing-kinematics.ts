import { source } from './source.ts';

export const rollingBearingKinematics = source({
  id: 'rolling-bearing-kinematics',
  title:
    'Randall and Antoni, Rolling element bearing diagnostics: a tutorial, Mechanical Systems and Signal Processing 25(2), 2011',
  how: 'from memory',
  note: 'The four kinematic frequencies and the slip of 1 to 3 %; the formula block was read second-hand in data-set files.',
});
