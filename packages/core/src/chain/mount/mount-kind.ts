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
  temperature: optional(spanField('temperature', 'Surface it may stand on', { example: '-40..90 °C' })),
  preparation: optional(textField('How the surface is prepared')),
  remark: optional(textField('What else a reader should know')),
} as const;

export const rigidMountSheet = {
  addedMass: elasticMountSheet.addedMass,
  temperature: elasticMountSheet.temperature,
  preparation: elasticMountSheet.preparation,
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
    model: (sheet) => ({
      of: sheet.of,
      stiffness: answerOf(sheet.values.stiffness, sheet.of, 'stiffness'),
      addedMass: answerOf(sheet.values.addedMass, sheet.of, 'added mass'),
      temperature:
        sheet.values.temperature === undefined
          ? undefined
          : answerOf(sheet.values.temperature, sheet.of, 'temperature'),
      isolates: definition.isolates ?? false,
    }),
  });
}
