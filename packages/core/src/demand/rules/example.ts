import {
  answer,
  type Level,
  type Motion,
  motions,
  notStated,
  parseLevel,
  parseSpan,
  parseTolerance,
  quantityField,
  type Stated,
  stated,
} from '../../quantity/index.ts';
import { demand } from '../demand.ts';
import { observables } from '../observables/kinds.ts';
import type { StatedLimits, StatedPoint } from './rule.ts';

interface Changes {
  readonly smallest?: string;
  readonly largest?: string;
  readonly observe?: 'line' | 'burst';
  readonly band?: string;
  readonly resolution?: string;
  readonly direction?: string;
}

const typedLevel = (text: string): Stated<Level<Motion>> => stated(parseLevel(text, motions), text);

/** A point with one target, a line of 25 Hz or a burst, and with some of it changed: for the examples of rules. */
export function examplePoint(changes: Changes = {}): StatedPoint {
  const { smallest = '0.1 mm/s rms', largest = '10 mm/s rms', observe = 'line', direction = 'horizontal' } = changes;
  const { band = '2..10 kHz', resolution = '0.3125 Hz' } = changes;
  const hertz = quantityField('frequency', 'Line spacing');
  const statement = {
    name: 'drive-end',
    location: stated('fan, drive-end bearing housing'),
    direction: stated(direction, direction),
    installation: 'portable',
    surfaceTemperature: notStated,
    surroundings: { of: 'F-1/drive-end', values: {} as StatedPoint['statement']['surroundings']['values'] },
    targets: [
      {
        name: 'example',
        cause: 'unbalance',
        observe: observables.find((each) => each.kind === observe)!,
        reference: 'casing',
        ...(observe === 'line'
          ? { frequency: stated({ is: 'number', value: 25 } as const, '25 Hz') }
          : { band: stated(parseSpan(band, 'frequency'), band) }),
        smallest: typedLevel(smallest),
        largest: typedLevel(largest),
        tolerance: stated(parseTolerance('±10 %'), '±10 %'),
        resolution: stated(hertz.read(resolution, { decimal: 'point' }), resolution),
        weight: 'essential',
        origin: { by: 'stated', from: 'example', sources: [] },
      },
    ],
    disturbances: [],
  } as const;
  return { statement, point: demand(statement, 'F-1', () => answer(25)) };
}

/** The limits of an owner, each as typed. */
export function exampleLimits(aB: string, bC: string, cD: string): StatedLimits {
  return { at: 'F-1', aB: typedLevel(aB), bC: typedLevel(bC), cD: typedLevel(cD) };
}
