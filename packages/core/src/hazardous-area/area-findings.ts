import { type Finding, finding } from '../finding/finding.ts';
import { iec60079x0 } from '../source/iec-60079-0.ts';
import { clause } from '../source/source.ts';
import type { JudgedArea } from './judged-area.ts';

/** What a comparison leaves to others: the conditions of the certificates, and the caution on the comparison itself. */
export function areaFindings(compared: JudgedArea): readonly Finding[] {
  const carried = compared.conditions.map(({ of, number, words }) =>
    finding({
      rule: 'area/conditions',
      weight: 'notes',
      at: compared.of,
      found: `${number.known ? number.value : of}: ${words}`,
      limit: 'carried to the installation',
      because: 'The certificate holds under these conditions only.',
      remedy: ['on the installation sheet of this point, and checked before the loop is switched on'],
      sources: [clause(iec60079x0, 'special conditions of use')],
    }),
  );
  return [
    ...carried,
    finding({
      rule: 'area/caution',
      weight: 'notes',
      at: compared.of,
      found: `${compared.name}: ${compared.wording}`,
      limit: '',
      because: compared.caution,
      remedy: [],
      sources: compared.sources,
    }),
  ];
}
