import { kinds } from '@soundpost/core';
import type { IssuedKind } from './issued-kind.ts';
import { alarmRegister } from './kinds/alarm-register.ts';
import { cableSchedule } from './kinds/cable-schedule.ts';
import { chainCalculations } from './kinds/chain-calculations.ts';
import { frequencyTables } from './kinds/frequency-tables.ts';
import { instrumentList } from './kinds/instrument-list.ts';
import { loopDiagrams } from './kinds/loop-diagrams.ts';

/** Every kind of document that is issued, in the order of a set. */
export const issuedKinds: readonly IssuedKind[] = kinds(
  instrumentList,
  cableSchedule,
  alarmRegister,
  frequencyTables,
  chainCalculations,
  loopDiagrams,
);
