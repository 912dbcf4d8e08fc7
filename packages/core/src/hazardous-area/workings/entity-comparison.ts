import { groups } from '../../demand/hazardous-area.ts';
import { type Finding, finding } from '../../finding/finding.ts';
import { measured, said } from '../../finding/measure.ts';
import {
  choiceField,
  type Field,
  flagField,
  optional,
  type Quantity,
  quantityField,
  Refusal,
  showNumber,
  si,
} from '../../quantity/index.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { wholeMetresDown } from '../at-most.ts';
import { caution, notPassedWording, passedWording } from '../caution.ts';
import {
  cableOfRuns,
  defaultCable,
  type EntityComparison,
  entityComparison,
  entitySources,
  limitations,
} from '../entity-comparison.ts';
import { columnFor } from '../group.ts';
import { columnSuspected, permittedCapacitanceSource, usualPermittedCapacitance } from '../permitted-capacitance.ts';

const length = quantityField('length', 'Longest cable of this kind that still passes', { symbol: 'l_max' });

/** Shown rounded down to whole metres; scripts get it unrounded. */
const maximumLengthField: Field<Quantity<'length'>> = {
  ...length,
  show: (value, showing) => `${showNumber(wholeMetresDown(value), 7, showing?.decimal)} m`,
  json: (value) => ({ value, unit: 'm', shown: `${wholeMetresDown(value)} m` }),
};

const wording = (passed: boolean) => (passed ? passedWording : notPassedWording);

