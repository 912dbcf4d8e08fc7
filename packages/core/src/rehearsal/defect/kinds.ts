import { nearest, Refusal } from '../../quantity/index.ts';
import { kinds } from '../../quantity/kinds.ts';
import { biasOffCentre } from './bias-off-centre.ts';
import { biasOpen } from './bias-open.ts';
import { biasShort } from './bias-short.ts';
import { biasWet } from './bias-wet.ts';
import { cableSlew } from './cable-slew.ts';
import { capacitance } from './capacitance.ts';
import { damping } from './damping.ts';
import type { ChainChange, DefectKind, DefectStatement } from './defect-kind.ts';
import { delay } from './delay.ts';
import { detectorConfusion } from './detector-confusion.ts';
import { gainOff } from './gain.ts';
import { loopCompliance } from './loop-compliance.ts';
import { looseMount } from './loose-mount.ts';
import { lowCorner } from './low-corner.ts';
import { mainsHum } from './mains-hum.ts';
import { missingFilter } from './missing-filter.ts';
import { noisyInput } from './noisy-input.ts';
import { polarity } from './polarity.ts';
import { probeGapDrift } from './probe-gap-drift.ts';
import { sensitivityOff } from './sensitivity.ts';
import { skiSlope } from './ski-slope.ts';

/** Every defect a rehearsal can put into a chain. */
export const defectKinds = kinds(
  biasShort,
  biasOpen,
  biasWet,
  biasOffCentre,
  skiSlope,
  mainsHum,
  looseMount,
  damping,
  sensitivityOff,
  gainOff,
  detectorConfusion,
  polarity,
  probeGapDrift,
  loopCompliance,
  missingFilter,
  cableSlew,
  capacitance,
  noisyInput,
  lowCorner,
  delay,
);
export type DefectKindName = (typeof defectKinds)[number]['kind'];

/** What a stated defect changes. Throws Refusal at a word that is no defect. */
export function changeOf({ kind: word, size }: DefectStatement): ChainChange {
  const words = defectKinds.map(({ kind }) => kind);
  const kind = (defectKinds as readonly DefectKind[]).find((each) => each.kind === word);
  if (kind !== undefined) return kind.change(size ?? kind.usual);
  const near = nearest(word, words);
  throw new Refusal({
    read: word,
    expected: `a defect of a chain: ${words.join(', ')}`,
    ...(near === undefined ? {} : { suggestion: `Did you mean '${near}'?` }),
  });
}
