import { alarmEvidence } from './alarm/evidence.ts';
import { chainEvidence } from './chain/formulas/evidence.ts';
import { proximityEvidence } from './chain/proximity/evidence.ts';
import { tedsEvidence } from './chain/teds/evidence.ts';
import { zonesEvidence } from './demand/zones/evidence.ts';
import { areaEvidence } from './hazardous-area/evidence.ts';
import { machineEvidence } from './machine/evidence.ts';
import { signalEvidence } from './signal/evidence.ts';
import { uncertaintyEvidence } from './uncertainty/evidence.ts';
import { wiringEvidence } from './wiring/evidence.ts';
import type { Printed } from './working/index.ts';

/** Every number of somebody else's that a working of the house is held against. */
export const printedNumbers: readonly Printed[] = [
  ...uncertaintyEvidence,
  ...signalEvidence,
  ...machineEvidence,
  ...zonesEvidence,
  ...chainEvidence,
  ...proximityEvidence,
  ...tedsEvidence,
  ...areaEvidence,
  ...wiringEvidence,
  ...alarmEvidence,
];
