import { type QuantityDefinition, quantities, spelledUnit } from '@soundpost/core';
import { labelled } from '../layout/line.ts';
import type { Topic } from './topic.ts';

const units = (names: readonly string[]) => names.map((each) => spelledUnit(each) || '1').join(', ');

/** Every quantity, what it is computed in, and the units it is shown in. */
export const quantityTopics: readonly Topic[] = Object.entries(
  quantities as Readonly<Record<string, QuantityDefinition>>,
).map(([name, definition]) => ({
  is: 'quantity',
  name,
  title: name,
  lines: ({ width }) => [
    ...labelled('Computed in', spelledUnit(definition.unit) || '1', width, '', 15),
    ...labelled('Shown in', units(definition.metric), width, '', 15),
    ...labelled('US units', units(definition.us), width, '', 15),
    ...(definition.neverNegative === true ? labelled('Never', 'below zero', width, '', 15) : []),
    ...labelled('Read', 'in any unit of its dimension, typed after the number', width, '', 15),
  ],
  json: {
    is: 'quantity',
    name,
    unit: definition.unit,
    metric: definition.metric,
    us: definition.us,
    neverNegative: definition.neverNegative === true,
  },
}));
