import { type Judgement, judged } from '../../chain/rules/rule.ts';
import { inWords, measured, said } from '../../finding/measure.ts';
import { fromAll } from '../../quantity/index.ts';
import { columnSuspected, permittedCapacitanceSource, usualPermittedCapacitance } from '../permitted-capacitance.ts';
import { areaRule } from './area-rule.ts';

const id = 'area/column';

export const column = areaRule({
  id,
  title: 'Co and Lo are those of the group of the area',
  prose:
    'A barrier certificate has one column for each group. The value of a lesser group passes a cable that this group does ' +
    'not allow; so a Co far above what is usual at its voltage is asked about before it is used.',
  remedy: ['the column of the group on the certificate, read again'],
  sources: [permittedCapacitanceSource],
  judge: ({ loop: { barrier }, column: used }) => {
    if (barrier === undefined) return [];
    const { voltage, columns } = barrier.certificate;
    if (!used.known) return [];
    const what = `column of ${barrier.of}`;
    return judged(
      fromAll({ voltage, capacitance: columns[used.value].capacitance }, (known) => known),
      { rule: id, what },
      (known): readonly Judgement[] => {
        const suspected = columnSuspected(known.voltage, known.capacitance, used.value);
        const found = said`${used.value}, Co ${measured('capacitance', known.capacitance)}`;
        if (suspected === undefined) {
          return [
            { rule: id, outcome: 'meets', what, found, limit: inWords('the group of the area, or a stricter one') },
          ];
        }
        const usual = usualPermittedCapacitance(known.voltage, used.value)!;
        return [
          {
            rule: id,
            outcome: 'cannot tell',
            what,
            found,
            limit: said`about ${measured('capacitance', usual)} is usual`,
            missing: [{ of: barrier.of, what: `column its Co was read from, ${used.value} or ${suspected}` }],
            needs: `Co of column ${used.value}, checked`,
          },
        ];
      },
    );
  },
});
