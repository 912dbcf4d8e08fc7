import { source } from './source.ts';

export const iso20816x8edition2018 = source({
  id: 'iso-20816-8-2018',
  title: 'ISO 20816-8:2018, Reciprocating compressor systems',
  how: 'from memory',
  note: 'Scope read second-hand in a catalogue entry, 120 to 1800 r/min; velocities from memory.',
});
