import {
  aboveZeroField,
  choiceField,
  flagField,
  levelField,
  optional,
  quantityField,
  textField,
} from '../quantity/index.ts';

/** Where the screen of a field cable is joined to earth. */
export const screenEnds = ['cabinet', 'sensor', 'both', 'junction box', 'nowhere'] as const;
export type ScreenEnd = (typeof screenEnds)[number];

/** What lies beside a signal cable, from gentlest to harshest. */
export const powerCables = ['none', 'low voltage', 'converter drive', 'medium voltage'] as const;
export type PowerCable = (typeof powerCables)[number];

/** Screens and earths of one measuring point, as drawn or seen. What is left out is not asked about. */
export const wiringSheet = {
  screenEarthed: optional(choiceField(screenEnds, 'Where the screen is joined to earth')),
  screenCutAt: optional(choiceField(['junction box'], 'Where the screen is interrupted on its way')),
  screenOnCase: optional(flagField('Whether the screen touches the case of the transducer, as in many moulded cables')),
  screenOnBox: optional(flagField('Whether the screen touches the metal of the junction box')),
  boxOnMachine: optional(flagField('Whether the junction box stands on the machine or its base, so shares its earth')),
  equipotentialBond: optional(flagField('Whether a bonding conductor is laid along, from the machine to the cabinet')),
  inputEarthed: optional(flagField('Whether the common of the input is joined to the earth of its cabinet')),
  cabinet: optional(textField('The cabinet the cable ends in', { example: 'VMS-01' })),
  earthVoltage: optional(
    levelField(['voltage'], 'Voltage between the earth of the machine and that of the cabinet, as measured', {
      example: '20 mV rms',
    }),
  ),
  mains: optional(aboveZeroField(quantityField('frequency', 'Frequency of the mains', { example: '50 Hz' }))),
  powerCable: optional(choiceField(powerCables, 'The harshest power cable that runs along')),
  powerDistance: optional(quantityField('length', 'Distance from that cable, at its nearest', { example: '300 mm' })),
  remark: optional(textField('What else a reader should know')),
} as const;

const distance = (meaning: string, example: string) =>
  optional(quantityField('length', `Least distance from ${meaning}`, { example }));

/** Distances as the owner wants them kept; what is left out is practice of the trade, without source. */
export const separationSheet = {
  lowVoltage: distance('low-voltage power cables', '300 mm'),
  converterDrive: distance('cables of converter drives', '500 mm'),
  mediumVoltage: distance('medium-voltage cables', '1 m'),
  source: optional(textField('Where these distances come from')),
} as const;
