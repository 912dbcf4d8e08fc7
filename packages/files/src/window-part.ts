import { aboveZeroField, frequencyReferenceField, levelField, quantityField } from '@soundpost/core';
import { record } from './record.ts';
import { stated } from './stated.ts';

const displacement = (meaning: string, example: string) =>
  stated(aboveZeroField(levelField(['displacement'], meaning, { example })));

/** Set points of a point that watches a motion the machine works by. */
export const window = record('the window of a motion that is wanted', {
  of: stated({ ...frequencyReferenceField, meaning: 'The line of that motion, at duty' }),
  wanted: displacement('Motion the machine works by', '9 mm pp'),
  within: stated(
    aboveZeroField(
      quantityField('displacement', 'Accepted to either side, in the same detector', { example: '0.5 mm' }),
    ),
  ),
  trip: displacement('Motion at which it is stopped', '10.5 mm pp'),
});
