import { choiceField, flagField, optional, quantityField, textField } from '../quantity/index.ts';

/** How wet a place gets, from least to most. */
export const exposures = ['dry', 'splashed', 'washed down', 'immersed'] as const;
export type Exposure = (typeof exposures)[number];

/** What stands around a measuring point, beside the temperature of its surface. What is left out is not asked about. */
export const surroundingsSheet = {
  connectorTemperature: optional(
    quantityField('temperature', 'At the connector of the transducer', { example: '60 °C' }),
  ),
  cableTemperature: optional(quantityField('temperature', 'Along the hottest part of the cable', { example: '70 °C' })),
  converterTemperature: optional(
    quantityField('temperature', 'Where a converter or oscillator-demodulator sits', { example: '55 °C' }),
  ),
  exposure: optional(choiceField(exposures, 'How wet it gets')),
  immersionDepth: optional(
    quantityField('length', 'How deep under water it gets, where it is immersed', { example: '5 m' }),
  ),
  chemicals: optional(
    textField('What attacks jackets there, one after the other', { example: 'mineral oil, ammonia, UV' }),
  ),
  strayField: optional(flagField('Whether a strong magnetic field passes through the place')),
  localMass: optional(quantityField('mass', 'Mass that moves with the surface', { example: '40 kg' })),
  shaftDiameter: optional(quantityField('length', 'Diameter of the shaft a probe looks at', { example: '110 mm' })),
  shaftMaterial: optional(textField('Steel of that shaft, with its certificate')),
  restTravel: optional(
    quantityField('length', 'How far the shaft stands from mid gap at most, at rest or hot', { example: '0.2 mm' }),
  ),
  sideClearance: optional(
    quantityField('length', 'Free of metal to the side of the tip of a probe', { example: '15 mm' }),
  ),
  tipSpacing: optional(
    quantityField('length', 'From the tip of a probe to that of its neighbour', { example: '90 mm' }),
  ),
  surfaceSpeed: optional(
    quantityField('velocity', 'Surface speed of the shaft at its fastest, under a riding rod', { example: '40 m/s' }),
  ),
  tilt: optional(quantityField('angle', 'How far the axis may lean from its direction at most', { example: '3 deg' })),
  remark: optional(textField('What else a reader should know')),
} as const;
