import { source } from './source.ts';

export const thermalNoise = source({
  id: 'thermal-noise',
  title: 'Johnson and Nyquist 1928, thermal noise of a resistor',
  how: 'from memory',
  note: 'Voltage density √(4·k·T·R); k = 1.380649e-23 J/K is exact in the SI.',
});
