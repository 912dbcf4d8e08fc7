import { source } from './source.ts';

export const tedsTestStreams = source({
  id: 'teds-test-streams',
  title: 'Virtual data sheets among the tests of a public data-acquisition library, with what they must read',
  how: 'read',
  note:
    'An accelerometer (template 25, sensitivity 49.03 V/g within 0.01) and a voltage-output transducer (template 30, ' +
    'kelvin); commit cbba5023. A vendor puts 40 bits before the stream: they are not of the standard and left out.',
});
