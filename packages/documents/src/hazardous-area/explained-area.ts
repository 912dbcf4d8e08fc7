import {
  type Clause,
  clause,
  type EntityClause,
  type EntityComparison,
  iec60079x14,
  iec60079x25,
  type Showing,
  showQuantity,
} from '@soundpost/core';
import type { Derivation } from '../derivation/derivation.ts';
import { type Explain, step } from '../derivation/explained.ts';

const sources: readonly Clause[] = [clause(iec60079x14), clause(iec60079x25)];
const caution =
  'Whether the loop may be installed is for somebody licensed to say, by the code that holds at the place; this is a comparison of typed values.';

/** One line of the comparison of certificates: what adds up on the one side, what is allowed on the other. */
export function explainedClause(
  { cable, halved, totalCapacitance, totalInductance, allowedCapacitance, allowedInductance }: EntityComparison,
  { name, quantity, found, limit, passed }: EntityClause,
  of: 'found' | 'limit',
  showing: Showing,
): Explain {
  const show = (value: number, digits = 6) => showQuantity(quantity, value, { ...showing, digits });
  const [left, right] = name.split(' ≤ ') as [string, string];
  const sum =
    quantity === 'capacitance'
      ? [totalCapacitance - cable.capacitance, cable.capacitance]
      : quantity === 'inductance'
        ? [totalInductance - cable.inductance, cable.inductance]
        : undefined;
  const perMetre =
    quantity === 'capacitance' ? ('capacitance per length' as const) : ('inductance per length' as const);
  const value = quantity === 'capacitance' ? cable.capacitancePerLength : cable.inductancePerLength;
  const length = showQuantity('length', cable.length, { ...showing, digits: 6 });
  const spelled = (text: string) => text.replace(/([A-Z])([a-z])/g, '$1_$2');
  const ofFound: readonly Derivation[] =
    sum === undefined
      ? [
          {
            formula: `${spelled(left)} = as the certificate states it`,
            substituted: `${spelled(left)} = ${show(found)}`,
          },
        ]
      : [
          ...(Math.abs(value * cable.length - sum[1]!) <= 1e-9 * Math.abs(sum[1]!)
            ? [
                step(
                  `${quantity === 'capacitance' ? 'C_c = c' : 'L_c = l'} · length`,
                  `${showQuantity(perMetre, value, { ...showing, digits: 6 })} · ${length}`,
                  show(sum[1]!),
                ),
              ]
            : []),
          step(
            `${quantity === 'capacitance' ? 'C' : 'L'} = ${spelled(left)}`,
            `${show(sum[0]!, 8)} + ${show(sum[1]!, 8)}`,
            show(found),
          ),
        ];
  const whole = halved && (quantity === 'capacitance' || quantity === 'inductance');
  const ofLimit: readonly Derivation[] = [
    {
      formula: `${spelled(right)} = as the certificate states it${whole ? ', counted half' : ''}`,
      substituted: `${spelled(right)} = ${show(limit)}`,
      ...(whole ? { notes: ['both lumped values exceed 1 % of what is allowed, so it counts half'] } : {}),
    },
  ];
  return () => ({
    title: `${name}: ${of === 'found' ? 'found' : 'allowed'}`,
    sentence: `${show(found)} against ${show(limit)} at most: ${passed ? 'the clause holds' : 'the clause does not hold'}. ${caution}`,
    numbers: [
      { name: 'found', shown: show(found) },
      { name: 'allowed', shown: show(limit) },
      ...(sum === undefined ? [] : [{ name: 'cable values', shown: cable.known }]),
      ...(whole
        ? [
            {
              name: 'allowed together',
              shown: `${showQuantity('capacitance', allowedCapacitance, showing)}, ${showQuantity('inductance', allowedInductance, showing)}`,
            },
          ]
        : []),
    ],
    steps: of === 'found' ? ofFound : ofLimit,
    sources,
  });
}
