import { source } from './source.ts';

export const gearFrequencies = source({
  id: 'gear-frequencies',
  title: 'Gear mesh, hunting-tooth and assembly-phase frequencies as printed in trade notes',
  how: 'second-hand',
  note: 'The same forms in several trade notes without author; the wrong form gcd times pinion speed also circulates.',
});
