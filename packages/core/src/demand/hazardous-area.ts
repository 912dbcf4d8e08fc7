import { choiceField, optional, quantityField, spanField, textField } from '../quantity/index.ts';

/** How often an explosive atmosphere is there: zones of gas, zones of dust, and the divisions of the other practice. */
export const hazardousZones = ['0', '1', '2', '20', '21', '22', 'division 1', 'division 2'] as const;
export type HazardousZone = (typeof hazardousZones)[number];

/** Groups of gas and of dust, each list from the least to the most easily ignited. */
export const gasGroups = ['IIA', 'IIB', 'IIC'] as const;
export const dustGroups = ['IIIA', 'IIIB', 'IIIC'] as const;
export const groups = [...gasGroups, ...dustGroups] as const;
export type Group = (typeof groups)[number];

/** Temperature classes from the hottest surface allowed to the coolest, sub-classes among them. */
export const temperatureClasses = [
  'T1',
  'T2',
  'T2A',
  'T2B',
  'T2C',
  'T2D',
  'T3',
  'T3A',
  'T3B',
  'T3C',
  'T4',
  'T4A',
  'T5',
  'T6',
] as const;
export type TemperatureClass = (typeof temperatureClasses)[number];

/** How the circuits of a cable lie beside others. */
export const cableNeighbours = ['own cable', 'type A', 'type B', 'type C', 'other'] as const;
export type CableNeighbours = (typeof cableNeighbours)[number];

/** The hazardous area a point lies in, as its drawing classifies it: nobody derives it here. */
export const hazardousAreaSheet = {
  zone: choiceField(hazardousZones, 'Zone or division', { example: '1' }),
  group: choiceField(groups, 'Group of the gas or dust', { example: 'IIC' }),
  temperatureClass: optional(choiceField(temperatureClasses, 'Temperature class the gas asks for', { example: 'T3' })),
  highestSurface: optional(
    quantityField('temperature', 'Highest surface temperature the dust allows', { example: '135 °C' }),
  ),
  ambient: spanField('temperature', 'Lowest to highest ambient at the place', { example: '-20..40 °C' }),
  source: optional(textField('Where the area is classified: drawing, revision', { example: 'drawing EX-201 rev. 3' })),
  earthResistance: optional(
    quantityField('resistance', 'From the bar of the barriers to the main earth, measured', { example: '0.4 ohm' }),
  ),
  cableNeighbours: optional(choiceField(cableNeighbours, 'Which kind of multicore cable the circuit shares')),
} as const;
