import { iso10816x3edition2009 } from '../../source/iso-10816-3-2009.ts';
import { iso20816x1 } from '../../source/iso-20816-1.ts';
import { clause } from '../../source/source.ts';
import { alarmPolicy } from './policy.ts';

/** Alert a quarter of B/C above the baseline, at most 1.25 times B/C; trip at C/D, at most 1.25 times C/D. */
export const quarterAboveBaseline = alarmPolicy({
  name: 'quarter-above-baseline',
  title: 'ISO 20816-1 and ISO 10816-3: a quarter of B/C above the baseline, trip at C/D',
  alertMargin: 0.25,
  alertCap: 1.25,
  trip: 1,
  tripCap: 1.25,
  sources: [
    clause(iso20816x1, 'set points of alarms and trips', 'from memory'),
    clause(iso10816x3edition2009, '5.4.1', 'second-hand'),
  ],
});
