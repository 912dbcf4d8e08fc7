import { source } from './source.ts';

export const hydraulicTurbinePractice = source({
  id: 'hydraulic-turbine-practice',
  title: 'Vortex rope, blade pass and the meeting of runner blades with guide vanes in hydraulic turbines',
  how: 'from memory',
  note: 'Rope at 0.2 to 0.4 of the speed at part load; pressure fields with |n·z_g − m·z_b| node diameters.',
});
