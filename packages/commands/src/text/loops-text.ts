import { type Design, type GroundLoop, loopHum, showLevel, showLoop, showQuantity, wiredPoints } from '@soundpost/core';
import { blank, heading, type Line, labelled, paragraph } from '../layout/line.ts';
import type { Manner } from '../manner.ts';
import { answerText, capital, sentence } from './values-text.ts';

/** Every ground loop the chains of the plant close: its way, where to open it, and the hum it can add. */
export function loopLines({ loops, machines }: Design, manner: Manner): readonly Line[] {
  const stated = machines.some((machine) => machine.points.some((point) => point.stated.wiring !== undefined));
  const { width } = manner;
  const said = !stated
    ? paragraph('  Nothing is stated of screens and earths, so no ground loop could be looked for.', width, '  ')
    : loops.length === 0
      ? paragraph('  The screens and earths as stated close no ground loop.', width, '  ')
      : [
          ...paragraph(
            '  Independent loops: opened one at a time, as many openings as loops end them all.',
            width,
            '  ',
          ),
          ...loops.flatMap((loop, index) => [
            blank,
            ...oneLoop(loop, index + 1, machines.flatMap(wiredPoints), manner),
          ]),
        ];
  return [...heading('Ground loops', width), ...said];
}

function oneLoop(
  loop: GroundLoop,
  number: number,
  points: Parameters<typeof loopHum>[1],
  { showing, width }: Manner,
): readonly Line[] {
  const through = loop.through === 'signal' ? 'through a signal' : 'through screens';
  const closed = loop.byDesign ? ', closed by design over a bonding conductor' : '';
  return [
    ...paragraph(`  ${number}. ${capital(through)}${closed}: ${loop.points.join(', ')}`, width, '  '),
    ...labelled('Way', showLoop(loop), width, '     ', 12),
    ...labelled(
      'Resistance',
      answerText(loop.resistance, (ohms) => showQuantity('resistance', ohms, showing)),
      width,
      '     ',
      12,
    ),
    ...(loop.remedy.length === 0
      ? []
      : labelled('Open at', sentence(capital(loop.remedy.join('; or '))), width, '     ', 12)),
    ...loopHum(loop, points).flatMap(({ point, perMillivolt, stated }) =>
      labelled(
        'Hum',
        `each millivolt rms reads at ${point} as ${answerText(perMillivolt, (level) => showLevel(level, showing))}; ` +
          `all of the voltage between the earths as ${answerText(stated, (level) => showLevel(level, showing))}`,
        width,
        '     ',
        12,
      ),
    ),
  ];
}
