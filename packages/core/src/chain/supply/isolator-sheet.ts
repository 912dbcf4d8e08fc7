import {
  type Answer,
  aboveZeroField,
  answerOf,
  optional,
  type Stated,
  spanField,
  textField,
  toleranceField,
} from '../../quantity/index.ts';
import { associatedCertificateSheet } from '../certificate.ts';

/** Fields of every galvanic isolator, whatever passes through it. */
export const isolatorSheet = {
  gainTolerance: optional(toleranceField('Deviation of its gain from the nominal one', { example: '±0.5 %' })),
  ownSupply: optional(
    aboveZeroField(
      spanField('voltage', 'Lowest to highest supply of its own, at terminals of its own', { example: '20..30 V' }),
    ),
  ),
  ...associatedCertificateSheet,
  remark: optional(textField('What else a reader should know')),
} as const;

/** An optional field as the models want it: absent where left out, unknown where it stands there as unknown. */
export function whereStated<T>(entry: Stated<T> | undefined, of: string, what: string): Answer<T> | undefined {
  return entry === undefined ? undefined : answerOf(entry, of, what);
}
