import {
  type Answer,
  type EntityClause,
  type EntityComparison,
  hazardousAreaSheet,
  type JudgedArea,
  type LoopInArea,
  type QuantityName,
  type Sheet,
  type Showing,
  showLengthDown,
  theMissing,
} from '@soundpost/core';
import { caution, facts, heading, list, paragraph, signatures } from '../blocks.ts';
import { answered, answerText, measure, words } from '../cells.ts';
import { everyPoint } from '../every-point.ts';
import { issuedKind } from '../issued-kind.ts';
import { madeSheet } from '../made-sheet.ts';
import type { Block, Cell } from '../record.ts';
import { measureColumn, setTable, textColumn } from '../set-table.ts';
import { statedFacts } from '../stated-facts.ts';

/** A value of a certificate is never rounded towards passing: it is shown with as many digits as were entered. */
const digits = 6;

/** Each loop in a hazardous area: the values of its certificates against each other, clause by clause. */
export const hazardousAreaLoops = issuedKind({
  kind: 'hazardous-area-loops',
  title: 'Intrinsic-safety loop comparisons',
  readers: 'the person licensed for this practice, who decides; the sheet only compares what was entered',
  orientation: 'portrait',
  sheets: (design, showing) =>
    everyPoint(design).flatMap(({ designed: { area, point } }) =>
      area === undefined
        ? []
        : [madeSheet(`Loop ${point.of}`, [area], (each) => comparisonBlocks(each, { ...showing, digits }))],
    ),
});

function comparisonBlocks(area: JudgedArea, showing: Showing): readonly Block[] {
  return [
    caution(area.caution),
    paragraph(`${area.name}: ${area.wording}.`),
    facts([
      ...statedFacts(area.area as Sheet, hazardousAreaSheet, showing),
      ['level of protection asked for', answerText(area.required, (each) => each)],
      ['lowest level in the loop', answerText(area.lowest, (each) => `i${each}`)],
      ['column of the barrier used', answerText(area.column, (each) => each)],
    ]),
    certificateTable(area, showing),
    ...withoutCertificate(area.loop),
    ...clauses(
      area,
      area.entity,
      area.declaredBy === undefined
        ? 'Comparison with the cable values of the standard'
        : `Comparison with the declared cable values (${area.declaredBy})`,
      'comparison',
      showing,
    ),
    ...(area.declaredBy === undefined
      ? []
      : clauses(area, area.byDefault, 'The same with the cable values of the standard', 'by default', showing)),
    ...(area.conditions.length === 0
      ? []
      : [
          heading('Special conditions of the certificates, to be carried to the installation'),
          ...list(area.conditions.map((each) => `${each.of}: ${each.words}`)),
        ]),
    signatures('values entered by', 'values held against the certificates by', 'decided, licensed for this practice'),
  ];
}

interface CertificateLine {
  readonly of: string;
  readonly number: Answer<string>;
  readonly marking: Answer<string>;
  readonly name: string;
  readonly quantity: QuantityName;
  readonly value: Answer<number>;
  readonly simple: boolean;
}

function certificateTable({ of, loop }: JudgedArea, showing: Showing): Block {
  return setTable<CertificateLine>(
    `${of} certificates`,
    'Certificates of the loop, as entered',
    [
      textColumn('Part', ({ of: part }) => words(part), 2),
      textColumn(
        'Certificate',
        ({ number, simple }) => (simple ? words('simple apparatus by declaration') : answered(number, words)),
        1.8,
      ),
      textColumn(
        'Marking',
        ({ marking, simple }) => (simple && !marking.known ? words('none') : answered(marking, words)),
        2,
      ),
      textColumn('Value', ({ name }) => words(name), 0.7),
      measureColumn('As entered', (line) => valueCell(line, showing), 1.4),
    ],
    certificateLines(loop),
    'No part of the loop has a certificate.',
  );
}

/** A simple apparatus bears whatever the others bear; its declaration states no highest value. */
function valueCell({ value, quantity, simple }: CertificateLine, showing: Showing): Cell {
  if (simple && !value.known) return { is: 'none' };
  return answered(value, (known) => measure(quantity, known, showing));
}

function certificateLines({ apparatus, barrier }: LoopInArea): readonly CertificateLine[] {
  const inField = apparatus.flatMap(({ certificate: c }) =>
    linesOf(c, c.simple, [
      ['Ui', 'voltage', c.voltage],
      ['Ii', 'current', c.current],
      ['Pi', 'power', c.power],
      ['Ci', 'capacitance', c.capacitance],
      ['Li', 'inductance', c.inductance],
    ]),
  );
  if (barrier === undefined) return inField;
  const c = barrier.certificate;
  const outside = linesOf(c, false, [
    ['Uo', 'voltage', c.voltage],
    ['Io', 'current', c.current],
    ['Po', 'power', c.power],
  ]);
  return [...inField, ...outside];
}

type EntityValue = readonly [name: string, quantity: CertificateLine['quantity'], value: CertificateLine['value']];

function linesOf(
  { of, number, marking }: Pick<CertificateLine, 'of' | 'number' | 'marking'>,
  simple: boolean,
  values: readonly EntityValue[],
): readonly CertificateLine[] {
  return values.map(([name, quantity, value]) => ({ of, number, marking, name, quantity, value, simple }));
}

function withoutCertificate({ uncertified, strangers }: LoopInArea): readonly Block[] {
  const all = [uncertified, ...strangers.map((each) => each.of)].filter((each) => each !== undefined);
  return all.length === 0 ? [] : [heading('Before the barrier, without certificate or declaration'), ...list(all)];
}

function clauses(
  { of }: JudgedArea,
  entity: Answer<EntityComparison>,
  captionText: string,
  name: string,
  showing: Showing,
): readonly Block[] {
  if (!entity.known) return [paragraph(`${captionText}: cannot tell; not known is ${theMissing(entity.missing)}.`)];
  const found = entity.value;
  const halved = found.halved ? 'Co and Lo count half here, because both lumped values exceed 1 % of them. ' : '';
  const longest = showLengthDown(found.maximumLength, showing);
  return [
    setTable<EntityClause>(
      `${of} ${name}`,
      captionText,
      [
        textColumn('Clause', (each) => words(each.name), 1.6),
        measureColumn('Found', (each) => measure(each.quantity, each.found, showing)),
        measureColumn('Allowed', (each) => measure(each.quantity, each.limit, showing)),
        textColumn('Outcome', (each) => words(each.passed ? 'passed for these values' : 'NOT PASSED'), 1.6),
      ],
      found.clauses,
      '',
    ),
    paragraph(
      `${halved}Longest cable of this kind that passes: ${longest}, limited by ${found.limitedBy}; cable values ${found.cable.known}.`,
    ),
  ];
}
