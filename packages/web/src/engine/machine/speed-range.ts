import { operatingRange, type Showing, showQuantity } from '@soundpost/core';
import type { TriedMachine } from '../held-point.ts';
import type { SpeedRange } from './views.ts';

/** The quantity in which the speed of a machine is typed and shown. */
export function speedQuantity({ stated: { train } }: TriedMachine): 'shaft speed' | 'frequency' {
  return train.operation.by === 'shaft' ? 'shaft speed' : 'frequency';
}

/** What the machine is run by, from lowest to highest: the speed of a shaft, or the line frequency of its motor. */
export function speedRange(machine: TriedMachine, showing: Showing): SpeedRange | undefined {
  const { train } = machine.stated;
  const range = operatingRange(train);
  if (!range.known) return undefined;
  const { low, high } = range.value;
  const show = (value: number) => showQuantity(speedQuantity(machine), value, showing);
  const { operation } = train;
  const of = operation.by === 'shaft' ? `speed of shaft ${operation.shaft}` : `line frequency of ${operation.motor}`;
  return { of, low, high, shownLow: show(low), shownHigh: show(high) };
}