export const entityComparisonWorking = working({
  name: 'entity-comparison',
  title: 'Comparison of a barrier with what hangs on it, by the values of their certificates',
  inputs: {
    uo: quantityField('voltage', 'Highest output voltage of the barrier', { symbol: 'U_o', example: '28 V' }),
    io: quantityField('current', 'Highest output current', { symbol: 'I_o', example: '93 mA' }),
    po: quantityField('power', 'Highest output power', { symbol: 'P_o', example: '0.651 W' }),
    co: quantityField('capacitance', 'Highest outer capacitance, column of the group', {
      symbol: 'C_o',
      example: '83 nF',
    }),
    lo: quantityField('inductance', 'Highest outer inductance, column of the group', {
      symbol: 'L_o',
      example: '4.2 mH',
    }),
    loOverRo: optional(
      quantityField('inductance per resistance', 'Highest outer L/R, column of the group', {
        symbol: 'r_o',
        example: '55 uH/ohm',
      }),
    ),
    ui: quantityField('voltage', 'Highest input voltage of the apparatus', { symbol: 'U_i', example: '30 V' }),
    ii: quantityField('current', 'Highest input current', { symbol: 'I_i', example: '150 mA' }),
    pi: quantityField('power', 'Highest input power', { symbol: 'P_i', example: '0.85 W' }),
    ci: quantityField('capacitance', 'Internal capacitance, all apparatus of the loop', {
      symbol: 'C_i',
      example: '12 nF',
    }),
    li: quantityField('inductance', 'Internal inductance, all apparatus of the loop', {
      symbol: 'L_i',
      example: '60 uH',
    }),
    group: choiceField(groups, 'Group of the area, from its drawing', { example: 'IIC' }),
    cableLength: quantityField('length', 'Length of the cable in the field', { symbol: 'l', example: '160 m' }),
    cableCapacitance: optional(
      quantityField('capacitance per length', 'As declared by its maker; left out: 200 pF/m', {
        symbol: 'c_d',
        example: '160 pF/m',
      }),
    ),
    cableInductance: optional(
      quantityField('inductance per length', 'As declared by its maker; left out: 1 µH/m', {
        symbol: 'm_d',
        example: '0.65 uH/m',
      }),
    ),
    cableResistance: optional(
      quantityField('resistance per length', 'Of the pair, there and back; used with a declared inductance', {
        symbol: 'r_d',
        example: '74 ohm/km',
      }),
    ),
  },
  outputs: {
    capacitanceUsed: output(
      quantityField('capacitance per length', 'Of the cable, as it was reckoned with', { symbol: 'c' }),
      'c = c_d where declared, otherwise 200 pF/m',
    ),
    inductanceUsed: output(
      quantityField('inductance per length', 'Of the cable, as it was reckoned with', { symbol: 'm' }),
      'm = m_d where declared, otherwise 1 µH/m',
    ),
    ratioUsed: optionalOutput(
      quantityField('inductance per resistance', 'L/R of the cable, where it is known', { symbol: 'r_c' }),
      'r_c = m_d/r_d, or 30 µH/Ω where neither is declared',
    ),
    halved: output(
      { ...flagField('Whether Co and Lo count half'), symbol: 'halved' },
      'halved = C_i > 1 % of C_o and L_i > 1 % of L_o',
    ),
    allowedCapacitance: output(
      quantityField('capacitance', 'What Ci and the cable may have together', { symbol: 'C_a' }),
      'C_a = C_o, or by the 1 % rule C_o/2 and at most 600 nF (IIC) or 1 µF',
    ),
    totalCapacitance: output(
      quantityField('capacitance', 'Ci and the cable together', { symbol: 'C_t' }),
      'C_t = C_i + c · l',
    ),
    allowedInductance: output(
      quantityField('inductance', 'What Li and the cable may have together', { symbol: 'L_a' }),
      'L_a = L_o, or by the 1 % rule L_o/2',
    ),
    totalInductance: output(
      quantityField('inductance', 'Li and the cable together', { symbol: 'L_t' }),
      'L_t = L_i + m · l',
    ),
    passed: output(
      { ...flagField('Whether every clause passes'), symbol: 'passed', show: wording },
      'passed = U_o ≤ U_i and I_o ≤ I_i and P_o ≤ P_i and C_t ≤ C_a and L_t ≤ L_a (or r_c ≤ r_o)',
    ),
    maximumLength: output(
      maximumLengthField,
      'l_max = the smaller of (C_a − C_i)/c and (L_a − L_i)/m, rounded down where shown',
    ),
    limitedBy: output(
      { ...choiceField(limitations, 'What sets that length, or forbids any'), symbol: 'limited' },
      'limited = the clause that ends it first',
    ),
  },
  holds: `one source, its output limited by a resistor; the lumped values of the loop without the cable decide the halving. L/R is used only while Li is at most 1 % of Lo. ${caution}`,
  sources: entitySources,
  evaluate: (inputs) => {
    const compared = comparisonOf(inputs);
    const { capacitancePerLength, inductancePerLength, inductanceOverResistance: ratio } = compared.cable;
    return {
      capacitanceUsed: si('capacitance per length', capacitancePerLength),
      inductanceUsed: si('inductance per length', inductancePerLength),
      ratioUsed: ratio === undefined ? undefined : si('inductance per resistance', ratio),
      halved: compared.halved,
      allowedCapacitance: si('capacitance', compared.allowedCapacitance),
      totalCapacitance: si('capacitance', compared.totalCapacitance),
      allowedInductance: si('inductance', compared.allowedInductance),
      totalInductance: si('inductance', compared.totalInductance),
      passed: compared.passed,
      maximumLength: si('length', compared.maximumLength),
      limitedBy: compared.limitedBy,
    };
  },
  doubts: (inputs) => [...clauseFindings(comparisonOf(inputs)), ...columnDoubts(inputs), ...defaultNotes(inputs)],
  example: {
    uo: '28 V',
    io: '93 mA',
    po: '0.651 W',
    co: '83 nF',
    lo: '4.2 mH',
    'lo-over-ro': '55 uH/ohm',
    ui: '30 V',
    ii: '150 mA',
    pi: '0.85 W',
    ci: '12 nF',
    li: '60 uH',
    group: 'IIC',
    'cable-length': '160 m',
    'cable-capacitance': '160 pF/m',
    'cable-inductance': '0.65 uH/m',
  },
});

