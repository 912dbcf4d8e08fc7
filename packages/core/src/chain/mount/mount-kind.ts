import {
  type Answer,
  aboveZeroField,
  answerOf,
  type Fields,
  optional,
  quantityField,
  type Sheet,
  type Span,
  spanField,
  textField,
} from '../../quantity/index.ts';
import type { Clause } from '../../source/source.ts';
import type { PartKind } from '../part-kind.ts';

/** What a mount does to the transducer on it. */
export interface MountModel {
  readonly of: string;
  /** From softest to stiffest; undefined where the data-sheet resonance already holds on this mount. */
  readonly stiffness: Answer<Span<'stiffness'>> | undefined;
  /** Mass it adds between surface and transducer, or moves with it. */
  readonly addedMass: Answer<number>;
  readonly temperature: Answer<Span<'temperature'>> | undefined;
  readonly isolates: boolean;
}

/** How the place was made ready and the mount was fixed, as drawn or as recorded by the fitter. */
const preparationSheet = {
  preparation: optional(textField('How the surface is prepared')),
  thread: optional(textField('Thread', { example: 'M6 x 10' })),
  threadDepth: optional(quantityField('length', 'Depth of the tapped hole', { example: '12 mm' })),
  studReach: optional(quantityField('length', 'How far the stud reaches into it', { example: '8 mm' })),
  torque: optional(quantityField('torque', 'Tightening torque', { example: '4 N*m' })),
  spotFace: optional(quantityField('length', 'Diameter of the spot face', { example: '30 mm' })),
  flatness: optional(quantityField('length', 'Flatness of the face', { example: '0.02 mm' })),
  roughness: optional(quantityField('length', 'Roughness of the face, Ra', { example: '1.6 um' })),
  bracketFirstMode: optional(
    aboveZeroField(
      quantityField('frequency', 'First mode of the bracket under it, by tap test or estimate', { example: '900 Hz' }),
    ),
  ),
} as const;

const surfaceField = spanField('temperature', 'Surface it may stand on', { example: '-40..90 °C' });

export const elasticMountSheet = {
  stiffness: aboveZeroField(
    spanField('stiffness', 'Stiffness between surface and transducer, softest to stiffest', {
      symbol: 'k',
      example: '4e8 N/m',
    }),
  ),
  addedMass: quantityField('mass', 'Mass of the mount that moves with the transducer', {
    symbol: 'm_m',
    example: '55 g',
  }),
  // Glue, magnet and plastic let go of a hot surface long before the transducer suffers: it is asked for.
  temperature: surfaceField,
  ...preparationSheet,
  remark: optional(textField('What else a reader should know')),
} as const;

/** A magnet besides: what holds it, and what throws it off. */
export const magnetMountSheet = {
  ...elasticMountSheet,
  pull: optional(
    aboveZeroField(quantityField('force', 'Pull on this surface, as tried with a balance', { example: '200 N' })),
  ),
  gravityHeight: optional(
    aboveZeroField(
      quantityField('length', 'Centre of gravity of magnet and transducer over the surface', { example: '30 mm' }),
    ),
  ),
  footWidth: optional(
    aboveZeroField(quantityField('length', 'Smallest width over which it stands', { example: '25 mm' })),
  ),
  friction: optional(
    aboveZeroField(quantityField('ratio', 'Friction on the surface; 0.1 where oil lies', { example: '0.2' })),
  ),
} as const;

export const rigidMountSheet = {
  addedMass: elasticMountSheet.addedMass,
  temperature: optional(surfaceField),
  ...preparationSheet,
  remark: elasticMountSheet.remark,
} as const;

/** A kind of mount: one file, one line in `kinds.ts`. */
export interface MountKind<Kind extends string = string, F extends Fields = Fields> extends PartKind<Kind, F> {
  /** What the fitter must see to, and what commonly goes wrong. */
  readonly cautions: readonly string[];
  model(sheet: Sheet<F>): MountModel;
}

export function mountKind<const Kind extends string, F extends Fields>(
  definition: MountKind<Kind, F>,
): MountKind<Kind, F> {
  return definition;
}

interface ElasticDefinition<Kind extends string> {
  readonly kind: Kind;
  readonly name: string;
  readonly cautions: readonly string[];
  readonly sources: readonly Clause[];
  readonly isolates?: true;
}

/** A mount that is a spring under the moved mass. */
export function elasticMount<const Kind extends string>(definition: ElasticDefinition<Kind>) {
  return mountKind({
    kind: definition.kind,
    name: definition.name,
    cautions: definition.cautions,
    sources: definition.sources,
    dataSheet: elasticMountSheet,
    model: (sheet) => elasticModel(sheet, definition.isolates ?? false),
  });
}

/** A spring that a magnet holds. */
export function magnetMount<const Kind extends string>(definition: ElasticDefinition<Kind>) {
  return mountKind({
    kind: definition.kind,
    name: definition.name,
    cautions: definition.cautions,
    sources: definition.sources,
    dataSheet: magnetMountSheet,
    model: (sheet) => elasticModel(sheet, definition.isolates ?? false),
  });
}

function elasticModel(sheet: Sheet<typeof elasticMountSheet>, isolates: boolean): MountModel {
  return {
    of: sheet.of,
    stiffness: answerOf(sheet.values.stiffness, sheet.of, 'stiffness'),
    addedMass: answerOf(sheet.values.addedMass, sheet.of, 'added mass'),
    temperature: answerOf(sheet.values.temperature, sheet.of, 'temperature'),
    isolates,
  };
}
