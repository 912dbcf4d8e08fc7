import { source } from './source.ts';

export const planetaryKinematics = source({
  id: 'planetary-kinematics',
  title: 'Willis equation of planetary gears and the fault frequencies that follow from it',
  how: 'from memory',
  note: 'Sun N·(f_s − f_c), ring N·(f_c − f_r), planet twice its turns against the carrier. That (z_s + z_r)/N is a whole number is known second-hand.',
});
