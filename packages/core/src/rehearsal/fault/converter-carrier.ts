import { clause } from '../../source/source.ts';
import { tradePractice } from '../../source/trade-practice.ts';
import { faultKind } from './fault-kind.ts';
import { tones } from './shared-parts.ts';

/** The carrier of a converter with side lines twice line frequency away: electrical, and often taken for a bearing. */
export const converterCarrier = faultKind({
  kind: 'converter-carrier',
  name: 'Carrier of the converter',
  at: ['induction-motor', 'synchronous-motor'],
  sized: 'the carrier',
  example: '0.5 g peak',
  sources: [clause(tradePractice, 'converter carrier')],
  parts: ({ size }, place) =>
    tones(place, size, [
      { line: 'carrier', share: 1 },
      { line: 'carrier-lower', share: 0.6 },
      { line: 'carrier-upper', share: 0.6 },
    ]),
});