interface Inputs {
  readonly uo: number;
  readonly io: number;
  readonly po: number;
  readonly co: number;
  readonly lo: number;
  readonly loOverRo: number | undefined;
  readonly ui: number;
  readonly ii: number;
  readonly pi: number;
  readonly ci: number;
  readonly li: number;
  readonly group: (typeof groups)[number];
  readonly cableLength: number;
  readonly cableCapacitance: number | undefined;
  readonly cableInductance: number | undefined;
  readonly cableResistance: number | undefined;
}

function comparisonOf(inputs: Inputs): EntityComparison {
  const { uo, io, po, co, lo, loOverRo, ui, ii, pi, ci, li, group, cableLength } = inputs;
  const { cableCapacitance: c, cableInductance: m, cableResistance: r } = inputs;
  const negative = Object.entries({ uo, io, po, ui, ii, pi, cableLength }).find(([, value]) => value < 0);
  if (negative !== undefined)
    throw new Refusal({ read: `${negative[0]}=${negative[1]}`, expected: 'a value of zero or more' });
  const ratio = m === undefined ? (r === undefined ? defaultCable.inductanceOverResistance : undefined) : r && m / r;
  return entityComparison(
    group,
    { voltage: uo, current: io, power: po, capacitance: co, inductance: lo, inductanceOverResistance: loOverRo },
    { voltage: ui, current: ii, power: pi, capacitance: ci, inductance: li },
    cableOfRuns(
      [
        {
          length: cableLength,
          capacitancePerLength: c ?? defaultCable.capacitancePerLength,
          inductancePerLength: m ?? defaultCable.inductancePerLength,
          inductanceOverResistance: ratio || undefined,
        },
      ],
      c === undefined || m === undefined ? 'default of the standard' : 'declared',
    ),
  );
}

function clauseFindings(compared: EntityComparison): readonly Finding[] {
  return compared.clauses
    .filter((each) => !each.passed)
    .map((each) =>
      finding({
        rule: 'area/entity',
        weight: 'blocks-issue',
        at: `entity-comparison/${each.name}`,
        found: { is: 'quantity', quantity: each.quantity, value: each.found },
        limit: { is: 'quantity', quantity: each.quantity, value: each.limit },
        because: `${each.name} does not hold${compared.halved ? ', with Co and Lo halved' : ''}: ${notPassedWording}.`,
        remedy: ['cable values declared and signed by its maker', 'a shorter cable', 'another barrier or isolator'],
        sources: entitySources,
      }),
    );
}

function columnDoubts({ uo, co, group }: Inputs): readonly Finding[] {
  const column = columnFor(group);
  const suspected = columnSuspected(uo, co, column);
  if (suspected === undefined) return [];
  return [
    finding({
      rule: 'area/column',
      weight: 'question',
      at: 'entity-comparison/co',
      found: measured('capacitance', co),
      limit: said`about ${measured('capacitance', usualPermittedCapacitance(uo, column)!)} at ${measured('voltage', uo)} in ${column}`,
      because: `So large a Co belongs to ${suspected}: a value from that column would pass a cable that ${column} does not allow.`,
      remedy: [`the column ${column} of the certificate`],
      sources: [permittedCapacitanceSource],
      asks: `Which column of the certificate was Co read from, ${column} or ${suspected}?`,
    }),
  ];
}

function defaultNotes({ cableCapacitance, cableInductance }: Inputs): readonly Finding[] {
  if (cableCapacitance !== undefined && cableInductance !== undefined) return [];
  return [
    finding({
      rule: 'area/default-cable',
      weight: 'notes',
      at: 'entity-comparison/cable',
      found: 'cable values not declared',
      limit: '200 pF/m, 1 µH/m or 30 µH/Ω in their place',
      because: 'The standard has values for a cable of which nothing is declared; a declaration may allow more.',
      remedy: ['the declaration of the cable maker, signed'],
      sources: entitySources.slice(2),
    }),
  ];
}
