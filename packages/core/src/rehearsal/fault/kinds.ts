import { kinds } from '../../quantity/kinds.ts';
import { airGap } from './air-gap.ts';
import { bladePass } from './blade-pass.ts';
import { brokenBar } from './broken-bar.ts';
import { cage } from './cage.ts';
import { cavitation } from './cavitation.ts';
import { converterCarrier } from './converter-carrier.ts';
import { crackedTooth } from './cracked-tooth.ts';
import type { FaultKind } from './fault-kind.ts';
import { gearWear } from './gear-wear.ts';
import { innerRing } from './inner-ring.ts';
import { looseness } from './looseness.ts';
import { misalignment } from './misalignment.ts';
import { oilWhirl } from './oil-whirl.ts';
import { outerRing } from './outer-ring.ts';
import { rodLoad } from './rod-load.ts';
import { rollingElement } from './rolling-element.ts';
import { rotorSlots } from './rotor-slots.ts';
import { runout } from './runout.ts';
import { scratch } from './scratch.ts';
import { unbalance } from './unbalance.ts';

/** Every fault a rehearsal can put into a machine. */
export const faultKinds = kinds(
  unbalance,
  misalignment,
  looseness,
  outerRing,
  innerRing,
  rollingElement,
  cage,
  gearWear,
  crackedTooth,
  bladePass,
  cavitation,
  airGap,
  brokenBar,
  rotorSlots,
  converterCarrier,
  oilWhirl,
  rodLoad,
  runout,
  scratch,
);
export type FaultKindName = (typeof faultKinds)[number]['kind'];

export function faultKindCalled(word: string): FaultKind | undefined {
  return (faultKinds as readonly FaultKind[]).find(({ kind }) => kind === word);
}
