import {
  type Answer,
  answer,
  answerOf,
  flagField,
  optional,
  quantityField,
  type Sheet,
  type Span,
  type Stated,
  spanField,
  textField,
  valueIfStated,
  words,
} from '../quantity/index.ts';

/**
 * What a certificate for hazardous areas says of a part, in its own letters. A value that is not stated stays unknown:
 * a proof that needs it is refused and names it.
 */

const certificateSheet = {
  certificateNumber: optional(
    textField('Number of the certificate for hazardous areas, with its X where it has one', {
      example: 'INV 24.0107X',
    }),
  ),
  certificateMarking: optional(textField('Marking of the certificate', { example: 'Ex ia IIC T4 Ga' })),
  certificateAmbient: optional(
    spanField('temperature', 'Ambient of the certificate, where it is not −20..40 °C', { example: '-40..100 °C' }),
  ),
  certificateConditions: optional(textField('Special conditions of use (X), to be carried to the installation')),
} as const;

/** Of a part that stands in the hazardous area: what it bears, and what it stores. */
export const apparatusCertificateSheet = {
  ...certificateSheet,
  certificateUi: optional(quantityField('voltage', 'Highest input voltage', { symbol: 'U_i', example: '30 V' })),
  certificateIi: optional(quantityField('current', 'Highest input current', { symbol: 'I_i', example: '150 mA' })),
  certificatePi: optional(quantityField('power', 'Highest input power', { symbol: 'P_i', example: '0.85 W' })),
  certificateCi: optional(quantityField('capacitance', 'Internal capacitance', { symbol: 'C_i', example: '12 nF' })),
  certificateLi: optional(quantityField('inductance', 'Internal inductance', { symbol: 'L_i', example: '60 uH' })),
  simpleApparatus: optional(
    flagField('Whether it is simple apparatus by declaration, with nothing stored but the stated C and L'),
  ),
} as const;

const capacitance = (group: string) =>
  optional(quantityField('capacitance', `Highest outer capacitance, column ${group}`, { example: '83 nF' }));
const inductance = (group: string) =>
  optional(quantityField('inductance', `Highest outer inductance, column ${group}`, { example: '4.2 mH' }));
const inductanceOverResistance = (group: string) =>
  optional(quantityField('inductance per resistance', `Highest outer L/R, column ${group}`, { example: '55 uH/ohm' }));

/** Of a barrier or isolator that stands outside and limits what goes in: what it lets out, and what may hang on it. */
export const associatedCertificateSheet = {
  ...certificateSheet,
  certificateUo: optional(quantityField('voltage', 'Highest output voltage', { symbol: 'U_o', example: '28 V' })),
  certificateIo: optional(quantityField('current', 'Highest output current', { symbol: 'I_o', example: '93 mA' })),
  certificatePo: optional(quantityField('power', 'Highest output power', { symbol: 'P_o', example: '0.651 W' })),
  certificateCoIic: capacitance('IIC'),
  certificateCoIib: capacitance('IIB'),
  certificateCoIia: capacitance('IIA'),
  certificateLoIic: inductance('IIC'),
  certificateLoIib: inductance('IIB'),
  certificateLoIia: inductance('IIA'),
  certificateLoOverRoIic: inductanceOverResistance('IIC'),
  certificateLoOverRoIib: inductanceOverResistance('IIB'),
  certificateLoOverRoIia: inductanceOverResistance('IIA'),
} as const;

interface Certificate {
  readonly of: string;
  readonly number: Answer<string>;
  readonly marking: Answer<string>;
  /** Nothing where the certificate names none: then the ambient of the standard holds. */
  readonly ambient: Answer<Span<'temperature'> | undefined>;
  readonly conditions: string | undefined;
}

export interface ApparatusCertificate extends Certificate {
  readonly voltage: Answer<number>;
  readonly current: Answer<number>;
  readonly power: Answer<number>;
  readonly capacitance: Answer<number>;
  readonly inductance: Answer<number>;
  readonly simple: boolean;
}

/** The columns a certificate of a barrier has. */
export const certificateColumns = ['IIA', 'IIB', 'IIC'] as const;
export type CertificateColumn = (typeof certificateColumns)[number];

export interface AllowedOutside {
  readonly capacitance: Answer<number>;
  readonly inductance: Answer<number>;
  /** Absent where the certificate gives none. */
  readonly inductanceOverResistance: number | undefined;
}

export interface AssociatedCertificate extends Certificate {
  readonly voltage: Answer<number>;
  readonly current: Answer<number>;
  readonly power: Answer<number>;
  readonly columns: Readonly<Record<CertificateColumn, AllowedOutside>>;
}

type Entries = Readonly<Record<string, Stated<unknown> | undefined>>;

function read(sheet: Sheet) {
  const values = sheet.values as Entries;
  const text = (name: string) => answerOf(values[name] as Stated<string> | undefined, sheet.of, words(name));
  return {
    number: (name: string) => answerOf(values[name] as Stated<number> | undefined, sheet.of, words(name)),
    certificate: {
      of: sheet.of,
      number: text('certificateNumber'),
      marking: text('certificateMarking'),
      ambient: ambientOf(sheet, values),
      conditions: valueIfStated(values.certificateConditions as Stated<string> | undefined),
    },
    values,
  };
}

/** Of a certificate nobody has seen it is not known whether it names an ambient. */
function ambientOf(sheet: Sheet, values: Entries): Certificate['ambient'] {
  const stated = values.certificateAmbient as Stated<Span<'temperature'>> | undefined;
  const seen = values.certificateMarking?.known === true;
  return stated === undefined && seen ? answer(undefined) : answerOf(stated, sheet.of, words('certificateAmbient'));
}

/** What the sheet of a part says of its certificate; nothing where it says nothing at all. */
export function apparatusCertificate(sheet: Sheet): ApparatusCertificate | undefined {
  const { number, certificate, values } = read(sheet);
  const stated = Object.keys(apparatusCertificateSheet).some((name) => values[name] !== undefined);
  if (!stated) return undefined;
  return {
    ...certificate,
    voltage: number('certificateUi'),
    current: number('certificateIi'),
    power: number('certificatePi'),
    capacitance: number('certificateCi'),
    inductance: number('certificateLi'),
    simple: valueIfStated(values.simpleApparatus as Stated<boolean> | undefined) === true,
  };
}

/** What the sheet of a barrier says of its certificate; every value that is not stated is unknown. */
export function associatedCertificate(sheet: Sheet): AssociatedCertificate {
  const { number, certificate, values } = read(sheet);
  const column = (suffix: string): AllowedOutside => ({
    capacitance: number(`certificateCo${suffix}`),
    inductance: number(`certificateLo${suffix}`),
    inductanceOverResistance: valueIfStated(values[`certificateLoOverRo${suffix}`] as Stated<number> | undefined),
  });
  return {
    ...certificate,
    voltage: number('certificateUo'),
    current: number('certificateIo'),
    power: number('certificatePo'),
    columns: { IIA: column('Iia'), IIB: column('Iib'), IIC: column('Iic') },
  };
}
