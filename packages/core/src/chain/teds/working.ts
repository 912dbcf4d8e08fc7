import { type Finding, finding } from '../../finding/finding.ts';
import { countField, numberField, type QuantityName, quantityField, si, textField } from '../../quantity/index.ts';
import { ieee1451x4 } from '../../source/ieee-1451-4.ts';
import { clause } from '../../source/source.ts';
import { optionalOutput, output, working } from '../../working/index.ts';
import { type ByteList, byteListField } from './byte-list.ts';
import { entryFromTeds, plain } from './catalogue-entry.ts';
import { pageChecksums } from './page-checksums.ts';
import { type Teds, tedsOf, toldOf } from './teds.ts';

const example = '00 00 00 00 00 00 00 00 64 70 1E 0D 00 00 00 00 00 00 00 00 00 00 06';

const whole = (meaning: string) => countField(meaning, { least: 0 });
const relative = (start: string, ratio: string) => `x = ${start} · ${ratio}^code; all ones: not stated`;
const stepped = (start: string, step: string) => `x = ${start} + ${step} · code; all ones: not stated`;

/** Readers of one told field by its type; nothing where the memory says nothing. */
const reading = (teds: Teds) => ({
  number: (name: string) => toldOf(teds, name) as number | undefined,
  text: (name: string) => toldOf(teds, name) as string | undefined,
  quantity: <Name extends QuantityName>(quantity: Name, name: string) => {
    const value = toldOf(teds, name) as number | undefined;
    return value === undefined ? undefined : si(quantity, value);
  },
});

const list = (each: readonly string[]) => (each.length === 0 ? undefined : each.join('; '));

export const tedsWorking = working({
  name: 'teds',
  title: 'What the memory of a transducer says',
  inputs: {
    bytes: byteListField('Bytes of the data sheet, without page checksums and without the head of a file', example),
  },
  outputs: {
    notation: output(textField('How the digits were taken'), 'hexadecimal or decimal'),
    manufacturer: output(whole('Number of the manufacturer, 17 to 16381'), 'bits 0 to 13'),
    model: output(whole('Model number'), 'bits 14 to 28'),
    versionLetter: optionalOutput(textField('Version letter'), 'bits 29 to 33, A as 1'),
    versionNumber: output(whole('Version number'), 'bits 34 to 39'),
    serial: output(whole('Serial number'), 'bits 40 to 63'),
    template: optionalOutput(whole('Number of the template'), 'bits 66 to 73, behind selector 0'),
    templateName: optionalOutput(textField('What the template is for'), 'by its number'),
    senses: optionalOutput(textField('What it senses'), '0 acceleration, 1 force'),
    sensitivity: optionalOutput(
      quantityField('voltage per acceleration', 'Sensitivity under reference conditions'),
      relative('5e-7', '1.0003'),
    ),
    highPassCorner: optionalOutput(quantityField('frequency', 'Lower corner, −3 dB'), relative('0.005', '1.06')),
    direction: optionalOutput(textField('Direction of the sensitive axis'), '0 x, 1 y, 2 z, 3 none'),
    weight: optionalOutput(quantityField('mass', 'Mass of the transducer'), relative('0.1 g', '1.2')),
    polarity: optionalOutput(whole('Code of the polarity; which is which is not known here'), 'one bit'),
    lowPassCorner: optionalOutput(quantityField('frequency', 'Upper corner, −3 dB'), relative('10', '1.1')),
    resonance: optionalOutput(quantityField('frequency', 'Resonance'), relative('100', '1.02')),
    quality: optionalOutput(numberField('Height of the resonance'), relative('0.4', '1.02')),
    amplitudeSlope: optionalOutput(numberField('Slope of the amplitude, unit not known here'), stepped('−6.3', '0.1')),
    temperatureCoefficient: optionalOutput(
      numberField('Temperature coefficient, unit not known here'),
      stepped('−0.8', '0.025'),
    ),
    referenceFrequency: optionalOutput(quantityField('frequency', 'Reference frequency'), relative('0.35', '1.035')),
    referenceTemperature: optionalOutput(
      quantityField('temperature', 'Reference temperature'),
      stepped('15 °C', '0.5'),
    ),
    calibrationDate: optionalOutput(textField('Day of the calibration'), '1998-01-01 + code in days'),
    calibrationInitials: optionalOutput(textField('Who calibrated it'), 'three letters of five bits, A as 1'),
    calibrationPeriod: optionalOutput(quantityField('duration', 'Time to the next calibration'), 'code in days'),
    measurementLocation: optionalOutput(whole('Number of the measuring location'), 'eleven bits'),
    measurand: optionalOutput(textField('Measurand of the voltage output'), 'six bits; only code 0 is known here'),
    physicalMinimum: optionalOutput(numberField('Least value of the measurand, in its unit'), 'single precision'),
    physicalMaximum: optionalOutput(numberField('Largest value of the measurand, in its unit'), 'single precision'),
    notStated: optionalOutput(
      textField('Fields whose code states nothing'),
      'all ones, blank or a code not known here',
    ),
    notKnown: optionalOutput(textField('Fields whose layout is not known here'), 'none of them is guessed'),
    bitsRead: output(whole('Bits that were read'), 'whole fields'),
    bitsLeft: output(whole('Bits behind them, not read'), 'user text, further templates or filling'),
    entryStates: optionalOutput(textField('What a catalogue entry gains from it'), 'fields of the data sheet'),
    entryMissing: optionalOutput(
      textField('What a catalogue entry still asks for'),
      'required fields it does not state',
    ),
    entryLeft: optionalOutput(textField('What is told and not taken over'), 'with the reason'),
    checksums: optionalOutput(textField('Sums of the pages, for 32 bytes and multiples'), 'told, not demanded'),
  },
  holds:
    'the layout of 2004, least significant bit first. The layout of draft 0.9 is refused where the bytes tell it from this ' +
    'one, which they do not always. Template 25 is read for accelerometers without extended functionality, template 30 up ' +
    'to its physical range, template 27 by name. What the memory says is what somebody wrote there: it is no calibration ' +
    'unless a date stands beside it.',
  sources: [clause(ieee1451x4, 'basic part, templates 25, 27 and 30')],
  evaluate: ({ bytes: { bytes, notation } }) => {
    const teds = tedsOf(bytes);
    const { number, text, quantity } = reading(teds);
    const entry = entryFromTeds(teds, 'transducer');
    return {
      notation,
      manufacturer: number('manufacturer')!,
      model: number('model')!,
      versionLetter: text('version-letter'),
      versionNumber: number('version-number')!,
      serial: number('serial')!,
      template: number('template'),
      templateName: teds.template?.name,
      senses: text('senses'),
      sensitivity: quantity('voltage per acceleration', 'sensitivity'),
      highPassCorner: quantity('frequency', 'high-pass-corner'),
      direction: text('direction'),
      weight: quantity('mass', 'weight'),
      polarity: number('polarity'),
      lowPassCorner: quantity('frequency', 'low-pass-corner'),
      resonance: quantity('frequency', 'resonance'),
      quality: number('quality'),
      amplitudeSlope: number('amplitude-slope'),
      temperatureCoefficient: number('temperature-coefficient'),
      referenceFrequency: quantity('frequency', 'reference-frequency'),
      referenceTemperature: quantity('temperature', 'reference-temperature'),
      calibrationDate: text('calibration-date'),
      calibrationInitials: text('calibration-initials'),
      calibrationPeriod: quantity('duration', 'calibration-period'),
      measurementLocation: number('measurement-location'),
      measurand: text('measurand'),
      physicalMinimum: number('physical-minimum'),
      physicalMaximum: number('physical-maximum'),
      notStated: list(teds.told.filter(({ value }) => value === undefined).map(({ name }) => plain(name))),
      notKnown: list(teds.notKnown),
      bitsRead: teds.bitsRead,
      bitsLeft: teds.bitsLeft,
      entryStates: entry === undefined ? undefined : list(entry.states),
      entryMissing: entry === undefined ? undefined : list(entry.missing),
      entryLeft: entry === undefined ? undefined : list(entry.left),
      checksums: pageChecksums(bytes),
    };
  },
  doubts: ({ bytes: list }) => tedsDoubts(list, tedsOf(list.bytes)),
  example: { bytes: example },
});

