import { source } from './source.ts';

export const inductionMotorPractice = source({
  id: 'induction-motor-practice',
  title: 'Induction-motor frequencies of trade notes: synchronous speed, slip, pole pass, rotor-bar pass',
  how: 'second-hand',
  note: 'Pole pass is poles times slip frequency; side lines at twice line frequency from memory.',
});