/** What a reader of a data sheet should not take at face value: of its digits, and of what they say. */
export function tedsDoubts(list: ByteList, teds: Teds): readonly Finding[] {
  return [...notationDoubt(list), ...doubtsOf(teds)];
}

function notationDoubt({ notation, certain }: ByteList): readonly Finding[] {
  if (certain) return [];
  return [
    doubt(
      'teds/notation',
      `digits without a letter, read as ${notation}`,
      'bytes that can be read in one way only',
      'The same digits are other bytes in the other notation.',
      ['put 0x before each byte for hexadecimal, or commas between them for decimal'],
    ),
  ];
}

/** What a reader of the bytes should not take at face value. */
function doubtsOf(teds: Teds): readonly Finding[] {
  const maker = toldOf(teds, 'manufacturer') as number;
  const unwritten = teds.told.filter(({ mayBeUnwritten }) => mayBeUnwritten).map(({ name }) => plain(name));
  return [
    ...(maker >= 17 && maker <= 16381
      ? []
      : [
          doubt(
            'teds/manufacturer',
            `manufacturer ${maker} is a reserved number`,
            '17 to 16381',
            'Who made it is not told.',
          ),
        ]),
    ...(unwritten.length === 0
      ? []
      : [
          doubt(
            'teds/unwritten',
            `the lowest code stands for ${unwritten.join(', ')}`,
            'a code above zero',
            'A field nobody wrote reads as its lowest value, and a date as 1998-01-01.',
          ),
        ]),
  ];
}

function doubt(
  rule: string,
  found: string,
  limit: string,
  because: string,
  remedy = ['ask for the data sheet or the certificate of this piece'],
): Finding {
  return finding({
    rule,
    weight: 'warns',
    at: 'teds',
    found,
    limit,
    because,
    remedy,
    sources: [clause(ieee1451x4)],
  });
}
